"""What living things do to water: bacteria make nitrate, plants take up nutrients and carbon."""

from __future__ import annotations

from dataclasses import replace
from typing import Any, Literal

from core.water._elementwise import require
from core.water.atoms import molar_mass
from core.water.water import CHARGE, Water


def nitrified(water: Water, nitrate: float, source: Literal["ammonium", "food"] = "food") -> Water:
    """Let nitrogen become nitrate.

    Parameters
    ----------
    water : Water
        The water.
    nitrate : float
        Nitrate that forms, zero or more. [mg/L as NO3]
    source : {"food", "ammonium"}, optional
        "ammonium": from the ammonia in the water, two equivalents of alkalinity a mole. "food":
        from organic nitrogen, whose release as ammonium gives one of them back.

    Returns
    -------
    Water
        With less alkalinity, more nitrate, and for "ammonium" less ammonia. Oxygen and the
        carbon that bacteria build in (about 2 % of the alkalinity's effect) are left out.

    Raises
    ------
    OutOfRange
        If the amount is negative or not finite, or there is not that much ammonia.

    Notes
    -----
    7.14 mg of CaCO3 a milligram of ammonium nitrogen; net from food half of that, 0.45 °dH for
    10 mg/L of nitrate (check values R8, computed).

    Examples
    --------
    >>> tank = Water.from_readings(ph=7.0, kh=4.0, gh=6.0, temperature=25.0)
    >>> round(tank.kh - nitrified(tank, 10.0).kh, 2)
    0.45
    """
    require("nitrate", nitrate, 0.0, 10_000.0, "mg/L")
    amount = nitrate / molar_mass("NO3") / water.density
    if source == "food":
        return replace(water, alkalinity=water.alkalinity - amount, nitrate=water.nitrate + amount)
    return replace(
        water,
        alkalinity=water.alkalinity - 2.0 * amount,
        ammonia=water.ammonia - amount,
        nitrate=water.nitrate + amount,
    )


def taken_up(water: Water, *, carbon: float = 0.0, **ions: float) -> Water:
    """Let plants take up carbon and nutrients. [mmol/L].

    Parameters
    ----------
    water : Water
        The water.
    carbon : float, optional
        Inorganic carbon, as CO2. [mmol/L]
    **ions : float
        Nutrients by the names of the water's fields, such as ``nitrate=0.1``. [mmol/L]

    Returns
    -------
    Water
        With less of each. A plant balances the charges it takes by hydrogen or hydroxide, so a
        mole of nitrate or phosphate leaves one equivalent more of alkalinity, one of ammonium or
        potassium one less (Brewer & Goldman 1976, Limnol. Oceanogr. 21:108-117, from memory).

    Raises
    ------
    OutOfRange
        If there is not that much.

    Examples
    --------
    >>> tank = Water.from_readings(ph=7.0, kh=4.0, gh=6.0, nitrate=20.0, temperature=25.0)
    >>> after = taken_up(tank, nitrate=0.1)
    >>> round((after.alkalinity - tank.alkalinity) * tank.density, 3)
    0.1
    """
    alkalinity = water.alkalinity
    parts: dict[str, Any] = {"carbon": water.carbon - carbon / water.density}
    for ion, millimoles in ions.items():
        amount = millimoles / water.density
        parts[ion] = getattr(water, ion) - amount
        alkalinity = alkalinity - CHARGE[ion] * amount
    return replace(water, alkalinity=alkalinity, **parts)
