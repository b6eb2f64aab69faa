"""``added 3 g soda``: baking or washing soda is asked, since one does far more than the other."""

from __future__ import annotations

from typing import Any, Final

from bot.chat.model import Reply
from bot.chat.state import state_of
from bot.chat.told import Told
from bot.chat.turn import Turn
from bot.chat.words import which_soda as words
from bot.store.offers import Choice
from core.advice.effects import effects_of
from core.advice.plan import Refusal
from core.advice.spoons import least_grams
from core.message.model import Event

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


async def _least(turn: Turn, told: Told, event: Event) -> float | None:
    """By how much it raised KH if it was the weaker one; None where that is not known. [°dH]"""
    weaker = Event("dose", grams=event.grams, spoons=event.spoons, substance=KINDS[0])
    grams, volume = least_grams(weaker), told.tank.tank.volume_l
    if not grams or not volume:
        return None
    found = effects_of(KINDS[0], grams, volume, await state_of(turn, told.tank, turn.now))
    return None if isinstance(found, Refusal) else found[0].kh
