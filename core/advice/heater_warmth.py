"""How warm the water is, told beside a heater that failed: ``heater broke its 18``.

warmth = number [ degrees ]

Beside words of a failed heater a bare number in the range of water is its warmth, unless what
stands around it says otherwise: a count, a time, another quantity, an earlier or a wished value.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

from core.advice.alarm_words import group
from core.message.fold import fold
from core.message.lexicon import lexicon
from core.message.numbers import Number
from core.message.tokens import Token, cut

PLAIN_C: Final = (10.0, 40.0)
PLAIN_F: Final = (50.0, 104.0)
"""What a bare number may be as degrees of water, Celsius and Fahrenheit; common practice."""

_ANY_F: Final = 45.0
"""Degrees of no named scale over this are Fahrenheit: no water with animals is so warm in °C."""

_NO_MORE: Final = frozenset({"was", "formerly", "from", "wish", "not", "other", "make", "#"})
"""Before a number they say that it is not how warm it is now, or not here."""

_GOES_ON: Final = frozenset(
    {"home", "link", "and", "in", "water", "fell_to", "down", "may", "does"}
)
_SPANS: Final = frozenset({"minute", "hour", "day", "week", "month", "oclock", "am", "pm"})
_ENDS: Final = frozenset(".,!?;:)…-")
_LED: Final = frozenset({"fill", "link", "approx", "at", "at_hour", "its", "now"})
"""What may stand between a number and what it belongs to."""


@dataclass(frozen=True, slots=True)
class Warmth:
    """How warm the water is: in °C, as written, and where the number stands in the text."""

    celsius: float
    value: float
    unit: str
    start: int
    end: int


def told(text: str) -> Warmth | None:
    """The one warmth that a message about a failed heater tells; None where none or several.

    Examples
    --------
    >>> told("heater broke its 18").celsius, told("Heizung kaputt, nur noch 62 F").unit
    (18.0, '°F')
    >>> told("heater died 18 hours ago"), told("heater broke, 18 tetras alive")
    (None, None)
    """
    tokens = cut(fold(text), lexicon(), text)
    if any(token.value in {"if", "what_if"} for token in tokens):
        return None
    found = [
        warmth
        for place in range(len(tokens))
        if (warmth := _warmth(tokens, place)) is not None and _is_now(tokens, place)
    ]
    return found[0] if len({warmth.celsius for warmth in found}) == 1 else None


def in_doubt(text: str) -> bool:
    """Whether a message has a number that may be a warmth, but is not plainly one.

    Examples
    --------
    >>> in_doubt("heater broke was 18"), in_doubt("heater broke")
    (True, False)
    """
    tokens = cut(fold(text), lexicon(), text)
    return told(text) is None and any(_warmth(tokens, n) is not None for n in range(len(tokens)))


def _warmth(tokens: list[Token], place: int) -> Warmth | None:
    """A number as degrees of water: with its scale any, bare only in the range of water."""
    token = tokens[place]
    number = token.value if token.kind == "number" else None
    if not isinstance(number, Number) or number.value is None or number.problem is not None:
        return None
    value, scale = number.value, _scale(tokens, place)
    if scale is None:
        return None
    if scale == "" and not any(low <= value <= high for low, high in (PLAIN_C, PLAIN_F)):
        return None
    unit = scale if scale in {"°C", "°F"} else "°F" if value > _ANY_F else "°C"
    celsius = value if unit == "°C" else (value - 32.0) / 1.8
    end = tokens[place + 1].end if scale else token.end
    return Warmth(celsius, value, unit, token.start, end)


def _scale(tokens: list[Token], place: int) -> str | None:
    """The scale behind a number: °C, °F, ° for any, "" where none; None for another unit."""
    if place + 1 == len(tokens) or tokens[place + 1].kind != "unit":
        return ""
    unit = str(tokens[place + 1].value).partition("@")[0]
    return unit if unit in {"°C", "°F", "°"} else None


def _is_now(tokens: list[Token], place: int) -> bool:
    """Whether a number tells how warm it is now, by what stands before it and behind."""
    behind = place + (1 if _scale(tokens, place) == "" else 2)
    after = tokens[behind] if behind < len(tokens) else None
    counted = behind == place + 1 and not _ends(after)
    if counted or (after is not None and after.value == "to"):
        return False
    first = place - 1
    while first >= 0 and (tokens[first].kind == "fill" or tokens[first].value in _LED):
        first -= 1
    before = tokens[first] if first >= 0 else None
    if before is None:
        return True
    if before.kind == "event":
        return before.value == "lost" and _is_heater_before(tokens, first)
    if before.kind == "analyte":
        return before.value == "temperature"
    return before.kind not in {"number", "substance"} and before.value not in _NO_MORE


def _ends(after: Token | None) -> bool:
    """Whether a bare number stands for itself by the token behind it."""
    if after is None or after.kind in {"nl", "fill", "ask"} or after.text in _ENDS:
        return True
    if after.kind == "time":
        return after.value not in _SPANS
    return (after.kind == "mark" and after.value in {*_GOES_ON, "to"}) or _is_heater(after)


def names_heater(text: str) -> bool:
    """Whether a message names a heater, in any language."""
    return any(_is_heater(token) for token in cut(fold(text), lexicon(), text))


def _is_heater_before(tokens: list[Token], place: int) -> bool:
    """Whether it is the heater that "died": no word but a light one stands between."""
    first = place - 1
    while first >= 0 and (tokens[first].kind == "fill" or tokens[first].value == "link"):
        first -= 1
    return first >= 0 and _is_heater(tokens[first])


def _is_heater(token: Token) -> bool:
    return (token.text,) in group("heater")
