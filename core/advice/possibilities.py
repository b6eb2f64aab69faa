"""Waters as arrays, one element a possibility of what the kits leave open."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import fields, replace
from typing import Any, Final

from core.advice import limits
from core.advice.state import Measured, State, ammonia_as_n
from core.advice.trends import with_doubt
from core.water import Water, in_air
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
    return replace(
        water,
        alkalinity=kh * MEQ_PER_DH / water.density,
        calcium=water.calcium * times,
        magnesium=water.magnesium * times,
    )


def tiled(water: Water, times: int) -> Water:
    """The same possibilities again and again, one after the other."""
    import numpy  # only where doubt is asked for

    held = {name: getattr(water, name) for name in HELD}
    arrays: dict[str, Any] = {
        name: numpy.tile(value, times) for name, value in held.items() if type(value) is not float
    }
    return replace(water, **arrays)


def at_rest(waters: Sequence[Water], pressures: Sequence[Any], size: int) -> list[tuple[Any, Any]]:
    """Carbon and pH of each water at rest in its own air, all solved together: that is cheaper."""
    import numpy

    def joined(ones: Sequence[Any]) -> Any:
        plain = all(isinstance(one, float) for one in ones) and len(set(ones)) == 1
        return ones[0] if plain else numpy.concatenate([_filled(one, size) for one in ones])

    together = {name: joined([getattr(water, name) for water in waters]) for name in HELD}
    solved = in_air(replace(waters[0], **together), joined(pressures))
    ph: Any = solved.ph
    carbon: Any = solved.water.carbon
    cut = [slice(place * size, (place + 1) * size) for place in range(len(waters))]
    return [(carbon[each], ph[each]) for each in cut]


def _filled(one: Any, size: int) -> Any:
    import numpy

    return numpy.full(size, one) if isinstance(one, float) else one
