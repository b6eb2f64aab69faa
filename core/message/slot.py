"""What the words of a question say, before its kind decides what each is for."""

from __future__ import annotations

from dataclasses import dataclass, field

from core.message.quantity import Quantity
from core.message.tokens import Token


@dataclass(slots=True)
class Number:
    """A number of an analyte in its role (from, to, by, premise, or plain)."""

    analyte: str | None
    basis: str | None
    role: str
    value: float
    quantity: Quantity


@dataclass(slots=True)
class Slots:
    """All that a question's words say, before its kind decides what each is for."""

    numbers: list[Number] = field(default_factory=list)
    aimed: Number | None = None
    """The last of them that is a from, a to or a by."""
    names: list[tuple[str, str | None]] = field(default_factory=list)
    volume_l: float | None = None
    grams: float | None = None
    a_litre: float | None = None
    """Grams in each litre."""
    millilitres: float | None = None
    spoons: float | None = None
    percent: float | None = None
    ratio: float | None = None
    """Calcium to magnesium, as wished."""
    substance: str | None = None
    tank: str | None = None
    unit: str | None = None
    amount: Quantity | None = None
    units: list[tuple[str, str | None]] = field(default_factory=list)
    unknown: list[Token] = field(default_factory=list)
    unplaced: list[Quantity] = field(default_factory=list)
    guessed: dict[int, tuple[str, ...]] = field(default_factory=dict)
    """Start of a number that its analyte cannot have → what it may mean."""
    events: list[str] = field(default_factory=list)
    talk: bool = False
    default: str | None = None
    """What a number without a name measures (the warmth of "too warm")."""
    lowered: bool = False
    suiting: bool = False
    """Asked what would suit: whatever else stands there names no animal."""
    uses: bool = False
    """Asked what is used up."""
    joining: bool = False
    """Asked whether an animal may join: the numbers are its conditions."""
    readying: bool = False
    """Asked whether the tank is ready for any."""
