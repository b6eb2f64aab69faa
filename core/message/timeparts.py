"""The parts of a moment while it is read, and what days and clocks share."""

from __future__ import annotations

import re
from dataclasses import dataclass
from datetime import date, time, timedelta, tzinfo

from core.message.numbers import Number
from core.message.tokens import Token

DIGITS = re.compile(r"\d+")


Day = tuple[date | None, tuple[date, ...], date | None, bool]
"""A day as told: which, the two that it may be, the likeliest, whether its year was not said."""
NO_DAY: Day = (None, (), None, False)


@dataclass(slots=True)
class Parts:
    """What has been read of a moment; `days` and `hours` are set where there are two readings.

    `part` is the part of the day (morning, afternoon, evening, night). `spoken` is an hour as
    spoken, in minutes, whose half of the day is open; `either` the other hour that it may mean;
    `vague` the likeliest day of a week or a month.
    """

    day: date | None = None
    clock: time | None = None
    offset: tzinfo | None = None
    back: timedelta | None = None
    now: bool = False
    bad: bool = False
    rolled: bool = False
    days: tuple[date, ...] = ()
    hours: tuple[int, ...] = ()
    part: str = ""
    spoken: int | None = None
    either: int | None = None
    vague: date | None = None

    @property
    def told(self) -> Day:
        """The day as told so far."""
        return self.day, self.days, self.vague, self.rolled

    @property
    def hour(self) -> bool:
        """Whether an hour was told, and not how long ago."""
        told = self.clock is not None or self.spoken is not None or bool(self.hours)
        return told and self.back is None and not self.now


def number(token: Token) -> float | None:
    """The number that a token is, None for any other token."""
    if token.kind == "number" and isinstance(token.value, Number) and not token.value.problem:
        return token.value.value
    return None


def said(token: Token) -> float | None:
    """The number that a token is, in digits or in a word."""
    return float(str(token.value)) if token.kind == "count" else number(token)


def word_at(tokens: list[Token], place: int) -> str:
    """The meaning of a word of time at `place`, empty where none stands there."""
    if place < len(tokens) and tokens[place].kind == "time":
        return str(tokens[place].value)
    return ""
