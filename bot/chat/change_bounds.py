"""What binds a change beside the figures: unmeasured chlorine, salt, warmth, what taints it."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

from bot.chat.said_water import Said
from bot.chat.waters import Supply
from bot.chat.words import change_verdict as verdict
from bot.chat.words import changes as words
from bot.chat.words import warming as warming_words
from core.advice import limits
from core.advice.change_plan import ChangePlan, largest_safe_share, plan_change, schedule
from core.advice.changes import Waters, salinity_unknown, waters_of, with_chloramine
from core.advice.repeated import in_a_day, safe_times
from core.advice.state import State
from core.advice.tainted import chlorine_measured
from core.advice.warming import coldest_safe, warmest_safe
from core.errors import CoreError


def counting_chloramine(
    waters: Waters, plan: ChangePlan, supply: Supply, *, cut: float, salting: bool
) -> tuple[ChangePlan, dict[str, Any]]:
    """Plan as if unmeasured chlorine were chloramine, which frees ammonia once it is bound.

    Parameters
    ----------
    waters : Waters
        The tank's water and the new one.
    plan : ChangePlan
        By what was measured; its figures stay.
    supply : Supply
        The new water.
    cut : float
        Pure water that it is cut with, 0 to 1.
    salting : bool
        As for `plan_change`.

    Returns
    -------
    tuple of ChangePlan and dict
        With the facts of what chlorine changes, where it does.
    """
    freed = counted_in(waters, supply, cut)
    if freed is waters:
        return plan, {}
    counted = plan_change(freed, plan.share, emergency=plan.emergency, salting=salting)
    broken, steps = counted.broken, counted.steps
    if "ammonia" in broken and "ammonia" not in plan.broken:
        broken = tuple("chloramine" if name == "ammonia" else name for name in broken)
    if plan.steps and not steps:  # a filter eats what one day frees before the next
        largest = counted.largest_safe_share
        steps = schedule(waters, plan.share, largest, emergency=plan.emergency)
    found = replace(counted, after=plan.after, broken=broken, steps=steps)
    if counted.largest_safe_share >= min(plan.share, plan.largest_safe_share):
        return found, {}
    return found, {
        "largest_if_chloramine": counted.largest_safe_share,
        "largest_without_chlorine": plan.largest_safe_share,
    }


def counted_in(waters: Waters, supply: Supply, cut: float = 0.0) -> Waters:
    """The waters with unmeasured chlorine counted as chloramine; the same where there is none."""
    if supply.treated <= 0.0 or chlorine_measured(supply.state):
        return waters
    return with_chloramine(waters, supply.treated * (1.0 - cut))


def largest_safe(tank: State, supply: Supply) -> float | None:
    """The largest share that is safe at once; None where it cannot be told."""
    try:
        waters = waters_of(tank, supply.state)
    except CoreError:
        return None
    if waters is None or salinity_unknown(tank):
        return None
    return largest_safe_share(counted_in(waters, supply))


def beside(supply: Supply, waters: Waters, plan: ChangePlan, facts: dict[str, Any]) -> list[str]:
    """What stands beside the first line: what to do first, and what the new water is."""
    lines = [] if plan.steps else verdict.no_steps(plan, waters)
    if "ro_share" in facts:
        lines.insert(0, words.cut(facts["ro_share"]))
    if waters.is_salty and supply.state.last("salinity") is None:
        lines.append(verdict.counted_fresh(supply.name))
    if "temperature" in plan.broken:
        lines.append(_warmth(waters, plan.share, facts))
    if "largest_if_chloramine" in facts:
        lines.append(verdict.chloramine(facts["largest_if_chloramine"]))
    if "minerals" in plan.broken:
        lines.append(verdict.gh_wanted())
    if (copper := waters.taint.copper[1]) > 0.0 and "copper" not in plan.broken:
        lines.append(verdict.copper_told(copper))
    return lines


def _warmth(waters: Waters, share: float, facts: dict[str, Any]) -> str:
    """How warm the new water has to be, or may be, for the share that was asked about."""
    tank = waters.tank.water.temperature
    if waters.source.temperature > tank:
        facts["new_water_to"] = warmest_safe(tank, share, limits.TEMPERATURE_STEP)
        return warming_words.cool_first(facts["new_water_to"])
    facts["new_water_from"] = coldest_safe(tank, share, limits.TEMPERATURE_STEP)
    return warming_words.warm_first(facts["new_water_from"])


def as_asked(supply: Supply, share: float, said: Said | None) -> tuple[list[str], dict[str, Any]]:
    """What the question itself said of its water and of how often, with its facts."""
    if said is None:
        return [], {}
    lines: list[str] = []
    facts: dict[str, Any] = {}
    if said.times > 1:
        facts["times_a_day"] = said.times
        lines.append(verdict.in_a_day(share, said.times, in_a_day(share, said.times)))
    if said.readings:
        facts["source_said"] = said.figures
        lines.append(verdict.said(said.figures, supply.name))
    return lines, facts


def again(tank: str, waters: Waters, plan: ChangePlan, facts: dict[str, Any]) -> list[str]:
    """The first line where a change is safe once, but not as often as is asked."""
    times, broken = safe_times(waters, plan.share)
    if not broken:
        return []
    facts["safe_times"] = times
    return [verdict.not_again(tank, plan.share, times, broken)]
