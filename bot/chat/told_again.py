"""``again 10%`` right after a change, ``put 10 more g in`` right after a dose: once more of it."""

from __future__ import annotations

from dataclasses import replace

from bot.chat.model import Reply
from bot.chat.patience import GROUP_PATIENCE, PATIENCE
from bot.chat.turn import Turn
from core.message import parse
from core.message.model import Parsed
from core.message.told_again import read


async def answer(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """Put so much more on record; None where the deed just told is no such one."""
    beside = parsed.values or parsed.events or parsed.question or parsed.command
    again = read(turn.incoming.text) if turn.incoming.addressed and not beside else None
    latest = await turn.uow.offers.latest(turn.chat.id, 1) if again is not None else []
    patience = GROUP_PATIENCE if turn.incoming.group else PATIENCE
    if again is None or not latest or turn.route is None or latest[0].entry_id is None:
        return None
    entry = await turn.uow.log.current(turn.chat.id, latest[0].entry_id)
    late = turn.now - latest[0].made_at > patience
    if late or entry is None or entry.readings or len(entry.events) != 1:
        return None
    tank, what = turn.tank_by_id(entry.events[0].tank_id), entry.events[0].what
    if tank is None:
        return None
    if again.percent is not None and what.kind == "water_change":
        told = f"changed {again.percent:g}%"
    elif again.grams is not None and what.kind == "dose" and what.substance and what.grams:
        told = f"dosed {again.grams:g} g {what.substance}"
    else:
        return None
    await turn.use_tank(tank)
    turn.incoming = replace(turn.incoming, text=told)
    return await turn.route(turn, parse(told, turn.context()))
