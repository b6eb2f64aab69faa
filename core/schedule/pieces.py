"""What one stretch of words says about time; `core.schedule.meaning` puts the pieces together."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime, timedelta
from typing import Literal, TypeAlias

from core.schedule.model import Reason

CountedUnit = Literal["hours", "days", "weeks", "months"]


@dataclass(frozen=True, slots=True)
class Clock:
    """A time of day; `bare` where an hour without minutes or am and pm may be either half.

    `doubtful` where half an hour before it may be meant as well: half seven.
    """

    hour: int
    minute: int = 0
    bare: bool = False
    doubtful: bool = False


@dataclass(frozen=True, slots=True)
class DayPart:
    """A part of the day, by its name in the vocabulary; `repeats` in the plural."""

    name: str
    repeats: bool = False


@dataclass(frozen=True, slots=True)
class Interval:
    """Every so many units; `numbered` False where no number was said (daily, every week)."""

    count: int
    unit: CountedUnit
    numbered: bool = True


@dataclass(frozen=True, slots=True)
class Weekdays:
    """Days of the week.

    `repeats` after 'every' and in the plural; `nth` of a month; `every` is 2 for every other
    Sunday; `later` for 'next Monday', which is never today.
    """

    days: tuple[int, ...]
    repeats: bool = False
    nth: int | None = None
    every: int = 1
    later: bool = False


@dataclass(frozen=True, slots=True)
class MonthDays:
    """Days of the month; `next_month` for 'the 1st of next month', `every` 2 for each second."""

    days: tuple[int, ...]
    repeats: bool = False
    next_month: bool = False
    every: int = 1


@dataclass(frozen=True, slots=True)
class Dated:
    """A day and month, with a year where one was said."""

    month: int
    day: int
    year: int | None = None
    repeats: bool = False


@dataclass(frozen=True, slots=True)
class Near:
    """So many days from today."""

    days: int


@dataclass(frozen=True, slots=True)
class Span:
    """So long from now: elapsed time, and local days and months."""

    elapsed: timedelta = timedelta()
    days: int = 0
    months: int = 0


@dataclass(frozen=True, slots=True)
class Exact:
    """A moment written out with its date and clock time; naive where it has no offset."""

    at: datetime


@dataclass(frozen=True, slots=True)
class Start:
    """The word that makes the day after it the first of a rhythm."""


@dataclass(frozen=True, slots=True)
class End:
    """The word that makes the day or span after it the end of a rhythm."""


@dataclass(frozen=True, slots=True)
class Except:
    """Days of the week that a rhythm leaves out."""

    days: tuple[int, ...]


@dataclass(frozen=True, slots=True)
class Flaw:
    """Words of time that cannot be taken, and what to say instead."""

    reason: Reason
    options: tuple[str, ...] = ()


Piece: TypeAlias = (
    Clock
    | DayPart
    | Interval
    | Weekdays
    | MonthDays
    | Dated
    | Near
    | Span
    | Exact
    | Start
    | End
    | Except
    | Flaw
)


@dataclass(frozen=True, slots=True)
class Found:
    """Pieces that tokens `start` up to `end` say.

    `strong` words are of time wherever they stand; weak ones ("monday", "10:00") only at an edge
    of the text or beside other words of time.
    """

    pieces: tuple[Piece, ...]
    start: int
    end: int
    strong: bool
