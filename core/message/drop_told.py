"""How much a drop of a kit counts, told in talk: `kh 4 drops, each drop is 0.5`.

told = each drop [ is ] amount [ degree ]  |  amount [ degree ] each drop
amount = number | half
"""

from __future__ import annotations

import re
from functools import cache
from typing import Final, NamedTuple

from core.message.fold import fold
from core.message.lexicon import lexicon
from core.message.tokens import Token, cut
from core.message.waters import mentioned
from core.message.wordfile import spelt

LEAST: Final = 0.01
MOST: Final = 5.0
"""A drop that counts less or more than this is none of a kit's. [°dH]"""
LONGEST: Final = 120
"""A longer text says more. [characters]"""

_NUMBER: Final = r"\d{1,2}(?:[.,]\d{1,3})?"
_EDGES: Final = " \t\n.,;:!-"


class DropTold(NamedTuple):
    """How much a drop counts, and what else the text says. [°dH]"""

    per_drop: float
    rest: str


def drop_told(text: str) -> DropTold | None:
    """What a text says of a drop; None where it says nothing of it, or asks.

    Examples
    --------
    >>> drop_told("its kh 4 but each drop is 0.5")
    DropTold(per_drop=0.5, rest='its kh 4')
    >>> drop_told("0,5 pro Tropfen").per_drop, drop_told("jeder tropfen ist 0,5 °dh").rest
    (0.5, '')
    >>> drop_told("kh 4 drops"), drop_told("is each drop 0.5?")
    (None, None)
    >>> drop_told("i used the 10ml so half a degree per drop").per_drop
    0.5
    """
    if "?" in text or len(text) > LONGEST or len(fold(text)) != len(text):
        return None
    found = _told().search(fold(text))
    if found is None:
        return None
    number = str(found[1] or found[2]).replace(",", ".")
    count = float(number) if number[0].isdigit() else 0.5
    if not LEAST <= count <= MOST:
        return None
    before = _joint().sub("", text[: found.start()].strip(_EDGES)).strip(_EDGES)
    behind = text[found.end() :].strip(_EDGES)
    return DropTold(count, ", ".join(part for part in (before, behind) if part))


class ColourTold(NamedTuple):
    """A colour of a test that counts drops, in place of a number."""

    analyte: str
    colour: str
    drops: int | None
    """After so many; None where that is not told."""


def colour_told(text: str) -> ColourTold | None:
    """What a text tells of the colour of a KH or GH test; None where it tells none of drops.

    Examples
    --------
    >>> colour_told("kh test stays yellow after the first drop")
    ColourTold(analyte='kh', colour='yellow', drops=1)
    >>> colour_told("kh test is still blue after 8 drops").drops
    8
    >>> colour_told("the kh test turned yellow straight away").drops is None
    True
    >>> colour_told("kh 4, yellow guppies"), colour_told("water is yellow after 3 drops of dye")
    (None, None)
    """
    plain = fold(text)
    if len(text) > LONGEST:
        return None
    tokens = cut(plain, lexicon(), text)
    named = {str(token.value) for token in tokens if token.kind == "analyte"}
    if len(named) != 1 or not named <= _COUNTED:
        return None
    drops = next((n for n, t in enumerate(tokens) if t.value == "drops"), None)
    tested = any(token.value == "kit" for token in tokens)
    if drops is None and not tested:
        return None
    found = _colour().search(plain)
    if found is None:
        return None
    numbers = [token for token in tokens if token.kind == "number"]
    before = tokens[drops - 1] if drops else None
    if len(numbers) > 1 or (numbers and numbers[0] is not before):
        return None  # kh 4: a value is told
    count: int | None = None
    if before is not None and before.kind in {"number", "count"} and before.text.isdigit():
        count = int(before.text)
    elif before is not None and (before.text in _firsts() or before.value == "one"):
        count = 1
    return ColourTold(named.pop(), found[0], count)


class DropsCounted(NamedTuple):
    """Drops that a test took, told of no value for certain."""

    analytes: tuple[str, ...]
    """What they may be of."""
    drops: int
    of_tap: bool
    """Whether they are of the tap."""


def drops_counted(text: str) -> DropsCounted | None:
    """The drops that a test took until it turned, or that a tap has; None where more is said.

    Examples
    --------
    >>> drops_counted("my tap water is 7 drops")
    DropsCounted(analytes=('kh', 'gh'), drops=7, of_tap=True)
    >>> drops_counted("the kh one changed colour after 1 drop").analytes
    ('kh',)
    >>> drops_counted("test kit took 2 drops to go yellow").drops
    2
    >>> drops_counted("i put 7 drops in my tap water"), drops_counted("took 2 drops of blue dye")
    (None, None)
    """
    plain = fold(text)
    if len(text) > LONGEST or len(plain) != len(text) or "?" in text:
        return None
    turned = _pattern("turned").search(plain)
    plain = _pattern("turned").sub(lambda found: " " * len(found[0]), plain)
    tokens = cut(plain, lexicon(), plain)
    place = next((n for n, token in enumerate(tokens) if token.value == "drops"), 0)
    count = tokens[place - 1].text if place else ""
    numbers = [token for token in tokens if token.kind == "number"]
    taps = [each for each in mentioned(plain) if each[2] == "tap"]
    analytes = tuple(str(token.value) for token in tokens if token.kind == "analyte")
    tested = bool(analytes) or any(token.value == "kit" for token in tokens)
    if not count.isdigit() or len(numbers) != 1 or len(analytes) > 1 or len(taps) > 1:
        return None
    if not (taps or (turned is not None and tested)) or not {*analytes} <= _COUNTED:
        return None
    if not all(_is_of_test(token, of_tap=bool(taps)) for token in tokens):
        return None
    return DropsCounted(analytes or _OF_DROPS, int(count), bool(taps))


def _is_of_test(token: Token, *, of_tap: bool) -> bool:
    if token.kind in {"fill", "p", "number", "analyte"} or token.value in _BESIDE_DROPS:
        return True
    if token.value == "other":
        return of_tap
    return any(_pattern(of).fullmatch(token.text) is not None for of in ("colour", "behind"))


_OF_DROPS: Final = ("kh", "gh")
_BESIDE_DROPS: Final = frozenset({"drops", "link", "one", "to", "at", "at_to"})
"""What may stand beside drops that a test took."""
_COUNTED: Final = frozenset(_OF_DROPS)


@cache
def _firsts() -> frozenset[str]:
    return frozenset(w for of, _, ways in spelt("drop_told.txt") for w in ways if of == "first")


def _colour() -> re.Pattern[str]:
    return _pattern("colour")


@cache
def _pattern(section: str) -> re.Pattern[str]:
    return re.compile(rf"(?<!\w)(?:{_any_of(section)})(?!\w)")


@cache
def _any_of(section: str) -> str:
    ways = {way for of, _, ways in spelt("drop_told.txt") for way in ways if of == section}
    return "|".join(re.escape(way) for way in sorted(ways, key=len, reverse=True))


@cache
def _told() -> re.Pattern[str]:
    each, drop, degree = _any_of("each"), _any_of("drop"), _any_of("degree")
    number = rf"({_NUMBER}|{_any_of('half')})"
    link = rf"(?: ?=| (?:{_any_of('is')}))?"
    front = rf"(?<!\w)(?:{each}) (?:{drop}){link} ?{number}(?: ?(?:{degree}))?"
    behind = rf"(?<![\w.,]){number}(?: ?(?:{degree}))? (?:{each}) (?:{drop})"
    return re.compile(rf"(?:{front}|{behind})(?![\w.])")


@cache
def _joint() -> re.Pattern[str]:
    return re.compile(rf"(?:^|\s)(?:{_any_of('joint')})$")
