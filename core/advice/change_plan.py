"""How much may be changed at a time: the largest safe share, and a schedule of such."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Any, Final

from core.advice import limits
from core.advice.changes import Mixed, Waters, mixed, nh3_now
from core.water import chronic_criterion
from core.water._elementwise import functions_for

TRIED: Final = (2, 5, 10, 20, 35, 50, 75, 100)
"""Shares that are tried in turn until one is too much; what lies between is halved. [%]"""

ROUNDING: Final = 0.01
"""Of a degree, a °C, a g/kg: far within every kit."""

BY_MASS: Final = 1.1
"""Salinity mixes by mass; no water here is denser than another by more."""

TINY: Final = 1e-6

ENDING: Final = 1e-3
"""Over a limit by more than rounding on the way. [the limit's own unit]"""

Excesses = Mapping[str, Any]
"""Limit id → how far past it, not over 0 where it is kept; a number or an array of them."""

Broken = Mapping[str, Any]
"""Limit id → whether it is broken, a bool or an array of them."""


@dataclass(frozen=True, slots=True)
class ChangePlan:
    """A change that was asked for, and what to do instead where it is too much.

    Attributes
    ----------
    share : float
        As asked, 0 to 1.
    after : Mixed
        What it becomes.
    broken : tuple of str
        Limits that the whole change would break: kh, kh_floor, gh, gh_floor, ph, temperature,
        salinity, conductivity, minerals, ammonia, copper, nitrite, share.
    largest_safe_share : float
        The largest change that breaks none; 0 where there is none.
    steps : tuple of float
        Shares, one a day, that together do the same; empty where no safe ones do.
    emergency : bool
        True where poison is the greater danger and only its limits bind.
    only_below : float or None
        Total ammonia that the steps bear, where it is unknown. [mg/L as N]
    """

    share: float
    after: Mixed
    broken: tuple[str, ...]
    largest_safe_share: float
    steps: tuple[float, ...]
    emergency: bool
    only_below: float | None


def plan_change(
    waters: Waters, share: float, *, emergency: bool = False, salting: bool = False
) -> ChangePlan:
    """Judge a change, and find the largest safe share and a schedule of safe ones.

    Parameters
    ----------
    waters : Waters
        The tank's water and the new one.
    share : float
        New water, over 0 up to 1.
    emergency : bool
        True where poison is the greater danger.
    salting : bool
        True where it is salinity that is to move: only then is it moved in steps, which would
        end where the animals cannot live.
    """
    after = mixed(waters, share)
    found = broken(waters, after, emergency=emergency)
    largest = largest_safe_share(waters, emergency=emergency)
    steps: tuple[float, ...] = ()
    if not any(found.values()):
        steps = (share,)
    elif salting or not found["salinity"]:
        steps = schedule(waters, share, largest, emergency=emergency)
    return ChangePlan(
        share,
        after,
        tuple(name for name, is_broken in found.items() if is_broken),
        largest,
        steps,
        emergency,
        bears(waters, steps[0]) if steps and waters.total_n is None else None,
    )


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
    warmer = abs(water.temperature - before.temperature - waters.off * after.share)
    found: dict[str, Any] = {"temperature": warmer - limits.TEMPERATURE_STEP - ROUNDING}
    if emergency:
        rise = after.at_once - waters.tank.ph_now
        found |= {
            "share": after.share - limits.EMERGENCY_SHARE - TINY,
            "ph": rise - limits.EMERGENCY_PH_RISE - TINY,
            "ammonia": _poison_in_emergency(waters, after),
        }
    else:
        found |= {
            "kh": _kh_excess(waters, water.kh - before.kh),
            "ph": _ph_excess(waters, after),
            "ammonia": _poison(waters, after),
            "kh_floor": _less(waters.kh_floor - water.kh, before.kh - TINY - water.kh),
            **_minerals_excess(waters, after),
        }
    found["salinity"] = _salinity_excess(waters, after)
    return found | waters.taint.excesses(after.share)


def _minerals_excess(waters: Waters, after: Mixed) -> dict[str, Any]:
    """Hardness, or conductivity where that of one water is unknown, or so little that it is safe.

    In salt water salinity says it all.
    """
    before, water = waters.tank.water, after.water
    if "gh" in waters.known:
        found: dict[str, Any] = {"gh": abs(water.gh - before.gh) - limits.GH_STEP - ROUNDING}
        if not waters.is_salty:
            fall = before.gh - water.gh - TINY
            found["gh_floor"] = _less(waters.gh_floor - water.gh - TINY, fall)
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


def largest_safe_share(waters: Waters, *, emergency: bool = False) -> float:
    """The largest whole percentage that is safe with all smaller ones that were tried.

    Parameters
    ----------
    waters : Waters
        The tank's water and the new one.
    emergency : bool, optional
        True where poison is the greater danger.
    """

    def is_safe(percent: int) -> bool:
        return _is_safe(waters, percent / 100.0, emergency=emergency)

    top = 100
    if not emergency:
        top = min(top, math.ceil(100.0 * bound_by_sums(waters)))
    safe, unsafe = 0, top + 1
    for percent in (*(tried for tried in TRIED if tried < top), top):
        if not is_safe(percent):
            unsafe = percent
            break
        safe = percent
    while unsafe - safe > 1:
        middle = (safe + unsafe) // 2
        if is_safe(middle):
            safe = middle
        else:
            unsafe = middle
    return safe / 100.0


def first_safe_share(waters: Waters, shares: Sequence[float]) -> float | None:
    """The first of some shares, in falling order, that breaks no limit; None where all do."""
    bound = bound_by_sums(waters)
    return next((s for s in shares if s <= bound and _is_safe(waters, s, emergency=False)), None)


def _is_safe(waters: Waters, share: float, *, emergency: bool) -> bool:
    return not any(broken(waters, mixed(waters, share), emergency=emergency).values())


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


def schedule(
    waters: Waters, share: float, largest: float, *, emergency: bool = False
) -> tuple[float, ...]:
    """Equal changes, one a day, that together replace a share; empty where there are none."""
    if largest < limits.LEAST_SHARE:
        return ()
    whole = min(share, 0.99)  # all of the water is never replaced by parts
    if not emergency and _ends_unsafe(waters, whole):
        return ()
    count = math.ceil(math.log(1.0 - whole) / math.log(1.0 - min(largest, 0.99)) - TINY)
    while count <= limits.MOST_CHANGES:
        each = 1.0 - (1.0 - whole) ** (1.0 / count)
        if _all_safe(waters, each, count, emergency=emergency):
            return (each,) * count
        count += 1 + count // 4
    return ()


def _ends_unsafe(waters: Waters, whole: float) -> bool:
    """Whether the water that all changes lead to is itself over a limit, however small they are.

    At rest it is the same by whichever steps, so that none need be tried.
    """
    after = mixed(waters, whole)
    _, expected, leaves = after.poisonous
    leaves = leaves if after.open_air >= after.at_once else expected
    end = replace(after, at_once=after.expected, poisonous=(expected, expected, leaves))
    first = replace(waters, leaves_first=nh3_now(waters)[1])
    over = excesses(first, end, emergency=False)
    return any(over.get(name, 0.0) > ENDING for name in ("ammonia", "kh_floor", "gh_floor"))


def _all_safe(waters: Waters, each: float, count: int, *, emergency: bool) -> bool:
    waters = replace(waters, leaves_first=nh3_now(waters)[1])
    for _ in range(count):
        after = mixed(waters, each)
        if any(broken(waters, after, emergency=emergency).values()):
            return False
        waters = rested(waters, after)
    return True


def rested(waters: Waters, after: Mixed) -> Waters:
    """Both waters a day after a change: the tank at rest at its own temperature and CO2."""
    old = waters.tank
    share = after.share
    nitrate, minerals = waters.nitrate, waters.minerals
    return replace(
        waters,
        tank=replace(
            old,
            water=after.rest,
            ph=None if old.ph is None else after.expected,
            ph_now=after.expected,
            ph_open_air=after.open_air,
        ),
        total_n=None if waters.total_n is None else after.total_n,
        nitrate=None if nitrate is None else (_blend(nitrate, share), nitrate[1]),
        minerals=None if minerals is None else (_blend(minerals, share), minerals[1]),
        taint=waters.taint.after(share),
        kh_low=waters.kh_low + (waters.source.kh - waters.kh_low) * share,
    )


def bears(waters: Waters, share: float) -> float:
    """The highest total ammonia of the tank that a change of a share bears. [mg/L as N]"""
    one = replace(waters, total_n=1.0, source_n=0.0)
    after = mixed(one, share)
    _, leaves_now = nh3_now(one)
    at_once, expected, leaves = (float(each) for each in after.nh3)
    likely = max(expected if waters.tank.co2_known else leaves, at_once)
    deciding = likely
    if leaves > limits.NH3_RAISE * leaves_now or waters.source_n > 0.0:
        deciding = max(likely, leaves)
    # Each figure is of 1 mg/L in the tank before: what the new water brings comes off the limit.
    brought = waters.source_n * share * deciding / max(1.0 - share, TINY)
    return math.floor(max(waters.limit - brought, 0.0) / deciding * 100.0) / 100.0


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


def _blend(pair: tuple[float, float], share: float) -> float:
    return pair[0] + (pair[1] - pair[0]) * share


def _more(one: Any, other: Any) -> Any:
    return functions_for(one, other).maximum(one, other)


def _less(one: Any, other: Any) -> Any:
    return functions_for(one, other).minimum(one, other)
