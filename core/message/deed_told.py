"""Words around a deed of hands that change nothing of it, and a change told as water out and in.

told  = { person | aside } deed
change = out amount [ "and" ] in amount     `took out 10 l and put 10 l ro in`

Who did it, and that it was forgotten to be told, is no wish and no denial: so it has no weight.
Water let out and filled up again is in ``refilled.py``.
"""

from __future__ import annotations

import re
from functools import cache
from typing import Final

from core.message import bought, quantities
from core.message.amounts import LITRES
from core.message.token import Token
from core.message.waters import one_of
from core.message.wordfile import spelt

_LONGEST: Final = 6
"""Words of the longest phrase."""

_NEAR: Final = 5
"""Words between who did it and the deed."""

_BETWEEN: Final = frozenset({"fill", "mark", "time", "p"})
_GIVEN: Final = frozenset({"water_change", "dose", "added", "top_up", "filter"})
_CHANGING: Final = frozenset({"water_change", "changing"})
_SAME: Final = 0.1
"""So much more or less is as much, of one amount."""


@cache
def _ways() -> dict[str, dict[str, frozenset[str]]]:
    """Each class's phrases by their first word."""
    found: dict[str, dict[str, set[str]]] = {}
    for _section, meaning, told in spelt("deed_told.txt", {"word"}):
        by_first = found.setdefault(meaning, {})
        for way in told:
            plain = _plain(way)
            by_first.setdefault(plain.split()[0], set()).add(plain)
    return {
        meaning: {first: frozenset(these) for first, these in by_first.items()}
        for meaning, by_first in found.items()
    }


def _plain(text: str) -> str:
    return " ".join(text.replace("'", " ").replace("’", " ").replace("-", " ").split())


@cache
def _persons() -> re.Pattern[str]:
    ways = one_of(way for these in _ways()["person"].values() for way in these)
    return re.compile(rf"(?<![\w'’])(?:{ways})(?![\w'’])\s?")


def without_person(plain: str) -> str:
    """A folded text without who did what it tells.

    Examples
    --------
    >>> without_person("my son gave it too"), without_person("i gave it")
    ('gave it too', 'i gave it')
    """
    return _persons().sub("", plain)


def at(tokens: list[Token], place: int, meaning: str) -> int:
    """How many tokens the longest phrase of a class takes from a place on; 0 for none."""
    ways = _ways()[meaning].get(_plain(tokens[place].text).partition(" ")[0])
    if ways is None:
        return 0
    said, taken = "", 0
    for size, token in enumerate(tokens[place : place + _LONGEST], 1):
        said = _plain(f"{said} {token.text}")
        if said in ways:
            taken = size
    return taken


def set_aside(tokens: list[Token]) -> None:
    """Give no weight to who did a deed and to what leads in to it, in place.

    Who comes from doing it (`acabo de cambiar 20 l`) did it.
    """
    place = 0
    while place < len(tokens):
        behind = place + at(tokens, place, "just_done")
        if place < behind < len(tokens) and tokens[behind].value == "changing":
            tokens[behind].kind, tokens[behind].value = "event", "water_change"
            for token in tokens[place:behind]:
                token.kind = token.value = "fill"
        size = at(tokens, place, "aside") or at(tokens, place, "person")
        if size and _leads_to_deed(tokens, place + size):
            for token in tokens[place : place + size]:
                token.kind = token.value = "fill"
        if place and not size and (size := at(tokens, place, "treated")):
            changed = any(t.value in _CHANGING for t in tokens[:place])
            for token in tokens[place : place + size] if changed else ():
                token.kind = token.value = "fill"
        place += size or 1


def _leads_to_deed(tokens: list[Token], place: int) -> bool:
    """Whether a deed with its amount begins here, or words without weight before one."""
    last = min(place + _NEAR, len(tokens))
    while place < last:
        token = tokens[place]
        by_hand = token.kind == "event" and token.value in _GIVEN
        if quantities.is_number(token):
            return not _measured(tokens, place)
        if by_hand or bought.is_word("give", token.text):
            return True
        if bought.is_word("did", token.text):
            return True
        asked = token.value in {"if", "not", "may", "does", "whether", "wish"}
        leads = at(tokens, place, "aside") or at(tokens, place, "person")
        if (token.kind not in _BETWEEN or asked) and not leads:
            return False
        place += leads or 1
    return False


def _measured(tokens: list[Token], place: int) -> bool:
    """Whether a number is what somebody else measured: `my neighbour has 5 nitrite`."""
    ahead = place + 1
    while ahead < len(tokens) and tokens[ahead].kind in {"fill", "mark"}:
        ahead += 1
    return ahead < len(tokens) and tokens[ahead].kind == "analyte"


def with_mix(tokens: list[Token]) -> None:
    """Give no weight to a mix that a change was made with: which it was, nobody knows."""
    if not any(token.value == "water_change" for token in tokens):
        return
    for place in range(1, len(tokens)):
        size = at(tokens, place, "mix")
        if size and (tokens[place - 1].value == "and" or tokens[place - 1].text == "w"):  # with
            for token in tokens[place - 1 : place + size]:
                token.kind = token.value = "fill"


def out_and_in(tokens: list[Token]) -> None:
    """Make a change of what tells that so much went out and as much in, in place."""
    amounts = [
        (place, found)
        for place, token in enumerate(tokens)
        if quantities.is_number(token)
        and (found := quantities.read(tokens, place)) is not None
        and (found.unit in LITRES or found.unit is None)
        and found.value
    ]
    if len(amounts) != 2 or any(token.kind in {"event", "ask"} for token in _between(tokens)):
        return
    (first, out), (second, back) = amounts
    if out.value is None or back.value is None or out.unit is None:
        return
    if out.unit != (back.unit or out.unit):
        return
    if abs(out.value - back.value) > _SAME * max(out.value, back.value):
        return
    gone = _side(tokens, first, out.last, "out", 0, second)
    come = _side(tokens, second, back.last, "in", out.last, len(tokens))
    if gone is None or come is None or any(t.value in UNSURE or t.text == "?" for t in tokens):
        return
    if back.unit is None:  # 10 l out and 10 in: litres too
        place = back.last
        end = tokens[place - 1].end
        tokens.insert(place, Token("unit", out.unit, out.unit, end, end))
        come += come >= place
    for token in tokens[: min(come, second)]:
        if token.kind not in {"tank", "time", "nl", "clock"}:
            token.kind = token.value = "fill"
    for token in tokens[come + 1 : come + at(tokens, come, "in")]:
        token.kind = token.value = "fill"
    tokens[come].kind, tokens[come].value = "event", "water_change"


UNSURE: Final = frozenset({"if", "not", "may", "does", "whether", "wish"})
"""Marks that make what is told no deed."""


def _between(tokens: list[Token]) -> list[Token]:
    """The tokens of which none may be another deed or a question; `added` may bring water in."""
    verbs = ("out", "in")
    return [
        token
        for place, token in enumerate(tokens)
        if not any(at(tokens, place, meaning) for meaning in verbs)
    ]


def _side(
    tokens: list[Token], first: int, last: int, meaning: str, floor: int, end: int
) -> int | None:
    """The word that tells the way of an amount, right behind its water or before it."""
    for place in range(last, min(last + _NEAR, end)):
        if at(tokens, place, meaning):
            return place
    for place in range(first - 1, max(floor, first - _NEAR) - 1, -1):
        if at(tokens, place, meaning):
            return place
    return None
