"""Words beside a doubtful value that make it one which no press of a button may store.

`my mate has nitrite 2`, `book says ph 7.2`, `kh isnt 8`: asked for anew, never offered.
"""

from __future__ import annotations

import re
from functools import cache
from typing import Final

from core.message import doubts
from core.message.fold import fold
from core.message.wordfile import spelt

_REASONS: Final = {
    "denied": doubts.NEGATED,
    "others": doubts.OTHER_WATER,
    "past": doubts.PAST,
    "thing": doubts.UNKNOWN_WORD,
}
"""What a value is that stands beside words of a class, the surest first."""


@cache
def _ways() -> dict[str, re.Pattern[str]]:
    ways: dict[str, list[str]] = {}
    for _section, meaning, found in spelt("hearsay.txt", {"word"}):
        ways.setdefault(meaning, []).extend(found)
    return {
        meaning: re.compile(
            rf"(?<!\w)(?:{'|'.join(map(re.escape, sorted(found, key=len, reverse=True)))})(?!\w)"
        )
        for meaning, found in ways.items()
    }


def reason(source: str, start: int, end: int) -> str | None:
    """Why a doubtful value of a message is not offered; None where its own words say nothing.

    Examples
    --------
    >>> reason("my mate has nitrite 2", 12, 21)
    'other_water'
    >>> reason("hmm nitrite 2", 4, 13) is None
    True
    """
    first = source.rfind("\n", 0, start) + 1
    last = source.find("\n", end)
    plain = fold(source[first : len(source) if last < 0 else last])
    return next((_REASONS[name] for name in _REASONS if _ways()[name].search(plain)), None)
