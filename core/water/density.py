"""Density and specific gravity of fresh, brackish and sea water at the surface.

Practical salinity counts ratio of conductivities and has no unit; absolute salinity counts grams
of salt in a kilogram. Of standard sea water the second is 35.16504/35 times the first.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

from core.water._elementwise import functions_for, remembering, require

GRAMS_PER_PRACTICAL: Final = 35.16504 / 35.0
"""Millero, Feistel, Wright & McDougall 2008, Deep-Sea Res. I 55:50-72 (grade A)."""

TEMPERATURE_RANGE: Final = (-2.0, 45.0)
SALINITY_RANGE: Final = (0.0, 60.0)
STEEPEST: Final = 8.3e-4
"""More than density ever rises with salinity. [kg/L per g/kg]"""


def practical_from_grams(salinity: float) -> float:
    """Practical salinity of a water with so many grams of sea salt per kilogram."""
    return salinity / GRAMS_PER_PRACTICAL


def grams_from_practical(practical: float) -> float:
    """Grams of sea salt per kilogram of a water of this practical salinity."""
    return practical * GRAMS_PER_PRACTICAL


@remembering
def density(temperature: float, salinity: float = 0.0) -> float:
    """Density at atmospheric pressure.

    Parameters
    ----------
    temperature : float
        -2 to 45; the formula was made for -2 to 40. [°C]
    salinity : float, optional
        0 to 60; made for 0 to 42. [g/kg]

    Returns
    -------
    float
        Density. [kg/L]

    Raises
    ------
    OutOfRange
        If an argument lies outside its range or is not finite.

    Notes
    -----
    The international equation of state of 1980 [1]_, within 0.02 g/L of TEOS-10 from 0 to 42 g/kg
    and 0 to 40 °C (the tests compare the two).

    Examples
    --------
    The check values of the source (practical salinity 0 and 35, 5 and 25 °C):

    >>> round(1000 * density(5.0), 5)
    999.96675
    >>> round(1000 * density(25.0, grams_from_practical(35.0)), 5)
    1023.34306

    References
    ----------
    .. [1] Fofonoff & Millard 1983, UNESCO Tech. Pap. Mar. Sci. 44, p. 15-19 (coefficients and
       check values from memory; the check values hold the coefficients to it).
    """
    require("temperature", temperature, *TEMPERATURE_RANGE, "°C")
    require("salinity", salinity, *SALINITY_RANGE, "g/kg")
    t, s = temperature, practical_from_grams(salinity)
    root = functions_for(t, s).sqrt(s)
    pure = 999.842594 + t * (
        6.793952e-2 + t * (-9.095290e-3 + t * (1.001685e-4 + t * (-1.120083e-6 + t * 6.536332e-9)))
    )
    linear = 8.24493e-1 + t * (-4.0899e-3 + t * (7.6438e-5 + t * (-8.2467e-7 + t * 5.3875e-9)))
    half = -5.72466e-3 + t * (1.0227e-4 - t * 1.6546e-6)
    return (pure + s * (linear + root * half + s * 4.8314e-4)) / 1000.0


@dataclass(frozen=True, slots=True)
class Reference:
    """The two temperatures of a specific gravity: of the water, and of the pure water beside it.

    Attributes
    ----------
    water, pure : float
        Temperatures. [°C]
    """

    water: float
    pure: float


REFERENCES: Final = {
    "25/25": Reference(25.0, 25.0),
    "20/20": Reference(20.0, 20.0),
    "20/4": Reference(20.0, 4.0),
    "15/15": Reference(15.0, 15.0),
    "60/60F": Reference(140.0 / 9.0, 140.0 / 9.0),
}
"""What hydrometers and refractometers for aquaria say on their scale; 25/25 where none is said."""


def specific_gravity(salinity: float, reference: Reference = REFERENCES["25/25"]) -> float:
    """Specific gravity that an instrument of this reference reads at its own temperature.

    Parameters
    ----------
    salinity : float
        0 to 60. [g/kg]
    reference : Reference, optional
        Its two temperatures.

    Returns
    -------
    float
        Density of the water over that of pure water.

    Raises
    ------
    OutOfRange
        If the salinity lies outside its range or is not finite.

    Examples
    --------
    >>> round(specific_gravity(35.17), 4)
    1.0264
    """
    return density(reference.water, salinity) / density(reference.pure)


def salinity_from_specific_gravity(
    gravity: float,
    reference: Reference = REFERENCES["25/25"],
    temperature: float | None = None,
) -> float:
    """Salinity of a water from its specific gravity.

    Parameters
    ----------
    gravity : float
        As read; 0.99 to 1.05.
    reference : Reference, optional
        The two temperatures of the instrument's scale.
    temperature : float, optional
        Temperature at which a hydrometer was read where that is not the reference's: the reading
        is then the density at that temperature over that of pure water at `reference.pure`. The
        widening of the glass (about 0.0001 in 5 °C) is left out. Refractometers that compensate
        for temperature need none. [°C]

    Returns
    -------
    float
        Salinity; 0 where the reading is under that of pure water. [g/kg]

    Raises
    ------
    OutOfRange
        If the gravity or the temperature lies outside its range, or the salinity is over 60.

    Examples
    --------
    >>> round(salinity_from_specific_gravity(1.0264), 1)
    35.2
    >>> round(salinity_from_specific_gravity(1.0264, REFERENCES["20/4"]), 1)
    37.3
    """
    require("specific gravity", gravity, 0.99, 1.05)
    at = reference.water if temperature is None else temperature
    require("temperature", at, *TEMPERATURE_RANGE, "°C")
    xp = functions_for(gravity, at)
    wanted = gravity * density(reference.pure)
    salinity = 0.0 * wanted
    for _ in range(16):  # nearly a straight line: each step leaves an eighth, and comes from below
        salinity = xp.maximum(salinity + (wanted - density(at, salinity)) / STEEPEST, 0.0)
    return salinity
