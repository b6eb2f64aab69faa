"""The share of the water that a question of a change is about."""

from __future__ import annotations

from bot.chat.change_asked import Asked
from bot.chat.words import changes as words
from bot.chat.words import refusals
from core.advice.change_plan import as_told
from core.advice.plan import Refusal
from core.message.model import Question


def share_of(question: Question, asked: Asked) -> float | list[str]:
    """The share that is asked about, from percent, litres or a wish; else what to say."""
    if question.percent is not None:
        share = question.percent / 100.0
    elif question.litres is not None:
        volume = question.volume_l or asked.stored.tank.volume_l
        if volume is None:
            return refusals.refused(Refusal("volume_unknown"), asked.stored.name)
        share = question.litres / volume
    elif question.target is not None and question.analyte is not None:
        return _share_for(question.analyte, question.target, asked)
    else:
        return words.no_share()
    return share if 0.0 < share <= 1.0 else words.share_implausible()


def _share_for(analyte: str, target: float, asked: Asked) -> float | list[str]:
    whole = part_for(analyte, target, asked)
    return whole if isinstance(whole, list) else min(as_told(whole), 1.0)


def part_for(analyte: str, target: float, asked: Asked) -> float | list[str]:
    """The share that reaches a value at once, unrounded; else what to say."""
    now, new = asked.tank.last(analyte), asked.source.last(analyte)
    if now is None or new is None:
        return words.unknown(asked.stored.name, analyte, of_source=now is not None)
    if (now.value - target) * (now.value - new.value) <= 0.0 and now.value != new.value:
        return words.reached(analyte, now.value, target)
    if abs(new.value - now.value) <= abs(target - now.value) + 1e-9:
        return words.out_of_reach(analyte, new.value, target)
    return (now.value - target) / (now.value - new.value)
