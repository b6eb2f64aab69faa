"""As what an amount is counted (NO3 or N), asked where the wish does not say it."""

from __future__ import annotations

import re
from collections.abc import Mapping

from bot.chat import doubts
from bot.chat.model import Reply
from bot.chat.turn import Turn
from bot.chat.words import general
from bot.chat.words import salts as words
from bot.store.offers import Choice, Offer
from bot.store.tanks import StoredTank
from core.message.model import Basis, Question

BASES: Mapping[str, tuple[tuple[str, str], ...]] = {
    "ammonia": (("N", "as N"), ("NH4", "as NH4")),
    "nitrate": (("NO3", "as NO3"), ("N", "as N")),
    "phosphate": (("PO4", "as PO4"), ("P", "as P")),
}
"""What a wish may be counted as, and the words that say so."""

FORMULA = {"ammonia": "nh4", "nitrate": "no3", "phosphate": "po4"}


def basis_missing(question: Question, stored: StoredTank | None) -> bool:
    """Whether a wish could be as nitrogen or as the ion, and nothing says which."""
    analyte = question.analyte or ""
    if analyte not in BASES or question.basis is not None:
        return False
    if re.search(rf"\b{FORMULA[analyte]}\b", question.text or "", re.IGNORECASE):
        return False
    return kit_basis(question, stored) is None


def kit_basis(question: Question, stored: StoredTank | None) -> Basis | None:
    """The basis that the tank's kit states for what is asked about."""
    kit = None if stored is None else stored.tank.kits.get(question.analyte or "")
    return None if kit is None else kit.basis


async def ask_basis(turn: Turn, question: Question) -> Reply:
    """Ask it, with a button for each, which says the question again."""
    analyte = question.analyte or ""
    choices = [
        Choice(words.as_basis(analyte, basis), "say_again", "", {"text": f"{question.text} {said}"})
        for basis, said in BASES[analyte]
    ]
    facts = {"ask": "basis", "analyte": analyte}
    return await turn.reply(words.basis_ask(analyte), choices=choices, facts=facts)


async def say_again(turn: Turn, offer: Offer, choice: Choice) -> list[Reply]:
    """Take a question again with what was missing in it."""
    if not await turn.uow.offers.take(offer.id, choice.verb):
        return [await turn.reply(general.already())]
    return await doubts.say(turn, choice.arguments["text"], turn.now)
