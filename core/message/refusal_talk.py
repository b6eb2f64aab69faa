"""``why won't you``, ``so do nothing??``, ``when can i``: what is said after no amount was given.

refusal_talk = { before } ( why | instead | when | unwilling | less )   and nothing else
put in       = { before } { anyway } what tells that it went in { anyway }
"""

from __future__ import annotations

import re
from functools import cache
from typing import Final, Literal

from core.message.fold import fold
from core.message.plan_said import said_of_plan
from core.message.plan_words import Telling, telling
from core.message.waters import one_of
from core.message.wordfile import spelt

Reaction = Literal["why", "instead", "when", "unwilling", "less"]
_REACTIONS: Final[tuple[Reaction, ...]] = ("unwilling", "when", "instead", "why", "less")
_SECTIONS: Final = {"before", "anyway", "done", *_REACTIONS}
LONGEST: Final = 80
_ENDS: Final = " \t\n.!?¿¡,;:…"


@cache
def _patterns() -> tuple[re.Pattern[str], dict[Reaction, re.Pattern[str]]]:
    """What may stand before, and the pattern of each reaction."""
    ways: dict[str, list[str]] = {}
    for section, _language, found in spelt("refusal_talk.txt", _SECTIONS):
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
    >>> said("half dose ok?"), said("just a little then"), said("half of the water ok?")
    ('less', 'less', None)
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


_IN: Final[frozenset[Telling]] = frozenset(
    {"gave_it", "gave_one", "gave_all", "gave_half", "gave_double", "gave_two"}
)


@cache
def _done() -> frozenset[str]:
    told = spelt("refusal_talk.txt", _SECTIONS)
    return frozenset(way for section, _language, ways in told if section == "done" for way in ways)


def only_done(text: str) -> bool:
    """Whether a text tells that something was done, which may be what was advised.

    Examples
    --------
    >>> only_done("ok did that"), only_done("did it anyway"), only_done("its in")
    (True, False, False)
    """
    rest = fold(text).strip(_ENDS)
    while rest not in _done():
        found = _patterns()[0].match(rest)
        if found is None or found.end() == len(rest):
            return False
        rest = rest[found.end() :]
    return True


@cache
def _anyway() -> re.Pattern[str]:
    """What tells beside a deed that it was done all the same."""
    told = spelt("refusal_talk.txt", _SECTIONS)
    ways = one_of(way for section, _language, found in told if section == "anyway" for way in found)
    return re.compile(rf"(?<!\w)(?:{ways})(?!\w)[\s,]*")


def put_in(text: str) -> Telling | None:
    """How much is told to be in of what is not named; None where more or something else is told.

    Examples
    --------
    >>> put_in("too late, its in"), put_in("ok but i put it all in anyway"), put_in("already in")
    ('gave_it', 'gave_all', 'gave_it')
    >>> put_in("is it in?"), put_in("too late"), put_in("i put in 3 g"), put_in("in")
    (None, None, None, None)
    """
    plain = fold(text).strip(_ENDS)
    if "?" in text or len(plain) > LONGEST:
        return None
    whole = telling(plain)
    if whole is not None and whole.meaning == "not_given":
        return None  # nie reingetan, where nie alone is a Polish no
    rests, before = [plain], _patterns()[0]
    while (found := before.match(rests[-1])) is not None and found.end() < len(rests[-1]):
        rests.append(rests[-1][found.end() :])
    for rest in [each for told in rests for each in (told, _anyway().sub("", told).strip(_ENDS))]:
        heard = telling(rest)
        if heard is not None and heard.meaning in _IN and not heard.amounts.of_dose:
            return heard.meaning
        said_so = said_of_plan(rest)
        if rest != plain and said_so is not None and {"inside"} == said_so.classes:
            return "gave_it"  # already in
    return None
