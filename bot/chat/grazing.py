"""``which fish eat algae``: those that may join the tank, and what helps more."""

from __future__ import annotations

from bot.chat import poisoned, with_company
from bot.chat.model import Reply
from bot.chat.state import state_of
from bot.chat.turn import Turn
from bot.chat.words import grazing as words
from core.advice import grazers
from core.advice.keeping import can_keep
from core.message.model import Question


async def answer(turn: Turn, question: Question) -> Reply:
    """Name the grazers against whom nothing in the tank in use speaks for sure."""
    stored = turn.tank_named(question.tank) if question.tank else turn.current_tank
    rows = grazers.meant(question.text or "")
    not_now: list[str] = []
    if stored is not None:
        state = await state_of(turn, stored, turn.now)
        not_now = poisoned.no_newcomers(state, stored.name)
        rows = [row for row in rows if can_keep(row, state).verdict != "no"]
    names = [row.name_in(turn.chat.language) for row in rows]
    facts = {"species": [row.scientific for row in rows]}
    lines = words.eaters(names, stored.name if stored else None)
    return await turn.reply(with_company.then(lines, not_now), facts=facts)
