"""What the buttons do that ask what of a plan went in: so much is put on record, or none."""

from __future__ import annotations

from datetime import datetime

from bot.chat import doses, off_record, own_plan
from bot.chat.model import Reply
from bot.chat.turn import Turn
from bot.chat.words import given_parts as words
from bot.chat.words import off_record as off_words
from bot.store.offers import Choice, Offer


async def log_some(turn: Turn, offer: Offer, choice: Choice) -> list[Reply]:
    """Put so much of a plan on record as a button holds, once."""
    once = choice.arguments.get("id", offer.id)  # of a question that is asked again: its first
    said_by = f"{own_plan.log_id(choice.arguments['of'])}:{once}"
    at = choice.arguments.get("at")
    moment = None if at is None else datetime.fromisoformat(at)
    return await doses.log_parts(turn, said_by, choice.arguments["held"], at=moment)


async def log_none(turn: Turn, _offer: Offer, choice: Choice) -> list[Reply]:
    """What was told was on record already, or is something else."""
    other = choice.arguments.get("other", False)
    if "tank" in choice.arguments:
        await off_record.settle(turn, choice.arguments["tank"])
        if not choice.arguments.get("once"):
            return [await turn.reply(off_words.so_it_stands())]
    return [await turn.reply(words.nothing_kept() if other else words.as_it_was())]
