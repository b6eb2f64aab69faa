"""Numbers in words and in speech: `nitrate twenty`, `seven point two`, `four and a half`."""

from __future__ import annotations

from rapidfuzz.distance import OSA

from core.message import doubts
from core.message.quantity import Quantity
from core.message.tokens import Token


def is_number_of_name(tokens: list[Token], index: int) -> bool:
    """Whether a counting word is a name's number (`nitrate twenty`, `ph is seven point two`)."""
    name = index - 1
    if name > 0 and tokens[name].kind == "mark" and tokens[name].value == "link":
        name -= 1
    if name < 0 or tokens[name].kind != "analyte":
        return False
    behind = index + 1
    while behind < len(tokens) and (tokens[behind].kind == "count" or _is_point(tokens[behind])):
        behind += 1
    if behind == len(tokens):
        return True
    if tokens[behind].value == "and":  # "four and a half" is no four
        named = behind + 1 < len(tokens) and tokens[behind + 1].kind == "analyte"
        return named or _and_half(tokens, behind) > 0
    return tokens[behind].kind in {"analyte", "nl", "unit"} or tokens[behind].text in _PAUSES


def _is_point(token: Token) -> bool:
    return token.kind == "mark" and token.value == "point"


_PAUSES = frozenset({",", ";", ".", "/", "|"})


def _and_half(tokens: list[Token], place: int) -> int:
    """How many tokens "and a half" takes at `place`, 0 where it does not stand there."""
    if tokens[place].value != "and":
        return 0
    article = place + 1 < len(tokens) and tokens[place + 1].value == "one"
    half = place + (2 if article else 1)
    return half + 1 - place if half < len(tokens) and tokens[half].value == "half" else 0


def _nearly_half(tokens: list[Token], place: int) -> bool:
    """Whether "a half" was meant and mistyped."""
    words = [token for token in tokens[place : place + 2] if token.kind in {"word", "several"}]
    return any(
        OSA.distance(word.text, half, score_cutoff=2) <= 2
        for word in words[:1]
        if len(word.text) > 2
        for half in ("half", "a half")
    )


def more(tokens: list[Token], found: Quantity) -> None:
    """What is said behind the first number: `twenty five`, `seven point two`, `7 point 2`."""
    token = tokens[found.last]
    if token.kind == "count" and tokens[found.last - 1].kind == "count" and found.value is not None:
        unit = float(str(token.value))
        if found.value % 10 == 0 and found.value >= 20 and unit < 10:
            found.value += unit
            found.end, found.last = token.end, found.last + 1
    if found.last + 1 >= len(tokens):
        return
    half = _and_half(tokens, found.last)
    if half and found.value is not None and found.value == int(found.value):
        found.value += 0.5
        found.integer = False
        found.last += half
        found.end = tokens[found.last - 1].end
        return
    if tokens[found.last].value == "and" and _nearly_half(tokens, found.last + 1):
        found.problem = found.problem or doubts.UNKNOWN_WORD
        return
    if not _is_point(tokens[found.last]):
        return
    digit = tokens[found.last + 1]
    text = str(digit.value) if digit.kind == "count" else digit.text
    if digit.kind not in {"count", "number"} or not text.isdigit() or found.value is None:
        return
    if found.value == int(found.value) and len(text) < 3:
        found.value = float(f"{int(found.value)}.{text}")
        found.integer = False
        found.end, found.last = digit.end, found.last + 2
