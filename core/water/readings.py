"""From what a keeper knows to a whole water: missing parts by stated assumptions."""

from __future__ import annotations

from dataclasses import replace
from typing import Final, Literal, TypedDict, Unpack

from core.water._elementwise import anywhere, beside_largest, everywhere, require
from core.water.errors import ImpossibleWater, MissingReading
from core.water.filling import (
    MEASURED_IONS,
    balanced,
    with_conductivity,
    with_hardness,
    with_ions,
    with_salt,
    with_temperature,
)
from core.water.solution import in_air, with_ph, with_ph_and_pressure
from core.water.water import MEQ_PER_DH, Assumption, Contradiction, Water

OPEN_AIR: Final = 420.0
"""Carbon dioxide of outdoor air in the mid-2020s (from memory). [µatm]"""

MOST_CO2: Final = 5000.0
"""More carbon dioxide than this is no tank water. [mg/L]"""

PLAUSIBLE_CO2: Final = (0.1, 50.0)
"""Carbon dioxide outside of which pH and KH hardly fit (common practice, no source). [mg/L]"""


class Readings(TypedDict, total=False):
    """What a keeper may know of a water; what was not measured is left out or None."""

    ph: float | None
    """As a kit or meter calibrated in ordinary buffers reads it, 2 to 12."""
    kh: float | None
    """Carbonate hardness, the whole alkalinity. [°dH]"""
    gh: float | None
    """General hardness. [°dH]"""
    temperature: float | None
    """25 where unknown. [°C]"""
    salinity: float | None
    """Grams of salt per kilogram; `salt` says of which. [g/kg]"""
    salt: Literal["sea", "table"]
    """Sea salt where unsaid."""
    conductivity: float | None
    """Compensated to 25 °C. [µS/cm]"""
    calcium: float | None
    """[mg/L], as are all ions below."""
    magnesium: float | None
    sodium: float | None
    potassium: float | None
    chloride: float | None
    sulfate: float | None
    ammonia: float | None
    """Total, as nitrogen."""
    nitrite: float | None
    """As NO2."""
    nitrate: float | None
    """As NO3."""
    phosphate: float | None
    """As PO4."""
    organic: float | None
    """Weak organic acid: about 0.2 in water like dark tea. [mmol/L]"""
    co2: float | None
    """Dissolved carbon dioxide. [mg/L]"""
    pco2: float | None
    """Carbon dioxide of the air it stands in. [µatm]"""
    calcium_to_magnesium: float
    """By amount, where only GH is known in fresh water; 3 where unsaid."""


def from_readings(**given: Unpack[Readings]) -> Water:
    """Make a water of what is known, by the assumptions it then carries.

    Parameters
    ----------
    **given : Readings
        At least `kh`, or a `salinity` of sea salt, or `ph` with `co2` or `pco2`.

    Returns
    -------
    Water
        Whole and in balance; `assumptions` and `contradictions` say what was made of it.

    Raises
    ------
    OutOfRange
        If a reading is negative, not finite or beyond what water can be.
    MissingReading
        If the alkalinity cannot be told.
    ImpossibleWater
        If pH and KH imply over 5,000 mg/L of carbon dioxide, or (plain numbers only) no carbon.

    Notes
    -----
    Salinity first brings all ions of sea salt (Reference Composition) or sodium chloride; what was
    measured replaces them. GH is shared 3:1 by amount between calcium and magnesium unless one of
    them was measured; without GH it is taken as KH. Sodium or chloride then balances the charges,
    with more of both where a fresh water conducts better than its ions account for. A water
    without pH is taken to stand in open air (420 µatm).

    Examples
    --------
    >>> water = from_readings(ph=7.2, kh=4.0, gh=8.0, temperature=25.0)
    >>> round(water.kh, 2), round(water.gh, 2)
    (4.0, 8.0)
    >>> [str(assumption) for assumption in water.assumptions]
    ['calcium_to_magnesium', 'chloride_balance']
    """
    _check(given)
    water = with_temperature(given)
    water = with_salt(water, given)
    water = with_ions(water, given)
    water = with_hardness(water, given)
    kh = given.get("kh")
    if kh is not None:
        water = replace(water, alkalinity=kh * MEQ_PER_DH / water.density)
    elif given.get("ph") is not None and _pressure(water, given) is not None:
        water = _with_alkalinity(water, given)
    elif Assumption.SEA_SALT in water.assumptions:
        water = water.assuming(Assumption.KH_OF_SEA_SALT)
    else:
        raise MissingReading("kh")
    water = balanced(water, given)
    water = with_conductivity(water, given)
    return _with_carbon(water, given)


def _check(given: Readings) -> None:
    ranges = {
        "ph": (2.0, 12.0, ""),
        "kh": (0.0, 1000.0, "°dH"),
        "gh": (0.0, 2000.0, "°dH"),
        "temperature": (-2.0, 45.0, "°C"),
        "salinity": (0.0, 60.0, "g/kg"),
        "conductivity": (0.0, 100_000.0, "µS/cm"),
        "organic": (0.0, 10.0, "mmol/L"),
        "co2": (0.01, MOST_CO2, "mg/L"),
        "pco2": (0.01, 1e6, "µatm"),
        "calcium_to_magnesium": (0.0, 1000.0, ""),
        **dict.fromkeys(MEASURED_IONS, (0.0, 50_000.0, "mg/L")),
    }
    for name, value in given.items():
        if name in ranges and value is not None:
            low, high, unit = ranges[name]
            require(name, value, low, high, unit)  # type: ignore[arg-type]  # a TypedDict's values


def _with_alkalinity(water: Water, given: Readings) -> Water:
    """Find the alkalinity from pH and carbon dioxide; the balance moves it a little."""
    ph, pressure = given.get("ph"), _pressure(water, given)
    if ph is None or pressure is None:
        raise MissingReading("kh")
    solved = with_ph_and_pressure(water, ph, pressure).water
    again = with_ph_and_pressure(balanced(solved, given), ph, pressure).water
    return replace(water, alkalinity=again.alkalinity)


def _with_carbon(water: Water, given: Readings) -> Water:
    """Find the inorganic carbon from the pH, or from the air."""
    ph, pressure = given.get("ph"), _pressure(water, given)
    if ph is None:
        if pressure is None:
            return in_air(water.assuming(Assumption.STANDS_IN_AIR), OPEN_AIR).water
        return in_air(water, pressure).water
    if Assumption.SEA_SALT in water.assumptions:
        water = water.assuming(Assumption.METER_PH)
    solved = with_ph(water, ph)
    co2 = solved.co2_mg_l
    if anywhere(co2 > MOST_CO2):
        acidity, kh, most = beside_largest(co2, ph, water.kh, co2)
        raise ImpossibleWater("carbon_dioxide", ph=acidity, kh=kh, co2_mg_l=most)
    low, high = PLAUSIBLE_CO2
    if everywhere(co2 > high):
        return solved.water.contradicting(Contradiction.MUCH_CARBON_DIOXIDE)
    if everywhere(co2 < low):
        return solved.water.contradicting(Contradiction.HARDLY_ANY_CARBON_DIOXIDE)
    return solved.water


def _pressure(water: Water, given: Readings) -> float | None:
    """CO2 pressure that was given, or that a dissolved amount stands for. [µatm]."""
    pressure, co2 = given.get("pco2"), given.get("co2")
    if pressure is None and co2 is not None:
        one = in_air(replace(water, alkalinity=1.0), 1000.0)
        return 1000.0 * co2 / one.co2_mg_l
    return pressure
