"""What an entry of the log holds: readings and events, each with its tank and moment."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime
from typing import Generic, TypeVar

from core.message.model import Event, Value

T = TypeVar("T", Value, Event)


@dataclass(frozen=True, slots=True)
class Stored(Generic[T]):
    """A value or an event with where and when it belongs."""

    what: T
    tank_id: int
    at: datetime
    entry_id: int = 0
    """What told it; 0 before it is on record."""


@dataclass(frozen=True, slots=True)
class Entry:
    """Something that somebody said or pressed, and what it put on record."""

    update_id: str
    kind: str
    text: str
    at: datetime
    author_id: str = ""
    author_name: str = ""
    message_ref: str | None = None
    replaces: int | None = None
    readings: tuple[Stored[Value], ...] = ()
    events: tuple[Stored[Event], ...] = ()
    id: int = 0

    @property
    def is_empty(self) -> bool:
        """True where nothing is on record, as after an undo."""
        return not self.readings and not self.events
