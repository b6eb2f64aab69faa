"""``that's about 30 g`` after a dose whose grams nobody told: they are put on record with it."""

from __future__ import annotations

from datetime import timedelta
from typing import Final

from bot.chat import corrections
from bot.chat.model import Reply
from bot.chat.turn import Turn
from core.message.model import Parsed
from core.message.weighed_later import grams

PATIENCE: Final = timedelta(hours=6)
"""So long after it grams without a name are those of the newest dose; our judgement."""


async def answer(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """Put the grams right that are told of the newest entry; None where it is no such dose."""
    quiet = not (parsed.values or parsed.events or parsed.question)
    if not quiet or not turn.incoming.addressed or (told := grams(turn.incoming.text)) is None:
        return None
    entry = await turn.uow.log.latest(turn.chat.id, turn.incoming.author_id)
    if entry is None or len(entry.events) != 1 or entry.readings:
        return None
    event = entry.events[0]
    unweighed = event.what.grams is None and event.what.millilitres is None
    if not unweighed or turn.now - event.at > PATIENCE:
        return None
    return await corrections.with_grams(turn, entry.id, told)
