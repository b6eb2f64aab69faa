"""Where a value is going: robust slopes with an interval, days to a limit, consumption.

Slopes are those of Theil and Sen: the median of the slopes of all pairs, with Sen's interval by
Kendall's statistic. Outliers, gaps, duplicates and disorder do no harm to them. A trend is only
spoken of where it is surely there *and* more than the kit's noise.
"""

from __future__ import annotations

import math
from bisect import bisect_left
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from datetime import datetime, timedelta
from statistics import median
from typing import Final

from core.advice._slopes import CERTAINTY, Points, Slope, pooled_slope, theil_sen
from core.advice.state import NO3_PER_N, Measured, State
from core.analytes import ANALYTES

__all__ = [
    "CERTAINTY",
    "Consumption",
    "Drift",
    "Slope",
    "Trend",
    "consumption",
    "drift_from_source",
    "kh_lost_to_nitrate",
    "long_trend",
    "series",
    "theil_sen",
    "trend",
    "with_doubt",
]

LOOKED_BACK: Final = timedelta(days=120)
"""Older readings tell of another season; common practice."""

MOST_POINTS: Final = 40
"""Newest readings that a slope is made of: 780 pairs."""

FEWEST_POINTS: Final = 5
"""Of fewer, no interval can exclude chance."""

SHORTEST: Final = timedelta(days=3)
"""A shorter series shows the hours of the day, not a trend; common practice."""

STEPS_MOVED: Final = 1.0
"""A trend must have moved the value by so many steps of the kit; common practice."""

DAY: Final = 86_400.0


@dataclass(frozen=True, slots=True)
class Trend:
    """How an analyte moves.

    Attributes
    ----------
    analyte : str
        What moves.
    per_day, low, high : float
        Slope and the ends of its interval. [canonical unit per day]
    count : int
        Readings behind it.
    span : timedelta
        From the first to the last of them, or of the longest stretch.
    value : float
        Where the line stands at the last reading. [canonical unit]
    step : float
        What the kit can tell. [canonical unit]
    stretches : int
        Stretches between disturbances that it is made of; `span` is the longest of them.
    """

    analyte: str
    per_day: float
    low: float
    high: float
    count: int
    span: timedelta
    value: float
    step: float
    stretches: int = 1

    @property
    def moved(self) -> float:
        """How far the line went over its span. [canonical unit]"""
        return self.per_day * _days(self.span)

    @property
    def is_sure(self) -> bool:
        """Whether chance and the kit are both too small to explain it."""
        return (self.low > 0.0 or self.high < 0.0) and abs(self.moved) >= STEPS_MOVED * self.step

    def days_to(self, limit: float) -> tuple[float, float, float] | None:
        """Days until the line meets a limit: expected, soonest, latest; None where it never will.

        The latest is infinite where the slow end of the interval never gets there.
        """
        away = limit - self.value
        if away == 0.0 or away * self.per_day <= 0.0:
            return None
        fast, slow = (self.high, self.low) if away > 0 else (self.low, self.high)
        latest = away / slow if away * slow > 0.0 else math.inf
        return away / self.per_day, away / fast, latest


def series(state: State, analyte: str, since: datetime | None = None) -> list[Measured]:
    """Readings of an analyte in the order of measuring, ends of the kit's scale left out.

    Parameters
    ----------
    state : State
        With its history.
    analyte : str
        Which.
    since : datetime, optional
        The moment after which they count; `LOOKED_BACK` at most.
    """
    earliest = state.now - LOOKED_BACK
    if since is not None and since > earliest:
        earliest = since
    told = state.past.between(analyte, earliest, state.now)
    return [reading for reading in told if not reading.is_limit][-MOST_POINTS:]


def trend(state: State, analyte: str) -> Trend | None:
    """How an analyte moves while nobody touches the water; None where too little is known.

    By the readings since the last disturbance where they are enough, else by those of all the
    stretches between disturbances together.
    """
    readings = _of_one_basis(series(state, analyte))
    breaks = sorted(e.at for e in state.events or () if e.disturbs and e.at <= state.now)
    stretches = _parted(readings, breaks)
    if not stretches or (breaks and stretches[-1][0].at < breaks[-1]):
        return None  # nothing was measured since the last disturbance
    return _trend_of(stretches[-1:], analyte) or _trend_of(stretches, analyte)


def long_trend(state: State, analyte: str) -> Trend | None:
    """How an analyte moves over the season, water changes and all: where the routine leads."""
    return _trend_of([_of_one_basis(series(state, analyte))], analyte)


def _parted(readings: list[Measured], breaks: Sequence[datetime]) -> list[list[Measured]]:
    """Readings in order, parted at the disturbances."""
    parted: dict[int, list[Measured]] = {}
    for reading in readings:
        parted.setdefault(bisect_left(breaks, reading.at), []).append(reading)
    return list(parted.values())


def _trend_of(stretches: list[list[Measured]], analyte: str) -> Trend | None:
    """Fit one slope to stretches of readings; the line goes on from the last of them."""
    told = [stretch for stretch in stretches if len(stretch) > 1]
    count = sum(map(len, told))
    span = max((stretch[-1].at - stretch[0].at for stretch in told), default=timedelta())
    if count < FEWEST_POINTS or span < SHORTEST:
        return None
    last = stretches[-1]
    end = last[-1].at
    found = pooled_slope(tuple(_points(stretch, end) for stretch in told))
    if found is None:
        return None
    # Where the line stands now: through the median of the last stretch.
    value = median(r.value + found.per_day * _days(end - r.at) for r in last)
    step = kit_step(analyte, last)
    return Trend(analyte, found.per_day, found.low, found.high, count, span, value, step, len(told))


def _points(readings: list[Measured], end: datetime) -> Points:
    return tuple((-_days(end - reading.at), reading.value) for reading in readings)


def _days(span: timedelta) -> float:
    return span.total_seconds() / DAY


def _of_one_basis(readings: list[Measured]) -> list[Measured]:
    """Those told on the same basis as the newest: a new kit's units are no trend."""
    return [reading for reading in readings if reading.basis == readings[-1].basis]


def kit_step(analyte: str, readings: Iterable[Measured]) -> float:
    """What the kit can tell of an analyte: its told step, else the usual kit's. [unit]"""
    told = max((reading.step for reading in readings), default=0.0)
    known = ANALYTES.get(analyte)
    return told or (known.resolution if known else 0.0)


def with_doubt(reading: Measured) -> Measured:
    """A reading with half a step of the usual kit each way, where it tells no ends itself."""
    if reading.low < reading.high:
        return reading
    half = kit_step(reading.analyte, [reading]) / 2.0
    return replace(reading, low=max(0.0, reading.value - half), high=reading.value + half)


# Consumption and what nitrate tells ----------------------------------------------------------


@dataclass(frozen=True, slots=True)
class Consumption:
    """What is used up a day, from the least to the most that the kit leaves open. [unit/day]"""

    per_day: float
    low: float
    high: float

    @property
    def is_sure(self) -> bool:
        """Whether anything is used up at all, whatever the kit's doubt."""
        return self.low > 0.0


def consumption(earlier: Measured, later: Measured) -> Consumption | None:
    """What animals take out of the water between two readings with nothing done in between.

    Parameters
    ----------
    earlier, later : Measured
        Of one analyte, not at the ends of the kit's scale.

    Returns
    -------
    Consumption or None
        None where the two cannot be compared: under an hour apart, in the wrong order, off the
        kit's scale, or on another basis.
    """
    days = _days(later.at - earlier.at)
    if earlier.is_limit or later.is_limit or earlier.basis != later.basis or days < 1.0 / 24.0:
        return None
    return Consumption(
        (earlier.value - later.value) / days,
        (earlier.low - later.high) / days,
        (earlier.high - later.low) / days,
    )


KH_PER_NITRATE: Final = 1.0 / (NO3_PER_N * 14.007) / 0.356652
"""KH that the acid of one mg/L of nitrate, formed net of food, takes away. [°dH per mg/L NO3]"""


def kh_lost_to_nitrate(nitrate: float, *, from_ammonium: bool = False) -> float:
    """KH that was used up while so much nitrate built up.

    Parameters
    ----------
    nitrate : float
        Nitrate that was formed, zero or more. [mg/L NO3]
    from_ammonium : bool, optional
        True for a tank that is fed an ammonium salt: twice as much.

    Returns
    -------
    float
        KH. [°dH]

    Notes
    -----
    Nitrification of ammonium takes two equivalents a mole; the nitrogen of food gives one back
    as it is set free.

    Examples
    --------
    >>> round(kh_lost_to_nitrate(10.0), 2), round(kh_lost_to_nitrate(10.0, from_ammonium=True), 2)
    (0.45, 0.9)
    """
    return nitrate * KH_PER_NITRATE * (2.0 if from_ammonium else 1.0)


@dataclass(frozen=True, slots=True)
class Drift:
    """How far the tank has moved away from the water that it is filled from. [canonical unit]"""

    analyte: str
    tank: float
    source: float

    @property
    def away(self) -> float:
        """Tank less source."""
        return self.tank - self.source


def drift_from_source(state: State, analyte: str) -> Drift | None:
    """Give the distance from the source, where it is surely more than both kits' doubt."""
    here, there = state.last(analyte), state.source.get(analyte)
    if here is None or there is None or here.is_limit or there.is_limit:
        return None
    if here.low <= there.high and there.low <= here.high:
        return None
    return Drift(analyte, here.value, there.value)
