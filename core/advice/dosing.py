"""How much buffer raises KH: a plan in parts that animals can follow, or why there is none.

No number of grams leaves this module before every gate is passed.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from typing import Final

from core.advice import limits
from core.advice.bounds import past_animals
from core.advice.buffers import BUFFERS, IN_THE_SEA, STRONG
from core.advice.crash import kh_step
from core.advice.findings import find
from core.advice.outlook import (
    Outlook,
    Stage,
    outlook_for_buffer,
    outlook_of,
    staged,
    steepness,
    with_premises,
)
from core.advice.plan import Fact, Goal, Plan, Refusal, Weighed
from core.advice.potassium import adds_up, judge_potassium
from core.advice.scheduling import (
    added_ions,
    ammonia_facts,
    conflict,
    in_parts,
    saturation_caution,
)
from core.advice.since import changed_since, first_part, moved_today, outdated
from core.advice.state import Measured, State, degree_step
from core.advice.upkeep import with_upkeep
from core.errors import CoreError
from core.substances import ACIDS
from core.water import SUBSTANCES, substance
from core.water.water import MEQ_PER_DH

__all__ = ["Plan", "Refusal", "Wish", "grams_for", "plan_kh"]

KH_HIGHEST: Final = 25.0
"""A wish over this is taken for a slip or another unit. [°dH]"""


@dataclass(frozen=True, slots=True)
class Wish:
    """KH wanted in a volume of water: `target`, or a rise by `delta`. [°dH, L]

    `start` is the KH that the question itself states; None takes the tank's last reading.
    `premises` are its other conditions by analyte, which stand for readings. `called` is True
    where the keeper calls it an emergency. `parts` are wished at least.
    """

    target: float | None = None
    delta: float | None = None
    start: float | None = None
    volume_l: float | None = None
    substance: str = "sodium bicarbonate"
    premises: Mapping[str, float] = field(default_factory=dict)
    called: bool = False
    parts: int = 1


def grams_for(name: str, degrees: float, volume_l: float) -> float:
    """Mass of a buffer that raises KH by so many degrees in so much water.

    Parameters
    ----------
    name : str
        A substance of `core.water.substances` that brings alkalinity, pure.
    degrees : float
        Rise of KH. [°dH]
    volume_l : float
        Net volume. [L]

    Returns
    -------
    float
        Mass. [g]

    Examples
    --------
    Common practice: 30 mg/L of sodium bicarbonate for one degree, 3.6 g in 120 L.

    >>> round(grams_for("sodium bicarbonate", 1.0, 120.0), 2)
    3.6
    """
    return degrees * MEQ_PER_DH * volume_l / substance(name).alkalinity_per_gram


def plan_kh(wish: Wish, state: State, *, known_tank: bool) -> Plan | Refusal:
    """Work out a plan that raises KH, or say why there is none.

    Parameters
    ----------
    wish : Wish
        What is wanted.
    state : State
        The tank and its last readings; an empty one for a question without set-up.
    known_tank : bool
        False where the question is about any water, not a tank on record.
    """
    if (problem := refused_substance(wish.substance, state)) is not None:
        return problem
    volume = volume_for(wish.volume_l, state)
    if isinstance(volume, Refusal):
        return volume
    start = _start(wish, state)
    if isinstance(start, Refusal):
        return start
    target = wish.target if wish.target is not None else start.value + (wish.delta or 0.0)
    told = with_premises(state, wish.premises)
    if wish.start is not None:
        told = replace(told, readings={**told.readings, "kh": start})
    if problem := _refused_target(start, target) or conflict(told):
        return problem
    if (bound := past_animals(state, {"kh": (start.value, target)})) is not None:
        return bound.refusal
    if wish.start is None and (problem := outdated(state, start)) is not None:
        return problem
    try:
        plan = _planned(wish, told, volume, start, target, known_tank=known_tank)
        if isinstance(plan, Refusal) or wish.start is not None:
            return plan
        step = limits.KH_STEP_EMERGENCY if plan.emergency else limits.KH_STEP
        return moved_today(state, first_part(plan), kh_step=step) or plan
    except CoreError:  # readings that no water can have together
        return Refusal("contradiction", {"kh": start.value, **_ph_fact(told)})


def refused_substance(name: str, state: State) -> Refusal | None:
    """Refuse what must not go into this water to raise KH, or what we do not know."""
    facts: dict[str, Fact] = {"substance": name}
    if name in BUFFERS:
        return None
    if name in ACIDS:
        return Refusal("acid", facts)
    if name in STRONG:
        if not state.tank.is_sea:
            return Refusal("carbonate", facts)
        if name == "sodium carbonate":
            return Refusal("hydrate_unknown", facts)
        return None if name in IN_THE_SEA else Refusal("carbonate", facts)
    if name in SUBSTANCES:
        return Refusal("raises_none", {**facts, "analyte": "kh"})
    return Refusal("substance_unknown", facts)


def volume_for(said: float | None, state: State) -> float | Refusal:
    """The net volume to reckon with, or why there is none. [L]"""
    volume = said if said is not None else state.tank.volume_l
    if volume is None:
        return Refusal("volume_unknown")
    if not limits.VOLUME_SMALLEST <= volume <= limits.VOLUME_LARGEST:
        return Refusal("volume_implausible", {"volume_l": volume})
    return volume


def _start(wish: Wish, state: State) -> Measured | Refusal:
    """The KH to start from, as an interval."""
    if wish.start is not None:
        if wish.start < 0.0:
            return Refusal("kh_unknown")
        step = degree_step(wish.start)
        low = max(0.0, wish.start - step)
        return Measured("kh", wish.start, low, wish.start, state.now, step=step)
    reading = state.last("kh")
    if reading is None:
        return Refusal("kh_unknown")
    if reading.is_limit and reading.qualifier == ">":
        return Refusal("kh_limit", {"kh": reading.value})
    return reading


def _refused_target(start: Measured, target: float) -> Refusal | None:
    facts: dict[str, Fact] = {"from": start.value, "to": target}
    if target <= start.value + 1e-9:
        return Refusal("target_reached", facts)
    if target > KH_HIGHEST:
        return Refusal("target_implausible", facts | {"highest": KH_HIGHEST})
    return None


def _planned(
    wish: Wish, state: State, volume: float, start: Measured, target: float, *, known_tank: bool
) -> Plan | Refusal:
    outlook = outlook_of(state, start.value, kh_is_fresh=start.is_fresh(state.now))
    blind = is_blind(start)
    step = kh_step(state, called=wish.called)
    rises = first_parts(state) if blind else (target - start.value,)
    for rise in rises:
        goal = Goal("kh", start.value, min(target, start.value + rise))
        salts = (Weighed(wish.substance, grams_for(wish.substance, goal.change, volume)),)
        most = 1 if blind else max(1, int(goal.change / limits.LEAST_PART + 1e-9))
        # Where KH is next to nothing the least part is given whatever pH is reckoned: no kit
        # tells how little there is, and the keeper measures before the next.
        schedule = in_parts(
            state,
            outlook,
            salts,
            volume,
            most,
            least=wish.parts,
            ph_bound=not (blind and rise == rises[-1]),
            kh_step=step,
        )
        if not isinstance(schedule, Refusal) or schedule.reason != "ph_step":
            break
    if isinstance(schedule, Refusal):
        return replace(schedule, facts={"from": goal.start, "to": goal.target, **schedule.facts})
    unmeasured = schedule.gate is not None and schedule.gate.only_below is not None
    if blind and known_tank and unmeasured:
        return Refusal("ammonia_unmeasured", {"kh": start.value})
    if blind and any(f.id == "ammonia" for f in find(state, frozenset({"ammonia"}))):
        return Refusal("ammonia", ammonia_facts(state))  # pH would jump, and poison is there
    added = added_ions(salts, volume)
    potassium = judge_potassium(state, added)
    if potassium == "mussels":
        return Refusal("potassium_mussels", {"substance": wish.substance})
    stages = schedule.stages
    if blind:  # judged by the reading as it stands, told by what can be
        outlook = outlook_for_buffer(state, start)
        part = [(wish.substance, salts[0].grams)]
        stages = tuple(staged(outlook, [part], volume))
    plan = Plan(
        goals=(goal,),
        volume_l=volume,
        salts=salts,
        count=schedule.count,
        every_hours=limits.DOSE_EVERY_HOURS,
        outlook=outlook,
        stages=stages,
        gate=schedule.gate,
        added=added,
        blind=blind,
        reading_age=None if wish.start is not None else start.age(state.now),
        within_kit=not blind and goal.change < start.step + 1e-9,
        told=state,
        changed_since=wish.start is None and changed_since(state, start),
        emergency=goal.change / schedule.count > limits.KH_STEP + 1e-9,
        cautions=(
            *_cautions(wish.substance, state),
            *saturation_caution(schedule, state),
            *(["potassium"] if potassium else []),
            *(["ph_jumps"] if blind and _jumps(outlook, stages[0]) else []),
            *(["sodium"] if adds_up(state, added) else []),
        ),
    )
    return with_upkeep(plan, state)


def _jumps(outlook: Outlook, first: Stage) -> bool:
    """Whether even the least part moves pH by more than a day's step."""
    return steepness(outlook, None, first) > limits.PH_STEP + limits.PH_ROUNDING


def _cautions(name: str, state: State) -> tuple[str, ...]:
    """Ids of what must be said before the grams of a buffer."""
    found = ["alkaline_dust"] if name in STRONG else []
    return (*found, "sea_precipitation") if state.tank.is_sea else tuple(found)


def is_blind(kh: Measured) -> bool:
    """Whether KH may be so low that nothing is planned but one small part."""
    return kh.low < limits.KH_BLIND_BELOW


def first_parts(state: State) -> tuple[float, ...]:
    """How far KH may be raised where it is too low to plan, the wished one first. [°dH]"""
    ph = state.fresh("ph")
    if ph is not None and ph.value < limits.ACID_PH:
        return (limits.KH_FIRST_PART_ACID,)
    return limits.KH_FIRST_PART, limits.KH_FIRST_PART_ACID


def _ph_fact(state: State) -> dict[str, Fact]:
    ph = state.fresh("ph")
    return {"ph": ph.value} if ph is not None else {}
