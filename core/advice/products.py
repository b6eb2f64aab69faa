"""Bought products by the words of their label: so many grams for so many litres raise so much."""

from __future__ import annotations

import re
from dataclasses import dataclass, replace
from datetime import timedelta
from typing import Final

from core.advice import limits
from core.advice.plan import Refusal
from core.advice.state import Measured

_NUMBER: Final = r"(\d+(?:[.,]\d+)?)"
_LABEL: Final = re.compile(
    rf"{_NUMBER}\s*(g|gram|grams|ml|kg)\s*(?:per|for|in|to|/|a)\s*{_NUMBER}\s*(l|litres?|liters?)\b"
    rf".*?\brais(?:es?|ing)\b.*?\b(kh|gh|alkalinity)\b\s*(?:by|of)?\s*{_NUMBER}",
    re.IGNORECASE,
)


@dataclass(frozen=True, slots=True)
class Label:
    """What a label promises: `amount` [`unit`] in `litres` raises `analyte` by `rise` [°dH]."""

    amount: float
    unit: str
    litres: float
    analyte: str
    rise: float

    def needed(self, rise: float, litres: float) -> float:
        """How much raises a volume by so much, in the label's unit."""
        return self.amount * rise / self.rise * litres / self.litres


@dataclass(frozen=True, slots=True)
class Product:
    """A product of a name, by its label or by what it did here.

    Attributes
    ----------
    name : str
        As the keeper calls it.
    label : Label
        What so much of it does.
    rise_low, rise_high : float
        Ends of the rise that the kits leave open; both the rise itself by a label. [°dH]
    learned : bool
        True where it was seen here, False where the label says so.
    """

    name: str
    label: Label
    rise_low: float
    rise_high: float
    learned: bool = False

    @classmethod
    def of_label(cls, name: str, label: Label) -> Product:
        """A product by the words of its label."""
        return cls(name, label, label.rise, label.rise)

    def needed(self, rise: float, litres: float) -> float:
        """How much raises a volume by so much at most, in the label's unit.

        By the strongest effect that is left open, so that no step is longer than was wished.
        """
        return replace(self.label, rise=self.rise_high).needed(rise, litres)


LEARNED_WITHIN: Final = timedelta(days=3)
"""Longest time from the reading before a dose to the one after it; our judgement."""

SETTLED_AFTER: Final = timedelta(hours=1)
"""Time that a dose takes to spread before a reading tells of it; common practice, no source."""


def learn(
    name: str, amount: float, unit: str, litres: float, before: Measured, after: Measured
) -> Product | None:
    """What a product does, by a reading before and one after a dose of it.

    Parameters
    ----------
    name, amount, unit : str, float, str
        What was dosed, in g or ml.
    litres : float
        Net volume of the tank. [L]
    before, after : Measured
        Of one analyte, with the kit's doubt.

    Returns
    -------
    Product or None
        None where the two readings are too far apart, at the ends of a scale, or leave open
        whether anything rose at all.
    """
    if (
        before.is_limit
        or after.is_limit
        or not timedelta() < after.at - before.at <= LEARNED_WITHIN
    ):
        return None
    # Both readings' doubts add up in the difference.
    rise = after.value - before.value
    low, high = after.low - before.high, after.high - before.low
    if rise <= 0.0 or low <= 0.0 or amount <= 0.0 or litres <= 0.0:
        return None
    return Product(name, Label(amount, unit, litres, after.analyte, rise), low, high, learned=True)


def read_label(text: str) -> Label | Refusal | None:
    """Read the words of a label; None where a text is none.

    Examples
    --------
    >>> read_label("5 g per 80 l raises kh 1")
    Label(amount=5.0, unit='g', litres=80.0, analyte='kh', rise=1.0)
    """
    found = _LABEL.search(text)
    if found is None:
        return None
    amount, unit, litres, _, analyte, rise = found.groups()
    numbers = [float(number.replace(",", ".")) for number in (amount, litres, rise)]
    if unit.casefold() == "kg":
        numbers[0] *= 1000.0
    if not all(0.0 < number < limits.VOLUME_LARGEST for number in numbers):
        return Refusal("label_implausible")
    name = "gh" if analyte.casefold() == "gh" else "kh"
    return Label(numbers[0], "ml" if unit.casefold() == "ml" else "g", numbers[1], name, numbers[2])
