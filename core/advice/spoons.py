"""What a level teaspoon of a salt weighs, roughly: enough to know that a scale is needed."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Final

from core.message.model import Event

GRAMS_A_TEASPOON: Final[Mapping[str, float]] = {
    "sodium bicarbonate": 4.6,  # USDA FoodData Central, "baking soda": from memory
    "sodium chloride": 6.0,  # USDA FoodData Central, "salt, table": from memory
    "magnesium sulfate heptahydrate": 5.0,  # common practice, no source
}
"""A level teaspoon of about 5 mL, loosely filled. [g]"""

ROUGH: Final = 0.3
"""Share by which spoons and hands differ; common practice, no source."""


def spoon_grams(substance: str, teaspoons: float) -> tuple[float, float, float] | None:
    """Give what teaspoons of a salt weigh: about, least, most. [g]

    None where no weight of a spoon is known. Never to be dosed from.

    Examples
    --------
    >>> spoon_grams("sodium bicarbonate", 2.0)
    (9.2, 6.4, 12.0)
    """
    each = GRAMS_A_TEASPOON.get(substance)
    if each is None:
        return None
    about = each * teaspoons
    return round(about, 1), round(about * (1.0 - ROUGH), 1), round(about * (1.0 + ROUGH), 1)


def least_grams(dose: Event) -> float | None:
    """What went in by its scale, else the least that its spoons weigh; None where nothing tells.

    [g]
    """
    if dose.grams is not None or dose.spoons is None:
        return dose.grams
    weighs = spoon_grams(dose.substance or "", dose.spoons)
    return None if weighs is None else weighs[1]
