"""Why there is no dose and what to do instead: the first sentence says no, no amount stands."""

from __future__ import annotations

from bot.chat.words import names
from bot.chat.words.refusals_of_plans import OF_PLANS
from bot.chat.words.refusals_of_things import OF_THINGS
from bot.chat.words.text import _
from core.advice.plan import Refusal

_REFUSALS = {**OF_PLANS, **OF_THINGS}


def refused(refusal: Refusal, tank: str | None) -> list[str]:
    """Why there is no plan, and what to do instead; never an amount."""
    facts = refusal.facts
    lines = _REFUSALS[refusal.reason](facts)
    return [names.of_tank(tank, lines[0]), *lines[1:]]


REASONS = tuple(_REFUSALS)
"""Every reason that has its words."""


def unless_nobody() -> list[str]:
    """Behind a refusal for the animals' sake, where none is on record."""
    return [_("Does no animal at all live there, no snail, no shrimp? Send: no animals at all")]
