"""Ammonia: its poisonous share, and the limits of total ammonia in ambient waters.

Amounts are as nitrogen. Every `float` may also be a numpy array.
"""

from __future__ import annotations

import math
from typing import Final, Literal

from core.water._elementwise import PLAIN_TYPES, functions_for, require
from core.water.ph_scales import (
    KELVIN,
    hydrogen_activity_per_total,
    ln_bisulfate_constant,
    total_sulfate,
)

PhScale = Literal["meter", "total", "free"]

LN10: Final = math.log(10.0)
PH_RANGE: Final = (2.0, 12.0)
TEMPERATURE_RANGE: Final = (-2.0, 50.0)
SALINITY_RANGE: Final = (0.0, 60.0)


def un_ionised_fraction(
    ph: float, temperature: float, salinity: float = 0.0, *, scale: PhScale = "meter"
) -> float:
    """Share of total ammonia that is un-ionised NH3, the form that poisons.

    Parameters
    ----------
    ph : float
        2 to 12. As a keeper's kit or meter reads it unless `scale` says otherwise.
    temperature : float
        -2 to 50; the sources cover 0 to 50 in fresh water, -2 to 40 in the sea. [°C]
    salinity : float, optional
        0 (fresh water) to 60; the source covers 0 to 40. Taken as practical salinity, which is
        0.5 % less than the g/kg of it. [g/kg]
    scale : {"meter", "total", "free"}, optional
        "meter": calibrated in ordinary (NBS-like) buffers; "total" and "free": the
        oceanographers' scales. In fresh water (salinity 0) all are one.

    Returns
    -------
    float
        NH3 / (NH3 + NH4+), 0 to 1.

    Raises
    ------
    OutOfRange
        If an argument lies outside these ranges or is not finite.

    Notes
    -----
    Fresh water, Emerson et al. [1]_: ``pKa = 0.09018 + 2729.92 / T``. With salinity, Clegg &
    Whitfield [2]_, their equation 18 (total scale, mol/kg of sea water), turned to the meter's
    scale by `hydrogen_activity_per_total`; between them the step is under 1 % of the fraction.

    Examples
    --------
    >>> round(un_ionised_fraction(8.0, 24.0), 4)
    0.0502
    >>> round(un_ionised_fraction(8.2, 25.0, 35.0), 3)
    0.062

    References
    ----------
    .. [1] Emerson, Russo, Lund & Thurston 1975, J. Fish. Res. Board Can. 32:2379-2383; the
       equation as reproduced in handbooks, the paper itself not read.
    .. [2] Clegg & Whitfield 1995, Geochim. Cosmochim. Acta 59:2403-2421; abstract read, the
       coefficients as in the open source of CO2SYS.
    """
    require("pH", ph, *PH_RANGE)
    require("temperature", temperature, *TEMPERATURE_RANGE, "°C")
    require("salinity", salinity, *SALINITY_RANGE, "g/kg")
    xp = functions_for(ph, temperature, salinity)
    fresh = -LN10 * _emerson_pka(temperature)
    if isinstance(salinity, PLAIN_TYPES) and salinity <= 0.0:
        ln_constant = fresh
    else:
        salt = _ln_constant_in_salt_water(temperature, salinity, scale)
        ln_constant = xp.where(salinity > 0.0, salt, fresh)
    return 1.0 / (1.0 + xp.exp(-LN10 * ph - ln_constant))


def un_ionised_ammonia_n(
    total_n: float, ph: float, temperature: float, salinity: float = 0.0
) -> float:
    """Un-ionised ammonia of so much total ammonia, both as nitrogen.

    Parameters
    ----------
    total_n : float
        Total ammonia (NH3 + NH4+), zero or more. [mg/L as N]
    ph, temperature, salinity : float
        As for `un_ionised_fraction`, pH as a meter reads it.

    Returns
    -------
    float
        Un-ionised ammonia. [mg/L as N]

    Raises
    ------
    OutOfRange
        If `total_n` is negative, or an argument lies outside its range or is not finite.

    Examples
    --------
    Durborow, Crosby & Brunson 1992, SRAC 463, worked example (0.73):

    >>> round(un_ionised_ammonia_n(3.0, 8.6, 30.0), 2)
    0.73
    """
    require("total ammonia", total_n, 0.0, None, "mg/L as N")
    return total_n * un_ionised_fraction(ph, temperature, salinity)


def acute_criterion(ph: float, temperature: float, oncorhynchus: bool = True) -> float:
    """One-hour limit of total ammonia in fresh ambient waters (US EPA 2013).

    Parameters
    ----------
    ph : float
        2 to 12; the criterion was made for 6.5 to 9.0.
    temperature : float
        -2 to 50; made for 0 to 30. [°C]
    oncorhynchus : bool, optional
        Whether trout and salmon of that genus live there; True is the stricter one in the cold.

    Returns
    -------
    float
        Criterion maximum concentration of total ammonia. [mg/L as N]

    Raises
    ------
    OutOfRange
        If pH or temperature lie outside these ranges or are not finite.

    Notes
    -----
    A criterion of ambient waters, not a target of a tank [1]_.

    Examples
    --------
    >>> round(acute_criterion(7.0, 20.0))
    17

    References
    ----------
    .. [1] US EPA 2013, EPA 822-R-13-001; the formula as coded by three state agencies.
    """
    _require_ambient(ph, temperature)
    xp = functions_for(ph, temperature)
    warm = 23.12 * xp.exp(LN10 * 0.036 * (20.0 - temperature))
    by_mussels = 0.7249 * _of_ph(ph, 7.204, 0.0114, 1.6181)
    if not oncorhynchus:
        return by_mussels * xp.minimum(51.93, warm)
    return xp.minimum(_of_ph(ph, 7.204, 0.275, 39.0), by_mussels * warm)


def chronic_criterion(ph: float, temperature: float) -> float:
    """Thirty-day limit of total ammonia in fresh ambient waters (US EPA 2013).

    Parameters
    ----------
    ph, temperature : float
        As for `acute_criterion`.

    Returns
    -------
    float
        Criterion continuous concentration of total ammonia; within the 30 days no 4-day mean
        may pass 2.5 times this. [mg/L as N]

    Raises
    ------
    OutOfRange
        If pH or temperature lie outside their ranges or are not finite.

    Examples
    --------
    >>> round(chronic_criterion(7.0, 20.0), 1)
    1.9

    References
    ----------
    .. [1] US EPA 2013, EPA 822-R-13-001; the formula as coded by a state agency.
    """
    _require_ambient(ph, temperature)
    xp = functions_for(ph, temperature)
    warm = 2.126 * xp.exp(LN10 * 0.028 * (20.0 - xp.maximum(temperature, 7.0)))
    return 0.8876 * _of_ph(ph, 7.688, 0.0278, 1.1994) * warm


def _emerson_pka(temperature: float) -> float:
    return 0.09018 + 2729.92 / (temperature + KELVIN)


def _ln_constant_in_salt_water(temperature: float, salinity: float, scale: PhScale) -> float:
    """Ln K of NH4+ = NH3 + H+ on the wanted scale."""
    xp = functions_for(temperature, salinity)
    total = ln_ammonium_constant(temperature, salinity)
    if scale == "meter":
        return total + xp.log(hydrogen_activity_per_total(temperature, salinity))
    if scale == "total":
        return total
    bisulfate = total_sulfate(salinity) / xp.exp(ln_bisulfate_constant(temperature, salinity))
    return total - xp.log(1.0 + bisulfate)


def ln_ammonium_constant(temperature: float, salinity: float) -> float:
    """Ln K of NH4+ = NH3 + H+ in sea water, total scale (Clegg & Whitfield 1995, eq. 18)."""
    xp = functions_for(temperature, salinity)
    kelvin = temperature + KELVIN
    root_t, root_s = xp.sqrt(kelvin), xp.sqrt(salinity)
    pk = (
        9.244605 - 2729.33 * (1.0 / 298.15 - 1.0 / kelvin)
        + (0.04203362 - 11.24742 / kelvin) * xp.sqrt(root_s)
        + (-13.6416 + 1.176949 * root_t - 0.02860785 * kelvin + 545.4834 / kelvin) * root_s
        + (-0.1462507 + 0.0090226468 * root_t - 0.0001471361 * kelvin + 10.5425 / kelvin)
        * salinity * root_s
        + (0.004669309 - 0.0001691742 * root_t - 0.5677934 / kelvin) * salinity**2
        + (-2.354039e-05 + 0.009698623 / kelvin) * salinity**2 * root_s
    )  # fmt: skip
    return xp.log(1.0 - 0.001005 * salinity) - LN10 * pk


def _of_ph(ph: float, pk: float, low: float, high: float) -> float:
    """Sigmoid of pH as the EPA writes it: `low` in the alkaline limit, `high` in the acid one."""
    rise = functions_for(ph).exp(LN10 * (ph - pk))
    return low * rise / (1.0 + rise) + high / (1.0 + rise)


def _require_ambient(ph: float, temperature: float) -> None:
    require("pH", ph, *PH_RANGE)
    require("temperature", temperature, *TEMPERATURE_RANGE, "°C")
