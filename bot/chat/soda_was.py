"""The button that says which soda it was."""

from __future__ import annotations

from bot.chat import corrections
from bot.chat.model import Reply
from bot.chat.turn import Turn
from bot.chat.words import general
from bot.store.offers import Choice, Offer


async def press(turn: Turn, offer: Offer, choice: Choice) -> list[Reply]:
    """Put the dose right as the soda that it was."""
    if not await turn.uow.offers.take(offer.id, choice.verb):
        return [await turn.reply(general.already())]
    entry_id, substance = choice.arguments["entry"], choice.arguments["substance"]
    right = await corrections.with_substance(turn, entry_id, substance)
    return [await turn.reply(general.already())] if right is None else right
