"""``all: changed 20%``: what is told of every tank is put on record for each."""

from __future__ import annotations

from bot.chat import overheard
from bot.chat.answering import answer_for
from bot.chat.model import Reply
from bot.chat.told import entry_of, place
from bot.chat.turn import Turn
from core.message import every, kinds, parse
from core.message.model import Parsed

_OF_ONE = kinds.OF_ANIMALS | {"moved_in", "moved_out"}
"""Events of animals that are counted: the same ones are not in every tank."""


async def told(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """Store what a message tells of all tanks, in one entry; None where it tells of none or one."""
    if parsed.question is not None or not turn.tanks:
        return None
    rest = every.told(turn.incoming.text, len(turn.tanks))
    if rest is None:
        return None
    again = parse(rest, turn.context())
    if not (again.values or again.events) or again.doubts or again.question or again.command:
        return None
    if turn.incoming.group and not turn.incoming.addressed:
        again = await overheard.of_tanks(turn, again)
        if not (again.values or again.events):
            return []
    named = [value.tank for value in again.values] + [event.tank for event in again.events]
    if again.tank is not None or any(named):
        return None
    if any(event.kind in _OF_ONE for event in again.events):
        return None
    told = [each for tank in turn.tanks for each in place(turn, again, tank)]
    entry_id = await turn.uow.log.add(turn.chat.id, entry_of(turn, told))
    return [await answer_for(turn, each, entry_id) for each in told]
