"""Copper that is told to have gone in, by words that make no deed: `copper med in yesterday`.

told = copper with a deed of the past | copper with a medicine that is in or has its time

None of its words may deny, plan or ask it, or be of another water or thing.
"""

from __future__ import annotations

import re
from functools import cache
from typing import Final

from core.message.fold import fold
from core.message.wordfile import spelt


@cache
def _ways() -> dict[str, re.Pattern[str]]:
    ways: dict[str, list[str]] = {}
    for _section, meaning, found in spelt("copper_told.txt", {"word"}):
        ways.setdefault(meaning, []).extend(found)
        ways[meaning] += [way.replace("'", "") for way in found if "'" in way]  # didnt
    return {
        meaning: re.compile(
            rf"(?<!\w)(?:{'|'.join(map(re.escape, sorted(found, key=len, reverse=True)))})(?!\w)"
        )
        for meaning, found in ways.items()
    }


def went_in(text: str, *, timed: bool, dosed: bool) -> bool:
    """Whether a text that names copper tells surely that it went into the tank.

    Parameters
    ----------
    text : str
        The message as written.
    timed : bool
        Whether it tells a time.
    dosed : bool
        Whether it tells a dose, of whatever.

    Examples
    --------
    >>> went_in("copper med in yesterday", timed=True, dosed=False)
    True
    >>> went_in("should i have added copper", timed=False, dosed=False)
    False
    """
    ways, plain = _ways(), fold(text)
    if "?" in text or ways["never"].search(plain):
        return False
    if dosed or ways["done"].search(plain):
        return True
    cured = ways["cure"].search(plain) is not None
    return cured and (timed or ways["in"].search(plain) is not None)


@cache
def _may_use() -> re.Pattern[str]:
    ways = _ways()
    may, between = ways["may"].pattern, ways["between"].pattern
    copper = "copper|kupfer|cuivre|cobre|rame|koper|miedz|miedzi|miedzia|koppar"
    return re.compile(rf"{may}(?:\s+{between}){{0,3}}\s+(?:{copper})")


def may_use(text: str) -> bool:
    """Whether a text asks if copper may go in, whatever it is for.

    Examples
    --------
    >>> may_use("can i use copper to kill hydra"), may_use("kann ich Kupfer gegen Hydra nehmen?")
    (True, True)
    >>> may_use("can i add shrimp after copper"), may_use("can i use a copper test")
    (False, False)
    """
    plain = fold(text)
    if (found := _may_use().search(plain)) is None:
        return False
    return _ways()["no_use"].match(plain[found.end() :].lstrip(" -")) is None


def denied(text: str) -> bool:
    """Whether a short text says that no copper went in.

    Examples
    --------
    >>> denied("didnt add any copper"), denied("ich habe kein Kupfer benutzt")
    (True, True)
    >>> denied("didnt add copper?"), denied("didnt add copper yesterday but today i did it")
    (False, False)
    """
    plain = fold(text)
    if "?" in text or len(plain.split()) > _SHORT or any(map(str.isdigit, plain)):
        return False
    return _ways()["denied"].search(plain) is not None


_SHORT: Final = 7
"""Words of a text that says no more."""
