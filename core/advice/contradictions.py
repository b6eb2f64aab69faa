"""A pH and a KH that cannot both be true: what a finding says, and what no plan rests on."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Literal

from core.advice import limits
from core.advice.plan import Fact
from core.advice.setup import plants_grow
from core.advice.state import Measured, State

NIGHT = frozenset({22, 23, 0, 1, 2, 3, 4, 5, 6})
"""Local hours in which nothing grows; common practice."""


@dataclass(frozen=True, slots=True)
class Contradiction:
    """What readings contradict: the id and severity of its finding, and the numbers."""

    id: str
    severity: Literal["alarm", "warn"]
    facts: Mapping[str, Fact]


def co2_span(ph: Measured, kh: Measured) -> tuple[float, float]:
    """Carbon dioxide that a pH and a KH imply, from the least to the most the kits allow. [mg/L]

    The rule ``3 · KH · 10^(7 − pH)`` is common practice: low by 4 to 12 % at 25 °C, which is far
    within what the kits leave open.
    """
    least = 3.0 * kh.low * 10.0 ** (7.0 - ph.high)
    most = 3.0 * kh.high * 10.0 ** (7.0 - ph.low)
    return least, most


def pair_of_ph_and_kh(state: State) -> tuple[Measured, Measured] | None:
    """PH and KH of one moment in fresh water, both on their scales."""
    kh, ph = state.fresh("kh"), state.fresh("ph")
    if kh is None or ph is None or kh.is_limit or ph.is_limit or state.tank.is_sea:
        return None
    return None if abs(kh.at - ph.at) > limits.SAME_HOUR else (ph, kh)


def contradiction(state: State) -> Contradiction | None:
    """A pH and a KH that cannot both be true of this water, whatever the kits' doubt."""
    pair = pair_of_ph_and_kh(state)
    if pair is None:
        return None
    ph, kh = pair
    facts: dict[str, Fact] = {"ph": ph.value, "kh": kh.value}
    if not 4.0 <= ph.value <= 10.5:
        return Contradiction("contradiction", "alarm", facts)
    least, most = co2_span(ph, kh)
    if least > (limits.CO2_CONTRADICTION_INJECTED if state.injected else limits.CO2_CONTRADICTION):
        return Contradiction("contradiction", "warn", facts | {"co2_mg_l": least})
    dark = ph.at.hour in NIGHT or plants_grow(state.tank) is False
    if most < limits.CO2_TOO_LITTLE and dark:
        facts |= {"co2_mg_l": most}
        if ph.at.hour not in NIGHT:
            facts["plants"] = "none"
        return Contradiction("contradiction_low", "warn", facts)
    return None
