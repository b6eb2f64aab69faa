"""How the missing parts of a water are filled in: one step, one assumption."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING, Any, Final

from core.water._elementwise import anywhere, functions_for, is_array, smallest
from core.water.atoms import molar_mass
from core.water.conductivity import (
    EQUIVALENT,
    conductivity_of_ions,
    salinity_from_conductivity,
)
from core.water.substances import ION_FORMULA, SEA_SALT
from core.water.water import (
    MEQ_PER_DH,
    Assumption,
    Contradiction,
    Water,
    strength_of_totals,
)

if TYPE_CHECKING:
    from core.water.readings import Readings

MEASURED_IONS: Final = tuple(ion for ion in EQUIVALENT if ion != "alkalinity")
"""Ions that a reading may name."""

SEA_CONDUCTIVITY: Final = 2000.0
"""Conductivity from which a reading without a salinity is taken as sea salt. [µS/cm at 25 °C]"""

SEA_RATIO_SALINITY: Final = 1.0
"""Salinity of sea salt from which a measured GH keeps the sea's calcium to magnesium. [g/kg]"""

SALT_CONDUCTS: Final = 115.0
"""Conductivity of sodium chloride in dilute water. [µS/cm per mmol/L]"""

NO_CHARGE: Final = 1e-9
"""Charge that is only rounding. [meq/kg]"""

TOLERATED: Final = 0.2
"""Share by which a conductivity or a balance of charges may be off unremarked."""


def with_temperature(given: Readings) -> Water:
    """Pure water at the temperature that was read, or at 25 °C."""
    temperature = given.get("temperature")
    if temperature is None:
        return Water(25.0).assuming(Assumption.TEMPERATURE_25)
    return Water(temperature)


def with_salt(water: Water, given: Readings) -> Water:
    """Put in the ions of the salinity, or of a conductivity that only sea salt explains."""
    salinity, conductivity = given.get("salinity"), given.get("conductivity")
    table = given.get("salt") == "table"
    if salinity is None and conductivity is not None and not table:
        if smallest(conductivity) < SEA_CONDUCTIVITY:
            return water
        salinity = salinity_from_conductivity(conductivity / 1000.0)
    if salinity is None or (not is_array(salinity) and salinity == 0.0):
        return water
    if table:
        amount = 1000.0 * salinity / molar_mass("NaCl")
        return replace(water, sodium=amount, chloride=amount).assuming(Assumption.TABLE_SALT)
    amount = 1000.0 * salinity / SEA_SALT.molar_mass
    parts: dict[str, Any] = {ion: share * amount for ion, share in SEA_SALT.ions.items()}
    parts |= {"alkalinity": SEA_SALT.alkalinity * amount, "salinity": salinity}
    return replace(water, **parts).assuming(Assumption.SEA_SALT)


def with_ions(water: Water, given: Readings) -> Water:
    """Put in what was measured ion by ion, and organic acid."""
    parts: dict[str, Any] = {}
    for ion in MEASURED_IONS:
        milligrams: Any = given.get(ion)
        if milligrams is not None:
            parts[ion] = milligrams / molar_mass(ION_FORMULA[ion]) / water.density
    organic = given.get("organic")
    if organic is not None:
        parts["organic"] = organic / water.density
    return replace(water, **parts)


def with_hardness(water: Water, given: Readings) -> Water:
    """Share GH among calcium and magnesium; in fresh water without GH it is taken as KH."""
    calcium, magnesium, gh = given.get("calcium"), given.get("magnesium"), given.get("gh")
    if gh is None and (
        calcium is not None or magnesium is not None or Assumption.SEA_SALT in water.assumptions
    ):
        return water
    if gh is None:
        gh = given.get("kh")
        if gh is None:
            return water
        water = water.assuming(Assumption.HARDNESS_AS_KH)
    hardness = 0.5 * gh * MEQ_PER_DH / water.density
    if calcium is None and magnesium is None:
        return _share_hardness(water, hardness, given.get("calcium_to_magnesium", 3.0))
    xp = functions_for(hardness, water.calcium, water.magnesium)
    known = (water.calcium if calcium is not None else 0.0) + (
        water.magnesium if magnesium is not None else 0.0
    )
    if anywhere(known > (1.0 + TOLERATED) * hardness):
        water = water.contradicting(Contradiction.PARTS_OVER_HARDNESS)
    rest = xp.maximum(hardness - known, 0.0)
    if calcium is None:
        return replace(water, calcium=rest)
    if magnesium is None:
        return replace(water, magnesium=rest)
    return water


def _share_hardness(water: Water, hardness: float, ratio: float) -> Water:
    """Share calcium and magnesium by the sea's ratio in salt water, else by an assumed one."""
    if Assumption.SEA_SALT in water.assumptions and smallest(water.salinity) >= SEA_RATIO_SALINITY:
        scale = hardness / (water.calcium + water.magnesium)
        return replace(water, calcium=water.calcium * scale, magnesium=water.magnesium * scale)
    magnesium = hardness / (1.0 + ratio)
    return replace(water, calcium=ratio * magnesium, magnesium=magnesium).assuming(
        Assumption.CALCIUM_TO_MAGNESIUM
    )


def balanced(water: Water, given: Readings) -> Water:
    """Balance the charges by sodium or chloride, whichever is short and was not measured."""
    charge = water.charge
    xp = functions_for(charge)
    sodium, chloride = given.get("sodium"), given.get("chloride")
    if sodium is not None and chloride is not None:
        ions = 1.0 + 1000.0 * strength_of_totals(water)
        if anywhere(xp.maximum(charge, -charge) > TOLERATED * ions):
            return water.contradicting(Contradiction.CHARGE_OFF)
        return water
    if chloride is not None:
        more = xp.maximum(water.sodium - charge, 0.0)
        return replace(water, sodium=more).assuming(Assumption.SODIUM_BALANCE)
    if sodium is not None:
        more = xp.maximum(water.chloride + charge, 0.0)
        return replace(water, chloride=more).assuming(Assumption.CHLORIDE_BALANCE)
    if anywhere(charge < -NO_CHARGE):
        water = replace(water, sodium=water.sodium + xp.maximum(-charge, 0.0))
        water = water.assuming(Assumption.SODIUM_BALANCE)
    if anywhere(charge > NO_CHARGE):
        water = replace(water, chloride=water.chloride + xp.maximum(charge, 0.0))
        water = water.assuming(Assumption.CHLORIDE_BALANCE)
    return water


def with_conductivity(water: Water, given: Readings) -> Water:
    """Make up a fresh water's conductivity with sodium chloride, where its ions fall short."""
    conductivity = given.get("conductivity")
    if conductivity is None or Assumption.SEA_SALT in water.assumptions:
        return water
    short = conductivity - conductivity_of_water(water)
    if anywhere(-short > TOLERATED * conductivity + 20.0):
        return water.contradicting(Contradiction.CONDUCTIVITY_UNDER_IONS)
    xp = functions_for(short)
    salt = xp.maximum(short / SALT_CONDUCTS, 0.0)
    for _ in range(5):  # a little salt changes how well the rest conducts
        more = replace(water, sodium=water.sodium + salt, chloride=water.chloride + salt)
        short = conductivity - conductivity_of_water(more)
        salt = xp.maximum(salt + short / SALT_CONDUCTS, 0.0)
    more = replace(water, sodium=water.sodium + salt, chloride=water.chloride + salt)
    return more.assuming(Assumption.CONDUCTIVITY_AS_SALT)


def conductivity_of_water(water: Water) -> float:
    """Conductivity at 25 °C that a fresh water's ions account for. [µS/cm]."""
    amounts = {ion: getattr(water, ion) * water.density for ion in EQUIVALENT}
    return conductivity_of_ions(amounts, strength_of_totals(water))
