"""How sure the figures of a water change are: the kits of both waters, the warmth, the volume.

As for doses (`kit_doubt`) the doubt adds words to a plan; it makes none and allows none.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from typing import Any, Final

from core.advice import limits
from core.advice.change_limits import ammonia_excess, bound_by_sums, excesses
from core.advice.change_plan import ChangePlan
from core.advice.changes import Mixed, Waters, mixed, with_ammonia_of
from core.advice.possibilities import (
    Truth,
    ammonia_of,
    beside,
    interval_of,
    rows,
    warmth_of,
    water_with,
)
from core.advice.state import State
from core.errors import CoreError
from core.water import Water, in_air
from core.water.doubt import Estimate, Interval, sample
from core.water.solution import MOST_PRESSURE, with_ph

POINTS: Final = 64
"""Possibilities; each is mixed in several shares."""

GRID: Final = (0.0, 0.3, 0.65, 1.0)
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
    """The computation of all possibilities at once, a row each share that is looked at."""
    top = min(1.0, ROOM * bound_by_sums(waters))
    advised = plan.steps[0] if plan.steps else plan.share
    shares = (*(top * part for part in GRID), *dict.fromkeys((plan.share, advised)))

    def carried(part: Any, **told: Any) -> Mapping[str, Any]:
        import numpy  # only where doubt is asked for

        share = (numpy.array(shares)[:, None] * part).clip(0.0, 1.0)
        here = _tank(waters, told, len(part))
        after = mixed(here, share)
        here = replace(here, tank=replace(here.tank, ph_open_air=after.open_air[0]))
        full = replace(here, source_n=counted.source_n)
        over = excesses(full, with_ammonia_of(after, full), emergency=plan.emergency)
        found = _figures(here, told, after)
        found["largest"] = _largest(over, share)
        if plan.steps:
            jump = abs(after.at_once - here.tank.ph_now)
            harms = {
                "shocks": jump - limits.PH_DANGER,
                "poisons": ammonia_excess(here, after, emergency=plan.emergency),
                "buffer": over.get("kh_floor", -1.0),
            }
            found |= {
                name: 1.0 * (numpy.broadcast_to(each, share.shape)[-1] > 0.0)
                for name, each in harms.items()
            }
        return found

    return carried


ASKED: Final = len(GRID)
"""The row of the share that was asked for; the last is of the first that is advised."""


def _tank(waters: Waters, told: Mapping[str, Any], size: int) -> Waters:
    """Both waters with their possibilities; the tank's pH in open air is left to be found."""
    old, source = waters.tank, waters.source
    water = water_with(old.water, told["kh"], told["gh"])
    if "new_kh" in told:
        source = water_with(source, told["new_kh"], told["new_gh"])
    read = {name: each for name, each in (("ph", water), ("new_ph", source)) if name in told}
    carbon, pressure = _by_ph(read, told, size)
    if "new_ph" in told:
        source = source.changed(carbon=carbon["new_ph"])
    if "ph" in told:
        air, water = pressure["ph"].clip(0.01, MOST_PRESSURE), water.changed(carbon=carbon["ph"])
        ph = known = told["ph"] + 0.0 * air
    else:
        air, known = told["pressure"], None
        rested = in_air(water, air)
        water, ph = rested.water, rested.ph
    outlook = replace(old, water=water, ph=known, pressure=air, ph_now=ph)
    total = told.get("ammonia", waters.total_n)
    return replace(
        waters, tank=outlook, source=source, total_n=total, off=told.get("off", waters.off)
    )


def _by_ph(read: Mapping[str, Water], told: Mapping[str, Any], size: int) -> Any:
    """The carbon that each water's pH implies, and the pressure of its carbon dioxide."""
    if not read:
        return {}, {}
    solved: Any = with_ph(
        beside(tuple(read.values()), size), rows([told[name] for name in read], size)
    )
    return tuple(dict(zip(read, each, strict=True)) for each in (solved.water.carbon, solved.pco2))


def _figures(waters: Waters, told: Mapping[str, Any], after: Mixed) -> dict[str, Any]:
    """The shown figures of the share that was asked for, by stage and name."""
    found: dict[str, Any] = {}
    poison = after.nh3
    phs = (after.at_once, after.expected, after.leaves)
    kh, gh = after.water.kh, after.water.gh
    for place, stage in enumerate(STAGES):
        figures: dict[str, Any] = {"kh": kh}
        if "gh" in waters.known:
            figures["gh"] = gh
        if waters.tank.co2_known or stage == "if_co2_leaves":
            figures["ph"] = phs[place]
            if waters.total_n is not None:
                figures["nh3_n"] = poison[place]
        if "nitrate" in told:
            old, new = told["nitrate"], told["new_nitrate"]
            figures["nitrate"] = old + (new - old) * after.share
        for name, figure in figures.items():
            found[f"{stage} {name}"] = figure if isinstance(figure, float) else figure[ASKED]
    return found


def _largest(over: Mapping[str, Any], shares: Any) -> Any:
    """The share at which the first limit is reached, on straight lines between those looked at."""
    import numpy

    grid = shares[: len(GRID)]
    past = numpy.stack([numpy.broadcast_to(e, shares.shape)[: len(GRID)] for e in over.values()])
    before, behind = past[:, :-1], past[:, 1:]
    crosses = (before <= 0.0) & (behind > 0.0)
    along = before / numpy.where(crosses, before - behind, 1.0)
    reached = numpy.where(crosses, grid[:-1] + (grid[1:] - grid[:-1]) * along, numpy.inf)
    first = numpy.where((past[:, 0] > 0.0).any(axis=0), 0.0, grid[-1])
    return numpy.minimum(first, reached.min(axis=(0, 1)))
