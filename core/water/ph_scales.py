"""What a keeper's meter reads in salt water, beside the total scale of the constants.

Kits and meters are calibrated in ordinary buffers, so their pH is NBS-like: an activity. The
constants of sea water are written on the total scale: a concentration. In fresh water the two
are one apart from the activity coefficient; in sea water the meter reads about 0.13 higher, and
its junction makes the step 'old and full of uncertainty' (the words of the oceanographers).
"""

from __future__ import annotations

from typing import Final

from core.water._elementwise import functions_for

KELVIN: Final = 273.15
SALINITY_OF_IONIC_STRENGTH: Final = (19.924, 1000.0, 1.005)
"""I = 19.924 S / (1000 - 1.005 S) [mol/kg-H2O] (Dickson & Goyet 1994, DOE handbook, ch. 5)."""

BLEND_FROM: Final = 5.0
BLEND_TO: Final = 15.0
"""Salinities between which fresh-water and sea-water formulas are blended. [g/kg]"""


def ionic_strength_of_salinity(salinity: float) -> float:
    """Ionic strength of diluted sea water (DOE handbook 1994, ch. 5), in mol/kg-H2O."""
    factor, whole, salt = SALINITY_OF_IONIC_STRENGTH
    return factor * salinity / (whole - salt * salinity)


def sea_share(salinity: float) -> float:
    """Share that the sea-water formulas have in a blend: 0 to 5 g/kg, 1 from 15 g/kg on.

    A cubic step, so that value and slope are continuous at both ends.
    """
    xp = functions_for(salinity)
    x = xp.minimum(xp.maximum((salinity - BLEND_FROM) / (BLEND_TO - BLEND_FROM), 0.0), 1.0)
    return x * x * (3.0 - 2.0 * x)


def total_sulfate(salinity: float) -> float:
    """Sulfate of sea water (Morris & Riley 1966), in mol/kg."""
    return 0.14 / 96.062 * salinity / 1.80655


def total_fluoride(salinity: float) -> float:
    """Fluoride of sea water (Riley 1965), in mol/kg."""
    return 0.000067 / 18.998 * salinity / 1.80655


def ln_bisulfate_constant(temperature: float, salinity: float) -> float:
    """Ln K of HSO4- = H+ + SO4--, free scale, mol/kg (Dickson 1990, J. Chem. Thermodyn. 22:113)."""
    xp = functions_for(temperature, salinity)
    kelvin = temperature + KELVIN
    strength = ionic_strength_of_salinity(salinity)
    root, ln_t = xp.sqrt(strength), xp.log(kelvin)
    return (
        -4276.1 / kelvin + 141.328 - 23.093 * ln_t
        + (-13856.0 / kelvin + 324.57 - 47.986 * ln_t) * root
        + (35474.0 / kelvin - 771.54 + 114.723 * ln_t) * strength
        - 2698.0 / kelvin * strength * root + 1776.0 / kelvin * strength * strength
        + xp.log(1.0 - 0.001005 * salinity)
    )  # fmt: skip


def ln_hydrogen_fluoride_constant(temperature: float, salinity: float) -> float:
    """Ln K of HF = H+ + F-, free scale, mol/kg (Dickson & Riley 1979, Mar. Chem. 7:89)."""
    xp = functions_for(temperature, salinity)
    strength = ionic_strength_of_salinity(salinity)
    return (
        1590.2 / (temperature + KELVIN) - 12.641 + 1.525 * xp.sqrt(strength)
        + xp.log(1.0 - 0.001005 * salinity)
    )  # fmt: skip


def hydrogen_activity_per_total(temperature: float, salinity: float) -> float:
    """Hydrogen-ion activity that a meter reads per total-scale hydrogen ion.

    Parameters
    ----------
    temperature : float
        0 to 45. [°C]
    salinity : float
        0 to 60. [g/kg]

    Returns
    -------
    float
        The factor a(H+) / [H+]T: ``pH_meter = pH_total - log10(factor)``. [kg/mol]

    Notes
    -----
    From 15 g/kg on the apparent coefficient fH of Takahashi et al. [1]_ (seawater scale, brought
    to the total scale); below 5 g/kg the extended Debye-Hückel coefficient with bisulfate; a
    blend between, where the two cross (at about 10 g/kg).

    References
    ----------
    .. [1] Takahashi, Williams & Bos 1982, GEOSECS Pacific Expedition vol. 3, ch. 3; as given by
       Lewis & Wallace 1998, ORNL/CDIAC-105. fH = 1.2948 - 0.002036 T + (4.607e-4 - 1.475e-6 T) S².
    """
    xp = functions_for(temperature, salinity)
    kelvin = temperature + KELVIN
    bisulfate = 1.0 + total_sulfate(salinity) / xp.exp(ln_bisulfate_constant(temperature, salinity))
    fluoride = total_fluoride(salinity) / xp.exp(
        ln_hydrogen_fluoride_constant(temperature, salinity)
    )
    apparent = 1.2948 - 0.002036 * kelvin + (0.0004607 - 0.000001475 * kelvin) * salinity**2
    sea = apparent * (bisulfate + fluoride) / bisulfate
    root = xp.sqrt(ionic_strength_of_salinity(salinity))
    fresh = xp.exp(-1.1762 * root / (1.0 + 0.3286 * 9.0 * root)) / bisulfate
    share = sea_share(salinity)
    return xp.exp(share * xp.log(sea) + (1.0 - share) * xp.log(fresh))
