"""Readings of tanks that are not on record: nothing of them is stored unasked."""

from __future__ import annotations

from bot.chat import calls
from bot.chat.asking import ask_stray
from bot.chat.model import Reply
from bot.chat.turn import Turn
from bot.chat.words import unknown_tanks as words
from core.message import parse
from core.message.model import Parsed
from core.message.unknown_tanks import unknown_place, unknown_tanks


async def answer(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """Say how the tanks are told first, or ask which one is meant; None where no such are named."""
    if not turn.incoming.addressed:
        return None
    names = unknown_tanks(turn.incoming.text, turn.context())
    if names:
        return [await turn.reply(words.tell_them_first(names))]
    return None if calls.is_danger(turn, parsed) else await _at_place(turn, parsed)


async def _at_place(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """``back kh 3, temp 11`` beside the tank Front: asked whose it is, and nothing is stored."""
    told = unknown_place(turn.incoming.text, turn.context())
    if told is None or parsed.tank is not None or parsed.command is not None:
        return None
    name, rest = told
    read = parse(rest, turn.context())
    if not read.values or read.doubts or read.question is not None:
        return None
    return [await ask_stray(turn, name, read)]
