"""An hour that may be of the morning or of the afternoon: `tomorrow at 5`."""

from __future__ import annotations

from datetime import datetime, tzinfo
from typing import Final

from core.schedule.model import Problem
from core.schedule.pieces import Clock, DayPart, Found, Near
from core.schedule.problems import pieces_of
from core.schedule.tokens import Line

LATEST: Final = 6
"""A bare hour of English up to this is as likely of the afternoon; ours, no source. [h]"""


def either_half(
    line: Line, founds: list[Found], first: datetime | None, now: datetime, zone: tzinfo
) -> Problem | None:
    """Why an hour is asked about, with the text at each of the two hours; None where it is not.

    Parameters
    ----------
    first : datetime or None
        When it would be due; an hour alone is asked about only where that is another day. None
        where its day is said elsewhere.
    """
    place = _bare(line, founds)
    if place is None:
        return None
    alone = len(pieces_of(founds)) == 1 and first is not None
    if alone and first is not None and first.astimezone(zone).date() == now.astimezone(zone).date():
        return None
    start, end = line.span(place.start, place.end)
    front = "tomorrow at" if alone else "at"
    options = with_each(line, founds, front)
    return Problem("ambiguous", line.text[start:end], start, end, options[0], options)


def with_each(line: Line, founds: list[Found], front: str = "at") -> tuple[str, ...]:
    """The text at each of the two hours that a bare one in it may be; else none."""
    place = _bare(line, founds)
    clock = None if place is None else place.pieces[0]
    if place is None or not isinstance(clock, Clock):
        return ()
    start, end = line.span(place.start, place.end)
    before, behind = line.text[:start], line.text[end:]
    hours = (clock.hour, clock.hour + 12)
    return tuple(f"{before}{front} {hour:02}:{clock.minute:02}{behind}" for hour in hours)


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
    small = isinstance(clock, Clock) and clock.bare and clock.hour <= LATEST
    return clocks[0] if small else None
