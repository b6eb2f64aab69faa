"""What the pieces of one text say together, sorted by kind."""

from __future__ import annotations

from dataclasses import dataclass, replace
from datetime import time
from typing import TypeVar

from core.errors import CoreError
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


class Unclear(CoreError):
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
    def counts_days(self) -> bool:
        """True where how often is told in days or more, and neither a day nor an hour of it."""
        if self.interval is None or self.interval.unit == "hours":
            return False
        return not (self.names_day or self.clock or self.part or self.start or self.without)

    @property
    def needs_zone(self) -> bool:
        """True where a time of day was said."""
        naive = self.exact is not None and self.exact.at.utcoffset() is None
        start = self.start is not None and self.start.needs_zone
        return bool(self.clock or self.part or naive or start)

    def at_its_days(self, *, repeats: bool) -> Said:
        """The same; mornings and nothing else, of what repeats already, is only its time of day."""
        days = self.interval or self.weekdays or self.month_days or self.dated or self.without
        if not repeats or days or self.part is None or not self.part.repeats:
            return self
        return replace(self, part=replace(self.part, repeats=False))

    def changed(self, anew: Said) -> Said:
        """What was said with what is said anew; a named day keeps the rhythm that it had."""
        anew = anew.at_its_days(repeats=self.repeats)
        timed = anew if anew.clock or anew.part or anew.exact else self
        if not (anew.repeats or anew.names_day or anew.without or anew.start):
            return replace(self, clock=timed.clock, part=timed.part)
        told = replace(anew, clock=timed.clock, part=timed.part)
        if anew.repeats:
            weekly = anew.interval is not None and anew.interval.unit == "weeks"
            days = self.weekdays if weekly and anew.weekdays is None else anew.weekdays
            if anew.counts_days and not self.repeats and self.names_day and days is None:
                told = replace(told, start=replace(self, clock=None, part=None))
            return replace(told, weekdays=days)
        if self.repeats and anew.weekdays is not None:
            told = replace(told, weekdays=replace(anew.weekdays, repeats=True))
        if self.repeats and anew.month_days is not None:
            told = replace(told, month_days=replace(anew.month_days, repeats=True))
        return told


_LATER_PARTS = tuple((DayPart("evening"), DayPart(late)) for late in ("night", "midnight"))
"""Two parts of one day that are the later of them: tonight before bed, tonight at midnight."""


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
            later = (said.part, piece) in _LATER_PARTS
            said.part = piece if later else _only(said.part, piece)
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

    An hour goes with the part of the day beside it: 8 or 7:30 in the evening is of the evening,
    and 2 at night is 02:00.
    """
    if said.clock is None:
        return None if said.part is None else time(*PARTS[said.part.name])
    hour, minute = said.clock.hour, said.clock.minute
    if said.part is None or said.part.name == "morning":
        return time(hour, minute)
    if said.part.name == "midnight":
        return time(hour % 12, minute)
    if hour == 12 and said.part.name in ("evening", "night"):
        return time(0, minute)
    past_midnight = said.part.name == "night" and hour < 6
    late = said.part.name in ("afternoon", "evening") and hour > 0
    if (said.clock.bare or late) and hour < 12 and not past_midnight:
        hour += 12
    return time(hour, minute)
