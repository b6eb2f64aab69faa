"""Carbon dioxide of a tank from its pH and KH, with what the kits leave open."""

from __future__ import annotations

from dataclasses import dataclass

from core.advice import limits
from core.advice.state import Measured
from core.errors import CoreError
from core.water.solution import with_ph
from core.water.water import Water

ASSUMED_TEMPERATURE = 25.0
"""Taken where nobody measured; carbon dioxide at one pH and KH moves little with it. [°C]"""


@dataclass(frozen=True, slots=True)
class CarbonDioxide:
    """Dissolved carbon dioxide: what the readings say, and from least to most. [mg/L]"""

    mg_l: float
    least: float
    most: float
    temperature_assumed: bool

    @property
    def is_high(self) -> bool:
        """True over what is warned of."""
        return self.mg_l > limits.CO2_WARN


def carbon_dioxide(
    ph: Measured, kh: Measured, temperature: float | None, salinity: float = 0.0
) -> CarbonDioxide | None:
    """Dissolved carbon dioxide by the carbonate equilibrium.

    Parameters
    ----------
    ph, kh : Measured
        The readings, each an interval; pH as a kit reads it. [-, °dH]
    temperature : float or None
        [°C]
    salinity : float
        [g/kg]

    Returns
    -------
    CarbonDioxide or None
        None where the readings are no water that can be (`core.water` refuses them).

    Notes
    -----
    The least is the highest pH with the lowest KH, the most the other way round.
    """
    warm = ASSUMED_TEMPERATURE if temperature is None else temperature
    try:
        told, least, most = (
            _mg_l(acidity, alkalinity, warm, salinity)
            for acidity, alkalinity in (
                (ph.value, kh.value),
                (ph.high, kh.low),
                (ph.low, kh.high),
            )
        )
    except CoreError:
        return None
    return CarbonDioxide(told, least, most, temperature_assumed=temperature is None)


def _mg_l(ph: float, kh: float, temperature: float, salinity: float) -> float:
    if kh <= 0.0:
        return 0.0
    water = Water.from_readings(ph=ph, kh=kh, temperature=temperature, salinity=salinity)
    return with_ph(water, ph).co2_mg_l
