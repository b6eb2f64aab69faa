"""The names of waters and of shares in nine languages, read once from ``waters.txt``."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from functools import cache

from core.message.fold import fold
from core.message.wordfile import spelt

PURE = frozenset({"ro", "rain", "distilled"})
"""Waters without minerals, that need not be measured."""


SALTED = "salt water"
"""How water with sea salt in it is kept."""


@dataclass(frozen=True, slots=True)
class Words:
    """The words of each section, plain form → meaning."""

    water: Mapping[str, str]
    share: Mapping[str, float]
    joint: Mapping[str, frozenset[str]]
    facet: Mapping[str, str]
    whole: frozenset[str]
    emptied: frozenset[str]
    filled: frozenset[str]
    tanks: Mapping[str, frozenset[str]]
    salted: frozenset[str]


@cache
def words() -> Words:
    """All words of ``waters.txt``.

    Raises
    ------
    ValueError
        If a line has no ``=``.
    """
    found: dict[str, dict[str, set[str]]] = {}
    for section, meaning, these in spelt("waters.txt"):
        found.setdefault(section, {}).setdefault(meaning, set()).update(these)
    return Words(
        water={word: of for of, told in found["water"].items() for word in told},
        share={word: float(of) for of, told in found["share"].items() for word in told},
        facet={word: of for of, told in found["facet"].items() for word in told},
        joint={of: frozenset(told) for of, told in found["joint"].items()},
        whole=frozenset(found["whole"]["all"]),
        emptied=frozenset(found["whole"]["emptied"]),
        filled=frozenset(found["whole"]["filled"]),
        tanks={of: frozenset(told) for of, told in found["tanks"].items()},
        salted=frozenset(found["salted"][SALTED]),
    )


def one_of(spelt: Iterable[str]) -> str:
    """A pattern for any of some plain words, the longest first."""
    ordered = sorted(spelt, key=lambda word: (-len(word), word))
    return "|".join(r"\s+".join(map(re.escape, word.split())) for word in ordered)


def kind_of(name: str) -> str | None:
    """Which water a name means: ro, rain, distilled, tap or well; None for any other.

    Examples
    --------
    >>> kind_of("Osmosewasser"), kind_of("garden")
    ('ro', None)
    """
    return words().water.get(" ".join(fold(name).split()))


def is_whole(word: str) -> bool:
    """Whether a plain word means the whole of something: all, ganz, toute."""
    return word in words().whole


@cache
def _named() -> re.Pattern[str]:
    return re.compile(rf"(?<![\w.])(?:{one_of(words().water)})(?!\w)")


def mentioned(text: str) -> list[tuple[int, int, str]]:
    """Every water that a text names: start, end and which.

    Examples
    --------
    >>> mentioned("30% with rain water")
    [(9, 19, 'rain')]
    """
    plain = fold(text)
    return [
        (found.start(), found.end(), words().water[" ".join(found[0].split())])
        for found in _named().finditer(plain)
    ]


def names_pure(text: str) -> bool:
    """Whether a text names water without minerals."""
    return any(kind in PURE for _, _, kind in mentioned(text))
