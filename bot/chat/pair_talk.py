"""Calcium and alkalinity were both asked for: whether together, and which of them first."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from typing import Final

from bot.chat.model import Reply
from bot.chat.turn import ASKED, Turn
from bot.chat.words import plan_talk as words
from bot.store.offers import Offer
from core.message import parse
from core.message.plan_talk import About
from core.message.plan_words import Telling

BUFFER: Final = "kh"
OF_CALCIUM: Final = frozenset({"calcium", "gh"})
"""What is raised with a salt of calcium, which falls out as lime beside a buffer."""


async def answer(turn: Turn, said: About | Telling, of_late: Sequence[Offer]) -> list[Reply] | None:
    """Keep the two apart; None for other talk, and where not both were asked for of late."""
    if said not in {"at_once", "first"}:
        return None
    wished = {analyte for offer in of_late for analyte in _wished(turn, offer)}
    if BUFFER not in wished or not wished & OF_CALCIUM:
        return None
    magnesium = "magnesium" in wished
    lines = words.not_together() if said == "at_once" else words.which_first(magnesium=magnesium)
    return [await turn.reply(lines)]


def _wished(turn: Turn, offer: Offer) -> set[str | None]:
    """The analytes of the dose that an offer answers, planned or refused."""
    asked = offer.context.get(ASKED)
    first = None if asked is None else parse(asked["text"], turn.context()).question
    if asked is None or first is None:
        return set()
    question = replace(first, **asked["changes"])
    return {question.analyte, question.also} if question.kind == "dose" else set()
