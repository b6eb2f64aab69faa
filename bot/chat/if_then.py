"""``if it hits nitrate 50 ill change``: a keeper's own plan, of which nothing is stored."""

from __future__ import annotations

from bot.chat.model import Reply
from bot.chat.turn import Turn
from bot.chat.words import if_then as words
from core.message import doubts
from core.message.if_then import is_condition, is_plan
from core.message.model import Parsed

_OF_PLAN = frozenset({doubts.WISH, doubts.AIM, doubts.UNSURE_EVENT, doubts.UNKNOWN_WORD})
"""Doubts that the words of a plan raise."""


async def answer(turn: Turn, parsed: Parsed) -> Reply | None:
    """Take a plan for what it is; None where something is told or asked, or no value is named.

    A value that reads as measured is part of it only in a condition that says nothing else.
    """
    text = turn.incoming.text
    if parsed.events or parsed.question or parsed.command or not turn.incoming.addressed:
        return None
    if any(doubt.reason not in _OF_PLAN for doubt in parsed.doubts):
        return None
    found = is_condition(text) if parsed.values else bool(parsed.doubts) and is_plan(text)
    return await turn.reply(words.own_plan()) if found else None
