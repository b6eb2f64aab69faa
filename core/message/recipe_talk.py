"""What salts a keeper has for a plan: `i only have epsom and gypsum`, `no …, only gypsum`.

have = { "no" salt } [ "but" | "only" | "have" ] salt { "and" salt }     every word is known
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from functools import cache
from typing import Final

from core.message.reduced import reduced
from core.message.waters import one_of
from core.message.word_classes import said
from core.message.wordfile import spelt

FILE: Final = "recipe_talk.txt"


@dataclass(frozen=True, slots=True)
class Cupboard:
    """The salts that a keeper has, and those that they said to have not, by their ids."""

    has: tuple[str, ...]
    lacks: tuple[str, ...] = ()


def cupboard(text: str) -> Cupboard | None:
    """The salts that are told to be there; None where another thing is said.

    Examples
    --------
    >>> cupboard("no calcium chloride, only gypsum")
    Cupboard(has=('calcium sulfate dihydrate',), lacks=('calcium chloride',))
    >>> cupboard("i only have epsom and baking soda").has
    ('magnesium sulfate heptahydrate', 'sodium bicarbonate')
    >>> cupboard("gypsum"), cupboard("i have no gypsum"), cupboard("only 5 g gypsum")
    (None, None, None)
    """
    found = reduced(text)
    told = said(FILE, found.text, small=True)
    if told is None or told.numbers or found.waters or found.analytes or "?" in text:
        return None
    if not told.has("salt") or not (told.has("only") or told.has("have")):
        return None
    has: list[str] = []
    lacks: list[str] = []
    names = iter(found.substances)
    negated = False
    for part in _marks().findall(found.text):
        if part == "@salt":
            (lacks if negated else has).append(next(names))
        elif part in ",;.":
            negated = False
        else:
            negated = _is_none(part)
    if not has or not (lacks or (told.has("only") and len(set(has)) > 1)):
        return None  # one salt alone is a follow-up, and what else is there asks for nothing
    return Cupboard(tuple(dict.fromkeys(has)), tuple(dict.fromkeys(lacks)))


@cache
def _ways(meaning: str) -> frozenset[str]:
    told = spelt(FILE, {"word", "unit"})
    return frozenset(way for _section, of, these in told for way in these if of == meaning)


def _is_none(part: str) -> bool:
    return " ".join(part.split()) in _ways("none")


@cache
def _marks() -> re.Pattern[str]:
    turning = {*_ways("none"), *_ways("only"), *_ways("have"), *_ways("but")}
    return re.compile(rf"@salt|[,;.]|(?<!\w)(?:{one_of(turning)})(?!\w)")
