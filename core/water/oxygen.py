"""Dissolved oxygen of water that stands in air."""

from __future__ import annotations

from typing import Final

from core.water._elementwise import functions_for, require
from core.water.ph_scales import KELVIN

TEMPERATURE_RANGE: Final = (0.0, 45.0)
SALINITY_RANGE: Final = (0.0, 60.0)
ALTITUDE_RANGE: Final = (-500.0, 5000.0)


def oxygen_saturation(temperature: float, salinity: float = 0.0, altitude: float = 0.0) -> float:
    """Dissolved oxygen at equilibrium with moist air.

    Parameters
    ----------
    temperature : float
        0 to 45; the formula was made for 0 to 40. [°C]
    salinity : float, optional
        0 to 60; made for 0 to 40. [g/kg]
    altitude : float, optional
        Above the sea, -500 to 5000. [m]

    Returns
    -------
    float
        Oxygen at saturation. [mg/L]

    Raises
    ------
    OutOfRange
        If an argument lies outside its range or is not finite.

    Notes
    -----
    Benson & Krause as in Standard Methods [1]_, with the pressure of the standard atmosphere and
    its correction for the water vapour.

    Examples
    --------
    >>> round(oxygen_saturation(20.0), 2)
    9.09
    >>> round(oxygen_saturation(25.0, 35.0), 2)
    6.77

    References
    ----------
    .. [1] APHA, Standard Methods 4500-O (1985 edition: the fresh-water polynomial as in the
       SWAT+ theory documents, grade A; salinity and pressure terms from memory, after Benson &
       Krause 1984, Limnol. Oceanogr. 29:620-632).
    """
    require("temperature", temperature, *TEMPERATURE_RANGE, "°C")
    require("salinity", salinity, *SALINITY_RANGE, "g/kg")
    require("altitude", altitude, *ALTITUDE_RANGE, "m")
    xp = functions_for(temperature, salinity, altitude)
    x = 1.0 / (temperature + KELVIN)
    at_sea = xp.exp(
        -139.34411 + x * (1.575701e5 + x * (-6.642308e7 + x * (1.243800e10 - x * 8.621949e11)))
        - salinity * (1.7674e-2 + x * (-1.0754e1 + x * 2.1407e3))
    )  # fmt: skip
    vapour = xp.exp(11.8571 - x * (3840.70 + x * 216961.0))
    theta = 0.000975 - 1.426e-5 * temperature + 6.436e-8 * temperature**2
    pressure = standard_pressure(altitude)
    return (
        at_sea * (pressure - vapour) * (1.0 - theta * pressure)
        / ((1.0 - vapour) * (1.0 - theta))
    )  # fmt: skip


def standard_pressure(altitude: float) -> float:
    """Pressure of the standard atmosphere (ISO 2533) at an altitude. [m], [atm]."""
    xp = functions_for(altitude)
    return xp.exp(5.25588 * xp.log(1.0 - 2.25577e-5 * altitude))
