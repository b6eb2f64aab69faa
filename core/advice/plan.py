"""A plan as data: what to weigh, in which parts, and what the water becomes; or why not."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import timedelta

from core.advice import limits
from core.advice.ammonia_gate import Gate
from core.advice.outlook import Outlook, Stage
from core.advice.state import State
from core.advice.used_up import Consumption

Fact = float | str


@dataclass(frozen=True, slots=True)
class Refusal:
    """Why there is no plan, with the numbers that decided; never an amount of what is refused."""

    reason: str
    facts: Mapping[str, Fact] = field(default_factory=dict)


@dataclass(frozen=True, slots=True)
class Goal:
    """What an analyte is to become. Canonical units.

    `relative` is True where only a rise was asked for and nobody knows where it begins: then
    `start` is 0 and stands for nothing.
    """

    analyte: str
    start: float
    target: float
    relative: bool = False

    @property
    def change(self) -> float:
        """How far it moves."""
        return self.target - self.start


@dataclass(frozen=True, slots=True)
class Weighed:
    """A substance, pure, and how much of it in all. [g]"""

    substance: str
    grams: float


@dataclass(frozen=True, slots=True)
class Upkeep:
    """What the animals of the sea use up in a day, and what makes up for it.

    Attributes
    ----------
    analyte : str
        What is used up.
    used : Consumption
        How much a day, and between which ends. [canonical unit per day]
    salt : Weighed or None
        What makes up for it each day; None where that is more than a day's step or would harm.
    """

    analyte: str
    used: Consumption
    salt: Weighed | None


@dataclass(frozen=True, slots=True)
class Plan:
    """A dose in equal parts, one every `every_hours`.

    Attributes
    ----------
    goals : tuple of Goal
        From where to where, the one asked for first.
    volume_l : float
        Net volume. [L]
    salts : tuple of Weighed
        What to weigh out in all; each part is `1 / count` of each.
    count : int
        Parts.
    every_hours : int
        Hours between parts.
    outlook : Outlook or None
        The water now; None where its KH is unknown, so that nothing can be said of pH.
    stages : tuple of Stage
        The water after each part; none without an outlook.
    gate : Gate or None
        What total ammonia this bears; None where nothing lives in the water.
    added : mapping of str to float
        What else comes with it, by ion. [mg/L]
    blind : bool
        True where KH was too low to plan: one small part, then measure.
    reading_age : timedelta or None
        Age of the reading behind the first goal; None where the question itself gave it.
    within_kit : bool
        True where the whole wish is no more than the kit can see.
    emergency : bool
        True where a part is larger than on an ordinary day.
    upkeep : Upkeep or None
        What holds the value afterwards; None where no two readings tell it.
    told : State or None
        The readings that it rests on, the question's own premises among them.
    changed_since : bool
        True where water was changed after the reading behind the first goal.
    cautions : tuple of str
        Ids of what must be said before the number.
    """

    goals: tuple[Goal, ...]
    volume_l: float
    salts: tuple[Weighed, ...]
    count: int
    every_hours: int
    outlook: Outlook | None
    stages: tuple[Stage, ...]
    gate: Gate | None
    added: Mapping[str, float]
    blind: bool = False
    reading_age: timedelta | None = None
    within_kit: bool = False
    emergency: bool = False
    upkeep: Upkeep | None = None
    told: State | None = None
    changed_since: bool = False
    cautions: tuple[str, ...] = ()

    @property
    def substance(self) -> str:
        """The first substance."""
        return self.salts[0].substance

    @property
    def grams(self) -> float:
        """All parts of the first substance. [g]"""
        return self.salts[0].grams

    @property
    def parts(self) -> tuple[float, ...]:
        """Grams of the first substance in each part."""
        return (self.grams / self.count,) * self.count

    @property
    def last(self) -> Stage | None:
        """The water after all parts."""
        return self.stages[-1] if self.stages else None

    @property
    def is_old(self) -> bool:
        """True where the reading is too old to act on without measuring again."""
        return self.reading_age is not None and self.reading_age > limits.STALE
