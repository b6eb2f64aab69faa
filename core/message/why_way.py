"""Which way a value is off that is asked why: ``why is ph so high``, ``why won't kh rise``."""

from __future__ import annotations

import re
from functools import cache
from typing import Final, Literal

from core.message.fold import fold
from core.message.wordfile import patterns

Way = Literal["high", "low"]
_SECTIONS: Final = ("high", "low", "not", "stay")


@cache
def _words() -> dict[str, re.Pattern[str]]:
    return patterns("why_way.txt", _SECTIONS)


def way_of(text: str) -> Way | None:
    """Whether a value is called too high or too low, or moves so; None where that is not said.

    A word for not turns it round, and what stays is too high unless it is called low.

    Examples
    --------
    >>> way_of("why is ph so high"), way_of("why won't kh rise"), way_of("why is nitrate 80")
    ('high', 'low', None)
    >>> way_of("nitrate stays at 80 why"), way_of("warum sinkt der KH")
    ('high', 'low')
    """
    plain, words = fold(text), _words()
    said = {section: words[section].search(plain) is not None for section in _SECTIONS}
    if said["high"] == said["low"]:
        return "high" if said["stay"] and not said["high"] else None
    if said["not"]:
        return "low" if said["high"] else "high"
    return "high" if said["high"] else "low"
