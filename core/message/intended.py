"""How much is meant to go in, by its share of what is at hand: `got a 1 kg bag, i'll put half in`.

intended = [ number mass-unit bag | bag of number mass-unit ] share | half a kilo | number mass-unit
beside what asks or plans to put more in (`gave_told.would_give`). The words stand in
``intended.txt``.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from functools import cache
from typing import Final, NamedTuple

from core.message.amounts import GRAMS
from core.message.asking_words import asks
from core.message.fold import fold
from core.message.gave_told import LONGEST, gave, would_give
from core.message.once import once
from core.message.plan_said import amounts_in, classes_in, substances_named
from core.message.wordfile import patterns

FILE: Final = "intended.txt"
_SECTIONS: Final = ("bag", "half", "third", "quarter", "other", "whole", "kilo")
_SHARES: Final[Mapping[str, float]] = {
    "other": 0.5, "half": 0.5, "third": 1.0 / 3.0, "quarter": 0.25, "whole": 1.0,
}  # fmt: skip
"""How much of what is at hand each is; the other half is looked for before the half."""

_FILLS: Final = r"(?: (?:of|it|a|the|that|my|von|vom|der|de|du|del|do|van|av))*"
_MASS: Final = {"kilo": 1e3, "kilos": 1e3, "pound": GRAMS["lb"], "pounds": GRAMS["lb"]} | {
    "lbs": GRAMS["lb"], "gram": 1.0, "grams": 1.0, "g": 1.0, "kg": 1e3, "lb": GRAMS["lb"],
    "oz": GRAMS["oz"],
}  # fmt: skip


class Intended(NamedTuple):
    """What is meant to go in, as far as it is told."""

    grams: float | None
    """So much [g]; None where it is a share of what was told before to be at hand."""
    share: float | None = None
    bag: float | None = None
    """What is at hand, where that is told here. [g]"""
    substances: frozenset[str] = frozenset()


@cache
def _words() -> Mapping[str, re.Pattern[str]]:
    return patterns(FILE, _SECTIONS)


@cache
def _bags() -> tuple[re.Pattern[str], ...]:
    masses = "|".join(sorted(_MASS, key=len, reverse=True))
    number = rf"(?<![\w.,])(\d{{1,5}}(?:[.,]\d{{1,3}})?|a) ?-?({masses})"
    bag = _words()["bag"].pattern
    behind = rf"{bag}{_FILLS} (\d{{1,5}}(?:[.,]\d{{1,3}})?|a) ?({masses})(?!\w)"
    return (re.compile(rf"{number} {bag}"), re.compile(behind))


def bag_of(text: str) -> float | None:
    """How much a bag or box holds that is told to be at hand; None where none is. [g]

    Examples
    --------
    >>> bag_of("ive got a 1kg bag so i'll put half in"), bag_of("got a bag of 500 g soda")
    (1000.0, 500.0)
    >>> bag_of("a bag of shrimps"), bag_of("half a kilo of bicarb")
    (None, None)
    """
    plain = " ".join(fold(text).split())
    for pattern in _bags():
        if (found := pattern.search(plain)) is not None:
            told, unit = found.group(1), found.group(2)
            number = 1.0 if told == "a" else float(told.replace(",", "."))
            return number * _MASS[unit]
    return None


def share_of(text: str) -> float | None:
    """What share of what is at hand a text tells; None where none is.

    Examples
    --------
    >>> share_of("the other half"), share_of("the whole bag"), share_of("4 g")
    (0.5, 1.0, None)
    """
    plain, words = " ".join(fold(text).split()), _words()
    for section, share in _SHARES.items():
        if words[section].search(plain):
            return share
    return None


def _of_kilo(text: str) -> float | None:
    """Half a kilo, a quarter of a kilo. [g]

    Examples
    --------
    >>> _of_kilo("i'll put half a kilo of bicarb in"), _of_kilo("half of it in")
    (500.0, None)
    """
    words, plain = _words(), " ".join(fold(text).split())
    for section in ("half", "third", "quarter"):
        found = re.search(rf"{words[section].pattern}{_FILLS} {words['kilo'].pattern}", plain)
        if found is not None:
            return _SHARES[section] * 1000.0
    return None


@once
def intended(text: str) -> Intended | None:
    """How much a text asks or plans to put in; None where it does not, or tells no amount.

    Examples
    --------
    >>> intended("ive got a 1kg bag so i'll put half in tonight").grams
    500.0
    >>> told = intended("is it ok to put the other half in")
    >>> told.grams, told.share
    (None, 0.5)
    >>> intended("i'll put half a kilo of bicarb in tonight").grams
    500.0
    >>> intended("i put half of the 1 kg bag in"), intended("i'll put the fish in") is None
    (None, True)
    >>> intended("put in 5 g so far"), intended("put 60 g of soda in, what now")
    (None, None)
    """
    if len(text) > LONGEST or not would_give(text) or gave(text) is not None:
        return None
    if not (asks(text) or classes_in(text) & {"will", "shall"}):
        return None  # `so far`, which is may in Swedish; 60 g are in, what now
    named = frozenset(substances_named(text))
    bag, share = bag_of(text), share_of(text)
    if bag is not None:
        return Intended(bag * share, share, bag, named) if share is not None else None
    if (part := _of_kilo(text)) is not None:
        return Intended(part, substances=named)
    grams = amounts_in(text).grams
    if grams is not None:
        return Intended(grams, substances=named)
    plain = " ".join(fold(text).split())
    of_bag = _words()["other"].search(plain) or _words()["bag"].search(plain)
    of_bag = of_bag or _words()["whole"].search(plain)
    return Intended(None, share, None, named) if share is not None and of_bag else None
