"""What the choice of the new water does to a change: its season, its age, and how it stood."""

from __future__ import annotations

from dataclasses import replace
from typing import Any, Final

from bot.chat.supply import Supply, latitude
from bot.chat.turn import Turn
from bot.chat.words import waters as words
from core.advice import limits
from core.advice.change_plan import ChangePlan, plan_change
from core.advice.changes import Waters, waters_of
from core.advice.gassing import rising
from core.advice.state import State
from core.errors import CoreError
from core.water import solve

LARGE: Final = 0.2
"""From this share on a change is large enough for the CO2 of its water to matter; our judgement."""

TOLD_APART: Final = 0.1
"""Of a pH, what is shown of it."""

APART: Final = 0.05
"""Largest safe shares that differ by less say the same."""


def stricter(tank: State, supply: Supply) -> Supply:
    """Where nothing tells the season: the profile that allows less."""
    other = supply.other
    if other is None or supply.certain:
        return supply
    here, there = (_largest(tank, each.state) for each in (supply, other))
    if here is None or there is None or here <= there:
        return supply
    return replace(other, certain=False, other=replace(supply, other=None))


def notes(
    turn: Turn, tank: State, supply: Supply, plan: ChangePlan, facts: dict[str, Any]
) -> list[str]:
    """What is said of the new water beside the change, most important first; adds its facts."""
    lines: list[str] = []
    if supply.parts:
        facts["source_parts"] = [{"source": name, "share": part} for name, part in supply.parts]
    if plan.share >= LARGE and not plan.emergency:
        lines += _gas(tank, supply, plan, facts)
    lines += _season(turn, tank, supply, plan, facts)
    if supply.measured_at is not None:
        facts["source_measured_days"] = (turn.local_now - supply.measured_at).days
        lines.append(words.old(supply.name, supply.measured_at, turn.local_now))
    return lines


def _season(
    turn: Turn, tank: State, supply: Supply, plan: ChangePlan, facts: dict[str, Any]
) -> list[str]:
    if supply.season is None:
        return []
    facts["season"] = supply.season
    name = words.season(supply.name, supply.season)
    other = supply.other
    if other is None and not supply.certain and latitude(turn) is not None:
        return [words.only_other_season(name)]
    if other is None or plan.emergency:
        return [words.used(name)]
    safe = _largest(tank, other.state)
    differs = safe is not None and abs(safe - plan.largest_safe_share) >= APART
    lines = [words.used(name) if supply.certain or not differs else words.guessed(name)]
    if differs and safe is not None and other.season is not None:
        facts["other_season_share"] = safe
        lines.append(words.other_season(words.season(other.name, other.season), safe))
    return lines


def _gas(tank: State, supply: Supply, plan: ChangePlan, facts: dict[str, Any]) -> list[str]:
    """The carbon dioxide that comes with the new water, and what letting it stand would do."""
    lines = []
    if supply.state.last("ph") is not None:
        co2 = float(solve(plan.after.water).co2_mg_l)
        if co2 > limits.CO2_WARN:
            facts["co2_at_once"] = co2
            lines.append(words.much_co2(co2))
    if supply.stood is not None:
        return [*lines, *_stood(tank, supply, supply.stood, plan, facts)]
    found = rising(supply.state)
    if found is not None:
        facts["source_co2"], facts["rises_to"] = found.co2, [found.low, found.high]
        lines.append(words.rises(supply.name, found.co2, found.low, found.high))
    return lines


def _stood(
    tank: State, supply: Supply, stood: State, plan: ChangePlan, facts: dict[str, Any]
) -> list[str]:
    waters, ph = _waters(tank, stood), stood.last("ph")
    if waters is None or ph is None:
        return []
    again = plan_change(waters, plan.share)
    facts["source_stood"] = {
        "ph": ph.value,
        "at_once": float(again.after.at_once),
        "largest_safe_share": again.largest_safe_share,
    }
    if supply.state.last("ph") is None:
        return [words.only_stood(supply.name)]
    raised = abs(float(again.after.at_once - plan.after.at_once)) >= TOLD_APART
    if not raised and abs(again.largest_safe_share - plan.largest_safe_share) < APART:
        return []  # it makes no difference worth a line
    return [words.stood_first(ph.value, again.largest_safe_share, float(again.after.at_once))]


def _largest(tank: State, source: State) -> float | None:
    waters = _waters(tank, source)
    return None if waters is None else plan_change(waters, 1.0).largest_safe_share


def _waters(tank: State, source: State) -> Waters | None:
    try:
        return waters_of(tank, source)
    except CoreError:
        return None
