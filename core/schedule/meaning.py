"""From the pieces that words of time say to a rule, or to why there is none."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import UTC, date, datetime, time, timedelta, tzinfo
from typing import TypeVar

from core.schedule.localtime import moment_at
from core.schedule.pieces import (
    Clock,
    Dated,
    DayPart,
    End,
    Exact,
    Except,
    Flaw,
    Interval,
    MonthDays,
    Near,
    Piece,
    Span,
    Start,
    Weekdays,
)
from core.schedule.words.vocabulary import PARTS

P = TypeVar("P")
DAY_BEGINS = time(9)
"""When a named day without a clock time is meant; ours, no source."""
TEN_YEARS = timedelta(days=3653)


class Unclear(Exception):
    """Pieces that do not go together; caught where the pieces came from, never shown."""

    def __init__(self, flaw: Flaw) -> None:
        self.flaw = flaw
        super().__init__(flaw.reason)


@dataclass(slots=True)
class Said:
    """The pieces of one text by what they say; at most one of each, or they do not go together."""

    clock: Clock | None = None
    part: DayPart | None = None
    interval: Interval | None = None
    weekdays: Weekdays | None = None
    month_days: MonthDays | None = None
    dated: Dated | None = None
    near: Near | None = None
    span: Span | None = None
    exact: Exact | None = None
    without: tuple[int, ...] = ()
    start: Said | None = None

    @property
    def repeats(self) -> bool:
        """True where more than one time is meant."""
        named = (self.weekdays, self.month_days, self.dated)
        several = self.weekdays is not None and len(self.weekdays.days) > 1
        listed = self.month_days is not None and len(self.month_days.days) > 1
        return bool(
            self.interval
            or several
            or listed
            or (self.part and self.part.repeats)
            or any(each and each.repeats for each in named)
        )

    @property
    def names_day(self) -> bool:
        """True where a day is said, or how far off it is."""
        return bool(
            self.weekdays or self.month_days or self.dated or self.near or self.span or self.exact
        )

    @property
    def needs_zone(self) -> bool:
        """True where a time of day was said."""
        naive = self.exact is not None and self.exact.at.utcoffset() is None
        start = self.start is not None and self.start.needs_zone
        return bool(self.clock or self.part or naive or start)


def gather(pieces: tuple[Piece, ...]) -> Said:
    """Sort pieces by what they say.

    Raises
    ------
    Unclear
        At a flaw, or where two of a kind do not go together.
    """
    said = Said()
    into = said
    for piece in pieces:
        if isinstance(piece, Flaw):
            raise Unclear(piece)
        if isinstance(piece, End):
            raise Unclear(Flaw("unclear"))
        if isinstance(piece, Start):
            into = said.start = _only(said.start, Said())
        elif into is not said and isinstance(piece, Interval):
            said.interval = _only(said.interval, piece)
        else:
            _put(into, piece)
    return said


def _put(said: Said, piece: Piece) -> None:
    match piece:
        case Clock():
            said.clock = _only(said.clock, piece)
        case DayPart():
            said.part = _only(said.part, piece)
        case Interval():
            said.interval = _only(said.interval, piece)
        case Weekdays():
            said.weekdays = _joined(said.weekdays, piece)
        case MonthDays():
            said.month_days = _only(said.month_days, piece)
        case Dated():
            said.dated = _only(said.dated, piece)
        case Near():
            said.near = _only(said.near, piece)
        case Span():
            said.span = _only(said.span, piece)
        case Exact():
            said.exact = _only(said.exact, piece)
        case Except(days):
            said.without += days


def _only(known: P | None, piece: P) -> P:
    if known is not None and known != piece:
        raise Unclear(Flaw("unclear"))
    return piece


def _joined(known: Weekdays | None, piece: Weekdays) -> Weekdays:
    """Days of the week said in two places are days of one rhythm."""
    if known is None:
        return piece
    if known.nth or piece.nth or known.every != piece.every:
        raise Unclear(Flaw("unclear"))
    repeats = known.repeats or piece.repeats
    return Weekdays(known.days + piece.days, repeats, every=known.every)


def time_of_day(said: Said) -> time | None:
    """The time of day that was said; None where there is none.

    An hour without minutes goes with the part of the day beside it: 8 in the evening is 20:00,
    and 2 at night is 02:00.
    """
    if said.clock is None:
        return None if said.part is None else time(*PARTS[said.part.name])
    hour, minute = said.clock.hour, said.clock.minute
    if said.part is None or said.part.name == "morning":
        return time(hour, minute)
    if said.part.name == "midnight":
        return time(hour % 12, minute)
    past_midnight = said.part.name == "night" and hour < 6
    if said.clock.bare and hour < 12 and not past_midnight:
        hour += 12
    return time(hour, minute)


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
    year, month = divmod(day.year * 12 + day.month - 1 + months, 12)
    for shorter in range(4):
        try:
            return date(year, month + 1, day.day - shorter)
        except ValueError:
            if shorter == 3:
                raise
    raise AssertionError


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
