"""What a dose is made with that is not named: a label told right before, or only a "buffer"."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from typing import Final

from bot.chat import product_doses
from bot.chat.products import LOOKED_AT, PATIENCE, SPOKEN_OF
from bot.chat.turn import ASKED, Turn
from bot.chat.words.text import _
from bot.store.offers import Offer
from core.advice.products import Label, Product
from core.message.dose_words import is_bare_buffer
from core.message.model import Question

UNDO: Final = "label"
"""Under which an offer keeps what an undo of a kept label needs."""

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
    if product_doses.with_unknown(turn, question) is not None:
        return question  # by another thing, which is asked about
    latest = await turn.uow.offers.latest(turn.chat.id, LOOKED_AT)
    if not latest or turn.now - latest[0].made_at > PATIENCE:
        return question
    kept = None if bare else _named_last(turn, latest)
    kept = latest[0].context.get(SPOKEN_OF) if UNDO in latest[0].context else kept
    labels = [each.label for each in turn.products if each.name == kept]
    labels = labels or [Label(**each) for each in latest[0].context.get(UNNAMED, ())]
    raised = {each.analyte for each in labels}
    if question.analyte is None and not bare and len(raised) == 1:
        question = replace(question, analyte=next(iter(raised)))  # how much to get to 4
    if kept is not None and not bare and question.analyte in raised:
        return replace(question, substance=kept)
    if kept is not None or not labels or (not bare and question.analyte not in raised):
        return question
    name = _("product of that label")
    if question.analyte == "iron" and question.target is not None and question.delta is None:
        stored = turn.tank_named(question.tank) if question.tank else turn.current_tank
        known = stored and await turn.uow.log.last_of_each(stored.id, ["iron"], until=turn.now)
        if not known:  # plant food is given as so much more; hardly anybody measures iron
            question = replace(question, delta=question.target, target=None)
    turn.products = [*turn.products, *(Product.of_label(name, each) for each in labels)]
    return replace(question, substance=name)


def _named_last(turn: Turn, latest: Sequence[Offer]) -> str | None:
    """The product whose label was told of late, with no dose asked for since."""
    for offer in latest:
        if turn.now - offer.made_at > PATIENCE or ASKED in offer.context:
            return None
        if UNDO in offer.context:
            found: str = offer.context[SPOKEN_OF]
            return found
    return None


def with_soda(turn: Turn, question: Question) -> Question:
    """`how much buffer`, of no contents and no product that is known: it is asked of baking soda.

    A wish for KH by what is only called a buffer is worked out with a salt whose number is known.
    """
    bare = question.substance is not None and is_bare_buffer(question.substance)
    if not bare or question.kind != "dose" or question.analyte != "kh":
        return question
    known = product_doses.meant_by(question, turn.products)
    return question if known else replace(question, substance="sodium bicarbonate")
