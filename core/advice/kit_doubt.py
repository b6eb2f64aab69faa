"""How sure a plan's figures are: the kits' steps and the volume carried through its chemistry.

The possibilities are those of `core.water.doubt`: the same readings give the same interval. The
doubt adds words to a plan; it makes none and allows none.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from typing import Any, Final

from core.advice import limits
from core.advice.ammonia_gate import gate_limit
from core.advice.nobodys import is_nobodys
from core.advice.outlook import Dose, Outlook, un_ionised_share
from core.advice.plan import Plan
from core.advice.possibilities import ammonia_of, beside, interval_of, rows, warmth_of, water_with
from core.advice.state import State
from core.errors import CoreError
from core.water import Water, add, in_air, solve
from core.water.doubt import Estimate, Interval, sample
from core.water.solution import with_ph

POINTS: Final = 256
"""Possibilities: against twenty thousand the ends of an interval move by a fiftieth of it."""

Between = tuple[float, float]
"""Nine in ten possibilities lie between the two."""


@dataclass(frozen=True, slots=True)
class KitDoubt:
    """Between which values the figures of a plan lie in truth, after its last part.

    Attributes
    ----------
    kh : tuple of float
        [°dH]
    gh : tuple of float or None
        None where it was never read. [°dH]
    ph_at_once : tuple of float or None
        None where the tank's own carbon dioxide is unknown.
    ph_stood, ph_leaves : tuple of float
        With the carbon dioxide that is expected, and if it leaves.
    nh3_n : tuple of float or None
        Un-ionised ammonia, expected; None where total ammonia is unknown. [mg/L as N]
    over_gate : bool
        True where the plan passes its gate but its upper end does not.
    """

    kh: Between
    gh: Between | None
    ph_at_once: Between | None
    ph_stood: Between
    ph_leaves: Between
    nh3_n: Between | None
    over_gate: bool


def doubt_of(plan: Plan) -> KitDoubt | None:
    """Carry the doubt of the kits and of the volume through a plan.

    Parameters
    ----------
    plan : Plan
        With the readings that it was made of, the question's own premises included.

    Returns
    -------
    KitDoubt or None
        None where nothing was said of pH, or KH was too low to tell how little there is.
    """
    outlook, state = plan.outlook, plan.told
    if state is None or outlook is None or not plan.stages or plan.blind:
        return None
    try:
        found = sample(_after(plan, outlook), _readings(state, outlook), POINTS)
    except CoreError:  # an end of an interval that no water can have
        return None
    nh3 = _between(found["nh3_n"]) if "nh3_n" in found else None
    return KitDoubt(
        kh=_between(found["kh"]),
        gh=_between(found["gh"]) if state.last("gh") is not None else None,
        ph_at_once=_between(found["ph_at_once"]) if outlook.co2_known else None,
        ph_stood=_between(found["ph_stood"]),
        ph_leaves=_between(found["ph_leaves"]),
        nh3_n=nh3,
        over_gate=nh3 is not None and not is_nobodys(state) and nh3[1] > gate_limit(state),
    )


def _between(estimate: Estimate) -> Between:
    return estimate.low, estimate.high


def _readings(state: State, outlook: Outlook) -> dict[str, Interval | float]:
    doubt = limits.VOLUME_DOUBT
    told: dict[str, Interval | float] = {"volume": Interval(1.0 - doubt, 1.0 + doubt)}
    for name in ("kh", "gh"):
        known = interval_of(state, name)
        told[name] = getattr(outlook.water, name) if known is None else known
    if outlook.ph is not None:
        told["ph"] = interval_of(state, "ph") or outlook.ph
    else:
        told["pressure"] = Interval(limits.OPEN_AIR, limits.STOCKED_AIR)
    if (ammonia := ammonia_of(state)) is not None:
        told["ammonia"] = ammonia
    told["temperature"] = warmth_of(state, outlook.water.temperature)
    return told


def _after(plan: Plan, outlook: Outlook) -> Any:
    """The computation of all possibilities at once: after the last part of the plan."""
    each: Dose = [(salt.substance, salt.grams / plan.count) for salt in plan.salts]

    def after(volume: Any, kh: Any, gh: Any, temperature: Any, **told: Any) -> Mapping[str, Any]:
        water = water_with(outlook.water, kh, gh)
        litres = plan.volume_l * volume
        if "ph" in told:
            pressure: Any = with_ph(water, told["ph"] + 0.0 * volume).pco2
            pressure = pressure.clip(0.01, 1e6)
        else:
            pressure = told["pressure"]
        before = _dosed(water, each, litres, plan.count - 1)
        mixed = _dosed(before, each, litres, 1)
        size = len(volume)
        rest: Any = in_air(
            beside((before, mixed, mixed), size), rows((pressure, pressure, limits.OPEN_AIR), size)
        )
        resting, _, _ = rest.water.carbon
        _, stood, open_air = rest.ph
        brought = mixed.carbon - before.carbon
        at_once = solve(replace(mixed, carbon=resting + brought)).ph
        worst = at_once + (stood - at_once) * (stood > at_once)
        leaves = worst + (open_air - worst) * (open_air > worst)
        found = {
            "kh": mixed.kh,
            "gh": mixed.gh,
            "ph_at_once": at_once,
            "ph_stood": stood,
            "ph_leaves": leaves,
        }
        if "ammonia" in told:
            found["nh3_n"] = told["ammonia"] * un_ionised_share(mixed, worst, temperature)
        return found

    return after


def _dosed(water: Water, part: Dose, litres: Any, times: int) -> Water:
    for name, grams in part:
        water = add(water, name, grams * times, litres)
    return water
