"""`ph 7 in cube and 6.5 in big`: one thing told of two tanks, each number kept in its own."""

from __future__ import annotations

from dataclasses import replace

from bot.chat import readings
from bot.chat.model import Reply
from bot.chat.turn import Turn
from core.message import parse
from core.message.model import Parsed
from core.message.tank_by_tank import spread


async def answer(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """Keep each number in its tank, in one entry; None where the message is anything else.

    Nothing is kept unless each tank's part, read by itself, is one sure value or deed of that tank,
    and both are of the same thing.
    """
    if parsed.question is not None or parsed.command is not None:
        return None
    told = [
        _told(turn, line) for line in spread(turn.incoming.text, [tank.name for tank in turn.tanks])
    ]
    of = {each.values[0].analyte if each.values else each.events[0].kind for each in told if each}
    sure = [each for each in told if each is not None]
    if len(sure) < 2 or len(sure) != len(told) or len(of) != 1:
        return None
    values = tuple(value for each in sure for value in each.values)
    events = tuple(event for each in sure for event in each.events)
    return await readings.keep(turn, replace(sure[0], tank=None, values=values, events=events))


def _told(turn: Turn, line: str) -> Parsed | None:
    """What one tank's part says where it is one sure thing, with the tank at it; else None."""
    read = parse(line, turn.context())
    if read.doubts or read.question is not None or read.command is not None:
        return None
    if len(read.values) + len(read.events) != 1 or read.at is not None:
        return None
    name = line.partition(":")[0]
    return replace(
        read,
        values=tuple(replace(value, tank=name) for value in read.values),
        events=tuple(replace(event, tank=name) for event in read.events),
    )
