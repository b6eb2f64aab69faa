"""Taking back a tank that a message introduced, by its button or by a typed ``undo``.

What was kept in it goes with it only on a yes.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any, Final

from bot.chat.model import Reply
from bot.chat.tank_volumes import facts
from bot.chat.turn import Turn
from bot.chat.words import buttons, general
from bot.chat.words import introducing as words
from bot.chat.words import tanks as tank_said
from bot.store.offers import Choice, Offer
from bot.store.tanks import StoredTank

MADE: Final = "introduced"
"""In the context of the reply that made a tank: what a press of its button takes."""

_FAR: Final = 6
"""So many replies back an ``undo`` may mean the tank."""

_NEWEST: Final = 50
"""So many entries are looked through for what is kept in a tank."""


async def typed(turn: Turn) -> list[Reply] | None:
    """``undo`` right behind a tank that nothing is kept of yet; None for all else."""
    for offer in await turn.uow.offers.latest(turn.chat.id, _FAR):
        held = offer.context.get(MADE)
        if held is not None:
            return await _take(turn, offer, held)
        if offer.expects == "undo" or any(choice.meaning == "undo" for choice in offer.choices):
            entry_id = offer.entry_id
            entry = None if entry_id is None else await turn.uow.log.current(turn.chat.id, entry_id)
            if entry is None or not entry.is_empty:
                return None
    return None


async def _take(turn: Turn, offer: Offer, held: Mapping[str, Any]) -> list[Reply] | None:
    stored = turn.tank_by_id(held["tank_id"])
    if stored is None or offer.used is not None:
        return None
    if "before" not in held and await _has_entries(turn, stored, ""):
        return [await _ask(turn, stored, held)]
    await turn.uow.offers.take(offer.id, "unmake_tank")
    return [await _unmake(turn, stored, held)]


async def press(turn: Turn, offer: Offer, choice: Choice) -> list[Reply]:
    """Take an introduction back: the tank as it was before, or none.

    Where more is kept in it than its own message told, it is asked first.
    """
    held = choice.arguments
    stored = turn.tank_by_id(held["tank_id"])
    if stored is None or offer.used is not None:
        return [await turn.reply(general.already())]
    unasked = "before" not in held and not held.get("sure")
    if unasked and await _has_entries(turn, stored, held.get("update_id", "")):
        return [await _ask(turn, stored, held)]
    if not await turn.uow.offers.take(offer.id, choice.verb):
        return [await turn.reply(general.already())]
    return [await _unmake(turn, stored, held)]


async def _has_entries(turn: Turn, stored: StoredTank, but: str) -> bool:
    """Whether anything is kept in a tank that another message than one told."""
    entries = await turn.uow.log.newest(turn.chat.id, _NEWEST)
    others = [entry for entry in entries if _message(entry.update_id) != but]
    homes = {each.tank_id for entry in others for each in entry.readings}
    homes |= {each.tank_id for entry in others for each in entry.events}
    return stored.id in homes


def _message(update_id: str) -> str:
    """The message that an entry is of, of which it may be one of several."""
    return update_id.partition(":")[0]


async def _unmake(turn: Turn, stored: StoredTank, held: Mapping[str, Any]) -> Reply:
    before = held.get("before")
    if before is not None:
        stored = await turn.change_tank(stored, **before)
        return await turn.reply(tank_said.changed(stored.tank), facts=facts(stored))
    await turn.change_tank(stored, deleted_at=turn.now)
    return await turn.reply(tank_said.deleted(stored.name))


async def _ask(turn: Turn, stored: StoredTank, held: Mapping[str, Any]) -> Reply:
    choices = [
        Choice(words.with_all(), "unmake_tank", "yes", {**held, "sure": True}),
        Choice(buttons.no(), "leave_out", "no"),
    ]
    return await turn.reply(words.ask_take_back(stored.name), choices=choices)
