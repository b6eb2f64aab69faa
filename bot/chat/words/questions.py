"""Answers to questions of units."""

from __future__ import annotations

from collections.abc import Sequence

from bot.chat.words.numbers import plain
from core.units import label


def converted(value: float, unit: str | None, answers: Sequence[tuple[float, str]]) -> str:
    """A value and what it is in other units."""
    told = f"{plain(value, 4)} {label(unit) if unit else ''}".strip()
    return f"{told} = " + " = ".join(f"{_fine(number)} {label(each)}" for number, each in answers)


def what_to_convert() -> list[str]:
    """The number is missing."""
    return ["What shall I convert? Send for example: convert 8 dkh to ppm"]


def cannot_convert() -> list[str]:
    """The two units do not measure the same thing, or one is not known."""
    return ["I cannot convert that. Send for example: convert 8 dkh to ppm, or convert 20 gal to l"]


def _fine(number: float) -> str:
    if number >= 100:
        return plain(number, 0)
    return (
        plain(number, 2 if number < 10 else 1) if number != round(number, 3) else plain(number, 4)
    )
