"""Rules in words for people."""

from __future__ import annotations

from datetime import time, tzinfo

from core.schedule.notation import MONTHS, PLACES, WEEKDAYS
from core.schedule.rules import (
    EVERY_DAY,
    Every,
    Monthly,
    NthWeekday,
    Once,
    Rule,
    Weekly,
    Yearly,
)

_SINGLE = {
    "hours": "every hour",
    "days": "every day",
    "weeks": "every week",
    "months": "every month",
}


def describe(rule: Rule, zone: tzinfo | None = None) -> str:
    """Say a rule in English, to stand after the task it is about.

    Parameters
    ----------
    rule : Rule
        The rule.
    zone : tzinfo or None
        The zone in which a single moment is told; None tells it as it was said.

    Returns
    -------
    str
        Without a capital letter or a full stop. A day from the 29th on says what it means in a
        shorter month.

    Examples
    --------
    >>> describe(Monthly((31,), time(9)))
    'on the 31st of every month at 09:00 (in shorter months on the last day)'
    """
    match rule:
        case Once(at):
            local = at if zone is None else at.astimezone(zone)
            day = (
                f"{WEEKDAYS[local.weekday()].title()} {local.day} {MONTHS[local.month - 1].title()}"
            )
            return f"on {day} {local.year} at {_clock(local.time())}"
        case Every(count, unit, at):
            return _interval(count, unit) + ("" if at is None else f" at {_clock(at)}")
        case Weekly(days, at, every):
            return f"{_weekly(days, every)} at {_clock(at)}"
        case Monthly(days, at, every):
            return _monthly(days, at, every)
        case NthWeekday(nth, weekday, at):
            return (
                f"on the {PLACES[nth]} {WEEKDAYS[weekday].title()} of every month at {_clock(at)}"
            )
        case Yearly(month, of_month, at):
            said = f"every year on {of_month} {MONTHS[month - 1].title()} at {_clock(at)}"
            return f"{said} (in common years on the 28th)" if (month, of_month) == (2, 29) else said


def _interval(count: int, unit: str) -> str:
    if unit == "months" and count % 12 == 0:
        return "every year" if count == 12 else f"every {count // 12} years"
    return _SINGLE[unit] if count == 1 else f"every {count} {unit}"


def _weekly(days: tuple[int, ...], every: int) -> str:
    names = listed([WEEKDAYS[day].title() for day in days])
    if every > 1:
        return f"every {every} weeks on {names}"
    if days == EVERY_DAY:
        return "every day"
    return "every weekday (Monday to Friday)" if days == EVERY_DAY[:5] else f"every {names}"


def _monthly(days: tuple[int, ...], at: time, every: int) -> str:
    months = "month" if every == 1 else f"{every} months"
    named = listed([ordinal(day) for day in days])
    said = f"on the {named} of every {months} at {_clock(at)}"
    return f"{said} (in shorter months on the last day)" if days[-1] > 28 else said


def listed(words: list[str]) -> str:
    """Join words by commas and a last 'and'."""
    return " and ".join(filter(None, (", ".join(words[:-1]), words[-1])))


def ordinal(number: int) -> str:
    """Write 1 as 1st, 22 as 22nd and so on.

    Examples
    --------
    >>> [ordinal(n) for n in (1, 2, 3, 11, 22)]
    ['1st', '2nd', '3rd', '11th', '22nd']
    """
    ending = "th" if number // 10 == 1 else {1: "st", 2: "nd", 3: "rd"}.get(number % 10, "th")
    return f"{number}{ending}"


def _clock(at: time) -> str:
    return at.isoformat(timespec="minutes")
