"""``when should i do the next change``, ``next wc?``: when the next water change is asked for."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from core.message.fold import fold
from core.message.word_classes import said

FILE: Final = "change_when.txt"


def asks_when(text: str, tanks: Sequence[str] = ()) -> bool:
    """Whether a text asks when the next water change is, and nothing else.

    Examples
    --------
    >>> asks_when("when should i do the next change"), asks_when("next water change?")
    (True, True)
    >>> asks_when("wann ist der nächste wasserwechsel"), asks_when("fern next wc?", ["Fern"])
    (True, True)
    >>> asks_when("when did i change water"), asks_when("when will it change")
    (False, False)
    >>> asks_when("next water change"), asks_when("when should i change the filter")
    (False, False)
    """
    plain = fold(text)
    for name in sorted(tanks, key=len, reverse=True):
        plain = plain.replace(fold(name), " ")
    told = said(FILE, plain, small=True)
    if told is None or told.numbers or told.has("done"):
        return False
    asks = told.has("when") or "?" in text
    return asks and (told.has("change") or told.has("bare", "next")) and _opens(told.classes)


def _opens(classes: Sequence[str]) -> bool:
    """Whether it is asked when, or what is next."""
    return "when" in classes or "next" in classes
