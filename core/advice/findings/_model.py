"""A finding, and the shape of a rule."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from typing import Final, Literal, NamedTuple

from core.advice.state import Measured, State

Severity = Literal["alarm", "warn", "note"]
RANK: Final[Mapping[Severity, int]] = {"alarm": 0, "warn": 1, "note": 2}

Facts = dict[str, float | str]

STOCK: Final = "stock"
"""Told beside the analytes where the animals on record have changed."""

DOSE: Final = "dose"
"""Told beside the analytes where a dose was logged."""


CHANGE: Final = "water_change"
"""Told beside the analytes where a water change was logged."""


@dataclass(frozen=True, slots=True)
class Finding:
    """Something that a reading means: which rule says it, how bad it is, and its numbers."""

    id: str
    severity: Severity
    facts: Mapping[str, float | str] = field(default_factory=dict)


Judge = Callable[[State], Finding | tuple[Finding, ...] | None]


class Rule(NamedTuple):
    """A rule as data.

    Attributes
    ----------
    wakes : frozenset of str
        The analytes (and `STOCK`, `DOSE`, `CHANGE`) of which one must just have been told.
    judge : callable
        The pure function that looks at the state.
    ids : tuple of str
        Every finding that it can give.
    first : str
        What to do first, as an id of `FIRST`.
    source : str
        Where its numbers come from.
    """

    wakes: frozenset[str]
    judge: Judge
    ids: tuple[str, ...]
    first: str
    source: str


FIRST: Final[Mapping[str, str]] = {
    "stop_feeding": "stop feeding, then change water that matches in KH",
    "change_water": "change water in small steps",
    "aerate": "move the surface and add air",
    "dechlorinate": "treat the water with a dechlorinator",
    "raise_kh": "raise KH slowly, with ammonia measured",
    "retest": "test again before doing anything",
    "measure": "measure what is missing",
    "look_at_kh": "look at KH before anything else",
    "find_source": "find where it comes from and stop it",
    "move_animals": "find another home for one of the kinds, without haste",
    "stop_dosing": "add nothing more and test at once",
    "wait": "wait and test, change nothing fast",
    "nothing": "change nothing",
}
"""What can be done first, by id; the chat has words of its own."""


def upper(reading: Measured) -> float:
    """The end of a colour step that counts for a poison: the upper one, as far as it is said."""
    return reading.high if reading.high != float("inf") else reading.value


def within(number: float, low: float, high: float) -> float:
    """The number, or the nearer end where it lies outside."""
    return min(max(number, low), high)


def seen(reading: Measured | None) -> Measured | None:
    """A reading that shows something at all: not zero, not under the kit's scale."""
    if reading is None or reading.qualifier == "<" or reading.value <= 0.0:
        return None
    return reading


def hours_apart(one: Measured, other: Measured) -> float:
    """Seconds between two times of day, the short way round the clock."""
    day = 86_400.0
    apart = abs((one.at - other.at).total_seconds()) % day
    return min(apart, day - apart)
