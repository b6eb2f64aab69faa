"""Waters mixed, stood in air, evaporated and topped up. Each gives a new water."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any, Final

from core.water._elementwise import PLAIN_TYPES, anywhere, functions_for, require
from core.water.solution import in_air
from core.water.water import AMOUNTS, RANGE_OF, Water, numbers_of

MOST_LITRES: Final = 1e9


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
    means: dict[str, Any] = {}
    for name, *values in zip(RANGE_OF, *(numbers_of(water) for water, _ in parts), strict=True):
        if all(isinstance(one, PLAIN_TYPES) and one == values[0] for one in values):
            means[name] = values[0]  # plain it stays beside arrays, which are slower to solve
            continue
        held = 0.0
        for value, weight in zip(values, weights, strict=True):
            held = held + value * weight
        means[name] = held / total
    present = [water for water, litres in parts if anywhere(litres > 0.0)]
    assumptions = [assumed for water in present for assumed in water.assumptions]
    contradictions = [found for water in present for found in water.contradictions]
    return Water(
        **means,
        assumptions=tuple(dict.fromkeys(assumptions)),
        contradictions=tuple(dict.fromkeys(contradictions)),
    )


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
    return water.changed(carbon=water.carbon + share * (end - water.carbon))


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
    return water.changed(**parts)


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
