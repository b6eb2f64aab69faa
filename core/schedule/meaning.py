"""From what was said to the one moment that is meant."""

from __future__ import annotations

from datetime import UTC, date, datetime, time, timedelta, tzinfo

from core.schedule.localtime import moment_at
from core.schedule.notation import PLACES, WEEKDAYS
from core.schedule.pieces import Clock, Dated, Flaw, MonthDays, Near, Span, Weekdays
from core.schedule.rules import day_of_month, month_number
from core.schedule.said import Said, Unclear, time_of_day
from core.schedule.words.vocabulary import PARTS

DAY_BEGINS = time(9)
"""When a named day without a clock time is meant; ours, no source."""
NIGHT_ENDS = 6
"""An hour before this is of the night that the evening goes on into; ours, no source. [h]"""
TEN_YEARS = timedelta(days=3653)


def single_moment(said: Said, now: datetime, zone: tzinfo) -> datetime:
    """The one moment to come that is meant, in UTC.

    Raises
    ------
    Unclear
        Where it is over, too far off, or not one moment.
    """
    if said.repeats or said.start is not None:
        raise Unclear(Flaw("unclear"))
    moment = _moment(said, now, zone)
    if moment <= now:
        raise Unclear(Flaw("past"))
    if moment > now + TEN_YEARS:
        raise Unclear(Flaw("too_far"))
    return moment


def _moment(said: Said, now: datetime, zone: tzinfo) -> datetime:
    if said.exact is not None:
        return _exact(said, zone)
    if said.span is not None and said.weekdays is None:
        return _after_span(said, said.span, now, zone)
    if not said.names_day:
        return _clock_alone(said, now, zone)
    at = time_of_day(said)
    today = now.astimezone(zone).date()
    if said.near == Near(0) and said.clock is not None and at is not None:
        late = said.part is not None and said.part.name in ("evening", "night", "midnight")
        if late and at.hour < NIGHT_ENDS and moment_at(today, at, zone) <= now:
            return moment_at(today + timedelta(days=1), at, zone)
        return _clock_today(said.clock, at, today, now, zone)
    if said.near == Near(0):
        return _part_of_today(said.part.name if said.part else "evening", now, zone)
    return _on_day(said, today, at or DAY_BEGINS, now, zone)


def _exact(said: Said, zone: tzinfo) -> datetime:
    at = said.exact.at if said.exact else None
    if at is None or said.clock or said.near or said.dated or said.span:
        raise Unclear(Flaw("unclear"))
    if at.utcoffset() is None:
        return moment_at(at.date(), at.time(), zone)
    return at.astimezone(UTC)


def _after_span(said: Said, span: Span, now: datetime, zone: tzinfo) -> datetime:
    """Elapsed time from now; days and months by the calendar, at the same time of day."""
    at = time_of_day(said)
    if said.near or said.dated or said.month_days or (span.elapsed and at):
        raise Unclear(Flaw("unclear"))
    if not span.days and not span.months:
        return now + span.elapsed
    local = now.astimezone(zone)
    day = months_later(local.date(), span.months) + timedelta(days=span.days)
    return moment_at(day, at or local.time(), zone) + span.elapsed


def months_later(day: date, months: int) -> date:
    """The same day so many months later, or the last day of a shorter month."""
    return day_of_month(month_number(day) + months, day.day)


def _clock_alone(said: Said, now: datetime, zone: tzinfo) -> datetime:
    """The next time that the clocks show this; an hour that may be either half is asked back."""
    at = time_of_day(said)
    if at is None:
        raise Unclear(Flaw("unclear"))
    today = now.astimezone(zone).date()
    moment = moment_at(today, at, zone)
    if moment > now:
        return moment
    if said.clock is not None and said.clock.bare and said.part is None and at.hour < 12:
        later = at.replace(hour=at.hour + 12)
        if moment_at(today, later, zone) > now:
            options = (f"at {later:%H:%M}", f"tomorrow at {at:%H:%M}")
            raise Unclear(Flaw("ambiguous", options))
    return moment_at(today + timedelta(days=1), at, zone)


def _clock_today(clock: Clock, at: time, today: date, now: datetime, zone: tzinfo) -> datetime:
    """The time of day today; where it is over, the other half of the day or tomorrow is offered."""
    moment = moment_at(today, at, zone)
    if moment > now:
        return moment
    options = [f"tomorrow at {at:%H:%M}"]
    later = at.replace(hour=at.hour % 12 + 12)
    if clock.bare and moment_at(today, later, zone) > now:
        options.insert(0, f"today at {later:%H:%M}")
    raise Unclear(Flaw("past", tuple(options)))


def _part_of_today(name: str, now: datetime, zone: tzinfo) -> datetime:
    """A part of today; an evening that has begun means an hour from now."""
    moment = moment_at(now.astimezone(zone).date(), time(*PARTS[name]), zone)
    if name in ("evening", "night") and moment <= now:
        return now + timedelta(hours=1)
    if name == "midnight":
        return moment_at(now.astimezone(zone).date() + timedelta(days=1), time(), zone)
    return moment


def _on_day(said: Said, today: date, at: time, now: datetime, zone: tzinfo) -> datetime:
    """The time of day on the day that was said."""
    if sum(map(bool, (said.near, said.dated, said.month_days))) > 1:
        raise Unclear(Flaw("unclear"))
    if said.near is not None:
        return _checked(said, today + timedelta(days=said.near.days), at, zone)
    if said.dated is not None:
        return _checked(said, _date_to_come(said.dated, today), at, zone)
    if said.month_days is not None:
        return _checked(said, _month_day_to_come(said.month_days, today, at, now, zone), at, zone)
    weekdays = said.weekdays
    if weekdays is None:
        raise Unclear(Flaw("unclear"))
    if weekdays.nth is not None:
        rhythm = f"{PLACES[weekdays.nth]} {WEEKDAYS[weekdays.days[0]]} of every month"
        raise Unclear(Flaw("ambiguous", (f"{rhythm} at {at:%H:%M}",)))
    return moment_at(_weekday_to_come(weekdays, said.span, today, at, now, zone), at, zone)


def _checked(said: Said, day: date, at: time, zone: tzinfo) -> datetime:
    """The moment, if the day is the weekday that was said beside it."""
    if said.weekdays is not None and day.weekday() not in said.weekdays.days:
        raise Unclear(Flaw("unclear"))
    return moment_at(day, at, zone)


def _date_to_come(dated: Dated, today: date) -> date:
    """The date; without a year the first from today on that the calendar has."""
    if dated.year is not None:
        return date(dated.year, dated.month, dated.day)
    for year in range(today.year, today.year + 9):
        try:
            day = date(year, dated.month, dated.day)
        except ValueError:
            continue
        if day >= today:
            return day
    raise Unclear(Flaw("impossible"))


def _month_day_to_come(
    named: MonthDays, today: date, at: time, now: datetime, zone: tzinfo
) -> date:
    first = today.replace(day=1)
    wanted = timedelta(days=named.days[0] - 1)
    for months in range(1 if named.next_month else 0, 3):
        month = months_later(first, months)
        day = min(month + wanted, months_later(month, 1) - timedelta(days=1))
        if moment_at(day, at, zone) > now:
            return day
    raise Unclear(Flaw("unclear"))


def _weekday_to_come(
    named: Weekdays, span: Span | None, today: date, at: time, now: datetime, zone: tzinfo
) -> date:
    """The next such day, or the one in the week that a span leads to ("monday next week")."""
    if span is not None:
        week = months_later(today, span.months) + timedelta(days=span.days)
        return week + timedelta(days=named.days[0] - week.weekday())
    ahead = (named.days[0] - today.weekday()) % 7
    day = today + timedelta(days=ahead)
    over = named.later or moment_at(day, at, zone) <= now
    return day + timedelta(days=7) if ahead == 0 and over else day
