"""How a part of a dose is made ready: the jug it is stirred into, and a stock for coarse scales."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Final

from core.advice.effects import SOLUBLE

THIN: Final = 20.0
"""So much in a litre of tank water is clear within a minute or two and thin enough to pour where
animals are; common practice, no source. [g/L]"""

OF_SOLUBLE: Final = 0.5
"""Share of what a litre takes up that dissolves within an hour; common practice, no source."""

STEP_L: Final = 0.5
"""Nobody measures a jug finer. [L]"""

KITCHEN_STEP: Final = 1.0
"""What a kitchen scale tells apart; common practice. [g]"""

SURE: Final = 10.0
"""So many steps of a scale are weighed to a twentieth, well within the kits' doubt. [steps]"""

STOCK_MOST: Final = 60.0
"""Of a stock that surely dissolves: of these salts sodium bicarbonate is the least soluble, 103 g
in a kilogram of water at 25 °C (CRC Handbook, from memory). [g/L]"""

FACTORS: Final = (10, 20, 50, 100)
"""How many times a part is weighed at once; a tenth of a litre and less is easily measured."""


def jug_litres(substance: str, grams: float) -> float:
    """How much tank water a part is stirred into before it goes in. [L]

    Examples
    --------
    >>> jug_litres("sodium bicarbonate", 5.4), jug_litres("sodium bicarbonate", 32.0)
    (0.5, 2.0)
    >>> jug_litres("calcium sulfate dihydrate", 3.9)
    3.0
    """
    most = min(THIN, OF_SOLUBLE * SOLUBLE.get(substance, math.inf))
    return max(1, math.ceil(grams / most / STEP_L - 1e-9)) * STEP_L


@dataclass(frozen=True, slots=True)
class Stock:
    """A litre of which some millilitres hold one part.

    Attributes
    ----------
    grams : float
        Weighed into the litre, whole steps of the scale. [g]
    millilitres : float
        Of it for one part. [mL]
    """

    grams: float
    millilitres: float


def stock_for(substance: str, grams: float) -> Stock | None:
    """A litre of stock by which a kitchen scale tells a part; None where it does so directly.

    None too for what dissolves too little, and for parts so small that no such litre holds few
    enough of them.

    Examples
    --------
    >>> stock_for("sodium bicarbonate", 5.4)
    Stock(grams=54.0, millilitres=100.0)
    >>> stock_for("sodium bicarbonate", 25.0) is None
    True
    """
    if substance in SOLUBLE or is_sure(grams):
        return None
    for factor in FACTORS:
        weighed = round(grams * factor / KITCHEN_STEP) * KITCHEN_STEP
        if is_sure(grams * factor) and weighed <= STOCK_MOST:
            return Stock(weighed, 1000.0 / factor)
    return None


def is_sure(grams: float) -> bool:
    """Whether a kitchen scale weighs so little well enough. [g]"""
    return grams >= SURE * KITCHEN_STEP
