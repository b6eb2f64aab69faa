"""May KH and pH rise at all now? The gate that every plan passes, before any amount is named."""

from __future__ import annotations

from dataclasses import replace
from typing import Final

from core.advice.ammonia_gate import upper_total
from core.advice.dosing import Wish, plan_kh
from core.advice.findings import find
from core.advice.plan import Refusal
from core.advice.scheduling import ammonia_facts
from core.advice.state import State

BY_AMMONIA: Final = frozenset(
    {"ammonia", "ammonia_old", "ammonia_unmeasured", "temperature_unknown"}
)
"""Reasons of the gate for refusing a plan."""

_FOUND: Final = frozenset({"ammonia", "ammonia_without_ph"})
_ANY_WATER: Final = 100.0
"""Litres that the plan is tried on: the gate does not depend on them."""


def raising_refused(state: State) -> Refusal | None:
    """Why nothing may raise KH or pH now, by the gate; None where a plan may be asked for.

    Parameters
    ----------
    state : State
        The tank and its readings.

    Notes
    -----
    Refused where a fresh reading of total ammonia is warned of, and where a plan of 1 °dH is
    refused for its ammonia. What else stands in the way of a plan is said when one is asked for.
    """
    fresh = {name: each for name, each in state.readings.items() if each.is_fresh(state.now)}
    found = find(replace(state, readings=fresh), frozenset({"ammonia"}))
    if any(each.id in _FOUND and each.severity != "note" for each in found):
        return Refusal("ammonia", ammonia_facts(state))
    tried = plan_kh(Wish(delta=1.0, volume_l=_ANY_WATER), state, known_tank=True)
    if isinstance(tried, Refusal) and tried.reason in BY_AMMONIA:
        return tried
    return None


def is_measured(state: State) -> bool:
    """Whether total ammonia was measured so late that the gate can decide by it."""
    return upper_total(state) is not None
