"""Bought products by the words of their label: so many grams for so many litres raise so much."""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import Final

from core.advice import limits
from core.advice.plan import Refusal

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
