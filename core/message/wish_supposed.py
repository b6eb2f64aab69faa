"""A dose asked for water that is only supposed, of a value that has no name.

``if its 8.1 and i want 9 and the tank is 120 litres whats the dose``: which value that is, only
what stands on record can tell.
"""

from __future__ import annotations

from typing import Final, NamedTuple

from core.message.word_classes import said

FILE: Final = "wish_supposed.txt"
LONGEST: Final = 110
"""A longer text says more. [characters]"""


class Supposed(NamedTuple):
    """Where the value is supposed to be, where it is wished, and how much water as it was told."""

    start: float
    target: float
    water: str | None = None

    def asked_as(self, name: str | None) -> str:
        """The question that it is, of a value by its name."""
        of = f"{name} " if name else ""
        water = f" in {self.water}" if self.water else ""
        return f"how much from {of}{self.start:.10g} to {self.target:.10g}{water}"


def wish_supposed(text: str) -> Supposed | None:
    """What is supposed and wished; None where anything is named, or more is said.

    Examples
    --------
    >>> wish_supposed("if its 8.1 and i want 9 and tank is 120 litres whats the dose")
    Supposed(start=8.1, target=9.0, water='120 l')
    >>> wish_supposed("wenn es 3 ist und ich 5 will, wie viel?").asked_as("kh")
    'how much from kh 3 to 5'
    >>> wish_supposed("if its 8 whats the dose"), wish_supposed("if kh is 3 and i want 5 how much")
    (None, None)
    """
    told = said(FILE, text, small=True) if len(text) <= LONGEST else None
    if told is None or not told.has("if", "want", "dose"):
        return None
    values = [each.value for each in told.numbers if each.unit in {None, "degree"}]
    waters = [each for each in told.numbers if each.unit in {"litre", "gallon"}]
    if len(values) != 2 or len(waters) > 1:
        return None
    water = None
    if waters:
        water = f"{waters[0].value:.10g} {'l' if waters[0].unit == 'litre' else 'gallons'}"
    return Supposed(values[0], values[1], water)
