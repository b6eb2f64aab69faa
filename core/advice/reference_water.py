"""Water of a known hardness, by which a kit is checked: so many grams in pure water."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

from core.advice.hardness import MEQ_PER_DEGREE, MMOL_PER_DEGREE
from core.water.substances import SUBSTANCES

SALT: Final = {"kh": "sodium bicarbonate", "gh": "magnesium sulfate heptahydrate"}
"""What each is made of: by weight, of known formula, clear at once."""

STOCK_FACTOR: Final = 1000.0
"""A litre of stock has so many degrees: a millilitre of it in a litre is one. [°dH]"""

LEAST, MOST = 1.0, 20.0
"""Drops tell apart what lies between. [°dH]"""

USUAL: Final = 5.0
"""Where none is asked for. [°dH]"""

LITRES_LEAST, LITRES_MOST = 0.1, 20.0

KIT_STEP: Final = 1.0
"""A drop of most kits; common practice. [°dH]"""


@dataclass(frozen=True, slots=True)
class Reference:
    """How a water of a known value is made.

    Attributes
    ----------
    analyte : str
        ``kh`` or ``gh``.
    value : float
        That the kit should show. [°dH]
    litres : float
        Of the reference water. [L]
    substance : str
        With its hydrate.
    grams : float
        In a litre of pure water: the stock. [g]
    millilitres : float
        Of the stock, filled up to `litres` with pure water. [mL]
    """

    analyte: str
    value: float
    litres: float
    substance: str
    grams: float
    millilitres: float


def reference(analyte: str, value: float | None, litres: float | None) -> Reference:
    """Work out a reference water; what is out of reach is brought to the nearest that is not.

    Parameters
    ----------
    analyte : str
        ``kh`` or ``gh``.
    value, litres : float or None
        Wished. [°dH], [L]

    Notes
    -----
    A degree is 0.3567 meq/L of alkalinity, which a mole of sodium bicarbonate gives once, or
    0.1783 mmol/L of calcium and magnesium (10 mg/L CaO, atomic weights).

    Examples
    --------
    >>> reference("kh", 5.0, 1.0)
    Reference(analyte='kh', value=5.0, litres=1.0, substance='sodium bicarbonate', grams=30.0, \
millilitres=5.0)
    >>> reference("gh", None, 0.5).grams, reference("gh", None, 0.5).millilitres
    (44.0, 2.5)
    """
    value = min(MOST, max(LEAST, USUAL if value is None else value))
    litres = min(LITRES_MOST, max(LITRES_LEAST, 1.0 if litres is None else litres))
    salt = SUBSTANCES[SALT[analyte]]
    millimoles = MEQ_PER_DEGREE if analyte == "kh" else MMOL_PER_DEGREE
    grams = round(STOCK_FACTOR * millimoles * salt.molar_mass / 1000.0)
    return Reference(analyte, value, litres, SALT[analyte], float(grams), value * litres)


def off_by(found: Reference, shown: float) -> float:
    """By how much a kit is off; 0 within a step, which it cannot show. [°dH]

    Examples
    --------
    >>> off_by(reference("kh", 5.0, 1.0), 6.0), off_by(reference("kh", 5.0, 1.0), 7.5)
    (0.0, 2.5)
    """
    apart = shown - found.value
    return 0.0 if abs(apart) <= KIT_STEP + 1e-9 else apart
