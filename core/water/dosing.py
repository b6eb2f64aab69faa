"""Substances put into water: salts and acids of the table, carbon dioxide, organic acid."""

from __future__ import annotations

from typing import Any, Final

from core.water._elementwise import require
from core.water.atoms import molar_mass
from core.water.substances import SEA_SALT, substance
from core.water.water import Water

MOST_GRAMS: Final = 1e9
MOST_LITRES: Final = 1e9


def add(water: Water, name: str, grams: float, litres: float, purity: float = 1.0) -> Water:
    """Dissolve a substance of the table in a water, shut off from air.

    Parameters
    ----------
    water : Water
        The water.
    name : str
        A name of `core.water.substances.SUBSTANCES`.
    grams : float
        As weighed, zero or more. [g]
    litres : float
        How much water it goes into, over zero. [L]
    purity : float, optional
        Share of the weight that is the substance, over 0 up to 1; for hydrochloric acid its mass
        fraction. The rest counts as nothing.

    Returns
    -------
    Water
        With what it brings. The mass and heat of the substance are left out.

    Raises
    ------
    UnknownSubstance
        If the table has no such name.
    OutOfRange
        If an amount is out of range or not finite.

    Examples
    --------
    Ten grams of baking soda in 120 litres are 2.8 °dH:

    >>> tank = Water.from_readings(ph=7.0, kh=3.0, gh=6.0, temperature=25.0)
    >>> round(add(tank, "sodium bicarbonate", 10.0, 120.0).kh, 2)
    5.78
    """
    added = substance(name)
    require("mass", grams, 0.0, MOST_GRAMS, "g")
    require("volume", litres, 1e-9, MOST_LITRES, "L")
    require("purity", purity, 1e-9, 1.0)
    per_kilogram = grams * purity / (litres * water.density)
    millimoles = 1000.0 * per_kilogram / added.molar_mass
    parts: dict[str, Any] = {
        ion: getattr(water, ion) + amount * millimoles for ion, amount in added.ions.items()
    }
    parts["alkalinity"] = water.alkalinity + added.alkalinity * millimoles
    if added is SEA_SALT:
        parts["salinity"] = water.salinity + per_kilogram
    return water.changed(**parts)


def with_co2(water: Water, milligrams: float) -> Water:
    """Add carbon dioxide (or take it away, if negative). [mg/L].

    Raises
    ------
    OutOfRange
        If more is taken away than there is carbon, or the amount is not finite.
    """
    require("carbon dioxide", milligrams, -1e5, 1e5, "mg/L")
    return water.changed(carbon=water.carbon + milligrams / molar_mass("CO2") / water.density)


def with_organic_acid(water: Water, millimoles: float) -> Water:
    """Add weak organic acid (leaves, peat, wood), by its carboxyl groups. [mmol/L].

    Alkalinity, which counts organic anions, stays; the acid takes over from bicarbonate.
    """
    require("organic acid", millimoles, 0.0, 100.0, "mmol/L")
    return water.changed(organic=water.organic + millimoles / water.density)
