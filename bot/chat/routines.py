"""``keep nitrate under 20``: the steady routine of changes that holds a value."""

from __future__ import annotations

import re
from dataclasses import asdict, replace
from typing import Final

from bot.chat import change_asked, change_bounds, changes
from bot.chat.model import Reply
from bot.chat.turn import Turn
from bot.chat.words import routines as words
from bot.chat.words import standing as standing_words
from core.advice import limits
from core.advice.routine import made_per_day, safe_routine
from core.message.model import Parsed, Question
from core.tank import Tank

UNKNOWN_SHARE: Final = 0.1
"""What may be changed at once where nothing tells how far the waters are apart; our judgement."""

USUAL: Final = 0.25
"""The most of a usual change; common practice. Where much less is safe, it says so of this."""

HOW_OFTEN: Final = re.compile(
    r"\b(?:how often|wie oft|combien de fois|tous les combien|frequence|cada cuanto"
    r"|frecuencia|frequencia|quanto em quanto|quantas vezes|ogni quanto"
    r"|frequenza|hoe vaak|jak czesto|co ile|hur ofta)\b"
)
"""Asked how often, in plain words; what of stands in the parser's words."""


async def often(turn: Turn, question: Question, parsed: Parsed, tank: Tank) -> list[Reply]:
    """``how often should i change water``: the routine that keeps nitrate under its limit."""
    limit = limits.NITRATE_REEF if tank.is_sea else limits.NITRATE_FRESH
    asked = await change_asked.asked_of(turn, question)
    if not isinstance(asked, Reply) and _largest_safe(asked) < UNKNOWN_SHARE:
        return await changes.change(turn, replace(question, percent=100.0 * USUAL), parsed)
    if isinstance(asked, Reply) or made_per_day(asked.tank, "nitrate") is None:
        return [await turn.reply([words.usual()])]
    return await keep(turn, replace(question, analyte="nitrate", target=limit), parsed)


async def keep(turn: Turn, question: Question, parsed: Parsed) -> list[Reply]:
    """Answer which share, how often, keeps an analyte under a value, within the step limits.

    A tank that is over the value now is told first how to come down.
    """
    analyte, target = question.analyte, question.target
    if analyte is None or target is None:
        return await changes.change(turn, question, parsed)
    asked = await change_asked.asked_of(turn, question)
    if isinstance(asked, Reply):
        return [asked]
    name, now = asked.stored.name, asked.tank.last(analyte)
    per_day, new = made_per_day(asked.tank, analyte), asked.source.last(analyte)
    if now is not None and now.value > target:
        return await changes.change(turn, question, parsed)
    if new is None:
        return [await turn.reply(words.source_unknown(asked.source_name, analyte))]
    if target <= new.value:
        return [await turn.reply(words.out_of_reach(asked.source_name, analyte, new.value, target))]
    if per_day is None:
        return [await turn.reply(standing_words.no_trend(name, analyte))]
    found = safe_routine(target, per_day, new.value, _largest_safe(asked))
    if found is None:
        return [await turn.reply(words.more_than_changes(name, analyte, target, per_day))]
    facts = {"tank": name, "source": asked.source_name, "routine": asdict(found)}
    litres = asked.stored.tank.volume_l
    lines = words.routine(
        name, analyte, target, found, None if litres is None else litres * found.share
    )
    return [await turn.reply(lines, facts=facts)]


def _largest_safe(asked: change_asked.Asked) -> float:
    """The largest share that the step limits allow at once; a tenth where it cannot be told."""
    largest = change_bounds.largest_safe(asked.tank, asked.supply)
    return UNKNOWN_SHARE if largest is None else largest
