"""``do i need to``, ``what if i leave it`` right after a plan: do the readings ask for it?

A steady tank that suits its animals is left alone: a plan that only a wish asks for is no need.
"""

from __future__ import annotations

from collections.abc import Sequence

from bot.chat.given_plan import given
from bot.chat.model import Reply
from bot.chat.state import state_of
from bot.chat.turn import Turn
from bot.chat.verdicts import untested
from bot.chat.words import findings as finding_words
from bot.chat.words import needed as words
from bot.store.offers import Offer
from core.advice.findings import stands

OF_NO_NEED = frozenset({"overdose", "nutrient_overdose"})
"""Findings of what went in: no reason to put more in."""


async def answer(turn: Turn, of_late: Sequence[Offer]) -> list[Reply] | None:
    """Say whether the newest plan or change is needed; None where none of a tank was answered."""
    for offer in of_late:
        plan, facts = given(offer), offer.context.get("facts", {})
        stored = turn.tank_by_id(plan.tank_id) if plan else turn.tank_named(facts.get("tank") or "")
        if plan is None and "largest_safe_share" not in facts:
            continue
        if stored is None:
            return None
        state = await state_of(turn, stored, turn.now)
        analytes = frozenset(plan.analytes if plan else facts.get("before", {}))
        found = [each for each in stands(state, analytes) if each.severity != "note"]
        found = [each for each in found if each.id not in OF_NO_NEED]
        told = {"tank": stored.name, "about": sorted(analytes)}
        if not found:
            return [await turn.reply([*words.no_need(), *untested(state)], facts=told)]
        told["findings"] = [{"id": f.id, "severity": f.severity, **f.facts} for f in found]
        lines = [words.asked_for(), *(finding_words.line(each) for each in found)]
        return [await turn.reply([*lines, words.left_alone()][:6], facts=told)]
    return None
