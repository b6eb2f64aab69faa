"""Iron for plants from a salt of known strength; that of a chelate only its label tells."""

from __future__ import annotations

import math
from typing import Final

from core.advice import limits
from core.advice.dosing import volume_for
from core.advice.iron_salts import FORMS, iron_share
from core.advice.plan import Fact, Goal, Plan, Refusal, Weighed
from core.advice.state import State

HIGHEST: Final = 1.0
"""A wish over this is taken for a slip; common practice. [mg/L]"""


def plan_iron(
    name: str | None, target: float | None, delta: float | None, volume: float | None, state: State
) -> tuple[Plan, ...] | Refusal:
    """Work out iron to a target, or a rise of it, from a salt of known strength.

    Parameters
    ----------
    name : str or None
        The salt.
    target, delta : float or None
        Wished, or the rise. [mg/L]
    volume : float or None
        Net volume; None takes the tank's. [L]
    state : State
        The tank and its readings.

    Notes
    -----
    So little goes in that no hardness and no pH moves by what a kit can see: 0.5 mg/L of iron
    takes 0.05 °dH of KH as it oxidises.
    """
    if name is None or name not in FORMS:
        return Refusal("iron_strength", {"substance": name or "iron"})
    litres = volume_for(volume, state)
    if isinstance(litres, Refusal):
        return litres
    goal = _goal(target, delta, state)
    if isinstance(goal, Refusal):
        return goal
    return tuple(_plan(form, goal, litres, state) for form in FORMS[name])


def _goal(target: float | None, delta: float | None, state: State) -> Goal | Refusal:
    reading = state.last("iron")
    if target is None:
        rise = delta or 0.0
        start = 0.0 if reading is None else reading.value
        goal = Goal("iron", start, start + rise, relative=reading is None)
    elif reading is None or reading.qualifier == ">":
        return Refusal("reading_unknown", {"analyte": "iron"})
    else:
        goal = Goal("iron", reading.value, target)
    if goal.change <= 1e-9:
        return Refusal("target_reached", {"analyte": "iron", "from": goal.start, "to": goal.target})
    if goal.target > HIGHEST:
        facts: dict[str, Fact] = {"analyte": "iron", "to": goal.target, "highest": HIGHEST}
        return Refusal("target_implausible", facts)
    return goal


def _plan(form: str, goal: Goal, litres: float, state: State) -> Plan:
    reading = state.last("iron")
    return Plan(
        goals=(goal,),
        volume_l=litres,
        salts=(Weighed(form, goal.change * litres / 1000.0 / iron_share(form)),),
        count=math.ceil(goal.change / limits.IRON_STEP - 1e-9),
        every_hours=limits.DOSE_EVERY_HOURS,
        outlook=None,
        stages=(),
        gate=None,
        added={"iron": goal.change},
        reading_age=None if reading is None else reading.age(state.now),
    )
