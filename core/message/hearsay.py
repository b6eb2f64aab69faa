"""Words beside a doubtful value that make it one which no press of a button may store.

`my mate has nitrite 2`, `book says ph 7.2`, `kh isnt 8`: asked for anew, never offered.
"""

from __future__ import annotations

import re
from collections.abc import Collection
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
    for _section, meaning, found in spelt("hearsay.txt", {"word", "owner", "tested"}):
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
    >>> reason("shop tested my water and said kh is 1", 31, 38) is None
    True
    >>> reason("hmm nitrite 2", 4, 13) is None
    True
    """
    first = source.rfind("\n", 0, start) + 1
    last = source.find("\n", end)
    plain = fold(source[first : len(source) if last < 0 else last])
    if _ways()["tested"].search(plain) and _ways()["own"].search(plain):
        plain = _ways()["saying"].sub(" ", plain)
    return next((_REASONS[name] for name in _REASONS if _ways()[name].search(plain)), None)


def of_others(text: str, tanks: Collection[str] = ()) -> bool:
    """Whether a text tells of the animals or the tank of somebody outside of the house alone.

    What they did, or what is told of one's own beside theirs, is no such: it may be one's own tank.

    Examples
    --------
    >>> of_others("my neighbours tank has kh 1 and her fish are dying")
    True
    >>> of_others("my friend's fish are gasping"), of_others("my fish are gasping")
    (True, False)
    >>> of_others("my neighbour poured bleach in the tank, fish are dying")
    False
    >>> of_others("my friend gave his fish to me, mine are dying"), of_others("her fish are dying")
    (False, False)
    """
    ways, plain = _ways(), " ".join(fold(text).replace("’", "'").split())
    whom = ways["outside"].search(plain)
    if whom is None or ways["did"].search(plain):
        return False
    before = plain[: whom.start()].split()
    led = bool(before) and ways["mine"].fullmatch(before[-1]) is not None
    rest = " ".join([*(before[:-1] if led else before), plain[whom.end() :]])
    if ways["mine"].search(rest) or any(fold(name) in rest.split() for name in tanks):
        return False
    behind = plain[whom.end() :].removeprefix("'s").removeprefix("'").split()[:NEAR]
    words = rest.split()
    whose = (before[:-1] if led else before)[-NEAR:]
    if whose and whose[-1] not in _FROM and ways["keeps"].search(" ".join(whose)):
        return True  # die Fische meines Nachbarn
    theirs = any(
        ways["theirs"].fullmatch(word) and ways["keeps"].search(" ".join(words[at + 1 : at + 4]))
        for at, word in enumerate(words)
    )
    return theirs or (bool(behind) and ways["keeps"].search(" ".join(behind)) is not None)


_FROM: Final = frozenset({"from", "von", "by", "with", "and", "mit", "und"})
"""Words behind which it is told of whom one's own are."""

NEAR: Final = 3
"""Words behind whoever it is within which the tank or its animals are named."""
