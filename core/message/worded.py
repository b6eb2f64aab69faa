"""An amount told in words as a number with its unit: `half a kilo`, `a heaped tablespoon`.

amount = [ share ] [ "of" ] [ "a" ] { size } ( weight | spoon )   with a share, "a" or a size
       | "a" weight "and a half" | number size spoon [ size ]

The ways in which a spoon may be full stand in ``dose_words.txt``; a plain `half a cup` is left to
those who know its words.
"""

from __future__ import annotations

from functools import cache
from typing import Final

from core.message.numbers import Number
from core.message.token import Token, is_number
from core.message.wordfile import spelt

SPOONS = {"tsp": 1.0, "tbsp": 3.0, "spoon": 1.0, "cup": 48.0}
"""Teaspoons in one; rough, which is why every use carries a warning."""
SHARES = {"whole": 100.0, "half": 50.0, "third": 100.0 / 3.0, "quarter": 25.0}
"""Shares that have a word. [%]"""

_WEIGHTS: Final = frozenset({"kg", "lb", "oz"})
"""Of which one is told by `a`; `a g` is none."""
_PARTED: Final = frozenset({*_WEIGHTS, "g"})
_RATES: Final = frozenset({"/", "per", "€", "$", "£"})
_BARE: Final = {"half": "half", "quarter": "quarter", "third": "third"}
"""Words of shares that are none alone."""


@cache
def _sizes() -> frozenset[str]:
    return frozenset(
        way
        for section, _language, ways in spelt("dose_words.txt")
        if section == "size"
        for way in ways
    )


def joined(tokens: list[Token]) -> list[Token]:
    """The tokens, with amounts that are told in words as a number and a unit."""
    out: list[Token] = []
    place = 0
    while place < len(tokens):
        found = _amount(tokens, place, out)
        if found is None:
            out.append(tokens[place])
            place += 1
            continue
        made, place = found
        out += made
    return out


def _amount(tokens: list[Token], first: int, before: list[Token]) -> tuple[list[Token], int] | None:
    """The number and unit of what begins here, and the place behind; None where none does."""
    token = tokens[first]
    if is_number(token):
        return _sized(tokens, first)
    if token.kind not in {"mark", "time", "word", "count"}:
        return None
    place, share = first, _share(token)
    if share is not None:
        place += 1
        place += place < len(tokens) and tokens[place].text in {"of", "de", "d"}
    one = place < len(tokens) and tokens[place].value == "one"
    place += one
    size = place
    while place < len(tokens) and tokens[place].text in _sizes():
        place += 1
    unit = tokens[place] if place < len(tokens) and tokens[place].kind == "unit" else None
    if token.value == "one" and (half := _and_half(tokens, first + 1)) is not None:
        behind = tokens[half] if half < len(tokens) else token
        if behind.kind == "unit" and behind.value in {*_WEIGHTS, *SPOONS}:
            return _made(tokens, first, half, 1.5, half + 1), half + 1  # one and a half kilo
    if unit is None or _is_rate(before):
        return None
    spoon = str(unit.value) in SPOONS
    of_words = place > size
    if spoon and not of_words and token.kind != "word":
        return None  # half a cup
    weighs = unit.value in (_PARTED if share is not None else _WEIGHTS)
    if not (spoon or weighs) or not (one or of_words or share is not None):
        return None
    last = place + 1
    while spoon and last < len(tokens) and tokens[last].text in _sizes():
        last += 1
    value = 1.0 if share is None else share
    if weighs and share is None and (half := _and_half(tokens, last)) is not None:
        value, last = 1.5, half
    return _made(tokens, first, place, value, last), last


def _sized(tokens: list[Token], first: int) -> tuple[list[Token], int] | None:
    """`2 heaped teaspoons`: so many, however full."""
    place = first + 1
    while place < len(tokens) and tokens[place].text in _sizes():
        place += 1
    unit = tokens[place] if place < len(tokens) else None
    if unit is None or unit.kind != "unit" or unit.value not in SPOONS:
        return None
    last = place + 1
    while last < len(tokens) and tokens[last].text in _sizes():
        last += 1
    return ([tokens[first], unit], last) if last > first + 2 else None


def _share(token: Token) -> float | None:
    if token.kind == "mark" and token.value in SHARES and token.value != "whole":
        return SHARES[str(token.value)] / 100.0
    return SHARES[_BARE[token.text]] / 100.0 if token.text in _BARE else None


def _is_rate(before: list[Token]) -> bool:
    """Whether an amount is what another is told for, or the end of one: 5 € a kilo."""
    if not before:
        return False
    token = before[-1]
    if token.value == "one":
        return len(before) > 1 and before[-2].value == "and"
    rate = token.kind in {"number", "fraction", "unit", "count"} or token.text in _RATES
    return rate or token.value in {"money", "and"}


def _and_half(tokens: list[Token], place: int) -> int | None:
    """The place behind `and a half`; None where that does not stand here."""
    if place >= len(tokens) or tokens[place].value != "and":
        return None
    place += 1
    place += place < len(tokens) and tokens[place].value == "one"
    half = place < len(tokens) and tokens[place].value == "half"
    return place + 1 if half else None


def _made(tokens: list[Token], first: int, unit: int, value: float, last: int) -> list[Token]:
    begins, ends = tokens[first], tokens[unit - 1]
    number = Token("number", Number(value), f"{value:g}", begins.start, ends.end)
    of = tokens[unit]
    end = tokens[last - 1].end
    return [number, Token(of.kind, of.value, of.text, of.start, end)]
