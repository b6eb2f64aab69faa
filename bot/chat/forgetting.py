"""``forget the nitrite``: the newest value of a name, or all told last of a tank, taken back."""

from __future__ import annotations

from dataclasses import replace

from bot.chat.corrections import OF_LATE, STILL_MEANT
from bot.chat.model import Reply
from bot.chat.replacing import replacement, values_said
from bot.chat.turn import Turn
from bot.chat.words import readings as words
from core.message.put_right import Right


async def forget(turn: Turn, said: Right) -> list[Reply] | None:
    """Take back the newest reading that is named; None where none of late is.

    What else its entry tells stays on record, and history keeps what was taken back.
    """
    tank = turn.tank_named(said.tank) if said.tank else None
    if said.tank and tank is None:
        return None
    await turn.know_waters()
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
        kept = tuple(each for each in entry.readings if each not in gone)
        await turn.uow.log.add(
            turn.chat.id, replace(replacement(turn, entry, "correction"), readings=kept)
        )
        bodies = (turn.body_by_id(each.tank_id) for each in gone[:1])
        name = next((body.name for body in bodies if body is not None), "")
        told = values_said(each.what for each in gone)
        return [await turn.reply([words.undone(f"{name}: {told}" if name else told)])]
    return None
