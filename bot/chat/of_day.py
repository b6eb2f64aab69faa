"""A correction that names a day is of that day's entry: ``actually ammonia was 2 yesterday``."""

from __future__ import annotations

from datetime import date, datetime, timedelta
from typing import Final

from bot.chat.turn import Turn
from bot.store.log import Entry
from core.message.model import Parsed

LATELY: Final = timedelta(hours=2)
"""So long a value of a tank is meant by a correction that names no day."""

LOOKED_BACK: Final = 60
"""Newest entries among which that of the day is looked for."""


async def meant(turn: Turn, parsed: Parsed, late: Entry | None) -> Entry | None:
    """The entry that is put right: `late`, or where another day is named that day's; else None.

    Where a tank is named its own newest value goes before another tank's since.

    A value told with another day stays beside today's. Where it is the same value, only its day
    was wrong, and `late` is meant.
    """
    if parsed.at is None or not parsed.values or parsed.events:
        return await _of_tank(turn, parsed) or late
    day = _day(turn, parsed.at)
    if late is not None and (_tells(turn, late, parsed, day) or stands(late, parsed)):
        return late
    for entry in await turn.uow.log.newest(turn.chat.id, LOOKED_BACK):
        if _tells(turn, entry, parsed, day):
            return entry
    return None


async def _of_tank(turn: Turn, parsed: Parsed) -> Entry | None:
    """The newest entry of a few hours that has such a value of the tank that is named."""
    named = turn.tank_named(parsed.tank) if parsed.tank and parsed.at is None else None
    analytes = {value.analyte for value in parsed.values}
    same: Entry | None = None
    for entry in await turn.uow.log.newest(turn.chat.id, LOOKED_BACK) if named else ():
        told = {each.what.analyte for each in entry.readings if named and each.tank_id == named.id}
        if analytes & told:
            if turn.now - entry.at > LATELY:
                break
            if not stands(entry, parsed):
                return entry
            same = same or entry
    return same


def _tells(turn: Turn, entry: Entry, parsed: Parsed, day: date) -> bool:
    """Whether an entry has such a value of a day and of the tank that is meant."""
    analytes = {value.analyte for value in parsed.values}
    named = turn.tank_named(parsed.tank) if parsed.tank else turn.current_tank
    return any(
        each.what.analyte in analytes
        and _day(turn, each.at) == day
        and (named is None or each.tank_id == named.id)
        for each in entry.readings
    )


def stands(entry: Entry, parsed: Parsed) -> bool:
    """Whether an entry tells these values already: actually it is 36 g/l for 35 ppt."""
    told = {(each.what.analyte, each.what.canonical) for each in entry.readings}
    return all((value.analyte, value.canonical) in told for value in parsed.values)


def _day(turn: Turn, at: datetime) -> date:
    return at.astimezone(turn.chat.zone).date()
