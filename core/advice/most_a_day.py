"""The most by which a value may move in a day around animals, and whether a change keeps to it."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Final

from core.advice import limits
from core.units import FACTORS

MOST: Final[Mapping[str, float]] = {
    "kh": limits.KH_STEP,
    "gh": limits.GH_STEP,
    "ph": limits.PH_STEP,
    "temperature": limits.TEMPERATURE_STEP,
    "salinity": limits.SALINITY_UP,
    "calcium": limits.CALCIUM_STEP,
    "magnesium": limits.MAGNESIUM_STEP,
}
"""By analyte, in its canonical unit; of salinity the rise, which is the stricter one."""

_KELVIN_PER_FAHRENHEIT: Final = 5.0 / 9.0


def change_of(analyte: str, change: float, unit: str | None) -> float | None:
    """A change in the analyte's canonical unit; None where its unit has no plain factor.

    Examples
    --------
    >>> change_of("temperature", 9.0, "°F"), change_of("kh", 0.5, None)
    (5.0, 0.5)
    >>> round(change_of("kh", 35.7, "ppm"), 1), change_of("salinity", 0.002, "SG")
    (2.0, None)
    """
    if unit is None:
        return abs(change)
    factor = FACTORS.get((analyte, unit))
    if analyte == "temperature" and unit == "°F":
        factor = _KELVIN_PER_FAHRENHEIT
    return None if factor is None else abs(change) * factor
