"""From grams to parts: how many days a dose must be spread over, and whether it may be at all."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from itertools import repeat
from typing import Final

from core.advice import limits
from core.advice.ammonia_gate import Gate, gate_for, old_total, upper_total
from core.advice.contradictions import co2_span, contradiction
from core.advice.outlook import Dose, Outlook, Stage, staged, steepness
from core.advice.plan import Fact, Refusal, Weighed
from core.advice.state import State
from core.tank import Tank
from core.water import Water, add, saturation, solve, substance
from core.water.substances import ION_FORMULA
from core.water.water import MEQ_PER_DH

MOST_PARTS: Final = 400
"""More parts than this, one a day, are no plan."""

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
STEPPED: Final = ("kh", "gh", "calcium", "magnesium", "salinity")
LIME: Final = ("kh", "calcium")
"""What calcium carbonate is made of."""
SEA_SALT: Final = "sea salt"


@dataclass(frozen=True, slots=True)
class Schedule:
    """Parts that fit every step limit, and what they lead to.

    `saturation` is that of aragonite after the last part; None where it brings no lime.
    """

    count: int
    stages: tuple[Stage, ...]
    gate: Gate | None
    raises_ph: bool = False
    saturation: float | None = None


def steps_of(tank: Tank | None) -> Mapping[str, float]:
    """How far each analyte may move in a day, by the kind of water; fresh where it is unknown.

    In water that is salty already salinity has its own step, and what sea salt brings of calcium
    and magnesium is no step of GH.
    """
    return SEA_STEPS if tank is not None and tank.is_sea else FRESH_STEPS


def is_salty(state: State) -> bool:
    """True in the sea and in brackish water, where hardness comes with salinity."""
    brackish = state.tank.kind == "brackish" or state.salinity > limits.SALT_WATER
    return state.tank.is_sea or brackish


def moved_by(name: str, state: State | None) -> dict[str, float]:
    """What one gram in a litre of this water moves of all that has a daily step, by analyte."""
    moved = {analyte: per_gram(name, analyte) for analyte in STEPPED}
    if name == SEA_SALT:
        # Its calcium and magnesium come in their own ratio: salinity has the step.
        del moved["calcium"], moved["magnesium"]
        if state is not None and is_salty(state):
            del moved["gh"]
    return {analyte: amount for analyte, amount in moved.items() if amount}


def saturation_caution(schedule: Schedule, state: State) -> tuple[str, ...]:
    """Id of what is said where lime may begin to fall out."""
    if schedule.saturation is None or schedule.saturation <= limits.SATURATION_CAUTION:
        return ()
    return ("saturated",) if state.tank.is_sea else ("lime_falls_out",)


def changes_of(state: State, salts: Sequence[Weighed], volume_l: float) -> dict[str, float]:
    """How far a dose moves all that has a daily step, in canonical units."""
    changes = dict.fromkeys(STEPPED, 0.0)
    for salt in salts:
        for analyte, amount in moved_by(salt.substance, state).items():
            changes[analyte] += amount * salt.grams / volume_l
    return changes


def per_gram(name: str, analyte: str) -> float:
    """What one gram of a pure substance brings into one litre, in the analyte's unit."""
    table = substance(name)
    if analyte == "kh":
        return table.alkalinity_per_gram / MEQ_PER_DH
    if analyte == "gh":
        return 2.0 * table.hardness_per_gram / MEQ_PER_DH
    if analyte.startswith("gh_"):
        moles = 1000.0 * table.ions.get(analyte[3:], 0.0) / table.molar_mass
        return 2.0 * moles / MEQ_PER_DH
    if analyte == "salinity":
        return 1.0 if name in {SEA_SALT, "sodium chloride"} else 0.0
    return table.milligrams_per_gram(analyte) if analyte in ION_FORMULA else 0.0


def in_parts(
    state: State,
    outlook: Outlook | None,
    salts: Sequence[Weighed],
    volume_l: float,
    most: int = MOST_PARTS,
    *,
    least: int = 1,
    ph_bound: bool = True,
    kh_step: float = limits.KH_STEP,
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
    most : int
        More parts than this are no plan.
    least : int
        Parts that are wished: never fewer, unless they are more than `most`.
    ph_bound : bool
        False where the step of pH does not bind.
    kh_step : float
        Most that KH may rise in a day. [°dH]

    Returns
    -------
    Schedule or Refusal
        Refusals: ph_step, saturation, ammonia, ammonia_already, temperature_unknown.
    """
    steps = {**steps_of(state.tank if state is not None else None), "kh": kh_step}
    changes = changes_of(state, salts, volume_l)
    count = max(
        [min(least, most)]
        + [
            math.ceil(abs(change) / steps[analyte] - 1e-6)
            for analyte, change in changes.items()
            if analyte in steps
        ]
    )
    if outlook is None:
        return Schedule(count, (), None)
    allowed = limits.PH_STEP + limits.PH_ROUNDING if ph_bound else math.inf
    stages, steep = _staged(outlook, salts, volume_l, count, allowed)
    while steep > allowed:
        # Never more than a step further than needed; the last of a doubling is found one by one.
        count = max(count + 1, int(count * steep / allowed))
        if count > most:
            return Refusal("ph_step", {"ph_change": steep})
        stages, steep = _staged(outlook, salts, volume_l, count, allowed)
    highest = None
    if state.tank.is_sea or any(changes[name] > 0.0 for name in LIME):
        # The last part makes the fullest water.
        before = stages[-2].water if count > 1 else outlook.water
        highest = saturation_after(before, _part(salts, count), volume_l, stages[-1])
    if state.tank.is_sea and highest is not None and highest > limits.SATURATION_REFUSED:
        return Refusal("saturation", {"saturation": highest})
    gate = gate_for(state, outlook, stages)
    raises = stages[-1].leaves > outlook.ph_leaves + RAISED
    if gate == "ammonia" and not raises:
        return Refusal("ammonia_already", ammonia_facts(state))
    if isinstance(gate, str):
        return Refusal(gate, ammonia_facts(state))
    return Schedule(count, tuple(stages), gate, raises_ph=raises, saturation=highest)


def _part(salts: Sequence[Weighed], count: int) -> Dose:
    return [(salt.substance, salt.grams / count) for salt in salts]


def _staged(
    outlook: Outlook, salts: Sequence[Weighed], volume_l: float, count: int, allowed: float
) -> tuple[list[Stage], float]:
    """The water after each part, and the steepest step of pH; no further than one too steep."""
    part = _part(salts, count)
    stages: list[Stage] = []
    steep = 0.0
    before: Stage | None = None
    for stage in staged(outlook, repeat(part, count), volume_l):
        stages.append(stage)
        steep = max(steep, steepness(outlook, before, stage))
        if steep > allowed:
            break
        before = stage
    return stages, steep


def saturation_after(before: Water, part: Dose, volume_l: float, stage: Stage) -> float:
    """The higher saturation of aragonite that a part leads to: at once, and at rest."""
    mixed = before
    for name, grams in part:
        mixed = add(mixed, name, grams, volume_l)
    return max(saturation(solve(each), "aragonite") for each in (mixed, stage.water))


def ammonia_facts(state: State) -> dict[str, Fact]:
    """Total ammonia as it counts, where it is known, with its days where it is old."""
    total, last = upper_total(state), state.last("ammonia")
    facts: dict[str, Fact] = {}
    if total is None and last is not None and (total := old_total(state)) is not None:
        facts["days"] = float(round(last.age(state.now).total_seconds() / 86_400.0))
    return facts | ({"ammonia": total} if total is not None and math.isfinite(total) else {})


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
