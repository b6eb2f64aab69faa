"""`ph 7 in cube and 6.5 in big`: one thing told of two tanks, each number kept in its own."""

from __future__ import annotations

from dataclasses import replace

from bot.chat import readings
from bot.chat.model import Reply
from bot.chat.patience import GROUP_PATIENCE, PATIENCE
from bot.chat.turn import Turn
from core.message import doubts, parse
from core.message.fold import fold
from core.message.model import Parsed
from core.message.tank_by_tank import after_joint, continued, number_last, pieces, spread


async def answer(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """Keep each number in its tank, in one entry; None where the message is anything else.

    Nothing is kept unless each tank's part, read by itself, is one sure value or deed of that tank,
    and both are of the same thing.
    """
    if parsed.question is not None or parsed.command is not None:
        return None
    names = [tank.name for tank in turn.tanks]
    lines = spread(turn.incoming.text, names)
    if not lines and (line := await _continued(turn, names)) is not None:
        one = _told(turn, line)
        return None if one is None else await readings.keep(turn, replace(one, tank=None))
    told = [_told(turn, line) for line in lines]
    of = {each.values[0].analyte if each.values else each.events[0].kind for each in told if each}
    sure = [each for each in told if each is not None]
    if len(sure) < 2 or len(sure) != len(told) or len(of) != 1:
        return None
    if len({each.at for each in sure}) > 1:
        return None
    if any(event.kind == "dose" for each in sure for event in each.events):
        return await apart(turn, sure)
    values = tuple(value for each in sure for value in each.values)
    events = tuple(event for each in sure for event in each.events)
    return await readings.keep(turn, replace(sure[0], tank=None, values=values, events=events))


async def each_apart(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """`big is 3 now, cube ammonia 0`: each tank's part is answered as if it had been sent alone.

    A bare number in one of them is asked about there, and the others' values are kept. None where
    not every part opens with a tank of its own, or none has a bare number.
    """
    strays = any(each.reason == doubts.STRAY_NUMBER for each in parsed.doubts)
    if not strays or parsed.question or parsed.command or parsed.events or turn.typed is None:
        return None
    told = pieces(turn.incoming.text)
    read = [parse(each, turn.context()) for each in told]
    named = [each.tank for each in read]
    opens = all(
        each.tank is not None and piece.removeprefix("the ").startswith(fold(each.tank))
        for each, piece in zip(read, told, strict=True)
    )
    if len(told) < 2 or not opens or len(set(named)) < len(named):
        return None
    if any(each.events or each.question or each.command for each in read):
        return None
    whole = turn.incoming
    clear: list[Reply] = []
    asked: list[Reply] = []
    # what a bare number is of is what was told of its tank before: so it is read first, asked last
    ordered = sorted(zip(read, told, strict=True), key=lambda each: not each[0].doubts)
    for number, (each, piece) in enumerate(ordered):
        update_id = f"{whole.update_id}:{number}" if number else whole.update_id
        turn.incoming = replace(whole, text=piece, update_id=update_id)
        (asked if each.doubts else clear).extend(await turn.typed(turn))
    turn.incoming = whole
    return [*clear, *asked]


async def apart(turn: Turn, sure: list[Parsed]) -> list[Reply]:
    """An entry a dose, so that each can be put right by itself: which soda it was, how much."""
    replies: list[Reply] = []
    whole = turn.incoming
    for number, each in enumerate(sure):
        if number:  # entries of one message: each needs an id of its own
            turn.incoming = replace(whole, update_id=f"{whole.update_id}:{number}")
        replies += await readings.keep(turn, replace(each, tank=None))
    turn.incoming = whole
    return replies


async def _continued(turn: Turn, names: list[str]) -> str | None:
    """``and 0 in two`` right after ``nitrite 1 in one``: the line of it; None for other texts."""
    if len(names) < 2 or not turn.incoming.addressed:
        return None
    text = number_last(turn.incoming.text, names) or turn.incoming.text
    if after_joint(text) is None:
        return None
    latest = await turn.uow.offers.latest(turn.chat.id, 1)
    patience = GROUP_PATIENCE if turn.incoming.group else PATIENCE
    if not latest or latest[0].entry_id is None or turn.now - latest[0].made_at > patience:
        return None
    entry = await turn.uow.log.current(turn.chat.id, latest[0].entry_id)
    if entry is None or len(entry.readings) + len(entry.events) != 1:
        return None
    kept = [*(each.tank_id for each in entry.readings), *(each.tank_id for each in entry.events)]
    tank = turn.tank_by_id(kept[0])
    return None if tank is None else continued(text, entry.text, tank.name, names)


def _told(turn: Turn, line: str) -> Parsed | None:
    """What one tank's part says where it is one sure thing, with the tank at it; else None."""
    read = parse(line, turn.context())
    if read.doubts or read.question is not None or read.command is not None:
        return None
    if len(read.values) + len(read.events) != 1:
        return None
    name = line.partition(":")[0]
    return replace(
        read,
        values=tuple(replace(value, tank=name) for value in read.values),
        events=tuple(replace(event, tank=name) for event in read.events),
    )
