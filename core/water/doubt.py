"""How sure a derived figure is: readings as intervals, figures as a median with an interval.

The possibilities are spread by a low-discrepancy sequence instead of drawn at random: the same
input gives the same answer, and a thousand of them fill the space of a few readings evenly.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from functools import cache
from typing import Any, Final, cast

from core.errors import CoreError
from core.water._elementwise import require

SAMPLES: Final = 1000
INTERVAL: Final = (5.0, 95.0)
"""Percentiles of the interval: nine in ten lie inside."""


class NoFigure(CoreError):
    """No possibility gave a finite figure.

    Attributes
    ----------
    what : str
        The figure's name.
    """

    def __init__(self, what: str) -> None:
        self.what = what
        super().__init__(f"no finite {what} among the possibilities")


@dataclass(frozen=True, slots=True)
class Interval:
    """What a reading may be in truth: anything from `low` to `high`, all equally likely.

    A kit that shows steps gives the reading half a step either way; a reading at the end of its
    scale, or a drop count, gives what the kit's maker says. `low` equal to `high` is certainty.
    """

    low: float
    high: float


@dataclass(frozen=True, slots=True)
class Estimate:
    """A figure with its doubt.

    Attributes
    ----------
    median : float
        Half of the possibilities lie under it.
    low, high : float
        Nine in ten possibilities lie between the two.
    """

    median: float
    low: float
    high: float


def sample(
    compute: Callable[..., Mapping[str, float]],
    readings: Mapping[str, Interval | float],
    size: int = SAMPLES,
) -> dict[str, Estimate]:
    """Carry the doubt of readings through a computation.

    Parameters
    ----------
    compute : callable
        Takes each reading by name, as an array of possibilities (plain numbers where there is no
        doubt), and returns figures by name, as arrays or plain numbers.
    readings : mapping of str to Interval or float
        The readings; plain numbers are certain.
    size : int, optional
        Possibilities, 16 to 100,000.

    Returns
    -------
    dict of str to Estimate
        Median and 90 % interval of every figure; possibilities that are not finite are left out.

    Raises
    ------
    OutOfRange
        If an interval is upside down or not finite, or the size is out of range.
    NoFigure
        If no possibility of a figure is finite.

    Examples
    --------
    >>> from core.water.solution import solve
    >>> def co2(ph, kh):
    ...     return {"co2": solve(Water.from_readings(ph=ph, kh=kh, temperature=25.0)).co2_mg_l}
    >>> from core.water.water import Water
    >>> doubt = sample(co2, {"ph": Interval(6.8, 7.2), "kh": Interval(3.5, 4.5)})["co2"]
    >>> round(doubt.low), round(doubt.median), round(doubt.high)
    (9, 13, 20)
    """
    require("samples", size, 16, 100_000)
    names = [name for name, reading in readings.items() if isinstance(reading, Interval)]
    spread = dict(zip(names, _spread(len(names), size), strict=True))
    arguments: dict[str, Any] = {}
    for name, reading in readings.items():
        if isinstance(reading, Interval):
            require(name, reading.low, None, reading.high)
            require(name, reading.high, reading.low, None)
            arguments[name] = reading.low + (reading.high - reading.low) * spread[name]
        else:
            arguments[name] = reading
    return _estimates(compute(**arguments), size)


def _estimates(figures: Mapping[str, Any], size: int) -> dict[str, Estimate]:
    """Median and interval of every figure, all of them sorted together: that is cheaper."""
    import numpy

    table = numpy.empty((len(figures), size))
    for row, figure in zip(table, figures.values(), strict=True):
        row[:] = figure
    finite = numpy.isfinite(table)
    if finite.all():
        ends = _percentiles(table)
    else:
        for name, held in zip(figures, finite, strict=True):
            if not held.any():
                raise NoFigure(name)
        ends = [_percentiles(row[held]) for row, held in zip(table, finite, strict=True)]
    return {name: Estimate(*map(float, each)) for name, each in zip(figures, ends, strict=True)}


def _percentiles(figures: Any) -> Any:
    """Median and ends, on straight lines between the sorted possibilities; a row each figure."""
    import numpy

    ordered = numpy.sort(figures, axis=-1)
    last = ordered.shape[-1] - 1
    places = last / 100.0 * numpy.array((50.0, *INTERVAL))
    under = places.astype(int)
    low, high = ordered[..., under], ordered[..., numpy.minimum(under + 1, last)]
    return low + (high - low) * (places - under)


@cache
def _spread(dimensions: int, size: int) -> tuple[Any, ...]:
    """Points of the additive sequence of the generalised golden ratio, one array a dimension.

    In d dimensions the steps are the powers of 1/φ, where φ is the positive root of
    ``x^(d + 1) = x + 1`` (M. Roberts 2018, "The unreasonable effectiveness of quasirandom
    sequences"; from memory). Every array lies between 0 and 1.
    """
    import numpy

    ratio = 1.5
    for _ in range(60):
        ratio = cast(float, (1.0 + ratio) ** (1.0 / (dimensions + 1.0)))
    counts = numpy.arange(1, size + 1, dtype=float)
    return tuple((0.5 + counts * ratio ** -(axis + 1.0)) % 1.0 for axis in range(dimensions))
