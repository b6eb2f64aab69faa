"""A name and a quantity bound together, not yet judged."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime

from core.message import doubts
from core.message.quantity import Quantity


@dataclass(slots=True)
class Candidate:
    """A value on its way: bound, but not yet judged."""

    analyte: str
    basis: str | None
    quantity: Quantity
    start: int
    end: int
    name: str = ""
    problem: str | None = None
    choices: tuple[str, ...] = ()
    at: datetime | None = None
    tank: str | None = None
    own_time: bool = False
    former: bool = False
    means: str = ""
    instead: bool = False
    """Told with a word of regret before it: it takes the place of what it puts right."""


def apply_marks(candidate: Candidate, marks: tuple[str, ...]) -> None:
    """What the words between a name and its number say about the number."""
    problem = doubts.CHANGE if candidate.quantity.arrow else None
    for mark in marks:
        if mark in {"wish", "if"}:
            problem = doubts.WISH
        elif mark in {"up", "down", "plus"}:
            problem = doubts.CHANGE
        elif mark == "between":
            problem = doubts.BAD_NUMBER
        elif mark == "not":
            problem = doubts.NEGATED
        elif mark in {"was", "from", "formerly"}:
            candidate.own_time = True
            candidate.former = candidate.former or mark == "formerly"
            if mark == "from":
                ranged = candidate.quantity.low is not None
                problem = problem or (doubts.CHANGE if ranged else doubts.PAST)
        elif mark == "instead":
            candidate.instead = True
        elif mark in {"rose_to", "fell_to"}:
            problem = None
        elif mark == "to":
            problem = problem or doubts.WISH
    if problem == doubts.WISH and "was" in marks and _is_told_poison(candidate):
        problem = doubts.UNKNOWN_WORD  # i need to add that nitrite was 2
    if problem is not None:
        candidate.problem = problem


def _is_told_poison(candidate: Candidate) -> bool:
    """Whether it is a poison, and some of it: nobody wishes that there was any."""
    return candidate.analyte in {"ammonia", "nitrite"} and bool(candidate.quantity.value)
