"""What binds a water change: how far it goes past each limit, one share or an array of them."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any, Final

from core.advice import limits
from core.advice.changes import Mixed, Waters, nh3_now
from core.water import chronic_criterion
from core.water._elementwise import functions_for

ROUNDING: Final = 0.01
"""Of a degree, a °C, a g/kg: far within every kit."""

BY_MASS: Final = 1.1
"""Salinity mixes by mass; no water here is denser than another by more."""

TINY: Final = 1e-6

Excesses = Mapping[str, Any]
"""Limit id → how far past it, not over 0 where it is kept; a number or an array of them."""

Broken = Mapping[str, Any]
"""Limit id → whether it is broken, a bool or an array of them."""


def broken(waters: Waters, after: Mixed, *, emergency: bool) -> Broken:
    """Which limits a change breaks; pH like with like, at once and stood."""
    found = excesses(waters, after, emergency=emergency)
    return {name: over > 0.0 for name, over in found.items()}


def excesses(waters: Waters, after: Mixed, *, emergency: bool) -> Excesses:
    """How far a change goes past each limit that binds it, in the limit's own unit.

    Parameters
    ----------
    waters : Waters
        The tank's water and the new one.
    after : Mixed
        The change, a number or an array of possibilities.
    emergency : bool
        True where poison is the greater danger.
    """
    before, water = waters.tank.water, after.water
    kh, kh_before = water.kh, before.kh
    warmer = abs(water.temperature - before.temperature - waters.off * after.share)
    found: dict[str, Any] = {"temperature": warmer - limits.TEMPERATURE_STEP - ROUNDING}
    if emergency:
        rise = after.at_once - waters.tank.ph_now
        found |= {
            "share": after.share - limits.EMERGENCY_SHARE - TINY,
            "ph": rise - limits.EMERGENCY_PH_RISE - TINY,
            "ammonia": ammonia_excess(waters, after, emergency=True),
        }
    else:
        found |= {
            "kh": _kh_excess(waters, kh - kh_before),
            "ph": _ph_excess(waters, after),
            "ammonia": ammonia_excess(waters, after, emergency=False),
            "kh_floor": _less(waters.kh_floor - kh, kh_before - TINY - kh),
            **_minerals_excess(waters, after),
        }
    found["salinity"] = _salinity_excess(waters, after)
    return found | waters.taint.excesses(after.share)


def _minerals_excess(waters: Waters, after: Mixed) -> dict[str, Any]:
    """Hardness, or conductivity where that of one water is unknown, or so little that it is safe.

    In salt water salinity says it all.
    """
    if "gh" in waters.known:
        gh = after.water.gh
        fall = waters.tank.water.gh - gh
        found: dict[str, Any] = {"gh": abs(fall) - limits.GH_STEP - ROUNDING}
        if not waters.is_salty:
            found["gh_floor"] = _less(waters.gh_floor - gh, fall) - TINY
        return found
    if waters.is_salty:
        return {}
    if waters.minerals is not None and waters.minerals[0] > 0.0:
        moved = abs(after.minerals / waters.minerals[0] - 1.0)
        return {"conductivity": moved - limits.CONDUCTIVITY_STEP - TINY}
    return {"minerals": after.share - limits.UNKNOWN_MINERALS_SHARE - TINY}


def _salinity_excess(waters: Waters, after: Mixed) -> Any:
    saltier = after.water.salinity - waters.tank.water.salinity
    return _more(saltier - limits.SALINITY_UP, -saltier - _salinity_fall(waters)) - ROUNDING


def _salinity_fall(waters: Waters) -> float:
    return limits.SALINITY_UP if waters.invertebrates else limits.SALINITY_DOWN


def bound_by_sums(waters: Waters) -> float:
    """The share over which KH, GH or temperature forbid it for sure, before any pH is sought."""
    old, new = waters.tank.water, waters.source
    moves = [(new.temperature - old.temperature, limits.TEMPERATURE_STEP)]
    moves.append((new.kh - old.kh, _kh_rise(waters) if new.kh > old.kh else limits.KH_STEP))
    if "gh" in waters.known:
        moves.append((new.gh - old.gh, limits.GH_STEP))
    elif not waters.is_salty and waters.minerals is None:
        moves.append((1.0, limits.UNKNOWN_MINERALS_SHARE))
    salt = new.salinity - old.salinity
    moves.append((salt / BY_MASS, limits.SALINITY_UP if salt > 0.0 else _salinity_fall(waters)))
    bounds = [(step + ROUNDING) / abs(move) for move, step in moves if abs(move) > step]
    return min([1.0, *bounds])


def _kh_excess(waters: Waters, change: Any) -> Any:
    return _more(-change - limits.KH_STEP, change - _kh_rise(waters)) - ROUNDING


def _kh_rise(waters: Waters) -> float:
    """Most that KH may rise in a day: the step, never more than doubled, little where it is low."""
    if waters.kh_low < limits.KH_BLIND_BELOW:
        ph = waters.tank.ph
        if ph is None:
            return limits.KH_FIRST_PART
        first = functions_for(ph).where
        return first(ph < limits.ACID_PH, limits.KH_FIRST_PART_ACID, limits.KH_FIRST_PART)
    return min(limits.KH_STEP, waters.kh_low * (limits.KH_FACTOR - 1.0))


def _ph_excess(waters: Waters, after: Mixed) -> Any:
    tank = waters.tank
    at_once, stood = abs(after.at_once - tank.ph_now), abs(after.expected - tank.ph_now)
    most = _more(_more(at_once, stood), abs(after.open_air - tank.ph_open_air))
    return most - limits.PH_STEP - limits.PH_ROUNDING - TINY


def ammonia_excess(waters: Waters, after: Mixed, *, emergency: bool) -> Any:
    """How far a change goes past the gate of ammonia, as `excesses` has it. [mg/L as N]"""
    return _poison_in_emergency(waters, after) if emergency else _poison(waters, after)


def _poison(waters: Waters, after: Mixed) -> Any:
    """The gate of ammonia, by amounts: a change also takes some of it away."""
    if waters.total_n is None:
        return _brought_poison(waters, after)  # of the tank's own: the answer names what it bears
    leaves_now = nh3_now(waters)[1] if waters.leaves_first is None else waters.leaves_first
    at_once, expected, leaves = after.nh3
    likely = _more(at_once, expected if waters.tank.co2_known else leaves)
    if_it_leaves = _less(leaves - waters.limit, leaves - limits.NH3_RAISE * leaves_now)
    over = _more(likely - waters.limit, if_it_leaves)
    if waters.source_n > 0.0 and not waters.is_salty:
        warm = waters.tank.water.temperature
        chronic = after.total_n - chronic_criterion(after.expected, warm)
        over = _more(over, _less(chronic, waters.source_n - waters.total_n))
    return over


def _brought_poison(waters: Waters, after: Mixed) -> Any:
    """Whether the new water's ammonia alone takes half of the gate, the tank's own unknown."""
    if waters.source_n <= 0.0:
        return 0.0 * after.share
    at_once, expected, leaves = after.poisonous
    brought = waters.source_n * after.share
    return brought * _more(_more(at_once, expected), leaves) - waters.limit / 2.0


def _poison_in_emergency(waters: Waters, after: Mixed) -> Any:
    if waters.total_n is None:
        return _brought_poison(waters, after)
    now, _ = nh3_now(waters)
    at_once, expected, _ = after.nh3
    return _more(at_once, expected) - _more(now, limits.NH3_ALARM) - TINY


def _more(one: Any, other: Any) -> Any:
    return functions_for(one, other).maximum(one, other)


def _less(one: Any, other: Any) -> Any:
    return functions_for(one, other).minimum(one, other)
