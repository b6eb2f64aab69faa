"""Copper that may be in a tank's water, against an invertebrate that is asked about."""

from __future__ import annotations

from bot.chat.model import Reply
from bot.chat.turn import Turn
from bot.chat.words import copper as words
from core.advice.coppered import against
from core.advice.livestock import Found
from core.advice.state import State
from core.message.after import is_of_harm


async def refused(turn: Turn, said: str, found: Found, state: State, tank: str) -> Reply | None:
    """Why an invertebrate may not come, or is not safe, while copper may be in the water."""
    rows = found.candidates if found.species is None else (found.species,)
    finding = against(state, rows)
    if finding is None:
        return None
    lines = words.not_for(said, tank, finding, harm=is_of_harm(turn.incoming.text))
    told = {"id": finding.id, "severity": finding.severity, **finding.facts}
    facts = {"verdict": "no", "tank": tank, "findings": [told]}
    return await turn.reply(lines, facts=facts)
