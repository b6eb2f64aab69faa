"""What is said of values that are asked about in a few words."""

from __future__ import annotations

from collections.abc import Iterable
from datetime import datetime

from bot.chat.words.derived import class_words
from bot.chat.words.standing import as_measured
from bot.chat.words.text import _
from core.advice.hardness import HardnessClass
from core.advice.state import Measured


def stand(
    tank: str, measured: Iterable[tuple[Measured, HardnessClass | None]], now: datetime
) -> str:
    """The newest readings, each with its class where it has one."""
    parts = []
    for each, held in measured:
        told = as_measured(each, now)
        if held is not None:
            told = _("{value} ({hardness})").format(
                value=told, hardness=class_words(each.analyte, held)
            )
        parts.append(told)
    return _("{tank}: {values}.").format(tank=tank, values=", ".join(parts))
