"""The same asked in a topic's own words, and answered as if those had been typed."""

from __future__ import annotations

from collections.abc import Awaitable, Callable
from dataclasses import replace

from bot.chat.model import Reply
from bot.chat.turn import Turn
from core.message import parse
from core.message.model import Parsed

Again = Callable[[Turn, Parsed], Awaitable[list[Reply]]]
"""What answers a message that is asked once more in other words."""


async def anew(turn: Turn, text: str, again: Again) -> list[Reply]:
    """Ask a text in the message's place; the message itself stands again behind it."""
    whole = turn.incoming
    turn.incoming = replace(whole, text=text)
    replies = await again(turn, parse(text, turn.context()))
    turn.incoming = whole
    return replies
