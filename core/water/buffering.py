"""How well a water holds its pH, and for how long."""

from __future__ import annotations

from dataclasses import replace
from typing import Final

from core.water._elementwise import functions_for, require
from core.water.solution import in_air, solve
from core.water.water import Water

PROBE: Final = 1e-3
"""Acid and base that probe the slope, as a share of alkalinity and carbon."""


def buffer_intensity(water: Water, pco2: float | None = None) -> float:
    """Strong acid or base that moves the pH by one unit, at the water's own pH.

    Parameters
    ----------
    water : Water
        The water.
    pco2 : float, optional
        Carbon dioxide of the air it stays in balance with; None for the first moment, shut off.
        [µatm]

    Returns
    -------
    float
        ``d alkalinity / d pH``, over zero. [meq/L per pH unit]

    Raises
    ------
    OutOfRange
        If the CO2 pressure is out of range.

    Notes
    -----
    Shut off from air the least is near pH 8.3, between the two steps of carbonic acid; in balance
    with air the intensity is about 2.3 times the alkalinity wherever bicarbonate rules.

    Examples
    --------
    >>> tank = Water.from_readings(ph=7.0, kh=4.0, gh=6.0, temperature=25.0)
    >>> round(buffer_intensity(tank, pco2=420.0) / tank.alkalinity, 1)
    2.4
    """
    xp = functions_for(water.alkalinity, water.carbon)
    probe = PROBE * (xp.maximum(water.alkalinity, -water.alkalinity) + 0.01 * water.carbon + 0.001)
    rise = ph_after(water, -probe, pco2) - ph_after(water, probe, pco2)
    return 2.0 * probe / rise


def ph_after(water: Water, acid: float, pco2: float | None = None) -> float:
    """PH after so much strong acid (base if negative).

    Parameters
    ----------
    water : Water
        The water.
    acid : float
        Strong acid. [meq/L]
    pco2 : float, optional
        Carbon dioxide of the air in which it then stands; None for at once. [µatm]

    Returns
    -------
    float
        PH as a meter reads it.

    Raises
    ------
    OutOfRange
        If an argument is out of range or not finite.
    """
    require("acid", acid, -1000.0, 1000.0, "meq/L")
    dosed = replace(water, alkalinity=water.alkalinity - acid / water.density)
    return (solve(dosed) if pco2 is None else in_air(dosed, pco2)).ph


def days_of_reserve(water: Water, loss: float, floor: float = 0.0) -> float:
    """Days until KH falls to a floor.

    Parameters
    ----------
    water : Water
        The water.
    loss : float
        KH lost a day, over zero. [°dH]
    floor : float, optional
        KH at which it ends, zero or more. [°dH]

    Returns
    -------
    float
        Days; 0 where it is at the floor already.

    Raises
    ------
    OutOfRange
        If the loss is not over zero, or an argument is not finite.
    """
    require("loss of KH", loss, 1e-6, 1000.0, "°dH a day")
    require("floor of KH", floor, 0.0, 1000.0, "°dH")
    left = water.kh - floor
    return functions_for(left).maximum(left, 0.0) / loss
