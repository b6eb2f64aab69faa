"""``why won't you``, ``so do nothing??``, ``when can i``: what is said after no amount was given.

refusal_talk = { before } ( why | instead | when | unwilling )   and nothing else
"""

from __future__ import annotations

import re
from functools import cache
from typing import Final, Literal

from core.message.fold import fold
from core.message.wordfile import spelt

Reaction = Literal["why", "instead", "when", "unwilling"]
_REACTIONS: Final[tuple[Reaction, ...]] = ("unwilling", "when", "instead", "why")
LONGEST: Final = 80
_ENDS: Final = " \t\n.!?¿¡,;:…"


@cache
def _patterns() -> tuple[re.Pattern[str], dict[Reaction, re.Pattern[str]]]:
    """What may stand before, and the pattern of each reaction."""
    ways: dict[str, list[str]] = {}
    for section, _language, found in spelt("refusal_talk.txt", {"before", *_REACTIONS}):
        ways.setdefault(section, []).extend(found)
    listed = {
        section: "|".join(_as_pattern(way) for way in sorted(found, key=len, reverse=True))
        for section, found in ways.items()
    }
    before = re.compile(rf"(?:{listed['before']})(?!\w)[ ,]*")
    return before, {each: re.compile(listed[each]) for each in _REACTIONS}


def _as_pattern(way: str) -> str:
    return re.escape(way).replace(r"\ \*", r"[ ,].{1,60}")


def said(text: str) -> Reaction | None:
    """How a keeper reacts to a refusal; None where the message says something else.

    Examples
    --------
    >>> said("ok but why can't i"), said("so do nothing??"), said("wann kann ich dosieren?")
    ('why', 'instead', 'when')
    >>> said("no i won't change water, last time fish died"), said("why is my kh low")
    ('unwilling', None)
    """
    plain = fold(text).strip(_ENDS)
    if len(plain) > LONGEST:
        return None
    before, reactions = _patterns()
    rests = [plain]
    while (found := before.match(rests[-1])) is not None and found.end() < len(rests[-1]):
        rests.append(rests[-1][found.end() :])
    return next(
        (each for rest in rests for each in _REACTIONS if reactions[each].fullmatch(rest)), None
    )
