"""What was done to the water of late, and what of it counts against a reading or a day's step."""

from __future__ import annotations

import math
from collections.abc import Mapping
from datetime import timedelta
from typing import Final

from core.advice import limits
from core.advice.alarm_words import named
from core.advice.jumps import brought, jumped_from
from core.advice.plan import Fact, Plan, Refusal
from core.advice.scheduling import per_gram, steps_of
from core.advice.state import Happening, Measured, State
from core.message.dose_words import names_what_it_moves
from core.water import SUBSTANCES

A_DAY: Final = timedelta(hours=22)
"""A part a day may be an hour or two early; common practice."""

SMALL_SHARE: Final = 0.1
"""A change with unknown water that still leaves a reading of use; common practice."""

MOVING: Final = frozenset({"dose", "water_change"})


def outdated(state: State, reading: Measured) -> Refusal | None:
    """Refuse a dose on a reading from before the water was dosed or changed, or that jumped."""
    return (
        dosed_since(state, reading)
        or diluted_since(state, reading)
        or unlike_dose(state, reading)
        or _jumped(state, reading)
    )


def unlike_dose(state: State, reading: Measured) -> Refusal | None:
    """Refuse a dose on a reading that is far under what went in of late must have made it.

    The kit, the volume or the amount is wrong then, and a dose by it may be one too many. A second
    reading after the dose that is near the first clears it, and so does water that was changed.
    """
    doses = [
        event
        for event in state.events or ()
        if state.now - limits.STALE <= event.at < reading.at
        and _raised(state, reading.analyte, event) > 0.0
    ]
    if not doses or reading.qualifier == ">":
        return None
    first = min(event.at for event in doses)
    told = state.past.between(reading.analyte, first - limits.STALE, first)
    since = state.past.between(reading.analyte, first, reading.at)
    changed = (e for e in state.events or () if e.what.kind == "water_change")
    if not told or any(told[-1].at <= each.at <= reading.at for each in changed):
        return None
    if any(each != reading and _near(each, reading) for each in since):
        return None
    rise = sum(_raised(state, reading.analyte, event) for event in doses)
    short = told[-1].low + rise - reading.high
    if short < max(SHORT_SHARE * rise, SHORT_OF.get(reading.analyte, math.inf)):
        return None
    return Refusal(
        "unlike_dose",
        {
            "analyte": reading.analyte,
            "to": reading.value,
            "expected": round(told[-1].value + rise, 1),
        },
    )


SHORT_SHARE: Final = 0.4
SHORT_OF: Final = {"kh": 1.0, "gh": 1.5}
"""So far under what went in, and by such a share of it, a reading is in doubt, whatever animals
use up in the days between; common practice. [°dH]"""


def _near(one: Measured, other: Measured) -> bool:
    """Whether two readings agree within the kit's steps, half a degree at least."""
    return one.low <= other.high + HALF and other.low <= one.high + HALF


HALF: Final = 0.5
"""Two tests of one water may differ by so much besides the kit's steps; common practice. [°dH]"""


def _jumped(state: State, reading: Measured) -> Refusal | None:
    """Refuse a dose on a value that left its place with nothing done: it may be misread.

    So may the pH that tells what a dose of KH makes of it; beside ammonia a higher one only
    tightens the gate, which has its say.
    """
    before, now = jumped_from(state, reading.analyte), reading
    if before is not None and state.tank.is_sea and reading.value < before.value:
        before = None  # what a reef uses up falls by itself
    ph = state.last("ph")
    if before is None and reading.analyte == "kh" and ph is not None:
        before, now = jumped_from(state, "ph"), ph
        if before is not None and ph.value > before.value and _shows_ammonia(state):
            return None
    ammonia = state.last("ammonia")
    if before is None and ammonia is not None:
        before, now = jumped_from(state, "ammonia"), ammonia
    if before is None:
        return None
    facts: dict[str, Fact] = {"analyte": now.analyte, "from": before.value, "to": now.value}
    return Refusal("jumped", facts)


def _shows_ammonia(state: State) -> bool:
    ammonia = state.fresh("ammonia")
    return ammonia is not None and ammonia.qualifier != "<" and ammonia.high > 0.0


def dosed_since(state: State, reading: Measured) -> Refusal | None:
    """Refuse a second dose on a reading from before the first one.

    Parameters
    ----------
    state : State
        With its events.
    reading : Measured
        What the plan would start from.

    Notes
    -----
    A dose of the same moment counts as given after the reading: water that was dosed a moment ago
    is not mixed, and no reading of it tells anything yet.
    """
    for event in state.events or ():
        name = event.what.substance or ""
        if event.what.kind != "dose" or not reading.at <= event.at <= state.now:
            continue
        if _may_raise(name, reading.analyte):
            return Refusal("dosed_since", {"analyte": reading.analyte, "substance": name})
    return None


def _may_raise(name: str, analyte: str) -> bool:
    """Whether what went in raises it, or may: a soda of which it was not told which one it is.

    Or a product of unknown contents that is named for it: `kh buffer`.
    """
    if name in SUBSTANCES:
        return per_gram(name, analyte) > 0.0
    if names_what_it_moves(name, analyte):
        return True
    return analyte == "kh" and not named(name).get("label", frozenset()).isdisjoint(_ALKALINE)


_ALKALINE: Final = frozenset({"carbonate", "caustic"})
"""What a thing of no known name is by its words, where it raises KH."""


def moved_today(
    state: State, ends: Mapping[str, float], *, kh_step: float = limits.KH_STEP
) -> Refusal | None:
    """Refuse what would take the water of a day further than a day's step.

    Parameters
    ----------
    state : State
        With its history and events.
    ends : mapping of analyte to float
        Where the first part of a plan leads. [canonical unit]
    kh_step : float, optional
        Most that KH may move in a day; more in an emergency. [°dH]

    Returns
    -------
    Refusal or None
        ``moved_today`` with the analyte, what it `was` before the first dose or change of the last
        day, and the hours until that is a day ago.

    Notes
    -----
    A fresh reading tells where the water is, not how far it came today. Where it was is the last
    reading before; of a dose whose grams are known, what they cannot but have raised in a reading
    after it.
    """
    late = [e for e in state.events or () if e.what.kind in MOVING and _is_late(state, e)]
    if not late:
        return None
    first = min(event.at for event in late)
    hours = 24.0 - (state.now - first).total_seconds() / 3600.0
    steps = {**steps_of(state.tank), "kh": kh_step}
    for analyte, end in ends.items():
        start = _before(state, analyte, late)
        if start is None or analyte not in steps:
            continue
        far = abs(end - start) > steps[analyte] * limits.WEIGHED
        ordinary = analyte == "kh" and kh_step == limits.KH_STEP
        doubled = ordinary and start >= limits.KH_SOFT and end > limits.KH_FACTOR * start
        if far or doubled:
            facts: dict[str, Fact] = {
                "analyte": analyte,
                "was": start,
                "step": steps[analyte],
                "hours": hours,
            }
            return Refusal("moved_today", facts)
    return None


def changed_today(state: State) -> Refusal | None:
    """Refuse a change by readings from before another one of the last day."""
    kh = state.last("kh")
    late = [
        event.at
        for event in state.events or ()
        if event.what.kind == "water_change" and _is_late(state, event)
    ]
    if kh is None or not late or kh.at > max(late):
        return None
    hours = (state.now - max(late)).total_seconds() / 3600.0
    return Refusal("changed_today", {"hours": hours})


def first_part(plan: Plan) -> dict[str, float]:
    """Where the first part of a dose leads, by analyte. [canonical unit]"""
    return {
        goal.analyte: goal.start + goal.change / plan.count
        for goal in plan.goals
        if not goal.relative
    }


def _is_late(state: State, event: Happening) -> bool:
    return event.at <= state.now < event.at + A_DAY


def _before(state: State, analyte: str, late: list[Happening]) -> float | None:
    """Where an analyte stood before what was done of late; None where nothing tells."""
    now = state.last(analyte)
    first = min(event.at for event in late)
    told = state.past.between(analyte, first - limits.STALE, first)
    starts = [told[-1].value] if told else []
    if now is None:
        return min(starts, default=None)
    # A dose of the same moment went in after the reading, which tells nothing of it.
    raised = sum(_raised(state, analyte, event) for event in late if event.at < now.at)
    if raised > 0.0:
        starts.append(max(0.0, now.value - raised))
    return min(starts, default=None)


def _raised(state: State, analyte: str, event: Happening) -> float:
    """What a dose whose grams are known raises. [canonical unit]"""
    return (brought(state, analyte, event) or 0.0) if event.what.kind == "dose" else 0.0


def diluted_since(state: State, reading: Measured) -> Refusal | None:
    """Refuse a dose on a reading from before a change that moved its analyte, or may have.

    A change that cannot have moved it by half a day's step leaves the reading of use.
    """
    step = steps_of(state.tank).get(reading.analyte)
    if step is None:
        return None
    for event in state.events or ():
        if event.what.kind != "water_change" or not reading.at <= event.at <= state.now:
            continue
        share, source = share_of(state, event), state.source.get(reading.analyte)
        if source is not None and event.what.substance is None and share is not None:
            if share * abs(source.value - reading.value) <= step / 2.0:
                continue
        elif share is not None and share <= SMALL_SHARE:
            continue
        return Refusal("diluted_since", {"analyte": reading.analyte})
    return None


def share_of(state: State, event: Happening) -> float | None:
    """The share of new water in a change; None where it was not told."""
    if event.what.percent is not None:
        return event.what.percent / 100.0
    if event.what.litres is not None and state.tank.volume_l:
        return event.what.litres / state.tank.volume_l
    return None


def changed_since(state: State, reading: Measured) -> bool:
    """Whether water was changed after a reading was taken."""
    changes = (e.at for e in state.events or () if e.what.kind == "water_change")
    return any(reading.at < at <= state.now for at in changes)
