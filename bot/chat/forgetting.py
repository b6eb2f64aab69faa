"""``forget the nitrite``: the newest value of a name, or all told last of a tank, taken back.

With its day (``delete the ph from yesterday``) it is what was measured then, whenever it was told;
where it is of several moments nothing is taken back before it is told which.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from typing import Final

from bot.chat.corrections import OF_LATE, STILL_MEANT
from bot.chat.model import Reply
from bot.chat.past import line_of
from bot.chat.replacing import replacement, values_said
from bot.chat.turn import Turn
from bot.chat.words import past as past_words
from bot.chat.words import readings as words
from bot.store.log import Entry, Stored
from bot.store.tanks import StoredTank
from core.message import parse
from core.message.model import Value
from core.message.put_right import Right


async def forget(turn: Turn, said: Right) -> list[Reply] | None:
    """Take back the newest reading that is named; None where none of late is.

    What else its entry tells stays on record, and history keeps what was taken back.
    """
    tank = turn.tank_named(said.tank) if said.tank else None
    if said.tank and tank is None:
        return None
    await turn.know_waters()
    if said.timed:
        return await _of_day(turn, said, tank)
    author = turn.incoming.author_id if turn.incoming.group else None
    for entry in await turn.uow.log.newest(turn.chat.id, OF_LATE):
        if turn.now - entry.at > STILL_MEANT or author not in {None, entry.author_id}:
            continue
        gone = [
            each
            for each in entry.readings
            if said.forget in {"", each.what.analyte} and (tank is None or each.tank_id == tank.id)
        ]
        if not gone:
            continue
        return [await _take_back(turn, entry, gone)]
    return None


async def _take_back(turn: Turn, entry: Entry, gone: Sequence[Stored[Value]]) -> Reply:
    """Leave out readings of an entry."""
    kept = tuple(each for each in entry.readings if each not in gone)
    await turn.uow.log.add(
        turn.chat.id, replace(replacement(turn, entry, "correction"), readings=kept)
    )
    bodies = (turn.body_by_id(each.tank_id) for each in gone[:1])
    name = next((body.name for body in bodies if body is not None), "")
    told = values_said(each.what for each in gone)
    return await turn.reply([words.undone(f"{name}: {told}" if name else told)])


async def _of_day(turn: Turn, said: Right, tank: StoredTank | None) -> list[Reply] | None:
    """Take back what was measured on a day; None where nothing tells which day."""
    meant = parse(turn.incoming.text, turn.context()).at
    stored = tank or turn.current_tank
    if meant is None or stored is None:
        return None
    day = meant.astimezone(turn.chat.zone).date()
    found: list[tuple[Entry, list[Stored[Value]]]] = []
    for entry in await turn.uow.log.newest(turn.chat.id, LOOKED_BACK):
        of_day = [
            each
            for each in entry.readings
            if said.forget in {"", each.what.analyte}
            and each.tank_id == stored.id
            and each.at.astimezone(turn.chat.zone).date() == day
        ]
        found += [(entry, of_day)] if of_day else []
    if not found:
        newest = await turn.uow.log.readings(
            stored.id, analytes=[said.forget] if said.forget else [], limit=1
        )
        lines = [past_words.newest(line_of(turn, newest))] if newest else []
        nothing = past_words.no(stored.name, "measured")
        if said.forget:
            nothing = past_words.no_value(stored.name, said.forget)
        return [await turn.reply([nothing, *lines], facts={"tank": stored.name})]
    if len(found) > 1:
        lines = [line_of(turn, told) for _entry, told in found]
        return [await turn.reply([*words.which_to_forget(), *lines], facts={"tank": stored.name})]
    return [await _take_back(turn, *found[0])]


LOOKED_BACK: Final = 60
"""Entries in which the reading of a day is sought; ours."""
