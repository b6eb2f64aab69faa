"""How much bicarbonate raises KH: a plan in parts that animals can follow, or why there is none.

A plan is data. No number of grams exists before every gate is passed.
"""

from __future__ import annotations

import math
from dataclasses import dataclass, field
from datetime import timedelta
from typing import Final, Literal

from core.advice import limits
from core.advice.ammonia_gate import Gate, gate_for
from core.advice.findings import contradiction
from core.advice.hardness import MEQ_PER_DEGREE
from core.advice.state import Measured, State, degree_step

Substance = Literal["sodium bicarbonate", "potassium bicarbonate"]

GRAMS_PER_EQUIVALENT: Final[dict[str, float]] = {
    "sodium bicarbonate": 84.006,
    "potassium bicarbonate": 100.115,
}
"""One equivalent of alkalinity each; from atomic weights. [g/eq]"""

CATION: Final[dict[str, tuple[str, float]]] = {
    "sodium bicarbonate": ("sodium_mg_l", 22.990),
    "potassium bicarbonate": ("potassium_mg_l", 39.098),
}
"""What comes with the alkalinity, and its mass. [mg/meq]"""

KH_HIGHEST: Final = 25.0
"""A wish over this is taken for a slip or another unit. [°dH]"""

Reason = Literal[
    "volume_unknown",
    "volume_implausible",
    "kh_unknown",
    "kh_limit",
    "target_reached",
    "target_implausible",
    "contradiction",
    "ammonia",
    "ammonia_unmeasured",
    "temperature_unknown",
    "carbonate",
    "substance_unknown",
]


@dataclass(frozen=True, slots=True)
class Refusal:
    """Why there is no plan, with the numbers that decided; never an amount of what is refused."""

    reason: Reason
    facts: dict[str, float | str] = field(default_factory=dict)


@dataclass(frozen=True, slots=True)
class Plan:
    """A dose in equal parts, one every `every_hours`.

    Attributes
    ----------
    substance : str
        What to weigh out; taken as pure.
    volume_l : float
        Net volume. [L]
    start, target : float
        KH before and after. [°dH]
    parts : tuple of float
        Grams of each part.
    every_hours : int
        Hours between parts.
    added_mg_l : tuple of str and float
        Name of the fact and amount of sodium or potassium that all parts bring. [mg/L]
    gate : Gate
        What total ammonia this bears, and on what that rests.
    blind : bool
        True where KH was too low to plan: `parts` is one small part, then measure.
    reading_age : timedelta or None
        Age of the KH reading behind `start`; None where the question itself gave it.
    within_kit : bool
        True where the whole wish is no more than the kit can see.
    """

    substance: str
    volume_l: float
    start: float
    target: float
    parts: tuple[float, ...]
    every_hours: int
    added_mg_l: tuple[str, float]
    gate: Gate
    blind: bool = False
    reading_age: timedelta | None = None
    within_kit: bool = False

    @property
    def grams(self) -> float:
        """All parts together. [g]"""
        return sum(self.parts)

    @property
    def is_old(self) -> bool:
        """True where the reading is too old to act on without measuring again."""
        return self.reading_age is not None and self.reading_age > limits.STALE


@dataclass(frozen=True, slots=True)
class Wish:
    """KH wanted in a volume of water: `target`, or a rise by `delta`. [°dH, L]

    `start` is the KH that the question itself states; None takes the tank's last reading.
    """

    target: float | None = None
    delta: float | None = None
    start: float | None = None
    volume_l: float | None = None
    substance: str = "sodium bicarbonate"


def grams_for(substance: str, degrees: float, volume_l: float) -> float:
    """Mass of a bicarbonate that raises KH by so many degrees in so much water.

    Parameters
    ----------
    substance : str
        "sodium bicarbonate" or "potassium bicarbonate", pure.
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
    return degrees * MEQ_PER_DEGREE * GRAMS_PER_EQUIVALENT[substance] * volume_l / 1000.0


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
    if wish.substance not in GRAMS_PER_EQUIVALENT:
        reason: Reason = "carbonate" if "carbonate" in wish.substance else "substance_unknown"
        return Refusal(reason, {"substance": wish.substance})
    volume = wish.volume_l if wish.volume_l is not None else state.tank.volume_l
    if volume is None:
        return Refusal("volume_unknown")
    if not limits.VOLUME_SMALLEST <= volume <= limits.VOLUME_LARGEST:
        return Refusal("volume_implausible", {"volume_l": volume})
    start = _start(wish, state)
    if isinstance(start, Refusal):
        return start
    target = wish.target if wish.target is not None else start.value + (wish.delta or 0.0)
    if problem := _refused_target(start, target) or _refused_state(state):
        return problem
    return _planned(wish, state, volume, start, target, known_tank=known_tank)


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
    facts: dict[str, float | str] = {"from": start.value, "to": target}
    if target <= start.value + 1e-9:
        return Refusal("target_reached", facts)
    if target > KH_HIGHEST:
        return Refusal("target_implausible", facts | {"highest": KH_HIGHEST})
    return None


def _refused_state(state: State) -> Refusal | None:
    """Refuse to compute a dose on readings that contradict each other."""
    found = contradiction(state)
    return None if found is None else Refusal("contradiction", dict(found.facts))


def _planned(
    wish: Wish, state: State, volume: float, start: Measured, target: float, *, known_tank: bool
) -> Plan | Refusal:
    blind = start.low < limits.KH_BLIND_BELOW
    if blind:
        target = min(target, start.value + _first_part(state))
    gate = gate_for(state, target)
    if isinstance(gate, str):
        return Refusal(gate, _gate_facts(state, start, target))
    if blind and known_tank and gate.only_below is not None:
        return Refusal("ammonia_unmeasured", {"kh": start.value})
    degrees = target - start.value
    count = 1 if blind else math.ceil(degrees / limits.KH_STEP - 1e-9)
    cation, per_meq = CATION[wish.substance]
    whole = grams_for(wish.substance, degrees, volume)
    return Plan(
        substance=wish.substance,
        volume_l=volume,
        start=start.value,
        target=target,
        parts=(whole / count,) * count,
        every_hours=limits.DOSE_EVERY_HOURS,
        added_mg_l=(cation, degrees * MEQ_PER_DEGREE * per_meq),
        gate=gate,
        blind=blind,
        reading_age=None if wish.start is not None else start.age(state.now),
        within_kit=not blind and degrees < start.step + 1e-9,
    )


def _first_part(state: State) -> float:
    """How far KH may be raised where it is too low to plan. [°dH]"""
    ph = state.fresh("ph")
    acid = ph is not None and ph.value < limits.ACID_PH
    return limits.KH_FIRST_PART_ACID if acid else limits.KH_FIRST_PART


def _gate_facts(state: State, start: Measured, target: float) -> dict[str, float | str]:
    total = state.last("ammonia")
    facts: dict[str, float | str] = {"from": start.value, "to": target}
    return facts | ({"ammonia": total.high} if total is not None else {})
