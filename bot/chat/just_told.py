"""A label that was told right before without a name: what it raises is dosed by it."""

from __future__ import annotations

from dataclasses import replace
from typing import Final

from bot.chat.products import PATIENCE
from bot.chat.turn import Turn
from bot.chat.words.text import _
from core.advice.products import HARDNESS, Label, Product
from core.message.model import Question

UNNAMED: Final = "unnamed"
"""Under which an offer keeps labels that wait for a name."""


async def of_label(turn: Turn, question: Question) -> Question:
    """The same question of the product whose label was told last, where it names none.

    Of what that label raises, or of nothing: `how much for fe 0.1`, `so how much for my tank`.
    """
    told = (question.target, question.delta, question.grams, question.millilitres, question.percent)
    bare = question.analyte is None and all(each is None for each in told)
    if question.substance is not None or question.also is not None or question.kind != "dose":
        return question
    if not bare and question.target is None and question.delta is None:
        return question
    latest = await turn.uow.offers.latest(turn.chat.id, 1)
    if not latest or turn.now - latest[0].made_at > PATIENCE:
        return question
    labels = [Label(**each) for each in latest[0].context.get(UNNAMED, ())]
    raised = {each.analyte for each in labels} - HARDNESS  # of which we have salts ourselves
    if not labels or (not bare and question.analyte not in raised):
        return question
    name = _("product of that label")
    if question.analyte == "iron" and question.target is not None and question.delta is None:
        stored = turn.tank_named(question.tank) if question.tank else turn.current_tank
        known = stored and await turn.uow.log.last_of_each(stored.id, ["iron"], until=turn.now)
        if not known:  # plant food is given as so much more; hardly anybody measures iron
            question = replace(question, delta=question.target, target=None)
    turn.products = [*turn.products, *(Product.of_label(name, each) for each in labels)]
    return replace(question, substance=name)
