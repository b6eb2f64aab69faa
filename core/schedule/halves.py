"""An hour that may be of the morning or of the afternoon: `tomorrow at 5`, `half seven`."""

from __future__ import annotations

from datetime import datetime, tzinfo
from typing import Final

from core.schedule.localtime import moment_at
from core.schedule.model import Problem
from core.schedule.pieces import Clock, Dated, DayPart, Found, MonthDays, Near, Piece, Weekdays
from core.schedule.problems import pieces_of
from core.schedule.tokens import Line

LATEST: Final = 6
"""A bare hour of English up to this is as likely of the afternoon; ours, no source. [h]"""

MIDNIGHTS: Final = ("at 23:59", "at 00:00")
"""Midnight of a named day is its end or its beginning; 23:59 is its end, in a minute of its own."""


def either_half(
    line: Line, founds: list[Found], first: datetime | None, now: datetime, zone: tzinfo
) -> Problem | None:
    """Why an hour is asked about, with the text at each of the hours; None where it is not.

    Parameters
    ----------
    first : datetime or None
        When it would be due; an hour alone is asked about only where that is another day. None
        where its day is said elsewhere.
    """
    if (place := _midnight(founds)) is not None:
        return _asked(line, place, tuple(_put(line, place, each) for each in MIDNIGHTS))
    if (doubted := half_doubted(line, founds, now, zone)) is not None:
        return doubted
    place = _bare(line, founds)
    if place is None:
        return None
    alone = len(pieces_of(founds)) == 1 and first is not None
    if alone and first is not None and first.astimezone(zone).date() == now.astimezone(zone).date():
        return None
    return _asked(line, place, with_each(line, founds, "tomorrow at" if alone else "at"))


def half_doubted(line: Line, founds: list[Found], now: datetime, zone: tzinfo) -> Problem | None:
    """Why half an hour is asked about, which may be before the hour or behind it; else None."""
    place = half_hour(founds)
    return None if place is None else _asked(line, place, _four(line, founds, place, now, zone))


def with_each(line: Line, founds: list[Found], front: str = "at") -> tuple[str, ...]:
    """The text at each of the two hours that a bare one in it may be; else none."""
    place = _bare(line, founds)
    clock = None if place is None else place.pieces[0]
    if place is None or not isinstance(clock, Clock):
        return ()
    hours = (clock.hour, clock.hour + 12)
    return tuple(_put(line, place, f"{front} {hour:02}:{clock.minute:02}") for hour in hours)


def half_hour(founds: list[Found]) -> Found | None:
    """The phrase of half an hour that may be behind the hour or before it: `half seven`."""
    if any(isinstance(piece, DayPart) for piece in pieces_of(founds)):
        return None
    for found in founds:
        for piece in found.pieces:
            if isinstance(piece, Clock) and piece.doubtful:
                return found
    return None


def at_half_hours(line: Line, founds: list[Found], *, late: bool) -> tuple[str, ...]:
    """The text at half before the hour and half behind it, in one half of the day; else none."""
    place = half_hour(founds)
    if place is None:
        return ()
    hour = _hour_of(place) % 12 + (12 if late else 0)
    before = (hour - 1) % 12 + (12 if late else 0)
    return tuple(_put(line, place, f"at {each:02}:30") for each in (before, hour))


def _four(
    line: Line, founds: list[Found], place: Found, now: datetime, zone: tzinfo
) -> tuple[str, ...]:
    """The text at each half hour that may be meant, as English has it first; of today, to come."""
    said = _hour_of(place)
    hour, before = said % 12, (said - 1) % 12
    hours = [hour, hour + 12, before, before + 12] if hour else [12, 0, before, before + 12]
    if Near(0) in pieces_of(founds):
        today = now.astimezone(zone).date()
        at = now.astimezone(zone).time()
        ahead = [each for each in hours if moment_at(today, at.replace(each, 30), zone) > now]
        hours = ahead or hours
    return tuple(_put(line, place, f"at {each:02}:30") for each in hours)


def _hour_of(place: Found) -> int:
    return next(piece.hour for piece in place.pieces if isinstance(piece, Clock))


def _midnight(founds: list[Found]) -> Found | None:
    """The phrase of midnight beside a named day, of which it may be either end."""
    pieces = pieces_of(founds)
    if not any(_names_day(piece) for piece in pieces):
        return None
    late = any(isinstance(each, DayPart) and each.name in ("evening", "night") for each in pieces)
    for found in founds:
        for piece in found.pieces:
            if isinstance(piece, DayPart) and piece.name == "midnight":
                return found if len(found.pieces) == 1 else None
            if late and isinstance(piece, Clock) and piece == Clock(12):
                return found if len(found.pieces) == 1 else None
    return None


def _names_day(piece: Piece) -> bool:
    """Tell whether a piece names a day that is not today."""
    if isinstance(piece, Near):
        return piece.days > 0
    return isinstance(piece, Weekdays | Dated | MonthDays)


def _asked(line: Line, place: Found, options: tuple[str, ...]) -> Problem:
    start, end = line.span(place.start, place.end)
    return Problem("ambiguous", line.text[start:end], start, end, options[0], options)


def _put(line: Line, place: Found, words: str) -> str:
    """The text with other words in the place of a phrase."""
    start, end = line.span(place.start, place.end)
    return f"{line.text[:start]}{words}{line.text[end:]}"


def _bare(line: Line, founds: list[Found]) -> Found | None:
    """The phrase of a bare small hour beside which nothing says which half of a day it is of."""
    pieces = pieces_of(founds)
    if line.vocabulary.language != "en" or Near(0) in pieces:
        return None
    if any(isinstance(piece, DayPart) for piece in pieces):
        return None
    clocks = [found for found in founds for piece in found.pieces if isinstance(piece, Clock)]
    if len(clocks) != 1 or len(clocks[0].pieces) != 1:
        return None
    (clock,) = clocks[0].pieces
    small = isinstance(clock, Clock) and clock.bare and not clock.doubtful and clock.hour <= LATEST
    return clocks[0] if small else None
