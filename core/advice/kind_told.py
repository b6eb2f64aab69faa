"""Which water a tank has, told by itself: `its freshwater sorry`, `not marine, its fresh`."""

from __future__ import annotations

import re
from functools import cache
from typing import Final

from core.advice.introduction_parts import FILE, KINDS, SECTIONS
from core.message.fold import fold
from core.message.right_pieces import class_of
from core.message.wordfile import spelt
from core.tank import TankKind

LONGEST: Final = 60
"""A longer text says more. [characters]"""

_PHRASE: Final = 4
_TELLING: Final = frozenset({"regret", "is", "was", "single"})
_LIGHT: Final = frozenset({*_TELLING, "light", "only", "tank", "one"})
_NOT_ALONE: Final = frozenset({"salt", "zout", "salé", "reef", "sea"})
"""Words that are of a thing that went in, or of another tank, more often: it was salt."""


@cache
def _classes() -> dict[str, str]:
    """Plain phrase → the class of it that matters here."""
    wanted = {*KINDS, "tank", "one", "without", "single"}
    alone = {fold(word) for word in _NOT_ALONE}
    return {
        way: of
        for _section, of, ways in spelt(FILE, SECTIONS)
        for way in ways
        if of in wanted and way not in alone
    }


def kind_told(text: str) -> TankKind | None:
    """The kind of water that a text tells and nothing else; None for other texts.

    Examples
    --------
    >>> kind_told("its freshwater sorry"), kind_told("no its not marine, its fresh")
    ('fresh', 'fresh')
    >>> kind_told("fresh water"), kind_told("it was salt"), kind_told("is it marine?")
    (None, None, None)
    """
    if "?" in text or len(text) > LONGEST:
        return None
    words = re.findall(r"[^\s,.;:!]+", fold(text))
    place, told, denied = 0, False, False
    found: set[TankKind] = set()
    while place < len(words):
        size, of = _at(words[place : place + _PHRASE])
        if of is None:
            return None
        told = told or of in _TELLING
        if of in KINDS and not denied:
            found.add(KINDS[of])
        denied = of in {"not", "without"}
        place += size
    return found.pop() if told and len(found) == 1 else None


def _at(words: list[str]) -> tuple[int, str | None]:
    """How many words the longest phrase of a class has at the head of `words`, and its class."""
    for size in range(len(words), 0, -1):
        phrase = " ".join(words[:size])
        of = _classes().get(phrase) or class_of(phrase)
        if of is not None and (of in KINDS or of in _LIGHT or of in {"not", "without"}):
            return size, of
    return 1, None
