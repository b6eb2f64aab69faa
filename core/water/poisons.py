"""Nitrite against chloride; chlorine, chloramine and what dechlorination uses and frees."""

from __future__ import annotations

from typing import Final

from core.water._elementwise import require
from core.water.atoms import molar_mass

PROTECTING_RATIO: Final = 10.0
"""Chloride to nitrite (ions, by mass) that protects channel catfish: Durborow, Crosby & Brunson
1997, SRAC 462 (grade B); proved for few species, and not for all (Tomasso 1986, grade A)."""

THIOSULFATE: Final = "sodium thiosulfate pentahydrate"
MOLES_PER_CHLORINE: Final = 2.0
"""Thiosulfate that one mole of Cl2 uses on the way to tetrathionate, the least favourable way:
7.00 mg of the pentahydrate a milligram (computed); Piper et al. 1982 give 7.40 (grade A)."""


def chloride_to_nitrite(chloride: float, nitrite: float) -> float:
    """Ratio of chloride to nitrite.

    Parameters
    ----------
    chloride : float
        Zero or more. [mg/L]
    nitrite : float
        As NO2, over zero. [mg/L]

    Returns
    -------
    float
        Ratio by mass of the ions.

    Raises
    ------
    OutOfRange
        If an argument is out of range or not finite.
    """
    require("chloride", chloride, 0.0, 100_000.0, "mg/L")
    require("nitrite", nitrite, 1e-9, 100_000.0, "mg/L")
    return chloride / nitrite


def chloride_needed(nitrite: float, ratio: float = PROTECTING_RATIO) -> float:
    """Chloride that reaches a ratio to nitrite as NO2. [mg/L], [mg/L]."""
    require("nitrite", nitrite, 0.0, 100_000.0, "mg/L")
    require("ratio", ratio, 0.0, 1000.0)
    return nitrite * ratio


def thiosulfate_needed(chlorine: float, excess: float = 0.25) -> float:
    """Sodium thiosulfate pentahydrate that takes up chlorine or chloramine.

    Parameters
    ----------
    chlorine : float
        Total chlorine (free and bound) as Cl2, zero or more. [mg/L]
    excess : float, optional
        Share added on top, 0 to 2.

    Returns
    -------
    float
        Pentahydrate. [mg/L]

    Raises
    ------
    OutOfRange
        If an argument is out of range or not finite.

    Examples
    --------
    >>> round(thiosulfate_needed(1.0, excess=0.0), 2)
    7.0
    """
    require("total chlorine", chlorine, 0.0, 1000.0, "mg/L")
    require("excess", excess, 0.0, 2.0)
    pentahydrate = molar_mass("Na2S2O3.5H2O")
    return chlorine / molar_mass("Cl2") * MOLES_PER_CHLORINE * pentahydrate * (1.0 + excess)


def ammonia_freed(chloramine: float) -> float:
    """Ammonia that dechlorination frees from monochloramine.

    Parameters
    ----------
    chloramine : float
        Bound chlorine as Cl2 (total less free), zero or more. [mg/L]

    Returns
    -------
    float
        Total ammonia. [mg/L as N]

    Raises
    ------
    OutOfRange
        If the amount is negative or not finite.

    Examples
    --------
    >>> round(ammonia_freed(4.0), 2)
    0.79
    """
    require("chloramine", chloramine, 0.0, 1000.0, "mg/L")
    return chloramine * molar_mass("N") / molar_mass("Cl2")
