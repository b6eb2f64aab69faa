"""What is gathered while a message is read: one line's parts, and the whole message's."""

from __future__ import annotations

from dataclasses import dataclass, field
from datetime import datetime

from core.message import events
from core.message.clauses import Clause
from core.message.model import Context, Doubt, Event, Parsed, Value
from core.message.times import Moment


@dataclass(slots=True)
class Line:
    """One line with what was found in it; `wished` where its last word is one of wishing.

    `spoken` tells that an hour in words may be in it, `tried` how often a time was looked for.
    """

    clauses: list[Clause] = field(default_factory=list)
    moments: list[tuple[int, Moment]] = field(default_factory=list)
    events: list[tuple[int, events.Found]] = field(default_factory=list)
    tanks: list[tuple[int, str]] = field(default_factory=list)
    tank_first: bool = False
    time_first: bool = False
    begun: bool = False
    spoken: bool = False
    tried: int = 0
    wished: bool = False


_NOTHING = Parsed("none")


@dataclass(slots=True)
class Statement:
    """What all lines tell, before it is one `Parsed`.

    `times` are those of `values`, one each; the values themselves carry none before all is read,
    since a time that all share is the message's. `heading` is a time that stood alone on its
    line, whose day the hours below are of.
    """

    context: Context
    source: str
    values: list[Value] = field(default_factory=list)
    times: list[datetime | None] = field(default_factory=list)
    events: list[Event] = field(default_factory=list)
    doubts: list[Doubt] = field(default_factory=list)
    tank: str | None = None
    at: datetime | None = None
    heading: Moment | None = None
    timed: bool = False
    other: bool = False
    wished: bool = False
    words: int = 0
    paired: bool = False
    talk: bool = False
    between: bool = False
    unclear: bool = False
    parsed: Parsed = _NOTHING
