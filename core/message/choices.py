"""Which of the choices shown a text means: `the second one`, `mon and thu`."""

from __future__ import annotations

import re
from collections.abc import Sequence
from typing import Final

from core.message.fold import fold
from core.message.reminder_when import has, pattern

_WORD: Final = re.compile(r"[^\W_]+")
_STEM: Final = 3
"""So many letters of a word stand for it: mon, thu."""
_PLACES: Final = ("first", "second", "third")


def ordinal(text: str) -> int | None:
    """The place, from 0, of a choice that is meant by its number; None where none is.

    Examples
    --------
    >>> ordinal("the second one"), ordinal("first sunday"), ordinal("the 1st please")
    (1, None, 0)
    """
    plain = fold(text)
    for place, name in enumerate(_PLACES):
        if has(name, plain):
            left = pattern(name).sub(" ", plain, count=1)
            for light in ("one", "light"):
                left = pattern(light).sub(" ", left)
            return None if _WORD.search(left) else place
    return None


def chosen(text: str, labels: Sequence[str]) -> int | None:
    """The place of the only label that has all words of a text; None where none or several have.

    Examples
    --------
    >>> shown = ["feed every monday and thursday", "feed every 3 days"]
    >>> chosen("mon and thu", shown), chosen("every 3 days", shown), chosen("feed", shown)
    (0, 1, None)
    """
    words = _WORD.findall(pattern("light").sub(" ", fold(text)))
    if not any(word.isalpha() for word in words):
        return None
    fitting = [
        place
        for place, label in enumerate(labels)
        if all(
            any(_stands_for(word, other) for other in _WORD.findall(fold(label))) for word in words
        )
    ]
    return fitting[0] if len(fitting) == 1 else None


def _stands_for(word: str, other: str) -> bool:
    return word == other or (len(word) >= _STEM and word.isalpha() and other.startswith(word))
