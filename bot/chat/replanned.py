"""The plan that was just answered, made anew where the tank turns out to hold another amount."""

from __future__ import annotations

from dataclasses import replace
from datetime import timedelta
from typing import Final

from bot.chat import dosing
from bot.chat.given_plan import OF_PLAN
from bot.chat.model import Reply
from bot.chat.turn import ASKED, Turn
from bot.store.offers import AT_HAND, Offer
from bot.store.tanks import StoredTank
from core.message import parse
from core.message.model import Parsed

HELD: Final = timedelta(hours=12)
"""An older plan is past: it may be given by now."""

LOGGING: Final = frozenset({"log_dose", "which_form", "log_some"})
"""What the button of a plan does that puts its first part on record."""

AMOUNTS: Final = frozenset({"grams", "salts", "parts", "forms", "litres", "goals"})
"""Facts of an answer that names how much of something is for a tank."""

SET_BEFORE: Final = "reminders"
"""In what is kept of another volume: ids of the reminders that were set before it was told."""

RESIZED: Final = "resized"
"""Of an offer: that a tank got another volume, which can be taken back."""

LOOKED_AT: Final = AT_HAND
"""Latest offers among which the plan is found."""


async def planned(turn: Turn) -> StoredTank | None:
    """The tank of the plan that was answered last, where nothing else was spoken of since."""
    offer = await newest(turn)
    facts = {} if offer is None else offer.context.get("facts", {})
    is_plan = offer is not None and any(each.verb in LOGGING for each in offer.choices)
    return turn.tank_named(facts.get("tank") or "") if is_plan else None


async def for_volume(turn: Turn, stored: StoredTank, offer: Offer | None = None) -> list[Reply]:
    """Answer the newest dose anew where it was reckoned for this tank's water; else nothing.

    `offer` is the newest answer, where more was said since it was looked up.
    """
    offer = offer or await newest(turn)
    if offer is None or ASKED not in offer.context or turn.now - offer.made_at > HELD:
        return []
    asked = offer.context[ASKED]
    first = parse(asked["text"], turn.context()).question
    planned_for = offer.context.get("facts", {}).get("tank")
    if first is None or first.kind != "dose" or planned_for != stored.name:
        return []
    question = replace(first, **asked["changes"])
    if question.volume_l is not None:
        return []
    turn.asked = asked
    return await dosing.dose(turn, question, Parsed("question", question=question))


def is_of(offer: Offer, stored: StoredTank) -> bool:
    """Whether an answer named an amount of something for a tank."""
    told = offer.context.get("facts", {})
    return told.get("tank") == stored.name and not AMOUNTS.isdisjoint(told)


async def newest(turn: Turn) -> Offer | None:
    """The newest answer but of a part that was logged and of how much water a tank holds."""
    for offer in await turn.uow.offers.latest(turn.chat.id, LOOKED_AT):
        if OF_PLAN in offer.context or RESIZED in offer.context:
            continue  # talk of the plan, or how much water a tank holds
        of_volume = any(choice.verb == "set_volume" for choice in offer.choices)
        if offer.entry_id is None and not of_volume:
            return offer
        dosed = offer.context.get("facts", {}).get("events", ())
        if not of_volume and any(event.get("kind") != "dose" for event in dosed):
            return None
        if offer.entry_id is not None and not dosed:
            return None
    return None
