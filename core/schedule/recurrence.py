"""When a rule is due next.

Daylight saving follows `core.schedule.localtime`: a time of day in a gap becomes the first valid
minute after it, one that comes twice is due at the first. Beyond that, for rules in local days:

- **never twice a local day**: each local date is due at most once; what a gap carries to 00:00 of
  the next date stands for the date that it comes from, as 24:00 would;
- **a date that a zone never had** (Apia, 30 December 2011) is made up for at the first minute
  after it, unless the rule is due on that next date anyway;
- **strictly increasing**: each answer lies after `after`, so clocks that are set back repeat
  nothing that was already given;
- **a jump, never a walk**: the work does not depend on how many times were missed;
- intervals in hours are elapsed time and see no clock at all.
"""

from __future__ import annotations

from collections.abc import Callable
from datetime import UTC, date, datetime, time, timedelta, tzinfo
from functools import partial

from core.schedule.localtime import is_skipped, moment_at
from core.schedule.rules import (
    LAST,
    Every,
    Monthly,
    NthWeekday,
    Once,
    Rule,
    Weekly,
    Yearly,
    aware,
    day_of_month,
    month_number,
)

FirstDay = Callable[[date], date]
"""Gives the first day of a rule on or after a date; OverflowError past the calendar's end."""

_DAY = timedelta(days=1)
_HOUR = timedelta(hours=1)
_CALENDAR_ENDS = datetime(9990, 1, 1, tzinfo=UTC)


def next_after(
    rule: Rule, after: datetime, zone: tzinfo, anchor: datetime | None = None
) -> datetime | None:
    """Tell when a rule is due next.

    Parameters
    ----------
    rule : Rule
        The rule.
    after : datetime
        Aware; the answer lies strictly after it.
    zone : tzinfo
        The zone whose days and clocks the rule means.
    anchor : datetime or None
        Aware; what a counting rule counts from: when it was made, or when its task was last done.
        Counting goes on through occurrences that nobody answered, so the anchor stays the same
        for them. None: `after`.

    Returns
    -------
    datetime or None
        In UTC; None where the rule is never due again.

    Raises
    ------
    NaiveTime
        If `after` or `anchor` has no zone.

    Examples
    --------
    >>> made = datetime(2026, 3, 1, 10, tzinfo=UTC)
    >>> next_after(Every(7, "days", time(19)), made, UTC, made).isoformat()
    '2026-03-08T19:00:00+00:00'
    >>> long_after = datetime(2026, 12, 1, tzinfo=UTC)
    >>> next_after(Every(7, "days", time(19)), long_after, UTC, made).isoformat()
    '2026-12-06T19:00:00+00:00'
    """
    after = aware(after, "after")
    anchor = after if anchor is None else aware(anchor, "anchor")
    if isinstance(rule, Once):
        moment = rule.at.astimezone(UTC)
        return moment if moment > after else None
    if max(after, anchor) >= _CALENDAR_ENDS:
        return None
    if isinstance(rule, Every) and rule.unit == "hours":
        return _elapsed(rule.count * _HOUR, after, anchor)
    at, first_day = _days_of(rule, zone, anchor)
    return _first_moment(first_day, at, after, zone)


def _elapsed(step: timedelta, after: datetime, anchor: datetime) -> datetime:
    """The first whole number of steps from the anchor, at least one, that lies after `after`."""
    return anchor + max(1, (after - anchor) // step + 1) * step


def _first_moment(first_day: FirstDay, at: time, after: datetime, zone: tzinfo) -> datetime | None:
    """The first moment of a rule after `after`.

    The search starts two dates early, since a gap or a skipped date can carry an occurrence into
    a later date; each date from the day after tomorrow on lies after `after`, so that it ends
    within a handful of steps.
    """
    day = after.astimezone(zone).date() - 2 * _DAY
    try:
        while True:
            day = first_day(day)
            moment = moment_at(day, at, zone)
            if moment > after and not _gives_way(day, moment, first_day, zone):
                return moment
            day += _DAY
    except OverflowError:
        return None


def _gives_way(day: date, moment: datetime, first_day: FirstDay, zone: tzinfo) -> bool:
    """True where a date that never was is followed by one on which the rule is due anyway."""
    landed = moment.astimezone(zone).date()
    return landed != day and is_skipped(day, zone) and first_day(landed) == landed


def _days_of(
    rule: Every | Weekly | Monthly | NthWeekday | Yearly, zone: tzinfo, anchor: datetime
) -> tuple[time, FirstDay]:
    """The local time of day of a rule, and the function that finds its days."""
    start = anchor.astimezone(zone)
    match rule:
        case Every(count, "months", at):
            return at or start.time(), partial(_counted_month_day, start.date(), count)
        case Every(count, unit, at):
            step = count * (7 if unit == "weeks" else 1)
            return at or start.time(), partial(_counted_day, start.date(), step)
        case Weekly():
            return rule.at, _weekly_days(rule, zone, anchor)
        case Monthly():
            return rule.at, _monthly_days(rule, zone, anchor)
        case NthWeekday():
            return rule.at, partial(_nth_weekday, rule.nth, rule.day)
        case Yearly():
            return rule.at, partial(_yearly_day, rule.month, rule.day)


def _counted_day(start: date, step: int, day: date) -> date:
    """The first date a whole number of steps, at least one, after `start`."""
    steps = max(1, -((start - day).days // step))
    return start + timedelta(days=steps * step)


def _counted_month_day(start: date, step: int, day: date) -> date:
    """The same in months; each is clamped from the start's own day, so that none drifts."""
    months = month_number(day) - month_number(start)
    steps = max(1, months // step)
    found = day_of_month(month_number(start) + steps * step, start.day)
    return (
        found if found >= day else day_of_month(month_number(start) + (steps + 1) * step, start.day)
    )


def _weekly_days(rule: Weekly, zone: tzinfo, anchor: datetime) -> FirstDay:
    each = partial(_weekday, rule.days)
    if rule.every == 1:
        return each
    monday = _first_date(each, rule.at, anchor, zone)
    monday -= timedelta(days=monday.weekday())
    return partial(_weekday_of_nth_week, rule.days, rule.every, monday)


def _weekday(days: tuple[int, ...], day: date) -> date:
    return day + timedelta(days=min((each - day.weekday()) % 7 for each in days))


def _weekday_of_nth_week(days: tuple[int, ...], every: int, monday: date, day: date) -> date:
    """The first of the days on or after `day` in a week that is a multiple of `every` away."""
    found = _weekday(days, max(day, monday))
    weeks = (found - monday).days // 7
    wait = -weeks % every
    if wait == 0:
        return found
    return _weekday(days, monday + timedelta(weeks=weeks + wait))


def _monthly_days(rule: Monthly, zone: tzinfo, anchor: datetime) -> FirstDay:
    each = partial(_month_day, rule.days, 1, 0)
    if rule.every == 1:
        return each
    first = month_number(_first_date(each, rule.at, anchor, zone))
    return partial(_month_day, rule.days, rule.every, first)


def _month_day(days: tuple[int, ...], every: int, first: int, day: date) -> date:
    """The first of the month days on or after `day`, in a month a multiple of `every` away."""
    month = max(month_number(day), first)
    month += (first - month) % every
    for each in days:
        found = day_of_month(month, each)
        if found >= day:
            return found
    return day_of_month(month + every, days[0])


def _nth_weekday(nth: int, weekday: int, day: date) -> date:
    month = month_number(day)
    found = _nth_in_month(month, nth, weekday)
    return found if found >= day else _nth_in_month(month + 1, nth, weekday)


def _nth_in_month(month: int, nth: int, weekday: int) -> date:
    if nth == LAST:
        end = day_of_month(month, 31)
        return end - timedelta(days=(end.weekday() - weekday) % 7)
    return _weekday((weekday,), day_of_month(month, 1)) + timedelta(weeks=nth - 1)


def _yearly_day(month: int, of_month: int, day: date) -> date:
    found = day_of_month(day.year * 12 + month - 1, of_month)
    return found if found >= day else day_of_month((day.year + 1) * 12 + month - 1, of_month)


def _first_date(first_day: FirstDay, at: time, anchor: datetime, zone: tzinfo) -> date:
    """The local date of a rule's first occurrence after the anchor."""
    day = first_day(anchor.astimezone(zone).date())
    return day if moment_at(day, at, zone) > anchor else first_day(day + _DAY)
