"""``how long will that take`` of a plan that is not made yet: what it still needs, once more."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from typing import Final

from bot.chat.model import Reply
from bot.chat.turn import ASKED, WAITS, Turn
from bot.store.offers import Offer
from core.message.plan_talk import About
from core.message.plan_words import Telling

OF_WISH: Final = frozenset({"days", "need", "first", "a_day", "often", "spoons", "how"})
"""What is asked of the figures of a plan, which there are none of before it is made."""


async def again(turn: Turn, said: About | Telling, of_late: Sequence[Offer]) -> list[Reply] | None:
    """Ask once more for what a wish needs; None where none waits for anything."""
    if said not in OF_WISH or not of_late or turn.typed is None:
        return None
    asked = of_late[0].context.get(ASKED)
    waits = of_late[0].expects == "volume" or of_late[0].context.get(WAITS)
    if asked is None or not waits:
        return None
    used = turn.current_tank
    if asked["changes"] and asked["changes"] != {"tank": used.name if used else None}:
        return None  # as typed it is another question
    whole = turn.incoming
    turn.incoming = replace(whole, text=asked["text"])
    replies = await turn.typed(turn)
    turn.incoming = whole
    return replies
