"""Waters as arrays, one element a possibility of what the kits leave open."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import fields
from typing import Any, Final

from core.advice import limits
from core.advice.state import Measured, State, ammonia_as_n
from core.advice.trends import with_doubt
from core.water import Water
from core.water.doubt import Interval
from core.water.water import MEQ_PER_DH

HELD: Final = tuple(field.name for field in fields(Water) if field.type == "float")

Truth = Interval | float


def interval_of(state: State, analyte: str) -> Truth | None:
    """What a reading may be in truth; half a step of the usual kit where it tells no ends."""
    reading = state.last(analyte)
    if reading is None or reading.is_limit:
        return None
    told = with_doubt(reading)
    return Interval(told.low, told.high) if told.low < told.high else told.value


def warmth_of(state: State, taken: float) -> Truth:
    """The temperature of ammonia as its thermometer leaves it; as taken where none was read.

    Half a degree moves the poisonous share by 4 %, but pH by less than 0.01: pH is reckoned with
    the temperature as it was read.
    """
    known = state.fresh("temperature")
    if known is None or known.is_limit:
        return taken
    doubt = limits.TEMPERATURE_RESOLUTION
    return Interval(max(taken - doubt, 0.0), min(taken + doubt, 45.0))


def ammonia_of(state: State) -> Truth | None:
    """Total ammonia by a fresh reading, as nitrogen; None where there is none. [mg/L as N]"""
    total = state.fresh("ammonia")
    span = interval_of(state, "ammonia") if total is not None else None
    return None if total is None or span is None else _as_n(span, total)


def _as_n(span: Truth, total: Measured) -> Truth:
    if isinstance(span, Interval):
        low, high = (ammonia_as_n(end, total.basis) for end in (span.low, span.high))
        return Interval(low, high)
    return ammonia_as_n(span, total.basis)


def water_with(water: Water, kh: Any, gh: Any) -> Water:
    """The water with another KH and GH; the metals keep their ratio."""
    times = gh / water.gh if water.gh > 0.0 else 1.0
    return water.changed(
        alkalinity=kh * MEQ_PER_DH / water.density,
        calcium=water.calcium * times,
        magnesium=water.magnesium * times,
    )


def beside(waters: Sequence[Water], size: int) -> Water:
    """Several waters as one, a row each, so that they are solved together: that is cheaper."""
    held = {name: [getattr(water, name) for water in waters] for name in HELD}
    return waters[0].changed(**{name: _rows_or_one(each, size) for name, each in held.items()})


def rows(values: Sequence[Any], size: int) -> Any:
    """Values of several waters, a row each."""
    import numpy  # only where doubt is asked for

    held = numpy.empty((len(values), size))
    for row, value in zip(held, values, strict=True):
        row[:] = value
    return held


def _rows_or_one(values: Sequence[Any], size: int) -> Any:
    """One plain number where all have the same, which is cheaper to solve with."""
    plain = all(isinstance(one, float) for one in values) and len(set(values)) == 1
    return values[0] if plain else rows(values, size)


def in_both_airs(pressure: Any, dimensions: int) -> Any:
    """The tank's own carbon dioxide and open air's, before as many dimensions as a water has."""
    import numpy

    own = numpy.asarray(pressure)
    both = numpy.stack([own, numpy.full(own.shape, limits.OPEN_AIR)])
    return both.reshape(2, *(1,) * (dimensions - own.ndim), *own.shape)
