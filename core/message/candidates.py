"""A name and a quantity bound together, not yet judged."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime

from core.message.quantities import Quantity


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
    instead: bool = False
    """Told with a word of regret before it: it takes the place of what it puts right."""
