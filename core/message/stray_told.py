"""The last reading was of a tank: `that reading was the quarantine tank`.

told = { light } of { light } name [ tank ] | { light } of { light } job
"""

from __future__ import annotations

import re
from functools import cache
from typing import Final

from core.message.fold import fold
from core.message.waters import one_of
from core.message.wordfile import spelt

LONGEST: Final = 70
"""A longer text says more. [characters]"""
MOST: Final = 2
"""Words of a name, beside the one for a tank."""


@cache
def _ways(meaning: str) -> frozenset[str]:
    told = spelt("stray_told.txt", {"word"})
    return frozenset(way for _section, name, ways in told if name == meaning for way in ways)


@cache
def _lead() -> re.Pattern[str]:
    light = one_of(_ways("light"))
    of = one_of(_ways("of"))
    return re.compile(rf"(?:(?:{light})[ ,]+)*(?:{of}) (?:(?:{light})[ ,]+)*")


def stray_told(text: str, tanks: frozenset[str] = frozenset()) -> str | None:
    """The name of the tank that the last reading was of; None where a text says anything else.

    Parameters
    ----------
    tanks : frozenset of str
        Names that are a tank's without the word for one.

    Examples
    --------
    >>> stray_told("that reading was the quarantine tank"), stray_told("that was the hospital tank")
    ('quarantine', 'hospital')
    >>> stray_told("that reading was reef", frozenset({"reef"}))
    'reef'
    >>> stray_told("that reading was the old kit"), stray_told("that was the wrong tank")
    (None, None)
    """
    plain = " ".join(fold(text).replace("’", "'").strip(" \t\n!.,;:").split())
    lead = _lead().match(plain) if len(plain) <= LONGEST and "?" not in text else None
    words = [] if lead is None else plain[lead.end() :].split()
    name = [word for word in words if word not in _ways("tank")]
    if not name or len(name) > MOST or not all(word.isalpha() for word in name):
        return None
    said = " ".join(name)
    if {fold(each) for each in tanks} & {said, *(" ".join(words),)}:
        return said
    if set(name) & _ways("never"):
        return None
    return said if len(words) > len(name) or said in _ways("job") else None
