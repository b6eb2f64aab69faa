"""What can be measured in a tank: label, canonical unit, plausible span, kit resolution.

The spans are not limits for animals: they say where a number stops being believable as written
(`ph 72`, `kh 400`), so that the chat asks instead of storing. Spans and resolutions are common
practice without a source; they are wide on purpose.
"""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Analyte:
    """One measurable quantity.

    Attributes
    ----------
    id : str
        Name in code, JSON and the store.
    label : str
        How a reply writes it.
    unit : str
        Canonical unit, in the spelling of `core.units`.
    low, high : float
        Plausible span of a tank's value, both ends included. [unit]
    resolution : float
        Smallest difference that a usual kit or pen can tell. [unit]
    decimals : int
        Decimals that a reply shows.
    """

    id: str
    label: str
    unit: str
    low: float
    high: float
    resolution: float
    decimals: int


ANALYTES: dict[str, Analyte] = {
    row.id: row
    for row in (
        Analyte("temperature", "temperature", "°C", 0.0, 40.0, 0.5, 1),
        Analyte("ph", "pH", "pH", 3.5, 11.0, 0.2, 1),
        Analyte("gh", "GH", "°dH", 0.0, 50.0, 1.0, 1),
        Analyte("kh", "KH", "°dH", 0.0, 30.0, 1.0, 1),
        Analyte("ammonia", "ammonia", "mg/L", 0.0, 20.0, 0.25, 2),
        Analyte("nitrite", "nitrite", "mg/L", 0.0, 20.0, 0.05, 2),
        Analyte("nitrate", "nitrate", "mg/L", 0.0, 500.0, 5.0, 0),
        Analyte("phosphate", "phosphate", "mg/L", 0.0, 20.0, 0.1, 2),
        Analyte("calcium", "calcium", "mg/L", 0.0, 800.0, 10.0, 0),
        Analyte("magnesium", "magnesium", "mg/L", 0.0, 2000.0, 10.0, 0),
        Analyte("potassium", "potassium", "mg/L", 0.0, 800.0, 2.0, 0),
        Analyte("iron", "iron", "mg/L", 0.0, 5.0, 0.05, 2),
        Analyte("copper", "copper", "mg/L", 0.0, 5.0, 0.05, 2),
        Analyte("chlorine", "free chlorine", "mg/L", 0.0, 10.0, 0.05, 2),
        Analyte("total_chlorine", "total chlorine", "mg/L", 0.0, 10.0, 0.05, 2),
        Analyte("chloride", "chloride", "mg/L", 0.0, 25000.0, 10.0, 0),
        Analyte("sodium", "sodium", "mg/L", 0.0, 15000.0, 10.0, 0),
        Analyte("sulfate", "sulfate", "mg/L", 0.0, 4000.0, 10.0, 0),
        Analyte("oxygen", "oxygen", "mg/L", 0.5, 25.0, 0.5, 1),
        Analyte("co2", "CO2", "mg/L", 0.0, 200.0, 5.0, 0),
        Analyte("conductivity", "conductivity", "µS/cm", 5.0, 80000.0, 10.0, 0),
        Analyte("tds", "TDS", "mg/L", 0.0, 45000.0, 1.0, 0),
        Analyte("salinity", "salinity", "g/kg", 0.0, 50.0, 1.0, 1),
        Analyte("redox", "redox", "mV", -500.0, 700.0, 10.0, 0),
        Analyte("silicate", "silicate", "mg/L", 0.0, 50.0, 0.1, 1),
    )
}
"""Every analyte of the contract by id, in its order."""

FREE: dict[str, Analyte] = {
    name: Analyte(name, name, "mg/L", 0.0, high, 0.001, 3)
    for name, high in (
        ("strontium", 50.0),
        ("iodine", 5.0),
        ("boron", 50.0),
        ("lithium", 10.0),
        ("bromide", 300.0),
        ("fluoride", 20.0),
        ("manganese", 5.0),
        ("zinc", 5.0),
        ("molybdenum", 5.0),
        ("barium", 5.0),
        ("nickel", 5.0),
        ("chromium", 5.0),
        ("cobalt", 5.0),
        ("vanadium", 5.0),
        ("selenium", 5.0),
        ("aluminium", 5.0),
        ("arsenic", 5.0),
        ("cadmium", 5.0),
        ("lead", 5.0),
    )
}
"""Elements that are kept as given and never advised on, by the name of the element.

Iodide is kept as iodine. The spans are four and more times what
seawater holds, or a plain 5 mg/L for traces: they only catch a number that lost its point.
"""

MEASURABLE: dict[str, Analyte] = ANALYTES | FREE
"""All that a reading may be of."""


def plausible(analyte: str, canonical: float) -> bool:
    """Whether a canonical value is believable as a tank's; KeyError for an unknown analyte."""
    row = ANALYTES[analyte]
    return row.low <= canonical <= row.high
