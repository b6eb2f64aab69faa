"""``is the water ok for shrimps`` where copper went in or was measured: no, before all else."""

from __future__ import annotations

from bot.chat import animals, coppered
from bot.chat.model import Reply
from bot.chat.standing import about
from bot.chat.state import state_of
from bot.chat.turn import Turn
from core.advice.livestock import Found, lookup
from core.message.model import Parsed
from core.message.waters import mentioned


async def answer(turn: Turn, parsed: Parsed) -> Reply | None:
    """Say that it is no water for invertebrates; None for any other animals, waters or questions.

    A group of kinds (`snails`) counts where every kind of it that may live there is one.
    """
    question = parsed.question
    if question is None or question.kind not in {"safe", "keep"} or not turn.incoming.addressed:
        return None
    if question.premises or question.substance or not question.species:
        return None
    stored = about(turn, question)
    if stored is None or question.analyte is not None or mentioned(turn.incoming.text):
        return None
    names = animals.meant(question, stored.tank)
    rows = [row for name in names if (row := lookup(name).species) is not None]
    if not any(row.is_invertebrate for row in rows):
        return None
    shared = not animals.named(question)
    harmed = rows if shared else [row for row in rows if row.is_invertebrate]
    state = await state_of(turn, stored, turn.now)
    said = question.species if shared else names[rows.index(harmed[0])]
    return await coppered.refused(turn, said, Found(None, tuple(harmed)), state, stored.name)
