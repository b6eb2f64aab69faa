"""May this much buffer go in while there is ammonia? Raising KH raises pH and frees the poison."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Literal

from core.advice import limits
from core.advice.hardness import MEQ_PER_DEGREE
from core.advice.state import State, ammonia_as_n
from core.water.ammonia import un_ionised_fraction


@dataclass(frozen=True, slots=True)
class Gate:
    """What a plan that passed rests on.

    Attributes
    ----------
    only_below : float or None
        The highest total ammonia that the plan bears, where ammonia is unknown or old; None
        where a fresh reading decided. [mg/L as N]
    ph : float
        pH that the gate reckoned with.
    nh3_n : float or None
        Un-ionised ammonia after the plan; None where total ammonia is unknown. [mg/L as N]
    temperature : float
        Temperature that the gate reckoned with. [°C]
    temperature_assumed : bool
        True where no temperature was known.
    """

    only_below: float | None
    ph: float
    nh3_n: float | None
    temperature: float
    temperature_assumed: bool


def standing_ph(kh: float) -> float:
    """pH of fresh water that has come to rest in open air, from its KH alone.

    Parameters
    ----------
    kh : float
        Carbonate hardness, over zero. [°dH]

    Returns
    -------
    float
        ``11.3 + log10(alkalinity in eq/L)``: 0.1 to 0.3 above what PHREEQC gives at 25 °C and
        420 µatm, so on the cautious side for ammonia. An interim rule of ours.

    Examples
    --------
    >>> round(standing_ph(6.0), 2)
    8.63
    """
    return 11.3 + math.log10(kh * MEQ_PER_DEGREE / 1000.0)


def gate_for(state: State, kh: float) -> Gate | Literal["ammonia", "temperature_unknown"]:
    """Judge a plan that ends at a KH, by the last total ammonia; today's pH does not decide.

    Returns
    -------
    Gate or str
        The gate passed, or the reason for refusing.
    """
    known = state.fresh("temperature")
    temperature = known.value if known else limits.WARMEST_ASSUMED
    ph = min(standing_ph(kh), 12.0)
    total = state.fresh("ammonia")
    if total is None:
        bears = _highest_total(state, ph, temperature)
        return Gate(bears, ph, None, temperature, temperature_assumed=known is None)
    upper = total.high if math.isfinite(total.high) else total.value
    total_n = ammonia_as_n(upper, total.basis)
    nh3_n = total_n * _fraction(state, ph, temperature)
    if nh3_n > gate_limit(state) or total.qualifier == ">":
        cool = total_n * _fraction(state, ph, limits.COOLEST_ASSUMED)
        if known is None and total.qualifier != ">" and cool <= gate_limit(state):
            return "temperature_unknown"
        return "ammonia"
    return Gate(None, ph, nh3_n, temperature, temperature_assumed=known is None)


def gate_limit(state: State) -> float:
    """Un-ionised ammonia that no plan may pass. [mg/L as N]"""
    return limits.NH3_GATE_TENDER if state.tank.is_sea else limits.NH3_GATE


def _highest_total(state: State, ph: float, temperature: float) -> float:
    """The highest total ammonia under the gate, rounded down to what a kit can be held to."""
    exact = gate_limit(state) / _fraction(state, ph, temperature)
    return math.floor(exact * 100.0) / 100.0


def _fraction(state: State, ph: float, temperature: float) -> float:
    within = min(max(temperature, 0.0), 50.0)
    return un_ionised_fraction(ph, within, min(max(state.salinity, 0.0), 60.0))
