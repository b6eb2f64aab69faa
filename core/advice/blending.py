"""Waters blended before they go into a tank: what mixes by amounts, and the pH that follows."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import replace
from datetime import datetime
from typing import Final

from core.advice.changes import source_water
from core.advice.state import Measured, State, ammonia_as_n, nitrite_as_no2
from core.errors import CoreError
from core.message.model import Basis
from core.tank import Tank
from core.water import Water, mix, solve

BY_AMOUNT: Final = (
    "kh", "gh", "ammonia", "nitrite", "nitrate", "phosphate", "calcium", "magnesium", "potassium",
    "iron", "copper", "chlorine", "total_chlorine", "chloride", "sodium", "sulfate", "silicate",
    "salinity", "tds", "conductivity",
)  # fmt: skip
"""What mixes in proportion: alkalinity, ions, and near enough what they conduct. Never pH."""

USUAL_TEMPERATURE: Final = 25.0
"""Where no part and no tank tells one. [°C]"""


def pure(name: str, now: datetime) -> State:
    """Water of reverse osmosis, rain or distilled: none of what mixes by amount is in it.

    Examples
    --------
    >>> from datetime import UTC
    >>> pure("RO", datetime(2026, 3, 1, tzinfo=UTC)).last("kh").value
    0.0
    """
    held = {name: Measured(name, 0.0, 0.0, 0.0, now) for name in BY_AMOUNT}
    return State(Tank(name=name), now, readings=held)


def blended(parts: Sequence[tuple[State, float]], name: str, *, warm: float | None = None) -> State:
    """Blend waters: amounts in proportion, pH from the carbon that the parts bring.

    Parameters
    ----------
    parts : sequence of (State, float)
        Each water and its share; the shares come to one.
    name : str
        What the blend is called.
    warm : float, optional
        Temperature of a part that nobody measured; those known decide where None. [°C]

    Returns
    -------
    State
        With what is known of every part that there is any of; each reading as old as the oldest
        of its parts. Without a pH where a part with buffer has none.

    Notes
    -----
    pH is a logarithm of one species and does not mix; alkalinity and inorganic carbon do, in
    proportion to mass (as PHREEQC's MIX does it), and pH is solved from both.
    """
    present = [(state, share) for state, share in parts if share > 0.0]
    now = present[0][0].now
    readings = {
        mixed.analyte: mixed
        for analyte in BY_AMOUNT
        if (mixed := _in_proportion(analyte, present)) is not None
    }
    if (warmth := _warmth(present, warm)) is not None:
        readings["temperature"] = warmth
    water = State(Tank(name=name), now, readings=readings)
    ph = _ph(present, warm)
    return water if ph is None else replace(water, readings={**readings, "ph": ph})


def _in_proportion(analyte: str, parts: Sequence[tuple[State, float]]) -> Measured | None:
    found = [(state.last(analyte), share) for state, share in parts]
    known = [(reading, share) for reading, share in found if reading is not None]
    if len(known) < len(found) or any(math.isinf(reading.high) for reading, _ in known):
        return None
    read = [(_as_ion(reading), share) for reading, share in known]
    return Measured(
        analyte,
        math.fsum(reading.value * share for reading, share in read),
        math.fsum(reading.low * share for reading, share in read),
        math.fsum(reading.high * share for reading, share in read),
        min(reading.at for reading, _ in known),
        basis=_basis([reading for reading, _ in read]),
        step=max(reading.step for reading, _ in read),
    )


def _as_ion(reading: Measured) -> Measured:
    """Ammonia as nitrogen and nitrite as the ion, so that parts of two kits can be added."""
    basis: Basis
    if reading.analyte == "ammonia":
        as_ion, basis = ammonia_as_n, "N"
    elif reading.analyte == "nitrite":
        as_ion, basis = nitrite_as_no2, "ion"
    else:
        return reading
    told = (reading.value, reading.low, reading.high)
    value, low, high = (as_ion(number, reading.basis) for number in told)
    return replace(reading, value=value, low=low, high=high, basis=basis)


def _basis(readings: Sequence[Measured]) -> Basis | None:
    told = {reading.basis for reading in readings if reading.value > 0.0}
    return told.pop() if len(told) == 1 else None


def _warmth(parts: Sequence[tuple[State, float]], warm: float | None) -> Measured | None:
    """The temperature of the blend; a part that nobody measured is as warm as `warm`."""
    told = [(state.last("temperature"), share) for state, share in parts]
    known = [(reading, share) for reading, share in told if reading is not None]
    if not known:
        return None
    rest = 0.0 if warm is None else 1.0 - math.fsum(share for _, share in known)
    whole = math.fsum(share for _, share in known) + rest
    value = math.fsum(reading.value * share for reading, share in known) + rest * (warm or 0.0)
    at = min(reading.at for reading, _ in known)
    return Measured("temperature", value / whole, value / whole, value / whole, at)


def _ph(parts: Sequence[tuple[State, float]], warm: float | None) -> Measured | None:
    """The pH of the blend, shut off from air; None where the carbon of a part is not known."""
    for state, _ in parts:
        kh, read = state.last("kh"), state.last("ph")
        if kh is None or (kh.value > 0.0 and (read is None or read.is_limit)):
            return None
    told = [reading for state, _ in parts if (reading := state.last("ph")) is not None]
    if not told:
        return None
    degrees = USUAL_TEMPERATURE if warm is None else warm
    try:
        waters = [(source_water(state, Water(degrees)), share) for state, share in parts]
        ph = float(solve(mix(waters)).ph)
    except CoreError:
        return None
    doubt = max(reading.high - reading.value for reading in told)
    return Measured("ph", ph, ph - doubt, ph + doubt, min(r.at for r in told), step=told[0].step)
