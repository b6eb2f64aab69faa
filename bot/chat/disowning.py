"""``wait i used an expired kit``: no verdict is good before it is tested again."""

from __future__ import annotations

from bot.chat import unheard
from bot.chat.model import Reply
from bot.chat.turn import Turn
from bot.chat.words import standing as words
from core.message.disowned import disowned
from core.message.model import Parsed


async def answer(turn: Turn, parsed: Parsed) -> Reply | None:
    """Keep that the last test is doubted, and ask for another; None for all other talk."""
    told = parsed.values or parsed.events or parsed.command is not None
    stored = turn.current_tank
    if told or stored is None or not turn.incoming.addressed:
        return None
    if not disowned(turn.incoming.text):
        return None
    await unheard.disown(turn)
    return await turn.reply(words.test_again(stored.name), facts={"tank": stored.name})
