"""``why won't you``, ``so do nothing??``, ``when can i``: talk of an amount that was not given."""

from __future__ import annotations

from typing import Any

from bot.chat import emergencies, went_in
from bot.chat.calls_kept import CALLED
from bot.chat.model import Reply
from bot.chat.patience import GROUP_PATIENCE, PATIENCE
from bot.chat.turn import Turn
from bot.chat.words import after_refusal as words
from bot.store.offers import Offer
from core.message.gave_told import asks_bare_amount
from core.message.model import Parsed
from core.message.refusal_talk import said

OF_AMMONIA = frozenset({"ammonia", "ammonia_old", "ammonia_unmeasured", "temperature_unknown"})
"""Reasons that a test of ammonia ends."""
NO_AMOUNT = frozenset({"medicine_in"})
"""Cautions that refuse every amount."""
OF_WATER = frozenset({"source_unknown", "temperature_unknown", "untreated", "salinity_unknown"})
"""Reasons against a change, of which half may well be done."""
AMONG = 4
"""Answers back to which a refusal is still spoken of."""


async def answer(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """Answer of the refusal that was the last answer; None where it was none, or more is said."""
    if parsed.values or parsed.events or not turn.incoming.addressed:
        return None
    reaction = said(turn.incoming.text)
    if reaction is None and asks_bare_amount(turn.incoming.text):
        reaction = "less"
    if reaction is None:
        latest = await turn.uow.offers.latest(turn.chat.id, 1)
        patience = GROUP_PATIENCE if turn.incoming.group else PATIENCE
        late = not latest or turn.now - latest[0].made_at > patience
        return None if late else await went_in.after(turn, latest[0])
    refused = await _refused(turn)
    if refused is None or (
        reaction == "less" and refused.context["facts"].get("refused") in OF_WATER
    ):
        return None
    facts: dict[str, Any] = dict(refused.context["facts"])
    if "refused" not in facts:
        if reaction != "less":
            return None  # a caution that nothing was asked before
        facts = {"refused": "medicine"}
    why: list[str] = refused.context["why"]
    of_ammonia = facts["refused"] in OF_AMMONIA
    if reaction == "when" and not of_ammonia:
        return None  # a day's wait, a test: what was asked for knows when
    turn.asked = refused.context.get("asked")  # still what is spoken of
    if reaction == "instead" and facts["refused"] == "ammonia":
        return [await _steps(turn, refused)]
    if reaction == "why":
        lines = why
    elif reaction == "less":
        lines = words.not_less(why)
    elif reaction == "instead":
        lines = words.instead(why)
    else:
        lines = words.when() if reaction == "when" else words.unwilling(of_ammonia=of_ammonia)
    return [await turn.reply(lines, facts=facts, context={"why": why})]


async def _refused(turn: Turn) -> Offer | None:
    """The refusal of late, with nothing but first aid answered since; None where it was none."""
    patience = GROUP_PATIENCE if turn.incoming.group else PATIENCE
    for offer in await turn.uow.offers.latest(turn.chat.id, AMONG):
        if offer.entry_id is not None or turn.now - offer.made_at > patience:
            return None
        if "refused" in offer.context.get("facts", {}) and offer.context.get("why"):
            return offer
        if offer.context.get("facts", {}).get("caution") in NO_AMOUNT and offer.context.get("why"):
            return offer
        called = CALLED in offer.context or "emergency" in offer.context.get("facts", {})
        if not called:
            return None  # something else was answered since
    return None


async def _steps(turn: Turn, offer: Offer) -> Reply:
    """What is done while there is ammonia, in the tank that was spoken of."""
    named = offer.context.get("facts", {}).get("tank") or ""
    return await emergencies.help_in(turn, turn.tank_named(named) or turn.current_tank, "ammonia")
