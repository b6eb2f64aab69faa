"""From grams to parts: how many days a dose must be spread over, and whether it may be at all."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Final

from core.advice import limits
from core.advice.ammonia_gate import Gate, gate_for, upper_total
from core.advice.findings import co2_span, contradiction
from core.advice.outlook import Outlook, Stage, staged, steepest
from core.advice.plan import Fact, Refusal, Weighed
from core.advice.state import State
from core.water import saturation, solve, substance
from core.water.substances import ION_FORMULA

MOST_PARTS: Final = 400
RAISED: Final = 0.01
"""A plan that lifts pH by less than this lifts nothing."""

FRESH_STEPS: Final[Mapping[str, float]] = {
    "kh": limits.KH_STEP,
    "gh": limits.GH_STEP,
    "salinity": limits.SALINITY_UP,
}
SEA_STEPS: Final[Mapping[str, float]] = {
    "kh": limits.KH_STEP,
    "calcium": limits.CALCIUM_STEP,
    "magnesium": limits.MAGNESIUM_STEP,
    "salinity": limits.SALINITY_UP,
}


@dataclass(frozen=True, slots=True)
class Schedule:
    """Parts that fit every step limit, and what they lead to."""

    count: int
    stages: tuple[Stage, ...]
    gate: Gate | None
    raises_ph: bool = False


def in_parts(
    state: State,
    outlook: Outlook | None,
    salts: Sequence[Weighed],
    volume_l: float,
    changes: Mapping[str, float],
    most: int = MOST_PARTS,
    *,
    ph_bound: bool = True,
) -> Schedule | Refusal:
    """Spread a dose over as many days as the strictest step limit asks for.

    Parameters
    ----------
    state : State
        The tank and its readings.
    outlook : Outlook or None
        Its water now; without one only the steps of the analytes bind.
    salts : sequence of Weighed
        What goes in, in all.
    volume_l : float
        Net volume. [L]
    changes : mapping of str to float
        How far each analyte moves in all, in canonical units.
    most : int
        More parts than this are no plan.
    ph_bound : bool
        False where the step of pH does not bind.

    Returns
    -------
    Schedule or Refusal
        Refusals: ph_step, saturation, ammonia, temperature_unknown.
    """
    steps = SEA_STEPS if state.tank.is_sea else FRESH_STEPS
    count = max(
        [1]
        + [
            math.ceil(abs(change) / steps[analyte] - 1e-6)
            for analyte, change in changes.items()
            if analyte in steps
        ]
    )
    if outlook is None:
        return Schedule(count, (), None)
    stages = _staged(outlook, salts, volume_l, count)
    allowed = limits.PH_STEP + limits.PH_ROUNDING
    while ph_bound and (steep := steepest(outlook, stages)) > allowed:
        # Never more than a step further than needed; the last of a doubling is found one by one.
        count = max(count + 1, int(count * steep / allowed))
        if count > most:
            return Refusal("ph_step", {"ph_change": steep})
        stages = _staged(outlook, salts, volume_l, count)
    if state.tank.is_sea:
        highest = max(saturation(solve(stage.water), "aragonite") for stage in stages)
        if highest > limits.SATURATION_REFUSED:
            return Refusal("saturation", {"saturation": highest})
    gate = gate_for(state, outlook, stages)
    if isinstance(gate, str):
        return Refusal(gate, ammonia_facts(state))
    raises = stages[-1].leaves > outlook.ph_leaves + RAISED
    return Schedule(count, tuple(stages), gate, raises_ph=raises)


def _staged(outlook: Outlook, salts: Sequence[Weighed], volume_l: float, count: int) -> list[Stage]:
    part = [(salt.substance, salt.grams / count) for salt in salts]
    return staged(outlook, [part] * count, volume_l)


def ammonia_facts(state: State) -> dict[str, Fact]:
    """Total ammonia as it counts, where it is known."""
    total = upper_total(state)
    return {"ammonia": total} if total is not None and math.isfinite(total) else {}


def conflict(state: State) -> Refusal | None:
    """Refuse to reckon on readings that contradict each other, at whatever hours they were read."""
    found = contradiction(state)
    if found is not None:
        return Refusal("contradiction", dict(found.facts))
    kh, ph = state.fresh("kh"), state.fresh("ph")
    if kh is None or ph is None or kh.is_limit or ph.is_limit:
        return None
    facts: dict[str, Fact] = {"ph": ph.value, "kh": kh.value}
    if not 4.0 <= ph.value <= 10.5:
        return Refusal("contradiction", facts)
    least, _ = co2_span(ph, kh)
    if least > limits.CO2_CONTRADICTION and not state.tank.is_sea:
        return Refusal("contradiction", facts | {"co2_mg_l": least})
    return None


def added_ions(salts: Sequence[Weighed], volume_l: float) -> dict[str, float]:
    """What a dose brings along, by ion, without the carbonate. [mg/L]"""
    added: dict[str, float] = {}
    for salt in salts:
        table = substance(salt.substance)
        for ion in table.ions:
            if ion not in {"carbon", "borate"} and ion in ION_FORMULA:
                amount = salt.grams * table.milligrams_per_gram(ion) / volume_l
                added[ion] = added.get(ion, 0.0) + amount
    return added
