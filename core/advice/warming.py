"""Hot and cold water mixed to a temperature: the heat of both adds up."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

COLDEST, HOTTEST = 0.0, 100.0

SCALDS: Final = 50.0
"""Over it water burns skin within minutes; common practice, no source. [°C]"""


def hot_water(litres: float, wanted: float, cold: float, hot: float) -> float | None:
    """How much of a volume must be hot water.

    Parameters
    ----------
    litres : float
        Of the mix. [L]
    wanted, cold, hot : float
        Temperatures. [°C]

    Returns
    -------
    float or None
        Hot water [L]; None where no mix of the two is as warm as is wanted.

    Notes
    -----
    The heat capacity and density of the two differ by under 2 %, less than taps and thermometers.

    Examples
    --------
    >>> hot_water(30.0, 25.0, 12.0, 55.0)
    9.069767441860465
    """
    if not COLDEST <= cold < hot <= HOTTEST or not cold <= wanted <= hot or litres <= 0.0:
        return None
    return litres * (wanted - cold) / (hot - cold)


def coldest_safe(tank: float, share: float, step: float) -> float:
    """How cold new water may be so that a change cools the tank by no more than a step. [°C]

    Examples
    --------
    >>> coldest_safe(26.0, 0.4, 2.0)
    21.0
    """
    return tank - step / share


def warmest_safe(tank: float, share: float, step: float) -> float:
    """How warm new water may be so that a change warms the tank by no more than a step. [°C]

    Examples
    --------
    >>> warmest_safe(26.0, 0.4, 2.0)
    31.0
    """
    return tank + step / share


MELTING: Final = 333.6
"""Heat that melts ice; CRC Handbook, from memory. [kJ/kg]"""

HEAT: Final = 4.18
"""Heat that warms water by a degree; CRC Handbook, from memory. [kJ/(kg °C)]"""


def mixed(parts: Sequence[tuple[float, float]]) -> float:
    """How warm waters become together, each as litres and warmth. [L, °C] → [°C]

    Examples
    --------
    >>> round(mixed([(20.0, 15.0), (100.0, 25.0)]), 2)
    23.33
    """
    return sum(litres * warm for litres, warm in parts) / sum(litres for litres, _warm in parts)


def new_water(tank: float, goal: float, share: float) -> float:
    """How warm new water must be so that a change of a share gets there. [°C]

    Examples
    --------
    >>> new_water(31.0, 29.0, 0.25)
    23.0
    """
    return tank + (goal - tank) / share


def ice_for(litres: float, warm: float, by: float) -> float:
    """How much ice, melting in a closed bottle, cools water by so much. [L, °C, °C] → [kg]

    Examples
    --------
    >>> round(ice_for(100.0, 31.0, 1.0), 2)
    0.91
    """
    return litres * HEAT * by / (MELTING + HEAT * (warm - by))
