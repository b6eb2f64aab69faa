"""``what goes with a betta``: who may live with a kind."""

from __future__ import annotations

from typing import Final

from bot.chat.model import Reply
from bot.chat.turn import Turn
from bot.chat.words import companions as words
from core.advice.keeping import companions
from core.advice.livestock import Species
from core.advice.state import State

LINES: Final = 6
SHOWN: Final = 8
"""Kinds in the facts."""


async def told(turn: Turn, asked: str, kind: Species, state: State, not_now: list[str]) -> Reply:
    """``what goes with a betta``: of whom nothing speaks against it."""
    found = companions(kind, state.tank)
    facts = {"species": kind.scientific, "companions": [row.scientific for row in found[:SHOWN]]}
    lines = words.companions(asked, found, turn.chat.language)
    return await turn.reply(then(lines, not_now), facts=facts)


def then(lines: list[str], not_now: list[str]) -> list[str]:
    """An answer about company, and that nobody should come now."""
    return [*lines[: LINES - len(not_now[:1])], *not_now[:1]]
