"""Readings of several tanks that are not on record: nothing of them is stored unasked."""

from __future__ import annotations

from bot.chat.model import Reply
from bot.chat.turn import Turn
from bot.chat.words import unknown_tanks as words
from core.message.model import Parsed
from core.message.unknown_tanks import unknown_tanks


async def answer(turn: Turn, _parsed: Parsed) -> list[Reply] | None:
    """Say how the tanks are told first; None where no such are named."""
    names = unknown_tanks(turn.incoming.text, turn.context()) if turn.incoming.addressed else ()
    return [await turn.reply(words.tell_them_first(names))] if names else None
