"""Tanks and readings for the tests of plans, and the same waters in PHREEQC."""

from __future__ import annotations

from datetime import UTC, datetime, timedelta
from functools import cache
from typing import Any

import phreeqpython

from core.advice.state import Measured, State
from core.tank import Stock, Tank

NOW = datetime(2026, 3, 1, 19, tzinfo=UTC)

MEQ_PER_DEGREE = 0.356652
"""10 mg/L CaO a degree, from atomic weights (check values R3)."""


def reading(
    analyte: str, value: float, *, age: timedelta = timedelta(), **parts: object
) -> Measured:
    ends: dict[str, object] = {"low": value, "high": value} | parts
    return Measured(analyte, value, at=NOW - age, **ends)  # type: ignore[arg-type]


def state(
    *readings: Measured,
    kind: str = "fresh",
    volume: float | None = 120.0,
    stock: tuple[str, ...] = (),
) -> State:
    tank = Tank("Fern", kind=kind, volume_l=volume, stock=tuple(Stock(s, 6) for s in stock))  # type: ignore[arg-type]
    return State(tank, NOW, {each.analyte: each for each in readings})


def told(*pairs: tuple[str, float], **parts: Any) -> State:
    """A tank with readings of now."""
    return state(*(reading(name, value) for name, value in pairs), **parts)


@cache
def phreeqc() -> phreeqpython.PhreeqPython:
    return phreeqpython.PhreeqPython()


def fresh_water(kh: float, celsius: float, gh: float | None = None, ph: float | None = None) -> Any:
    """Water of a KH and GH (as KH where unsaid; calcium to magnesium 3:1), by PHREEQC."""
    alkalinity = kh * MEQ_PER_DEGREE
    hardness = (kh if gh is None else gh) * MEQ_PER_DEGREE / 2
    short = alkalinity - 2 * hardness
    given: dict[str, Any] = {
        "units": "mmol/kgw",
        "temp": celsius,
        "Alkalinity": alkalinity,
        "Ca": 0.75 * hardness,
        "Mg": 0.25 * hardness,
        "pH": 8.0 if ph is None else ph,
    }
    given |= {"Na": short} if short > 1e-9 else {"Cl": -short} if short < -1e-9 else {}
    return phreeqc().add_solution(given)


def at_rest(water: Any, microatm: float) -> float:
    """PH of a water of PHREEQC that has come to rest in air."""
    import math

    water.equalize(["CO2(g)"], [math.log10(microatm * 1e-6)])
    return float(water.pH)


def own_pressure(water: Any) -> float:
    """Carbon dioxide that a water of PHREEQC is in balance with. [µatm]"""
    return float(10.0 ** water.si("CO2(g)") * 1e6)
