"""Recurrence rules as values: what is due when, without a zone and without a clock.

A rule that *counts* (`Every`) counts from an anchor: when it was made, or when its task was last
done. A rule that *names its days* (`Weekly`, `Monthly`, `NthWeekday`, `Yearly`) keeps to them,
whenever the task is done. `core.schedule.recurrence` says when a rule is due, `notation` how it
is stored.
"""

from __future__ import annotations

from calendar import monthrange
from dataclasses import dataclass
from datetime import MAXYEAR, UTC, date, datetime, time, timezone
from typing import Literal, TypeAlias

from core.schedule.errors import BadRule, NaiveTime

Unit = Literal["hours", "days", "weeks", "months"]
UNITS: tuple[Unit, ...] = ("hours", "days", "weeks", "months")

LONGEST: dict[Unit, int] = {"hours": 8784, "days": 3653, "weeks": 522, "months": 120}
"""The longest interval in each unit: ten years, and a year for one that is told in hours."""

EVERY_DAY = (0, 1, 2, 3, 4, 5, 6)
LAST = -1
"""The place of the last weekday of a month in `NthWeekday`."""


def aware(moment: datetime, what: str) -> datetime:
    """Give the moment in UTC.

    Raises
    ------
    NaiveTime
        If it has no zone.
    """
    if moment.utcoffset() is None:
        raise NaiveTime(what)
    return moment.astimezone(UTC)


@dataclass(frozen=True, slots=True)
class Once:
    """Due at one moment and never again; kept with the offset that it was said in.

    Attributes
    ----------
    at : datetime
        Aware. Its zone becomes a fixed offset, for a moment does not move when a law does.
    """

    at: datetime

    def __post_init__(self) -> None:
        offset = self.at.utcoffset()
        if offset is None:
            raise NaiveTime("at")
        fixed = self.at.replace(tzinfo=timezone(offset), fold=0)
        object.__setattr__(self, "at", fixed)


@dataclass(frozen=True, slots=True)
class Every:
    """Due each `count` units after the anchor, for the first time one whole interval after it.

    Attributes
    ----------
    count : int
        How many units lie between; 1 up to `LONGEST`.
    unit : str
        hours (elapsed time, whatever the clocks do), days, weeks or months (local days).
    at : time or None
        Local time of day; None keeps the anchor's own. Always None for hours.
    """

    count: int
    unit: Unit
    at: time | None = None

    def __post_init__(self) -> None:
        if self.unit not in UNITS:
            raise BadRule("unit", self.unit)
        if not 1 <= self.count <= LONGEST[self.unit]:
            raise BadRule("count", self.count)
        if self.unit == "hours" and self.at is not None:
            raise BadRule("clock time of an interval in hours", self.at)
        _check_clock(self.at)


@dataclass(frozen=True, slots=True)
class Weekly:
    """Due on fixed days of the week.

    Attributes
    ----------
    days : tuple of int
        0 is Monday, 6 is Sunday; kept sorted, each once.
    at : time
        Local time of day.
    every : int
        1 is each week, 2 each second week, counted from the week of the first one after the
        anchor.
    """

    days: tuple[int, ...]
    at: time
    every: int = 1

    def __post_init__(self) -> None:
        object.__setattr__(self, "days", _sorted_days(self.days, 0, 6))
        if not 1 <= self.every <= LONGEST["weeks"]:
            raise BadRule("every", self.every)
        _check_clock(self.at)


@dataclass(frozen=True, slots=True)
class Monthly:
    """Due on fixed days of the month; 29 to 31 mean the last day of a shorter month.

    Attributes
    ----------
    days : tuple of int
        1 to 31; kept sorted, each once.
    at : time
        Local time of day.
    every : int
        1 is each month, 3 each third, counted from the month of the first one after the anchor.
    """

    days: tuple[int, ...]
    at: time
    every: int = 1

    def __post_init__(self) -> None:
        object.__setattr__(self, "days", _sorted_days(self.days, 1, 31))
        if not 1 <= self.every <= LONGEST["months"]:
            raise BadRule("every", self.every)
        _check_clock(self.at)


@dataclass(frozen=True, slots=True)
class NthWeekday:
    """Due on the first, second, third, fourth or last such weekday of every month.

    Attributes
    ----------
    nth : int
        1 to 4, or `LAST`.
    day : int
        0 is Monday, 6 is Sunday.
    at : time
        Local time of day.
    """

    nth: int
    day: int
    at: time

    def __post_init__(self) -> None:
        if self.nth not in (1, 2, 3, 4, LAST):
            raise BadRule("nth", self.nth)
        _sorted_days((self.day,), 0, 6)
        _check_clock(self.at)


@dataclass(frozen=True, slots=True)
class Yearly:
    """Due on one day of every year; 29 February means the 28th in a common year.

    Attributes
    ----------
    month, day : int
        1 to 12, and a day that the month has in a leap year.
    at : time
        Local time of day.
    """

    month: int
    day: int
    at: time

    def __post_init__(self) -> None:
        if not 1 <= self.month <= 12:
            raise BadRule("month", self.month)
        if not 1 <= self.day <= days_in_month(2024, self.month):
            raise BadRule("day", self.day)
        _check_clock(self.at)


Rule: TypeAlias = Once | Every | Weekly | Monthly | NthWeekday | Yearly


def days_in_month(year: int, month: int) -> int:
    """Count the days of a month of the Gregorian calendar."""
    return monthrange(year, month)[1]


def month_number(day: date) -> int:
    """Months since the year 0, so that months can be counted."""
    return day.year * 12 + day.month - 1


def day_of_month(number: int, day: int) -> date:
    """The day of a month told by its number, or the month's last day where it is shorter.

    Raises
    ------
    OverflowError
        Past the end of the calendar, the year 9999.
    """
    year, month = divmod(number, 12)
    if year > MAXYEAR:
        raise OverflowError(year)
    return date(year, month + 1, min(day, days_in_month(year, month + 1)))


def _sorted_days(days: tuple[int, ...], low: int, high: int) -> tuple[int, ...]:
    if not days or not all(low <= day <= high for day in days):
        raise BadRule("days", days)
    return tuple(sorted(set(days)))


def _check_clock(at: time | None) -> None:
    """Refuse a time of day with a zone, or finer than a minute: neither can be said or stored."""
    if at is not None and (at.tzinfo is not None or at.second or at.microsecond or at.fold):
        raise BadRule("clock time", at)
