"""Robust slopes: the median of all pairs, with Sen's interval by Kendall's statistic."""

from __future__ import annotations

import math
from bisect import bisect_left, bisect_right, insort
from collections import Counter
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from functools import lru_cache
from itertools import groupby
from operator import itemgetter
from statistics import NormalDist, fmean, median
from typing import Final

CERTAINTY: Final = 0.98
"""Of the interval that must exclude zero before a trend is spoken of. Chosen by the bench of steady
tanks: 0 false alarms in 1,248 weeks, 4 where kits err twice as much; 0.95 gave 0 and 14."""


BY_SIZE: Final = 0.998
"""Of the interval by the kit's noise. By the same bench, a whole step of noise: 0.5 false alarms in
100 weeks; nitrate that climbs by 1 mg/L a day is told at the fifth weekly test, not the seventh."""


@dataclass(frozen=True, slots=True)
class Slope:
    """A robust slope with its interval. [unit per day]"""

    per_day: float
    low: float
    high: float
    middle: float
    """The line's value at the median time. [unit]"""


def theil_sen(
    times: Sequence[float], values: Sequence[float], certainty: float = CERTAINTY
) -> Slope | None:
    """Give the median of all pairwise slopes, with Sen's interval.

    Parameters
    ----------
    times : sequence of float
        When each was measured, in any order; equal times form no pair. [day]
    values : sequence of float
        What was measured. [unit]
    certainty : float, optional
        Of the interval, over 0 and under 1.

    Returns
    -------
    Slope or None
        None where no two readings differ in time.

    Notes
    -----
    The interval takes the order statistics of the slopes at ranks ``(N ± z·σ) / 2``, with σ
    Kendall's with its correction for ties [1]_.

    Examples
    --------
    >>> slope = theil_sen([0, 1, 2, 3, 4], [5, 7, 9, 11, 13])
    >>> slope.per_day, slope.middle
    (2.0, 9)

    References
    ----------
    .. [1] Sen 1968, J. Am. Stat. Assoc. 63:1379-1389 (from memory), checked against the open
       implementation of the same in SciPy.
    """
    return pooled_slope((tuple(zip(times, values, strict=True)),), certainty)


Points = tuple[tuple[float, float], ...]


@lru_cache(maxsize=32)  # several rules ask for the same one
def pooled_slope(stretches: tuple[Points, ...], certainty: float = CERTAINTY) -> Slope | None:
    """Give the median of the slopes of all pairs within stretches that were disturbed between.

    Parameters
    ----------
    stretches : tuple of tuples of (time, value)
        What was measured between one disturbance and the next; pairs across are not made.
        [day, unit]
    certainty : float, optional
        As for `theil_sen`.

    Notes
    -----
    Kendall's variances of independent stretches add up, as in the seasonal test [1]_.

    References
    ----------
    .. [1] Hirsch, Slack & Smith 1982, Water Resour. Res. 18:107-121 (from memory).
    """
    slopes = [slope for points in stretches for slope in _slopes(sorted(points))]
    slopes.sort()
    if not slopes:
        return None
    variance = sum(_kendall_variance(points) for points in stretches)
    low, high = _ranks(variance, len(slopes), certainty)
    inside = low >= 0 and high < len(slopes)
    return Slope(
        per_day=_middle(slopes),
        low=slopes[low] if inside else -math.inf,
        high=slopes[high] if inside else math.inf,
        middle=median(value for points in stretches for _, value in points),
    )


def is_moving(stretches: Iterable[Points], certainty: float = CERTAINTY) -> bool:
    """Whether the interval of `pooled_slope` leaves out zero, found without making any slope.

    Parameters
    ----------
    stretches : iterable of tuples of (time, value)
        As for `pooled_slope`.
    certainty : float, optional
        As for `theil_sen`.

    Notes
    -----
    That is Kendall's test [1]_: only the signs of the slopes decide, and those are counted by
    putting each value among the earlier ones. Most waters are steady, and need no more than this.

    References
    ----------
    .. [1] Sen 1968, J. Am. Stat. Assoc. 63:1379-1389 (from memory).

    Examples
    --------
    >>> is_moving([tuple((day, 5 + 2 * day) for day in range(8))])
    True
    >>> is_moving([tuple((day, 5 + day % 2) for day in range(8))])
    False
    """
    falls = level = pairs = 0
    variance = 0.0
    for points in stretches:
        earlier: list[float] = []
        for _, values in groupby(sorted(points), key=itemgetter(0)):
            together = [value for _, value in values]
            for value in together:
                upto = bisect_right(earlier, value)
                falls += len(earlier) - upto
                level += upto - bisect_left(earlier, value)
                pairs += len(earlier)
            for value in together:
                insort(earlier, value)
        variance += _kendall_variance(points)
    low, high = _ranks(variance, pairs, certainty)
    if low < 0 or high >= pairs:
        return False
    return falls + level <= low or falls > high


def noise_interval(
    stretches: Sequence[Points], per_day: float, noise: float, certainty: float = BY_SIZE
) -> tuple[float, float]:
    """Give the interval of a slope by how far single readings stray, not by their ranks.

    Ranks know nothing of size: five readings that climb by six steps of the kit are to them no
    more than five that climb by a hair. Where the kit's noise is known, size tells sooner.

    Parameters
    ----------
    stretches : sequence of tuples of (time, value)
        As for `pooled_slope`.
    per_day : float
        The slope, best a robust one. [unit per day]
    noise : float
        Standard deviation of one reading, over 0; where the readings stray further from the line
        than that, by their median deviation, theirs is taken. [unit]
    certainty : float, optional
        As for `theil_sen`.

    Returns
    -------
    low, high : float
        [unit per day]

    Notes
    -----
    A slope's standard error is that of one reading over the root of the sum of squared times
    about their mean; a normal sample's median deviation is 0.6745 of its standard deviation.
    Both are of any textbook of regression.
    """
    strays = []
    for points in stretches:
        rest = [value - per_day * at for at, value in points]
        middle = median(rest)
        strays += [abs(value - middle) for value in rest]
    error = max(noise, median(strays) / 0.6745) / math.sqrt(_spread(stretches))
    reach = NormalDist().inv_cdf((1.0 + certainty) / 2.0) * error
    return per_day - reach, per_day + reach


def outruns(stretches: Sequence[Points], noise: float, certainty: float = BY_SIZE) -> bool:
    """Whether least squares sees a slope beyond the noise: one pass, before any robust slope."""
    along = 0.0
    for points in stretches:
        middle = fmean(at for at, _ in points)
        along += sum((at - middle) * value for at, value in points)
    reach = NormalDist().inv_cdf((1.0 + certainty) / 2.0) * noise
    return abs(along) > reach * math.sqrt(_spread(stretches))


def _spread(stretches: Sequence[Points]) -> float:
    """Sum of squared times about each stretch's mean. [day²]"""
    total = 0.0
    for points in stretches:
        middle = fmean(at for at, _ in points)
        total += sum((at - middle) ** 2 for at, _ in points)
    return total


def _middle(ordered: Sequence[float]) -> float:
    half = len(ordered) // 2
    return ordered[half] if len(ordered) % 2 else (ordered[half - 1] + ordered[half]) / 2.0


def _slopes(points: list[tuple[float, float]]) -> list[float]:
    """Slopes of all pairs of points, which are in order of time."""
    slopes: list[float] = []
    for i, (early, first) in enumerate(points):
        slopes += [
            (second - first) / (late - early) for late, second in points[i + 1 :] if late > early
        ]
    return slopes


def _ranks(variance: float, count: int, certainty: float) -> tuple[int, int]:
    """Ranks of the interval's ends among the sorted slopes, outside of them if too few."""
    if variance <= 0.0:
        return -1, count
    spread = -NormalDist().inv_cdf((1.0 - certainty) / 2.0) * math.sqrt(variance)
    return round((count - spread) / 2.0) - 1, round((count + spread) / 2.0)


def _kendall_variance(points: Points) -> float:
    times, values = zip(*points, strict=True) if points else ((), ())
    ties = sum(_term(n) for of in (times, values) for n in Counter(of).values() if n > 1)
    return (_term(len(points)) - ties) / 18.0


def _term(n: int) -> int:
    return n * (n - 1) * (2 * n + 5)
