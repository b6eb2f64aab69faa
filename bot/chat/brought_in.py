"""``brother brought 6 mollies, theyre in the tank now``: they are in, and are kept as that."""

from __future__ import annotations

from dataclasses import replace

from bot.chat.model import Reply
from bot.chat.turn import Turn
from core.message.brought_in import brought_in
from core.message.model import Parsed


async def answer(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """Keep animals that are told to be in, and say what stands in that water; None of others."""
    if parsed.values or parsed.events or parsed.question or parsed.command is not None:
        return None
    if turn.incoming.group or turn.route is None:
        return None
    told = brought_in(turn.incoming.text)
    if not told:
        return None
    return await turn.route(turn, replace(parsed, intent="event", events=told, doubts=()))
