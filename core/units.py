"""The trade's units: a plain table to canonical units, and one pint registry off the hot path.

A message meets only the table (`to_canonical`, `from_canonical`); pint is loaded when `convert`
or `registry` is first called. A test proves the table equal to pint. All factors are made from
atomic weights (IUPAC, abridged standard atomic weights 2021, from memory) and from the exact
definitions of grain and gallon.
"""

from __future__ import annotations

from functools import lru_cache
from typing import TYPE_CHECKING

from core.analytes import MEASURABLE
from core.errors import CoreError, OutOfRange

if TYPE_CHECKING:
    import pint

H, C, N, O, NA, MG, SI = 1.008, 12.011, 14.007, 15.999, 22.990, 24.305, 28.085  # noqa: E741
P, S, CL, K, CA, FE, CU = 30.974, 32.06, 35.45, 39.098, 40.078, 55.845, 63.546
CAO, CACO3 = CA + O, CA + C + 3 * O
NO3, NO2, NH4, NH3, PO4 = N + 3 * O, N + 2 * O, N + 4 * H, N + 3 * H, P + 4 * O

GRAIN_MG = 64.79891
SP_TO_G_KG = 35.16504 / 35.0
"""Reference salinity of practical salinity 35 (Millero et al. 2008, Deep-Sea Res. I 55:50-72)."""
HEAVIEST = 1.0375
"""Specific gravity of 50 g/kg, above which no tank is kept."""
US_GALLON_L = 3.785411784
UK_GALLON_L = 4.54609
PPM_PER_DH = 10.0 * CACO3 / CAO
"""1 °dH is 10 mg/L of CaO; as mg/L of CaCO3: 17.848."""

IONS: dict[str, tuple[float, int]] = {
    "nitrate": (NO3, 1),
    "nitrite": (NO2, 1),
    "phosphate": (PO4, 3),
    "calcium": (CA, 2),
    "magnesium": (MG, 2),
    "potassium": (K, 1),
    "iron": (FE, 2),
    "copper": (CU, 2),
    "chloride": (CL, 1),
    "sodium": (NA, 1),
    "sulfate": (S + 4 * O, 2),
    "oxygen": (2 * O, 1),
    "co2": (C + 2 * O, 1),
    "silicate": (SI + 2 * O, 1),
}
"""Molar mass [g/mol] and charge of the form that the canonical mg/L counts."""

_HARDNESS = {
    "°dH": 1.0,
    "ppm": 1.0 / PPM_PER_DH,
    "mg/L": 1.0 / PPM_PER_DH,
    "g/L": 1000.0 / PPM_PER_DH,
    "°fH": 10.0 / PPM_PER_DH,
    "°e": GRAIN_MG / UK_GALLON_L / PPM_PER_DH,
    "gpg": GRAIN_MG / US_GALLON_L / PPM_PER_DH,
    "meq/L": CACO3 / 2.0 / PPM_PER_DH,
}
_MASS = {"mg/L": 1.0, "ppm": 1.0, "µg/L": 1e-3, "ppb": 1e-3, "g/L": 1e3}

_FIXED: dict[str, dict[str, float]] = {
    # The trade's mmol/L of alkalinity counts acid used up, so it equals meq/L; the mmol/L of
    # hardness counts Ca and Mg, two charges each.
    "kh": {**_HARDNESS, "mmol/L": CACO3 / 2.0 / PPM_PER_DH},
    "gh": {**_HARDNESS, "mmol/L": CACO3 / PPM_PER_DH},
    "ph": {"pH": 1.0},
    "temperature": {"°C": 1.0},
    "conductivity": {"µS/cm": 1.0, "mS/cm": 1000.0},
    "tds": {"mg/L": 1.0, "ppm": 1.0, "g/L": 1000.0, "ppt": 1000.0},
    "salinity": {"g/kg": 1.0, "ppt": 1.0, "PSU": SP_TO_G_KG},
    "redox": {"mV": 1.0},
}
_BASIS = {
    ("nitrate", "N"): NO3 / N,
    ("nitrite", "N"): NO2 / N,
    ("phosphate", "P"): PO4 / P,
    ("calcium", "CaCO3"): CA / CACO3,
    ("magnesium", "CaCO3"): MG / CACO3,
}


class WrongUnit(CoreError):
    """A unit that the analyte is not measured in.

    Attributes
    ----------
    analyte, unit : str
        What was to be converted, and the unit that does not fit it.
    """

    def __init__(self, analyte: str, unit: str) -> None:
        self.analyte = analyte
        self.unit = unit
        super().__init__(f"{analyte} is not measured in {unit}")


def _table() -> dict[tuple[str, str], float]:
    """Factor to the canonical unit by (analyte, unit), for every pair that is a plain factor."""
    table: dict[tuple[str, str], float] = {}
    for analyte in MEASURABLE:
        factors = _FIXED.get(analyte)
        if factors is None:
            factors = dict(_MASS)
            if analyte in IONS:
                mass, charge = IONS[analyte]
                factors.update({"mmol/L": mass, "µmol/L": mass / 1000, "meq/L": mass / charge})
        table.update({(analyte, unit): factor for unit, factor in factors.items()})
    return table


FACTORS = _table()


def to_canonical(
    analyte: str, value: float, unit: str | None = None, basis: str | None = None
) -> float:
    """A value in its analyte's canonical unit.

    Parameters
    ----------
    analyte : str
        An id of `core.analytes`.
    value : float
        The number as written. [unit]
    unit : str, optional
        One of our spellings; None means the canonical unit.
    basis : str, optional
        What the milligrams count: nitrate, nitrite as N, phosphate as P, calcium, magnesium as
        CaCO3 become the named ion. Ammonia stays as given, so its basis changes nothing here.

    Raises
    ------
    WrongUnit
        If the analyte is not measured in `unit`.
    OutOfRange
        If a specific gravity has no salinity.

    Examples
    --------
    >>> round(to_canonical("kh", 71, "ppm"), 2)
    3.98
    >>> round(to_canonical("nitrate", 10, "mg/L", "N"), 1)
    44.3
    """
    if unit is None:
        factor = 1.0
    else:
        found = FACTORS.get((analyte, unit))
        if found is None:
            return _special_to(analyte, value, unit)
        factor = found
    if basis is not None:
        factor *= _BASIS.get((analyte, basis), 1.0)
    return value * factor


def _special_to(analyte: str, value: float, unit: str) -> float:
    if analyte == "temperature" and unit == "°F":
        return (value - 32.0) / 1.8
    if analyte == "salinity" and unit == "SG":
        return _salinity_from_gravity(value)
    if analyte == "salinity" and unit == "g/L":
        return _salinity_from_grams_per_litre(value)
    raise WrongUnit(analyte, unit)


@lru_cache(maxsize=1024)
def _salinity_from_gravity(value: float) -> float:
    """Salinity of a specific gravity 25/25 °C that a tank's water can have. [– → g/kg]"""
    from core.water.density import salinity_from_specific_gravity

    if not 1.0 <= value <= HEAVIEST:
        raise OutOfRange("specific gravity", value, 1.0, HEAVIEST)
    return salinity_from_specific_gravity(value)


def _salinity_from_grams_per_litre(value: float) -> float:
    """Grams of salt in a litre at 25 °C as g/kg; the density is found by repetition."""
    from core.water.density import density

    salinity = value
    for _ in range(6):
        salinity = value / density(25.0, max(salinity, 0.0))
    return salinity


def from_canonical(
    analyte: str, value: float, unit: str | None = None, basis: str | None = None
) -> float:
    """A canonical value in `unit`; the inverse of `to_canonical`, with the same errors.

    Examples
    --------
    >>> round(from_canonical("kh", 4, "ppm"), 1)
    71.4
    """
    if unit is not None and (analyte, unit) not in FACTORS:
        if analyte == "temperature" and unit == "°F":
            return value * 1.8 + 32.0
        if analyte == "salinity" and unit == "SG":
            return _gravity_from_salinity(value)
        if analyte == "salinity" and unit == "g/L":
            return _grams_per_litre(value)
        raise WrongUnit(analyte, unit)
    return value / to_canonical(analyte, 1.0, unit, basis)


def _gravity_from_salinity(value: float) -> float:
    from core.water.density import specific_gravity

    return specific_gravity(value)


def _grams_per_litre(value: float) -> float:
    from core.water.density import density

    return value * density(25.0, value)


_LABELS = {"ppm CaCO3": "ppm", "SG": "SG", "drops": "drops"}


def label(unit: str) -> str:
    """How a reply writes a unit; our own spellings are already fit to be read."""
    return _LABELS.get(unit, unit)


# --- off the hot path -----------------------------------------------------------------------

PINT_NAMES = {
    "°dH": "degree_dH",
    "ppm": "ppm_CaCO3",
    "°fH": "degree_fH",
    "°e": "degree_clark",
    "gpg": "grain_per_gallon",
    "meq/L": "meq_per_litre",
    "mmol/L": "mmol_per_litre",
    "mg/L": "mg/L",
    "µg/L": "ug/L",
    "ppb": "ug/L",
    "g/L": "g/L",
    "°C": "degC",
    "°F": "degF",
    "µS/cm": "uS/cm",
    "mS/cm": "mS/cm",
    "mV": "mV",
    "L": "liter",
    "mL": "milliliter",
    "gal": "US_liquid_gallon",
    "uk gal": "imperial_gallon",
    "g": "gram",
    "mg": "milligram",
    "kg": "kilogram",
    "oz": "ounce",
    "lb": "pound",
    "cm": "centimeter",
    "in": "inch",
    "m": "meter",
    "mm": "millimeter",
    "ft": "foot",
}
"""Our spellings of the units that are converted off the hot path, and their names in pint."""


@lru_cache(maxsize=1)
def registry() -> pint.UnitRegistry[float]:
    """The one pint registry, with the trade's units of hardness as amounts of alkaline earths."""
    import pint

    units: pint.UnitRegistry[float] = pint.UnitRegistry()
    caco3 = f"mol / ({CACO3} g)"
    for line in (
        f"ppm_CaCO3 = mg / L * {caco3}",
        f"degree_dH = 10 mg / L * mol / ({CAO} g)",
        f"degree_fH = 10 mg / L * {caco3}",
        f"degree_clark = grain / imperial_gallon * {caco3}",
        f"grain_per_gallon = grain / US_liquid_gallon * {caco3}",
        "meq_per_litre = 0.5 mmol / L",
        "mmol_per_litre = mmol / L",
    ):
        units.define(line)
    return units


def convert(value: float, from_unit: str, to_unit: str) -> float:
    """A number in another of our units, where both measure the same kind of thing.

    ``ppm`` counts as CaCO3 here, since a hardness is what is converted without an analyte.

    Raises
    ------
    WrongUnit
        If a unit is not ours, or the two do not measure the same kind of thing.

    Examples
    --------
    >>> round(convert(8, "°dH", "ppm"), 1)
    142.8
    """
    import pint

    for unit in (from_unit, to_unit):
        if unit not in PINT_NAMES:
            raise WrongUnit("a conversion", unit)
    units = registry()
    try:
        quantity = units.Quantity(value, PINT_NAMES[from_unit])
        return float(quantity.to(PINT_NAMES[to_unit]).magnitude)
    except pint.DimensionalityError as error:
        raise WrongUnit(from_unit, to_unit) from error
