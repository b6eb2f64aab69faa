"""What binds a change beside the figures: unmeasured chlorine, salt, warmth, what taints it."""

from __future__ import annotations

from typing import Any

from bot.chat.change_asked import Asked
from bot.chat.said_water import Said
from bot.chat.supply import Supply
from bot.chat.words import change_verdict as verdict
from bot.chat.words import changes as words
from bot.chat.words import warming as warming_words
from core.advice import limits
from core.advice.change_plan import ChangePlan, largest_safe_share
from core.advice.changes import Waters, salinity_unknown, waters_of, with_chloramine
from core.advice.repeated import in_a_day, safe_times
from core.advice.state import State
from core.advice.tainted import chlorine_measured
from core.advice.warming import coldest_safe, warmest_safe
from core.errors import CoreError


def chlorine_facts(plan: ChangePlan) -> dict[str, Any]:
    """What unmeasured chlorine changes, where it does: as chloramine it brings ammonia."""
    if plan.largest_safe_share >= min(plan.share, plan.largest_as_measured):
        return {}
    return {
        "largest_if_chloramine": plan.largest_safe_share,
        "largest_without_chlorine": plan.largest_as_measured,
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


def since_tested(asked: Asked, facts: dict[str, Any]) -> list[str]:
    """That what went in since the last test is counted, and what the tank then has."""
    kh = asked.tank.last("kh")
    if not asked.dosed or kh is None:
        return []
    facts["dosed_since"] = {"kh": kh.value}
    return [words.dosed_since(kh.value)]


def beside(supply: Supply, waters: Waters, plan: ChangePlan, facts: dict[str, Any]) -> list[str]:
    """What stands beside the first line: what to do first, and what the new water is."""
    lines = [] if plan.steps else verdict.no_steps(plan, waters)
    if "ro_share" in facts:
        lines.insert(0, words.cut(facts["ro_share"]))
    if waters.is_salty and supply.state.last("salinity") is None:
        lines.append(verdict.counted_fresh(supply.name))
    if "temperature" in plan.broken and (not plan.steps or plan.broken == ("temperature",)):
        # else it would be told for a share that is refused all the same
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
