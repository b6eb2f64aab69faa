"""Where a value is going: robust slopes with an interval, days to a limit, away from the source.

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

from core.advice._slopes import (
    CERTAINTY,
    Points,
    Slope,
    is_moving,
    noise_interval,
    outruns,
    pooled_slope,
    theil_sen,
)
from core.advice.state import Measured, State
from core.analytes import ANALYTES

__all__ = [
    "CERTAINTY",
    "Course",
    "Drift",
    "Slope",
    "Trend",
    "drift_from_source",
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

NOISE: Final = 1.0
"""Standard deviation that a single reading is given, in steps of the kit; common practice."""

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
    newest: list[Measured] = []
    for reading in reversed(state.past.between(analyte, earliest, state.now)):
        if not reading.is_limit:
            newest.append(reading)
            if len(newest) == MOST_POINTS:
                break
    return newest[::-1]


class Course:
    """The readings of one analyte of a tank, for the slopes that are made of them.

    Parameters
    ----------
    state : State
        With its history and events.
    analyte : str
        Which.
    """

    __slots__ = ("_analyte", "_disturbances", "_points", "_readings")

    def __init__(self, state: State, analyte: str) -> None:
        told = series(state, analyte)
        # A new kit's units are no trend: only those told on the same basis as the newest.
        self._readings = [reading for reading in told if reading.basis == told[-1].basis]
        end = self._readings[-1].at if self._readings else state.now
        self._points = tuple((-_days(end - r.at), r.value) for r in self._readings)
        self._disturbances = state.disturbances
        self._analyte = analyte

    def since_disturbed(self, *, sure: bool = False) -> Trend | None:
        """Fit where nobody touched the water; None where too little is known.

        By the readings since the last disturbance where they are enough, else by those of all the
        stretches between disturbances together. Where only a sure trend is of use, `sure` spares
        making the slopes of the others.
        """
        starts = self._starts()
        untouched = not self._disturbances or (
            bool(self._readings) and self._readings[-1].at > self._disturbances[-1]
        )
        if not starts or not untouched:
            return None  # nothing was measured since the last disturbance
        return self._fit(starts[-1:] if _enough(self._parted(starts[-1:])) else starts, sure)

    def season(self, *, sure: bool = False) -> Trend | None:
        """Fit all, water changes and what else happened included: where the routine leads."""
        return self._fit([0], sure)

    def _starts(self) -> list[int]:
        """Where each stretch between disturbances begins."""
        starts: list[int] = []
        before = -1
        for place, reading in enumerate(self._readings):
            told = bisect_left(self._disturbances, reading.at)
            if told != before:
                starts.append(place)
                before = told
        return starts

    def _parted(self, starts: Sequence[int]) -> tuple[Points, ...]:
        """The stretches that begin at these places and hold more than one reading."""
        ends = [*starts[1:], len(self._points)]
        told = (self._points[start:end] for start, end in zip(starts, ends, strict=True))
        return tuple(stretch for stretch in told if len(stretch) > 1)

    def _fit(self, starts: Sequence[int], sure: bool) -> Trend | None:
        """Fit one slope to the stretches that begin at these places; the line ends at the last."""
        told = self._parted(starts)
        if not _enough(told):
            return None
        step = kit_step(self._analyte, self._readings[starts[-1] :])
        if sure and not (is_moving(told) or outruns(told, NOISE * step)):
            return None
        found = pooled_slope(told)
        if found is None:
            return None
        low, high = found.low, found.high
        if step and low <= 0.0 <= high:  # ranks cannot tell; perhaps size can
            low, high = noise_interval(told, found.per_day, NOISE * step)
        # Where the line stands now: through the median of the last stretch.
        value = median(v - found.per_day * at for at, v in self._points[starts[-1] :])
        count, span = sum(map(len, told)), timedelta(days=_longest(told))
        return Trend(self._analyte, found.per_day, low, high, count, span, value, step, len(told))


def _enough(stretches: Sequence[Points]) -> bool:
    """Whether stretches hold enough readings over enough days for a slope."""
    return sum(map(len, stretches)) >= FEWEST_POINTS and _longest(stretches) >= _days(SHORTEST)


def _longest(stretches: Sequence[Points]) -> float:
    """Days from the first to the last reading of the longest stretch."""
    return max((stretch[-1][0] - stretch[0][0] for stretch in stretches), default=0.0)


def trend(state: State, analyte: str) -> Trend | None:
    """How an analyte moves while nobody touches the water; None where too little is known."""
    return Course(state, analyte).since_disturbed()


def long_trend(state: State, analyte: str) -> Trend | None:
    """How an analyte moves over the season, water changes and all: where the routine leads."""
    return Course(state, analyte).season()


def _days(span: timedelta) -> float:
    return span.total_seconds() / DAY


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
