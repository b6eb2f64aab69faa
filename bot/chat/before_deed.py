"""What stood before a deed that was just told: `it was kh 2 before`, right after a dose."""

from __future__ import annotations

from dataclasses import replace
from typing import Final

from bot.chat.corrections import STILL_MEANT
from bot.chat.turn import Turn
from core.message import parse
from core.message.before_dose import without
from core.message.model import Parsed

MOVING: Final = frozenset({"dose", "water_change", "top_up"})


async def placed(turn: Turn, parsed: Parsed) -> Parsed:
    """The same message with its values at the moment of the deed before, where it says so.

    A value of the deed's own moment was measured before it, as in `core.advice.since`. Where the
    message tells a time, an event or a question of its own, or no deed was told of late, it is
    left as it was read.
    """
    if parsed.events or parsed.question is not None or parsed.at is not None:
        return parsed
    if not (parsed.values or parsed.doubts) or (rest := without(turn.incoming.text)) is None:
        return parsed
    deed = next(iter(await turn.uow.log.newest(turn.chat.id, 1)), None)
    if deed is None or turn.now - deed.at > STILL_MEANT:
        return parsed
    moved = [event for event in deed.events if event.what.kind in MOVING]
    told = parse(rest, turn.context())
    named = turn.tank_named(told.tank) if told.tank else turn.current_tank
    if not moved or named is None or named.id != moved[-1].tank_id:
        return parsed
    timed = told.at is not None or any(value.at is not None for value in told.values)
    if not told.values or told.events or told.doubts or told.question is not None or timed:
        return parsed
    return replace(told, at=moved[-1].at)
