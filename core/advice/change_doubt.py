"""How sure the figures of a water change are: the kits of both waters, the warmth, the volume.

As for doses (`kit_doubt`) the doubt adds words to a plan; it makes none and allows none.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from typing import Any, Final

from core.advice import limits
from core.advice.change_plan import ChangePlan, bound_by_sums, excesses
from core.advice.changes import Mixed, Waters, mixed, nh3_now
from core.advice.possibilities import (
    Truth,
    ammonia_of,
    at_rest,
    interval_of,
    tiled,
    warmth_of,
    water_with,
)
from core.advice.state import State
from core.errors import CoreError
from core.water import Water
from core.water.doubt import Estimate, Interval, sample
from core.water.solution import with_ph

POINTS: Final = 64
"""Possibilities; each is mixed in several shares."""

GRID: Final = (0.3, 0.65, 1.0)
"""Shares between which a limit's crossing is sought, of the largest that the sums may allow."""

ROOM: Final = 1.6
"""By how much the largest share may lie over that of the readings as they were told."""

Between = tuple[float, float]
"""Nine in ten possibilities lie between the two."""

STAGES: Final = ("at_once", "stood", "if_co2_leaves")


@dataclass(frozen=True, slots=True)
class ChangeDoubt:
    """Between which values the figures of a change lie in truth.

    Attributes
    ----------
    stages : mapping of str to mapping
        For at_once, stood and if_co2_leaves the ends of kh, gh, ph, nitrate and nh3_n, as far as
        each is known.
    largest_safe_share : tuple of float
        The largest share that breaks no limit.
    retest_first : tuple of str
        Analytes to measure again before the change that is advised, as within the kits' doubt it
        could poison or shock; empty where it could not.
    """

    stages: Mapping[str, Mapping[str, Between]]
    largest_safe_share: Between
    retest_first: tuple[str, ...]


def doubt_of_change(
    tank: State,
    source: State | None,
    waters: Waters,
    plan: ChangePlan,
    counted: Waters | None = None,
) -> ChangeDoubt | None:
    """Carry the doubt of the kits, of the warmth and of the volume through a change.

    Parameters
    ----------
    tank, source : State
        Both waters' readings; None for a source that is cut to the tank's KH as it is measured.
    waters : Waters
        What the plan was made of.
    plan : ChangePlan
        The change that was asked for, and what is advised.
    counted : Waters, optional
        The same with what its limits count besides, such as unmeasured chlorine.

    Returns
    -------
    ChangeDoubt or None
        None where an end of an interval is no water that can be.
    """
    try:
        found = sample(
            _carried(waters, plan, counted or waters), _readings(tank, source, waters), POINTS
        )
    except CoreError:
        return None
    stages = {
        stage: {
            name.removeprefix(f"{stage} "): _between(estimate)
            for name, estimate in found.items()
            if name.startswith(f"{stage} ")
        }
        for stage in STAGES
    }
    return ChangeDoubt(stages, _between(found["largest"]), _retest(found))


def _between(estimate: Estimate) -> Between:
    return estimate.low, estimate.high


def _retest(found: Mapping[str, Estimate]) -> tuple[str, ...]:
    """What decides: one possibility in twenty that harms is enough."""
    deciding = {"poisons": ("ammonia", "ph"), "shocks": ("ph", "kh"), "buffer": ("kh",)}
    named = (of for harm, of in deciding.items() if harm in found and found[harm].high > 0.5)
    return tuple(dict.fromkeys(analyte for each in named for analyte in each))


def _readings(tank: State, source: State | None, waters: Waters) -> dict[str, Truth]:
    volume = limits.VOLUME_DOUBT
    told: dict[str, Truth] = {"part": Interval(1.0 - volume, 1.0 + volume)}
    water = waters.tank.water
    told |= _hardness(tank, water, "")
    if isinstance(warm := warmth_of(tank, water.temperature), Interval):
        told["off"] = Interval(warm.low - water.temperature, warm.high - water.temperature)
    if waters.tank.ph is not None:
        told["ph"] = interval_of(tank, "ph") or waters.tank.ph
    else:
        told["pressure"] = Interval(limits.OPEN_AIR, limits.STOCKED_AIR)
    ammonia = ammonia_of(tank)
    if waters.total_n is not None and ammonia is not None:
        told["ammonia"] = ammonia
    if source is not None and source.last("kh") is not None and waters.source.kh > 0.0:
        told |= _hardness(source, waters.source, "new_")
        ph = interval_of(source, "ph")
        if ph is not None:
            told["new_ph"] = ph
    if waters.nitrate is not None and source is not None:
        for prefix, state, value in zip(("", "new_"), (tank, source), waters.nitrate, strict=True):
            told[f"{prefix}nitrate"] = interval_of(state, "nitrate") or value
    return told


def _hardness(state: State, water: Water, prefix: str) -> dict[str, Truth]:
    found: dict[str, Truth] = {}
    for name in ("kh", "gh"):
        known = interval_of(state, name)
        found[prefix + name] = getattr(water, name) if known is None else known
    return found


def _carried(waters: Waters, plan: ChangePlan, counted: Waters) -> Any:
    """The computation of all possibilities at once, in every share that is looked at."""
    advised = plan.steps[0] if plan.steps else plan.share
    top = min(1.0, ROOM * bound_by_sums(waters))
    shares = (*dict.fromkeys((plan.share, advised)), *(top * part for part in GRID))
    place, count = shares.index(advised), len(shares)

    def carried(part: Any, **told: Any) -> Mapping[str, Any]:
        size = len(part)
        here = _tank(waters, told, size)
        several = _several(here, count)
        share = _columns(shares, part)
        after = mixed(several, share)
        found = _figures(waters, told, after, size)
        more = counted.source_n - waters.source_n
        full = replace(after, total_n=after.total_n + more * share)
        several = replace(several, source_n=counted.source_n)
        over = _in_columns(excesses(several, full, emergency=plan.emergency), count, size)
        here = replace(here, source_n=counted.source_n)
        found["largest"] = _largest(here, over, share.reshape(count, size), plan)
        if plan.steps:
            jump = _split(abs(after.at_once - several.tank.ph_now), count, size)
            found["shocks"] = 1.0 * (jump[place] > limits.PH_DANGER)
            measured = replace(several, source_n=waters.source_n)
            own = excesses(measured, after, emergency=plan.emergency)
            for harm, name in (("poisons", "ammonia"), ("buffer", "kh_floor")):
                if name in own:
                    found[harm] = 1.0 * (_split(own[name], count, size)[place] > 0.0)
        return found

    return carried


def _tank(waters: Waters, told: Mapping[str, Any], size: int) -> Waters:
    """Both waters with their possibilities."""
    old = waters.tank
    water = water_with(old.water, told["kh"], told["gh"])
    if "ph" in told:
        solved = with_ph(water, told["ph"] + 0.0 * told["kh"])
        pressure: Any = solved.pco2
        pressure, ph, water = pressure.clip(0.01, 1e6), solved.ph, solved.water
        ((_, outdoors),) = at_rest((water,), (limits.OPEN_AIR,), size)
    else:
        pressure = told["pressure"]
        (carbon, ph), (_, outdoors) = at_rest((water, water), (pressure, limits.OPEN_AIR), size)
        water = replace(water, carbon=carbon)
    source = waters.source
    if "new_kh" in told:
        source = water_with(source, told["new_kh"], told["new_gh"])
        if "new_ph" in told:
            source = with_ph(source, told["new_ph"] + 0.0 * told["new_kh"]).water
    known = None if old.ph is None else ph
    outlook = replace(
        old, water=water, ph=known, pressure=pressure, ph_now=ph, ph_open_air=outdoors
    )
    total = told.get("ammonia", waters.total_n)
    return replace(
        waters, tank=outlook, source=source, total_n=total, off=told.get("off", waters.off)
    )


def _several(waters: Waters, times: int) -> Waters:
    """The possibilities once for each share that is looked at."""
    import numpy  # only where doubt is asked for

    def again(one: Any) -> Any:
        return one if one is None or isinstance(one, float) else numpy.tile(one, times)

    old = waters.tank
    outlook = replace(
        old,
        water=tiled(old.water, times),
        ph=again(old.ph),
        pressure=again(old.pressure),
        ph_now=again(old.ph_now),
        ph_open_air=again(old.ph_open_air),
    )
    source = tiled(waters.source, times)
    total, off = again(waters.total_n), again(waters.off)
    return replace(waters, tank=outlook, source=source, total_n=total, off=off)


def _columns(shares: tuple[float, ...], part: Any) -> Any:
    import numpy

    return numpy.concatenate([(share * part).clip(0.0, 1.0) for share in shares])


def _split(one: Any, count: int, size: int) -> Any:
    import numpy

    return numpy.broadcast_to(one, (count * size,)).reshape(count, size)


def _in_columns(over: Mapping[str, Any], count: int, size: int) -> dict[str, Any]:
    return {name: _split(each, count, size) for name, each in over.items()}


def _figures(waters: Waters, told: Mapping[str, Any], after: Mixed, size: int) -> dict[str, Any]:
    """The shown figures of the share that was asked for, by stage and name."""
    first = slice(0, size)
    found: dict[str, Any] = {}
    poison = after.nh3
    phs = (after.at_once, after.expected, after.leaves)
    for place, stage in enumerate(STAGES):
        figures: dict[str, Any] = {"kh": after.water.kh}
        if "gh" in waters.known:
            figures["gh"] = after.water.gh
        if waters.tank.co2_known or stage == "if_co2_leaves":
            figures["ph"] = phs[place]
            if waters.total_n is not None:
                figures["nh3_n"] = poison[place]
        if "nitrate" in told:
            old, new = told["nitrate"], told["new_nitrate"]
            figures["nitrate"] = old + (new - old) * after.share[first]
        for name, figure in figures.items():
            found[f"{stage} {name}"] = figure if isinstance(figure, float) else figure[first]
    return found


def _largest(here: Waters, over: Mapping[str, Any], shares: Any, plan: ChangePlan) -> Any:
    """The share at which the first limit is reached, on straight lines between those looked at."""
    import numpy

    grid = shares[len(shares) - len(GRID) :]
    start = excesses(here, _unchanged(here, shares[0]), emergency=plan.emergency)
    best = grid[-1]
    for name, each in over.items():
        columns = each[len(shares) - len(GRID) :]
        before, at = numpy.broadcast_to(start[name], best.shape), numpy.zeros(best.shape)
        reached = numpy.where(before > 0.0, 0.0, numpy.inf)
        for column, share in zip(columns, grid, strict=True):
            crosses = (column > 0.0) & numpy.isinf(reached)
            rise = numpy.where(crosses, column - before, 1.0)
            reached = numpy.where(crosses, at - (share - at) * before / rise, reached)
            before, at = column, share
        best = numpy.minimum(best, reached)
    return best


def _unchanged(here: Waters, part: Any) -> Mixed:
    """A change of nothing."""
    tank, none = here.tank, 0.0 * part
    water = tank.water
    now, leaves = nh3_now(replace(here, total_n=1.0))
    return Mixed(
        share=none,
        water=water,
        rest=water,
        at_once=tank.ph_now,
        expected=tank.ph_now,
        open_air=tank.ph_open_air,
        total_n=1.0 if here.total_n is None else here.total_n,
        poisonous=(now, now, leaves),
        minerals=None if here.minerals is None else here.minerals[0],
    )
