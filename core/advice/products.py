"""Bought products by the words of their label: so many grams for so many litres raise so much."""

from __future__ import annotations

import re
from dataclasses import dataclass, replace
from datetime import timedelta
from typing import Final

from core.advice import limits
from core.advice.alarm_words import named
from core.advice.buffers import STRONG
from core.advice.plan import Refusal
from core.advice.state import Measured, State
from core.message.fold import fold
from core.message.lexicon import lexicon
from core.message.tokens import cut
from core.substances import ACIDS, SALTS

_NUMBER: Final = r"(\d+(?:[.,]\d+)?)"
_LABEL: Final = re.compile(
    rf"{_NUMBER}\s*(g|gram|grams|ml|kg)\s*(?:per|for|in|to|/|a)\s*{_NUMBER}\s*(l|litres?|liters?)\b"
    rf".*?\b(rais|lower)(?:es?|s|ing)\b.*?\b(kh|gh|alkalinity|ph)\b\s*(?:by|of)?\s*{_NUMBER}",
    re.IGNORECASE,
)
_NEVER: Final = ("battery_acid", "caustic", "medicine", "condensate", "bleach", "carbonate", "acid")
"""What a product may not be by its name, the worst first."""

SALT_NEEDED: Final = {"kh": (17.0, 75.0), "gh": (16.0, 80.0)}
"""Least and most of a salt that raise by one degree, with some room for rounding. Computed from
formulas (grade C): anhydrous sodium carbonate 18.9 and magnesium chloride 17.0; a mixture of
bicarbonate with as much again of something else 60, calcium gluconate 76.8. [mg/L per °dH]"""

SALT_IN_ML: Final = 1000.0
"""No solution holds more of a salt; from memory (potassium carbonate 0.8 g/mL). [mg/mL]"""

MOST_ML: Final = 10.0
"""A solution of which more is needed for a degree is hardly sold: a hundredth of the water;
common practice, no source. [mL/L per °dH]"""

FILLED: Final = 4.0
"""Times as much as any salt that may be believed when it is said again: the rest is filler."""


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

    @property
    def doubt(self) -> Refusal | None:
        """What no salt can do: ``label_past_salts``, believed if said again where `again` is 1."""
        low, high = SALT_NEEDED[self.analyte]
        each = self.needed(1.0, 1.0)
        if self.unit == "g":
            each *= 1000.0
        else:
            low, high = low / SALT_IN_ML, MOST_ML
        if low <= each <= high:
            return None
        facts: dict[str, float | str] = {
            "analyte": self.analyte, "each": each, "least": low, "most": high,
            "measure": "mg/L" if self.unit == "g" else "ml/L",
        }  # fmt: skip
        return Refusal("label_past_salts", facts | {"again": float(high < each <= high * FILLED)})


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


def never(text: str) -> Refusal | None:
    """Refuse a product that by its name is none for water with animals, whatever its label says.

    Examples
    --------
    >>> never("household bleach").reason, never("slaked lime").reason
    ('bleach', 'carbonate')
    """
    said = named(text)
    found = {*said.get("refuse", ()), *said.get("asked", ()), *said.get("label", ())}
    if (reason := next((each for each in _NEVER[:-1] if each in found), None)) is not None:
        return Refusal(reason)
    substances = _substances(text)
    if acids := ACIDS.intersection(substances):
        return Refusal("acid", {"substance": min(acids)})
    if not STRONG.isdisjoint(substances):
        return Refusal("carbonate")
    return Refusal("label_refused") if _NEVER[-1] in found else None


def salt_of(name: str) -> str | None:
    """The salt that a product's name is, where it names nothing else."""
    tokens = cut(fold(name), lexicon(), name)
    if len(tokens) == 1 and tokens[0].kind == "substance" and tokens[0].value in SALTS:
        return str(tokens[0].value)
    return None


def _substances(text: str) -> list[str]:
    return [str(t.value) for t in cut(fold(text), lexicon(), text) if t.kind == "substance"]


def plain_name(name: str) -> str:
    """A product's name as an event keeps it: without words of no weight (my buffer, buffer)."""
    weighty = [token.text for token in cut(fold(name), lexicon(), name) if token.kind != "fill"]
    return " ".join(weighty)


def given_since(product: str, state: State, reading: Measured | None) -> Refusal | None:
    """Refuse another dose on a reading from before one of a product."""
    name = plain_name(product)
    for event in (state.events or ()) if reading is not None else ():
        if event.what.kind != "dose" or plain_name(event.what.substance or "") != name:
            continue
        if reading is not None and reading.at <= event.at <= state.now:
            return Refusal("dosed_since", {"analyte": reading.analyte, "substance": product})
    return None


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
    amount, unit, litres, _, way, analyte, rise = found.groups()
    if way.casefold() == "lower":
        return Refusal("label_lowers")
    if analyte.casefold() == "ph":
        return None
    numbers = [float(number.replace(",", ".")) for number in (amount, litres, rise)]
    if unit.casefold() == "kg":
        numbers[0] *= 1000.0
    if not all(0.0 < number < limits.VOLUME_LARGEST for number in numbers):
        return Refusal("label_implausible")
    name = "gh" if analyte.casefold() == "gh" else "kh"
    return Label(numbers[0], "ml" if unit.casefold() == "ml" else "g", numbers[1], name, numbers[2])
