"""The parts of a moment while it is read, and what days and clocks share."""

from __future__ import annotations

import re
from dataclasses import dataclass
from datetime import date, time, timedelta, tzinfo

from core.message.numbers import Number
from core.message.tokens import Token

DIGITS = re.compile(r"\d+")


@dataclass(slots=True)
class Parts:
    """What has been read of a moment; `days` and `hours` are set where there are two readings."""

    day: date | None = None
    clock: time | None = None
    offset: tzinfo | None = None
    back: timedelta | None = None
    now: bool = False
    bad: bool = False
    rolled: bool = False
    days: tuple[date, ...] = ()
    hours: tuple[int, ...] = ()


def number(token: Token) -> float | None:
    """The number that a token is, None for any other token."""
    if token.kind == "number" and isinstance(token.value, Number) and not token.value.problem:
        return token.value.value
    return None


def word_at(tokens: list[Token], place: int) -> str:
    """The meaning of a word of time at `place`, empty where none stands there."""
    if place < len(tokens) and tokens[place].kind == "time":
        return str(tokens[place].value)
    return ""
