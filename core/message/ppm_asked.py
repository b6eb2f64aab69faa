"""``can i put 8 ppm``: whether so much may go in, of what nobody named or of ammonia."""

from __future__ import annotations

from typing import Final, NamedTuple

from core.message.word_classes import said

FILE: Final = "ppm_asked.txt"


class PpmAsked(NamedTuple):
    """So much that may go in, and whether ammonia is named. [mg/L]"""

    value: float
    ammonia: bool


def ppm_asked(text: str) -> PpmAsked | None:
    """The ppm that are asked about; None where a text asks no such thing, or says more.

    Examples
    --------
    >>> ppm_asked("can i put 8 ppm to speed up")
    PpmAsked(value=8.0, ammonia=False)
    >>> ppm_asked("kann ich 4 ppm Ammonium geben").ammonia
    True
    >>> ppm_asked("8 ppm"), ppm_asked("can i put 8 neons")
    (None, None)
    """
    told = said(FILE, text)
    if told is None or not told.has("may", "put") or len(told.numbers) != 1:
        return None
    value = told.of("ppm")
    return None if value is None else PpmAsked(value, told.has("ammonia"))
