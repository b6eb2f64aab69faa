"""Rules as text in the one form in which they are stored, and back.

The forms, exactly; each rule has one text, and each text of these forms one rule::

    once 2026-03-04T19:30+01:00
    every 12 hours
    every 7 days [at 19:00]          (days, weeks, months; "every 1 day")
    every monday, thursday at 18:30  (all seven: "every day at 18:30")
    every 2 weeks on sunday at 10:00
    day 1, 15 of every month at 09:00
    day 1 of every 3 months at 09:00
    first sunday of every month at 10:00
    every year on 4 may at 09:00

They are English words in every language of the chat, since they are storage; what people are told
is the chat's.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from datetime import datetime, time

from core.schedule.errors import BadRule, NaiveTime
from core.schedule.rules import (
    EVERY_DAY,
    LAST,
    UNITS,
    Every,
    Monthly,
    NthWeekday,
    Once,
    Rule,
    Unit,
    Weekly,
    Yearly,
)

WEEKDAYS = ("monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday")
MONTHS = (
    "january",
    "february",
    "march",
    "april",
    "may",
    "june",
    "july",
    "august",
    "september",
    "october",
    "november",
    "december",
)
PLACES = {1: "first", 2: "second", 3: "third", 4: "fourth", LAST: "last"}


def to_text(rule: Rule) -> str:
    """Write a rule in its one stored form.

    Examples
    --------
    >>> to_text(Every(7, "days", time(19)))
    'every 7 days at 19:00'
    """
    match rule:
        case Once(at):
            return f"once {_iso(at)}"
        case Every(count, unit, at):
            return f"every {_units(count, unit)}" + (f" at {_clock(at)}" if at else "")
        case Weekly():
            return f"every {_weekly(rule)} at {_clock(rule.at)}"
        case Monthly(days, at, every):
            months = "month" if every == 1 else _units(every, "months")
            return f"day {', '.join(map(str, days))} of every {months} at {_clock(at)}"
        case NthWeekday(nth, day, at):
            return f"{PLACES[nth]} {WEEKDAYS[day]} of every month at {_clock(at)}"
        case Yearly(month, day, at):
            return f"every year on {day} {MONTHS[month - 1]} at {_clock(at)}"


def from_text(text: str) -> Rule:
    """Read a rule from its stored form.

    Raises
    ------
    BadRule
        If the text is not of the form that `to_text` writes.

    Examples
    --------
    >>> from_text("every sunday at 10:00")
    Weekly(days=(6,), at=datetime.time(10, 0), every=1)
    """
    for form, read in _FORMS:
        found = form.fullmatch(text)
        if found is None:
            continue
        try:
            rule = read(found)
        except (ValueError, NaiveTime) as error:
            raise BadRule("text", text) from error
        if to_text(rule) == text:
            return rule
    raise BadRule("text", text)


def _weekly(rule: Weekly) -> str:
    if rule.every > 1:
        return f"{_units(rule.every, 'weeks')} on {_names(rule.days)}"
    return "day" if rule.days == EVERY_DAY else _names(rule.days)


def _names(days: tuple[int, ...]) -> str:
    return ", ".join(WEEKDAYS[day] for day in days)


def _units(count: int, unit: Unit) -> str:
    return f"{count} {unit[:-1] if count == 1 else unit}"


def _clock(at: time) -> str:
    return at.isoformat(timespec="minutes")


def _iso(at: datetime) -> str:
    finest = "minutes" if not at.second and not at.microsecond else "auto"
    return at.isoformat(timespec=finest)


def _read_once(found: re.Match[str]) -> Once:
    return Once(datetime.fromisoformat(found["iso"]))


def _read_every(found: re.Match[str]) -> Every:
    unit = next(each for each in UNITS if each[:-1] == found["unit"])
    return Every(int(found["count"]), unit, _read_clock(found["at"]) if found["at"] else None)


def _read_weekly(found: re.Match[str]) -> Weekly:
    names = found["days"]
    days = EVERY_DAY if names == "day" else tuple(map(WEEKDAYS.index, names.split(", ")))
    return Weekly(days, _read_clock(found["at"]), int(found["every"] or 1))


def _read_monthly(found: re.Match[str]) -> Monthly:
    days = tuple(map(int, found["days"].split(", ")))
    return Monthly(days, _read_clock(found["at"]), int(found["every"] or 1))


def _read_nth(found: re.Match[str]) -> NthWeekday:
    nth = next(each for each, name in PLACES.items() if name == found["nth"])
    return NthWeekday(nth, WEEKDAYS.index(found["day"]), _read_clock(found["at"]))


def _read_yearly(found: re.Match[str]) -> Yearly:
    month = MONTHS.index(found["month"]) + 1
    return Yearly(month, int(found["day"]), _read_clock(found["at"]))


def _read_clock(text: str) -> time:
    return time.fromisoformat(text)


_AT = r"at (?P<at>\d\d:\d\d)"
_NUMBER = r"[1-9]\d{0,4}"
_DAYS = "|".join(WEEKDAYS)
_FORMS: tuple[tuple[re.Pattern[str], Callable[[re.Match[str]], Rule]], ...] = (
    (re.compile(r"once (?P<iso>\S+)", re.ASCII), _read_once),
    (
        re.compile(
            rf"every (?P<count>{_NUMBER}) (?P<unit>hour|day|week|month)s?(?: {_AT})?", re.ASCII
        ),
        _read_every,
    ),
    (
        re.compile(
            rf"every (?:(?P<every>{_NUMBER}) weeks on )?"
            rf"(?P<days>day|(?:{_DAYS})(?:, (?:{_DAYS}))*) {_AT}",
            re.ASCII,
        ),
        _read_weekly,
    ),
    (
        re.compile(
            rf"day (?P<days>\d\d?(?:, \d\d?)*) of every (?:(?P<every>{_NUMBER}) )?months? {_AT}",
            re.ASCII,
        ),
        _read_monthly,
    ),
    (
        re.compile(
            rf"(?P<nth>{'|'.join(PLACES.values())}) (?P<day>{_DAYS}) of every month {_AT}",
            re.ASCII,
        ),
        _read_nth,
    ),
    (
        re.compile(rf"every year on (?P<day>\d\d?) (?P<month>{'|'.join(MONTHS)}) {_AT}", re.ASCII),
        _read_yearly,
    ),
)


def listed(words: list[str]) -> str:
    """Join words by commas and a last 'and'."""
    return " and ".join(filter(None, (", ".join(words[:-1]), words[-1])))
