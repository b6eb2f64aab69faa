"""What is planned for a later time beside what is told: ``nitrate 20, testing again friday``.

told = any ( sign | "and" | number ) planned        up to the end of the text
planned = again { light } time { light } | will { word } time
The time is no date of what is told: it is still to come, and nothing of it is put on record.
"""

from __future__ import annotations

import re
from dataclasses import replace
from datetime import UTC, datetime
from functools import cache
from typing import Final

from core.message import doubts
from core.message.fold import fold
from core.message.model import Doubt, Parsed
from core.message.waters import one_of
from core.message.wordfile import patterns, spelt
from core.schedule import is_to_come, kind_of, names_weekday, parse_moment, split_time

FILE: Final = "still_planned.txt"
_SECTIONS: Final = ("again", "will", "light", "and", "named", "planned")
LONGEST: Final = 70
"""A longer clause tells more than what is planned. [characters]"""
_CHORES: Final = frozenset({"test", "change", "feed", "filter"})
"""What may be planned without an amount; a dose or a goal is spoken of elsewhere."""
_ANY: Final = datetime(2026, 3, 2, tzinfo=UTC)
MOST: Final = 8
"""Words of a plan beside its time."""
_PART: Final = re.compile(r"[^\W_]+(?:'[^\W_]+)?")


@cache
def _starts() -> re.Pattern[str]:
    told: dict[str, list[str]] = {section: [] for section in _SECTIONS}
    for section, _language, ways in spelt(FILE, told):
        told[section] += ways
    joint, light = one_of(told["and"]), one_of(told["light"])
    front = rf"(?:[,.;:!\n] ?(?:(?:{joint}) )?|(?<=\w) (?:{joint}) |(?<=\d) )"
    before = rf"(?:(?:{light}) ){{0,2}}"
    return re.compile(
        rf"{front}(?P<told>(?P<will>{one_of(told['will'])})(?!\w)"
        rf"|{before}(?P<again>{one_of(told['again'])})(?!\w)"
        rf"|(?:\d{{1,3}} ?% ?)?(?P<named>{one_of(told['named'])})(?!\w))"
    )


def planned_in(plain: str) -> tuple[int, int, int] | None:
    """Where what is told beside a plan for a later time ends, and where the plan stands; else None.

    Examples
    --------
    >>> planned_in("nitrate 20, testing again friday"), planned_in("nitrate 20 friday")
    ((10, 12, 32), None)
    >>> planned_in("nitrate 10, water change on friday"), planned_in("nitrate 10, wc yesterday")
    ((10, 12, 34), None)
    >>> planned_in("nitrate 20, tested again friday") is None
    True
    """
    if not any(map(str.isdigit, plain)):
        return None
    for found in _starts().finditer(plain):
        start = found.start("told")
        clause = plain[start:].rstrip(" .!\n")
        if len(clause) > LONGEST or any(sign in clause for sign in "?\n"):
            continue
        if found["named"] is not None:
            if _may_come(clause[found.end() - start :]) is not None:
                return found.start(), start, start + len(clause)
            continue
        bare = found["again"] is not None
        rest = clause[found.end() - start :] if bare else clause
        if _is_time(rest.strip(" ,:"), bare=bare):
            return found.start(), start, start + len(clause)
    return None


def _is_time(rest: str, *, bare: bool) -> bool:
    """Whether words hold a time to come, beside light words where `bare`, else a few others."""
    timed = split_time(rest)
    if timed is None or _is_today(timed[1]):
        return False
    beside = patterns(FILE, _SECTIONS)["light"].sub(" ", timed[0]) if bare else timed[0]
    words = _PART.findall(beside)
    if bare:
        return not words
    amount = any(map(str.isdigit, beside)) and "%" not in beside
    return len(words) <= MOST and not amount and kind_of(beside) in _CHORES


def _may_come(rest: str) -> bool | None:
    """Whether a chore by its noun is surely to come, by the words behind it.

    False where its day may be the last as well as the next; None where no such day is told.
    """
    words = patterns(FILE, _SECTIONS)
    timed = split_time(_SHARE.sub(" ", rest).strip(" ,:"))
    if timed is None or _is_today(timed[1]):
        return None
    left = words["light"].sub(" ", words["planned"].sub(" ", timed[0]))
    if _PART.findall(left):
        return None
    sure = words["planned"].search(rest) is not None or is_to_come(timed[1], _ANY, UTC)
    return sure if sure or names_weekday(timed[1].removeprefix("on ")) else None


_SHARE: Final = re.compile(r"\d{1,3} ?%")


def _is_today(when: str) -> bool:
    """Whether words of time are today and no hour or part of it."""
    at = [parse_moment(f"{when} {hour}", _ANY, UTC) for hour in ("3:00", "21:00")]
    return all(isinstance(each, datetime) and each.date() == _ANY.date() for each in at)


def without(text: str, place: tuple[int, int, int], told: Parsed) -> Parsed | None:
    """What is told beside a plan, which is kept as what is still to come; None where nothing is.

    Parameters
    ----------
    text : str
        The message.
    place : tuple of int
        What `planned_in` found in it.
    told : Parsed
        What is told in front of the plan.
    """
    if not (told.values or told.events) or told.question is not None or told.command is not None:
        return None
    _cut, start, end = place
    named = patterns(FILE, _SECTIONS)["named"].search(fold(text[start:end]))
    either = (
        named is not None and not named.start() and not _may_come(text[start:end][named.end() :])
    )
    why = doubts.UNSURE_EVENT if either else doubts.PLANNED
    plan = Doubt(text[start:end], start, end, why)
    return replace(told, doubts=(*told.doubts, plan))
