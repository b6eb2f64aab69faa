"""``i put in 2 tablespoons``: a deed that names no thing is salt where salt was asked about.

Else it is asked what it was; until that is told, no first aid offers a thing that it may have been.
"""

from __future__ import annotations

from collections.abc import Sequence
from datetime import timedelta
from typing import Final

from bot.chat.model import Reply
from bot.chat.turn import Turn
from bot.chat.words import plan_talk as words
from bot.store.offers import Offer
from core.advice.salted import SALTS
from core.advice.state import State
from core.message import parse
from core.message.plan_said import Amounts

NAMELESS: Final = "nameless"
"""The key of what is kept with the question what it was."""

AMONG: Final = 12
A_DAY: Final = timedelta(days=1)
NEAR: Final = 4
"""Replies behind which salt is no longer what was spoken of."""


async def told(turn: Turn, of_late: Sequence[Offer], amounts: Amounts) -> list[Reply]:
    """Put it on record as the salt that was spoken of, or ask what it was."""
    if any(_of_salt(offer) for offer in of_late[:NEAR]) and turn.route is not None:
        amount = _amount(amounts)
        parsed = parse(f"dosed {amount} salt", turn.context()) if amount else None
        if parsed is not None and parsed.events:
            return await turn.route(turn, parsed)
    stored = turn.current_tank
    held = {NAMELESS: {"tank": None if stored is None else stored.id}}
    return [await turn.reply(words.what_went_in(), context=held, expects="followup")]


async def is_open(turn: Turn, state: State) -> bool:
    """Whether within the day a thing went in of which nobody has told since what it was."""
    since = [
        made_at
        for made_at, _held in await turn.uow.offers.told_of(turn.chat.id, NAMELESS, AMONG)
        if turn.now - A_DAY < made_at <= turn.now
    ]
    named = [each.at for each in state.events or () if each.what.kind == "dose"]
    return bool(since) and not any(at >= max(since) for at in named)


def _of_salt(offer: Offer) -> bool:
    """Whether a reply asked whether the animals bear salt, told how much, or put some on record."""
    if any(choice.verb == "confirm_salt" for choice in offer.choices):
        return True
    facts = offer.context.get("facts", {})
    return facts.get("substance") in SALTS


def _amount(amounts: Amounts) -> str | None:
    if amounts.grams is not None:
        return f"{amounts.grams:g} g"
    return None if amounts.spoons is None else f"{amounts.spoons:g} tsp"
