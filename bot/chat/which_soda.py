"""``added 3 g soda``, ``how much soda for kh 5``: baking or washing soda is meant by it.

Which one went in is asked, since one does far more than the other.
"""

from __future__ import annotations

from collections.abc import Awaitable, Callable
from dataclasses import replace
from typing import Any, Final

from bot.chat.model import Line, Reply
from bot.chat.state import state_of
from bot.chat.told import Told
from bot.chat.turn import Turn
from bot.chat.words import which_soda as words
from bot.store.offers import Choice
from core.advice.effects import effects_of
from core.advice.plan import Refusal
from core.advice.spoons import least_grams
from core.message.model import Event, Parsed, Question

SODA: Final = "soda"
"""How a soda is kept of which nobody told which."""

KINDS: Final = ("sodium bicarbonate", "sodium carbonate")


async def ask(turn: Turn, told: Told, entry_id: int) -> Reply | None:
    """Right after a dose of soda: which one it was, and what it did at the least."""
    event = next((each.what for each in told.events if each.what.substance == SODA), None)
    if event is None or event.kind != "dose":
        return None
    choices = [
        Choice(words.it_was(kind), "soda_was", "", {"entry": entry_id, "substance": kind})
        for kind in KINDS
    ]
    facts: dict[str, Any] = {"ask": "soda", "tank": told.tank.name}
    least = await _least(turn, told, event)
    if least is not None:
        facts["kh"] = least
    lines = words.which(least)
    return await turn.reply(lines, choices=choices, facts=facts, entry_id=entry_id)


Dose = Callable[[Turn, Question, Parsed], Awaitable[list[Reply]]]


async def planned(turn: Turn, question: Question, parsed: Parsed, dose: Dose) -> list[Reply]:
    """How much soda for a KH: by baking soda, which alone is meant for it, and that is said."""
    replies = await dose(turn, replace(question, substance=KINDS[0]), parsed)
    if not replies:
        return []
    (one, *others) = replies
    note = Line(words.baking_meant())
    return [replace(one, lines=(*one.lines[:1], note, *one.lines[1:])), *others]


async def _least(turn: Turn, told: Told, event: Event) -> float | None:
    """By how much it raised KH if it was the weaker one; None where that is not known. [°dH]"""
    weaker = Event("dose", grams=event.grams, spoons=event.spoons, substance=KINDS[0])
    grams, volume = least_grams(weaker), told.tank.tank.volume_l
    if not grams or not volume:
        return None
    found = effects_of(KINDS[0], grams, volume, await state_of(turn, told.tank, turn.now))
    return None if isinstance(found, Refusal) else found[0].kh
