"""What the words of a reminder can mean: a request understood, or a problem with its span."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime
from typing import Literal

from core.schedule.rules import Rule

Kind = Literal[
    "test", "change", "dose", "filter", "media", "calibrate", "kit", "feed", "top_up", "other"
]
KINDS: tuple[Kind, ...] = (
    "test",
    "change",
    "dose",
    "filter",
    "media",
    "calibrate",
    "kit",
    "feed",
    "top_up",
    "other",
)

Reason = Literal[
    "no_time",
    "no_what",
    "past",
    "impossible",
    "ambiguous",
    "too_often",
    "too_far",
    "ends",
    "unclear",
]
"""Why words were not taken.

no_time
    There is a task and nothing that says when.
no_what
    There is a time and nothing to be done.
past
    The moment is over.
impossible
    No calendar or clock has it: 31 February, 25:00, every 0 days.
ambiguous
    It could be two things; `Problem.options` says which.
too_often
    More often than once an hour.
too_far
    Further apart, or further off, than ten years.
ends
    A rhythm with an end, which rules do not have; `Problem.text` is the end.
unclear
    Two times that do not go together, or a time that this tool does not keep.
"""


@dataclass(frozen=True, slots=True)
class Request:
    """A reminder as it was asked for.

    Attributes
    ----------
    what : str
        The task in the keeper's own words, without the words of time.
    rule : Rule
        When it is due.
    kind : str
        What sort of task it is; decides what closes it by itself.
    counts_from_done : bool
        True where the interval starts again when the task is done: tests and changes at
        intervals. Named days keep to their days.
    clock_time_said : bool
        True where the words depend on the zone: a time of day was said, or a part of the day.
    anchor : datetime
        What the rule counts from, in UTC: now, or one interval before a start that was named.
    first : datetime
        When it is due for the first time, in UTC.
    """

    what: str
    rule: Rule
    kind: Kind
    counts_from_done: bool
    clock_time_said: bool
    anchor: datetime
    first: datetime


@dataclass(frozen=True, slots=True)
class Problem:
    """Words that were not taken, and what was probably meant.

    Attributes
    ----------
    reason : str
        One of `Reason`.
    text : str
        The fragment it is about, as written.
    start, end : int
        Where it stands in the text given; `start == end` where something is missing.
    suggestion : str or None
        Words that, given instead, would be understood.
    options : tuple of str
        All such words where there are several, the likeliest first.
    """

    reason: Reason
    text: str
    start: int
    end: int
    suggestion: str | None = None
    options: tuple[str, ...] = ()
