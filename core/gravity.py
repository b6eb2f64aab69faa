"""Specific gravity and salinity of seawater, as far as the trade's units need them.

Specific gravity is 25/25 °C, salinity is g/kg. `core.water` has the full science.
"""

from __future__ import annotations

import math

from core.errors import OutOfRange

SP_TO_G_KG = 35.16504 / 35.0
"""Reference salinity of practical salinity 35 (Millero et al. 2008, Deep-Sea Res. I 55:50-72)."""


def density(salinity: float) -> float:
    """Density of seawater at 25 °C and one atmosphere. [kg/m³]

    Parameters
    ----------
    salinity : float
        Practical salinity, 0 to 42.

    References
    ----------
    .. [1] UNESCO EOS-80: Millero & Poisson 1981, Deep-Sea Res. 28A:625-629; coefficients from
       memory, checked in the tests against the GSW library.
    """
    t = 25.0
    water = (
        999.842594
        + 6.793952e-2 * t
        - 9.095290e-3 * t**2
        + 1.001685e-4 * t**3
        - 1.120083e-6 * t**4
        + 6.536332e-9 * t**5
    )
    a = 8.24493e-1 - 4.0899e-3 * t + 7.6438e-5 * t**2 - 8.2467e-7 * t**3 + 5.3875e-9 * t**4
    b = -5.72466e-3 + 1.0227e-4 * t - 1.6546e-6 * t**2
    return water + a * salinity + b * salinity * math.sqrt(salinity) + 4.8314e-4 * salinity**2


_FRESH = density(0.0)


def gravity_from_salinity(salinity: float) -> float:
    """Specific gravity 25/25 °C of a salinity. [g/kg → –]

    Raises
    ------
    OutOfRange
        If `salinity` is not within 0 to 50 g/kg.
    """
    if not 0.0 <= salinity <= 50.0:
        raise OutOfRange("salinity", salinity, 0.0, 50.0, "g/kg")
    return density(salinity / SP_TO_G_KG) / _FRESH


def salinity_from_gravity(gravity: float) -> float:
    """Salinity of a specific gravity 25/25 °C. [– → g/kg]

    Raises
    ------
    OutOfRange
        If `gravity` is not within 1.000 to 1.0375 (0 to 50 g/kg).

    Notes
    -----
    Newton's method on `gravity_from_salinity`, whose slope is nearly constant.

    Examples
    --------
    >>> round(salinity_from_gravity(1.0264), 1)
    35.1
    """
    if not 1.0 <= gravity <= 1.0375:
        raise OutOfRange("specific gravity", gravity, 1.0, 1.0375)
    guess = (gravity - 1.0) / 7.53e-4
    for _ in range(4):
        slope = (_gravity(guess + 0.01) - _gravity(max(guess - 0.01, 0.0))) / (
            guess + 0.01 - max(guess - 0.01, 0.0)
        )
        guess = max(guess - (_gravity(guess) - gravity) / slope, 0.0)
    return guess


def _gravity(salinity: float) -> float:
    return density(salinity / SP_TO_G_KG) / _FRESH
