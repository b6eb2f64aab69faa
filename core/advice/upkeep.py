"""What a reef uses up in a day, and what holds a value once it is right."""

from __future__ import annotations

from dataclasses import replace
from typing import Final

from core.advice import limits
from core.advice.ammonia_gate import gate_for
from core.advice.outlook import Outlook, Stage, staged, steepness
from core.advice.plan import Plan, Upkeep, Weighed
from core.advice.scheduling import RAISED, per_gram, saturation_after, steps_of
from core.advice.state import Measured, State
from core.advice.trends import with_doubt
from core.advice.used_up import Consumption, consumption

USED_UP: Final = frozenset({"kh", "calcium", "magnesium"})
"""What corals and calcareous algae take up."""


def with_upkeep(plan: Plan, state: State) -> Plan:
    """Add to a plan for the sea what holds its value once the correction is done.

    Parameters
    ----------
    plan : Plan
        A correction of one analyte.
    state : State
        With its history and events.

    Returns
    -------
    Plan
        The same plan where two readings do not surely show a use. The gate of ammonia then looks
        at the daily amount too.
    """
    outlook, (goal, *others) = plan.outlook, plan.goals
    if not state.tank.is_sea or outlook is None or others or goal.analyte not in USED_UP:
        return plan
    used = used_up(state, goal.analyte)
    if used is None or not used.is_sure:
        return plan
    bare = replace(plan, upkeep=Upkeep(goal.analyte, used, None))
    if used.per_day > steps_of(state.tank)[goal.analyte]:
        return bare
    salt = Weighed(
        plan.substance, used.per_day * plan.volume_l / per_gram(plan.substance, goal.analyte)
    )
    after = _borne(outlook, plan.stages[-1], salt, plan.volume_l)
    if after is None:
        return bare
    gate = gate_for(state, outlook, [*plan.stages, after])
    if isinstance(gate, str):
        return bare
    if plan.gate is not None:
        gate = replace(gate, nh3_n=plan.gate.nh3_n)
    nothing_raised = plan.gate is None and after.leaves <= outlook.ph_leaves + RAISED
    return replace(
        plan,
        upkeep=Upkeep(goal.analyte, used, salt),
        gate=None if nothing_raised else gate,
    )


def used_up(state: State, analyte: str) -> Consumption | None:
    """What the last two readings of an analyte say is used up a day; None where they cannot."""
    pair = undisturbed_pair(state, analyte)
    return None if pair is None else consumption(*map(with_doubt, pair))


def undisturbed_pair(state: State, analyte: str) -> tuple[Measured, Measured] | None:
    """The last two readings of an analyte, where nothing was done to the water between them."""
    told = state.past.between(analyte, state.now - limits.NEED_LOOKED_BACK, state.now)
    if len(told) < 2 or state.events is None or not told[-1].is_fresh(state.now):
        return None
    earlier, later = told[-2:]
    if any(e.disturbs and earlier.at <= e.at <= later.at for e in state.events):
        return None
    return earlier, later


def _borne(outlook: Outlook, last: Stage, salt: Weighed, volume_l: float) -> Stage | None:
    """The water after a day's amount at one time; None where a step or saturation forbids it."""
    part = [(salt.substance, salt.grams)]
    (after,) = staged(replace(outlook, water=last.water), [part], volume_l)
    if steepness(outlook, last, after) > limits.PH_STEP + limits.PH_ROUNDING:
        return None
    if saturation_after(last.water, part, volume_l, after) > limits.SATURATION_REFUSED:
        return None
    return after
