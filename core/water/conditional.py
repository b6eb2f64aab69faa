"""Constants as this water has them: in concentrations, at its ionic strength and salinity.

Hydrogen is always the activity that a meter reads, so that fresh water (activities) and sea
water (stoichiometric constants) meet on one scale; everything else is a concentration. Between
5 and 15 g/kg of sea salt the logarithms of the two are blended, and the explicit ion pairs fade
out, since the sea's constants hold them already.

One activity coefficient serves all ions: the extended Debye-Hückel form with an ion size of
5.4 Å, ``ln γ(z) = -A z² √I / (1 + 5.4 B √I)``. That size is the one of carbonate and bicarbonate
in the tables of Truesdell & Jones 1974 (J. Res. USGS 2:233-248, as the USGS database phreeqc.dat
has them); up to 0.1 mol/kg calcium, magnesium and sodium with their own sizes and slopes lie
within 0.01 of it as logarithms. What has no charge gets ``10^(0.1 I)``.
"""

from __future__ import annotations

import math
from typing import Final, NamedTuple

from core.water._elementwise import Functions
from core.water.constants import (
    ORGANIC_LOG_K,
    AcidConstants,
    CarbonateConstants,
    SulfateConstants,
)
from core.water.sea_constants import LnSeaConstants

LN10: Final = math.log(10.0)
ION_SIZE: Final = 5.4
"""Of the one activity coefficient. [Å]"""

ORGANIC: Final = 10.0**ORGANIC_LOG_K


class Conditional(NamedTuple):
    """Conditional constants, mol/kg; `h` below is the meter's hydrogen activity."""

    hydrogen: float  # [H+] / h; with bisulfate in the sea
    k1: float  # h [HCO3-] / [CO2]
    k2: float  # h [CO3--] / [HCO3-]
    water: float  # h [OH-]
    ca_hco3: float  # pair / (free metal x free anion), and so on
    ca_co3: float
    ca_oh: float  # h [CaOH+] / [Ca++]
    mg_hco3: float
    mg_co3: float
    mg_oh: float
    na_hco3: float
    na_co3: float


class Sulfates(NamedTuple):
    """Conditional constants of sulfate's pairs."""

    ca_so4: float
    mg_so4: float
    na_so4: float
    k_so4: float
    hso4: float  # [HSO4-] / (h [SO4--])


class Acids(NamedTuple):
    """Conditional constants of the minor acids, ``h [base] / [acid]``, and phosphate's pairs."""

    ammonium: float
    boric: float
    organic: float
    phosphoric_1: float
    phosphoric_2: float
    phosphoric_3: float
    ca_h2po4: float
    mg_h2po4: float
    ca_hpo4: float
    mg_hpo4: float
    ca_po4: float
    mg_po4: float


def activity_coefficient(a: float, b: float, strength: float, xp: Functions) -> float:
    """Coefficient of an ion of one charge; that of charge z is its z²-th power.

    `a` and `b` are the Debye-Hückel coefficients of `constants.debye_hueckel`, `strength` is the
    ionic strength. [mol/kg].
    """
    root = xp.sqrt(strength)
    return xp.exp(-a * root / (1.0 + ION_SIZE * b * root))


def fresh_carbonate(k: CarbonateConstants, u: float, strength: float) -> Conditional:
    """Conditional constants of fresh water; `u` is the coefficient of one charge."""
    u2, neutral = u * u, 1.0 + 0.1 * LN10 * strength
    u3, u4 = u2 * u, u2 * u2
    double = u4 * u4 / neutral
    return Conditional(
        1.0 / u,
        k.k1 * neutral / u,
        k.k2 / u3,
        k.water / u,
        k.ca_hco3 * u4,
        k.ca_co3 * double,
        k.ca_oh * u3,
        k.mg_hco3 * u4,
        k.mg_co3 * double,
        k.mg_oh * u3,
        k.na_hco3 * u2,
        k.na_co3 * u4,
    )


def fresh_sulfates(k: SulfateConstants, u: float, strength: float) -> Sulfates:
    """As `fresh_carbonate`, for sulfate."""
    u4 = u * u * u * u
    double = u4 * u4 / (1.0 + 0.1 * LN10 * strength)
    return Sulfates(
        k.ca_so4 * double, k.mg_so4 * double, k.na_so4 * u4, k.k_so4 * u4, k.hso4 * u4 / u
    )


def fresh_acids(k: AcidConstants, u: float) -> Acids:
    """As `fresh_carbonate`, for the minor acids."""
    u3, u4 = u * u * u, u * u * u * u
    return Acids(
        k.ammonium * u,
        k.boric / u,
        ORGANIC,
        k.phosphoric_1 / u,
        k.phosphoric_2 / u3,
        k.phosphoric_3 / (u4 * u),
        k.ca_h2po4 * u4,
        k.mg_h2po4 * u4,
        k.ca_hpo4 * u4 * u4,
        k.mg_hpo4 * u4 * u4,
        k.ca_po4 * u4 * u4 * u4,
        k.mg_po4 * u4 * u4 * u4,
    )


def sea_carbonate(ln: LnSeaConstants, xp: Functions) -> Conditional:
    """Conditional constants of sea water: no explicit pairs, hydrogen on the meter's scale."""
    return Conditional(
        xp.exp(-ln.hydrogen),
        xp.exp(ln.k1 + ln.hydrogen),
        xp.exp(ln.k2 + ln.hydrogen),
        xp.exp(ln.water + ln.hydrogen),
        *((0.0,) * 8),
    )


def sea_acids(ln: LnSeaConstants, xp: Functions) -> Acids:
    """As `sea_carbonate`, for the minor acids."""
    return Acids(
        xp.exp(ln.ammonium + ln.hydrogen),
        xp.exp(ln.boric + ln.hydrogen),
        ORGANIC,
        xp.exp(ln.phosphoric_1 + ln.hydrogen),
        xp.exp(ln.phosphoric_2 + ln.hydrogen),
        xp.exp(ln.phosphoric_3 + ln.hydrogen),
        *((0.0,) * 6),
    )


def blend_carbonate(a: Conditional, b: Conditional, share: float, xp: Functions) -> Conditional:
    """Geometric mean of fresh `a` and sea `b`, with the sea's share; pairs fade linearly."""
    means = (weighted_mean(x, y, share, xp) for x, y in zip(a[:4], b[:4], strict=True))
    return Conditional._make((*means, *((1.0 - share) * pair for pair in a[4:])))


def blend_sulfates(a: Sulfates, share: float) -> Sulfates:
    """Fade the explicit pairs of sulfate."""
    return Sulfates._make((1.0 - share) * pair for pair in a)


def blend_acids(a: Acids, b: Acids, share: float, xp: Functions) -> Acids:
    """As `blend_carbonate`, for the minor acids."""
    means = (weighted_mean(x, y, share, xp) for x, y in zip(a[:6], b[:6], strict=True))
    return Acids._make((*means, *((1.0 - share) * pair for pair in a[6:])))


def weighted_mean(x: float, y: float, share: float, xp: Functions) -> float:
    """Geometric mean of two positive numbers, `share` being the weight of the second."""
    return x * xp.exp(share * xp.log(y / x))
