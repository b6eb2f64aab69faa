"""The plan that was just answered, made anew where the tank turns out to hold another amount."""

from __future__ import annotations

from dataclasses import replace
from datetime import timedelta
from typing import Final

from bot.chat import dosing
from bot.chat.model import Reply
from bot.chat.turn import ASKED, Turn
from bot.store.tanks import StoredTank
from core.message import parse
from core.message.model import Parsed

HELD: Final = timedelta(hours=12)
"""An older plan is past: it may be given by now."""


async def for_volume(turn: Turn, stored: StoredTank) -> list[Reply]:
    """Answer the newest dose anew where it was reckoned for this tank's water; else nothing."""
    latest = await turn.uow.offers.latest(turn.chat.id)
    if not latest or ASKED not in latest[0].context or turn.now - latest[0].made_at > HELD:
        return []
    asked = latest[0].context[ASKED]
    first = parse(asked["text"], turn.context()).question
    planned_for = latest[0].context.get("facts", {}).get("tank")
    if first is None or first.kind != "dose" or planned_for != stored.name:
        return []
    question = replace(first, **asked["changes"])
    if question.volume_l is not None:
        return []
    turn.asked = asked
    return await dosing.dose(turn, question, Parsed("question", question=question))
