"""Hours in which nothing is to be said, told without their name: `dont message me before 9`.

said = not disturb (before | after) a time of day

A text with any other word says more, and is none.
"""

from __future__ import annotations

import re
from datetime import time
from functools import cache
from typing import Final, Literal

from core.message.away_said import FILE, LONGEST
from core.message.fold import fold
from core.message.waters import one_of
from core.message.wordfile import spelt
from core.schedule import parse_clock

NOON: Final = 12
"""After a bare hour of the morning nobody is to be silent: it is of the evening. [h]"""

_DIGITS: Final = re.compile(r"\d{1,2}")


def quiet_side(text: str) -> tuple[Literal["before", "after"], time] | None:
    """Until when, or from when on, nothing is to be said; None where a text tells none.

    Examples
    --------
    >>> quiet_side("dont message me before 9"), quiet_side("no reminders after 10 please")
    (('before', datetime.time(9, 0)), ('after', datetime.time(22, 0)))
    >>> quiet_side("dont remind me before the water change"), quiet_side("message me before 9")
    (None, None)
    """
    plain = " ".join(fold(text).strip(" .!").split())
    if len(text) > LONGEST or "\n" in text.strip() or "?" in text:
        return None
    for side in _SIDES:
        found = _pattern(side).search(plain)
        if found is None:
            continue
        front, behind = plain[: found.start()], _light(plain[found.end() :])
        at = parse_clock(behind)
        denied, rest = _cut("not", front)
        disturbs, rest = _cut("disturb", rest)
        if at is None or not denied or not disturbs or _light(rest):
            continue
        bare = _DIGITS.fullmatch(behind) is not None
        late = side == "after" and bare and 0 < at.hour < NOON
        return side, at.replace(hour=at.hour + NOON) if late else at
    return None


_SIDES: Final[tuple[Literal["before", "after"], ...]] = ("before", "after")


def _cut(name: str, text: str) -> tuple[bool, str]:
    left = _pattern(name).sub(" ", text)
    return left != text, " ".join(left.split())


def _light(text: str) -> str:
    return _pattern("light").sub(" ", text).strip(" ,.")


@cache
def _pattern(name: str) -> re.Pattern[str]:
    ways = {way for _section, meaning, told in spelt(FILE) if meaning == name for way in told}
    return re.compile(rf"(?<![\w'])(?:{one_of(ways)})(?![\w'])")
