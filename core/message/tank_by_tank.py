"""One thing told of two tanks with a number each: `changed 30% on the cube and 50% on big`."""

from __future__ import annotations

import re
from collections.abc import Sequence
from functools import cache
from typing import Final

from core.message.fold import fold
from core.message.wordfile import spelt

HEAD_WORDS: Final = 3
"""Words before the first number: what is told, and who did it."""


@cache
def _ways(file: str, section: str) -> str:
    found = {way for of, _language, ways in spelt(file) if of == section for way in ways}
    return "|".join(re.escape(way) for way in sorted(found, key=len, reverse=True))


def spread(text: str, tanks: Sequence[str]) -> tuple[str, ...]:
    """The message once for each tank, with what is told before its number; empty for other texts.

    Examples
    --------
    >>> spread("changed 30% on the cube and 50% on big", ["cube", "big"])
    ('cube: changed 30%', 'big: changed 50%')
    >>> spread("ph 7 in cube and kh 4 in big", ["cube", "big"])
    ()
    """
    if len(tanks) < 2 or "?" in text:
        return ()
    names = {fold(tank): tank for tank in tanks}
    known = "|".join(re.escape(name) for name in sorted(names, key=len, reverse=True))
    places = _ways("described.txt", "before")
    part = rf"(\d+(?:[.,]\d+)? ?(?:%|[a-z°]{{1,6}})?) (?:(?:{places}) ){{0,2}}({known})"
    joint = rf"(?:,| (?:{_ways('tank_by_tank.txt', 'joint')}))+ "
    found = re.fullmatch(rf"([^\d,.;:!]+?) {part}{joint}{part}\W*", fold(text).strip())
    if found is None or found[3] == found[5] or len(found[1].split()) > HEAD_WORDS:
        return ()
    told = ((found[2], found[3]), (found[4], found[5]))
    return tuple(f"{names[tank]}: {found[1]} {number.strip()}" for number, tank in told)
