"""Things done to water: mixed, stood, dosed, lived in, evaporated. Each gives a new water."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from typing import Any, Final, Literal

from core.water._elementwise import functions_for, require
from core.water.atoms import molar_mass
from core.water.solution import in_air
from core.water.substances import SEA_SALT, substance
from core.water.water import AMOUNTS, CHARGE, Water

MOST_LITRES: Final = 1e9
MOST_GRAMS: Final = 1e9


def mix(parts: Sequence[tuple[Water, float]]) -> Water:
    """Mix any number of waters, shut off from air.

    Parameters
    ----------
    parts : sequence of (Water, float)
        Each water and how much of it, zero or more, not all zero. [L]

    Returns
    -------
    Water
        Alkalinity, carbon, every ion, salinity and temperature in proportion to mass; the
        assumptions and contradictions of all parts of which there is any.

    Raises
    ------
    OutOfRange
        If an amount is negative or not finite, or all are zero.

    Examples
    --------
    >>> tank = Water.from_readings(ph=6.0, kh=1.0, gh=2.0, temperature=25.0)
    >>> tap = Water.from_readings(ph=7.6, kh=8.0, gh=10.0, temperature=15.0)
    >>> mixed = mix([(tank, 50.0), (tap, 50.0)])
    >>> round(mixed.kh, 1), round(mixed.temperature, 1)
    (4.5, 20.0)
    """
    for _, litres in parts:
        require("volume", litres, 0.0, MOST_LITRES, "L")
    weights = [litres * water.density for water, litres in parts]
    total = sum(weights)
    require("volume of all parts", total, 1e-9, None, "L")
    names = ("temperature", "salinity", *AMOUNTS)
    means: dict[str, Any] = {
        name: sum(
            getattr(water, name) * weight for (water, _), weight in zip(parts, weights, strict=True)
        )
        / total
        for name in names
    }
    mixed = Water(**means)
    for water, litres in parts:
        if not isinstance(litres, float | int) or litres > 0.0:
            mixed = mixed.assuming(*water.assumptions).contradicting(*water.contradictions)
    return mixed


def diluted(water: Water, share: float, temperature: float | None = None) -> Water:
    """Replace a share of a water by pure water (RO, rain, distilled).

    Parameters
    ----------
    water : Water
        The water.
    share : float
        Of its mass, 0 to 1.
    temperature : float, optional
        Of the pure water; as the water's where unsaid. [°C]

    Returns
    -------
    Water
        With everything in it lessened by that share. Pure water brings no carbon with it.

    Raises
    ------
    OutOfRange
        If the share is not from 0 to 1.
    """
    require("share", share, 0.0, 1.0)
    pure = Water(water.temperature if temperature is None else temperature)
    return mix([(water, (1.0 - share) / water.density), (pure, share / pure.density)])


def stood(water: Water, pco2: float, share: float = 1.0) -> Water:
    """Let a water stand in air; alkalinity and ions stay, carbon leaves or enters.

    Parameters
    ----------
    water : Water
        The water.
    pco2 : float
        Carbon dioxide of the air: about 420 outdoors, 600 to 1200 in rooms, and what a stocked
        tank comes to rest at, up to 2000. [µatm]
    share : float, optional
        How much of the way to balance has been gone, 0 to 1, counted in carbon.

    Returns
    -------
    Water
        The same with other `carbon`.

    Raises
    ------
    OutOfRange
        If the pressure is not from 0.01 to 1e6 or the share not from 0 to 1.

    Examples
    --------
    >>> from core.water.solution import solve
    >>> tap = Water.from_readings(ph=7.2, kh=4.0, gh=8.0, temperature=25.0)
    >>> round(solve(stood(tap, 420.0)).ph, 1)
    8.3
    """
    require("share", share, 0.0, 1.0)
    end = in_air(water, pco2).water.carbon
    return replace(water, carbon=water.carbon + share * (end - water.carbon))


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
    return replace(water, **parts)


def with_co2(water: Water, milligrams: float) -> Water:
    """Add carbon dioxide (or take it away, if negative). [mg/L].

    Raises
    ------
    OutOfRange
        If more is taken away than there is carbon, or the amount is not finite.
    """
    require("carbon dioxide", milligrams, -1e5, 1e5, "mg/L")
    return replace(water, carbon=water.carbon + milligrams / molar_mass("CO2") / water.density)


def with_organic_acid(water: Water, millimoles: float) -> Water:
    """Add weak organic acid (leaves, peat, wood), by its carboxyl groups. [mmol/L].

    Alkalinity, which counts organic anions, stays; the acid takes over from bicarbonate.
    """
    require("organic acid", millimoles, 0.0, 100.0, "mmol/L")
    return replace(water, organic=water.organic + millimoles / water.density)


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


def evaporated(water: Water, share: float) -> Water:
    """Let a share of the water's mass evaporate; carbon stays too, until it stands in air.

    Parameters
    ----------
    water : Water
        The water.
    share : float
        Of its mass, 0 to 0.9.

    Returns
    -------
    Water
        More concentrated in everything, salinity included.

    Raises
    ------
    OutOfRange
        If the share is out of range or the salt becomes more than a water may hold.
    """
    require("share", share, 0.0, 0.9)
    more = 1.0 / (1.0 - share)
    parts: dict[str, Any] = {name: getattr(water, name) * more for name in ("salinity", *AMOUNTS)}
    return replace(water, **parts)


def topped_up(water: Water, share: float, by: Water) -> Water:
    """Replace a share of the water's mass, lost to the air, by another water.

    Topping up with pure water gives the water back as it was; tap water leaves its salts each
    time.
    """
    left = evaporated(water, share)
    xp = functions_for(share)
    return mix(
        [
            (left, xp.maximum(1.0 - share, 0.0) / left.density),
            (by, share / by.density),
        ]
    )
