"""``oops 7.6 was betta``, ``ammonia was the tap one``: a value just told is of another water."""

from __future__ import annotations

from dataclasses import replace

from bot.chat import sources
from bot.chat.corrections import OF_LATE, STILL_MEANT
from bot.chat.model import Reply
from bot.chat.replacing import replacement, store, values_said
from bot.chat.turn import Turn
from bot.chat.words import readings as words
from bot.store.log import Stored
from bot.store.tanks import StoredTank
from core.message.model import Value
from core.message.put_right import Right

SAME = 1e-9


async def moved(turn: Turn, said: Right) -> list[Reply] | None:
    """Put the newest reading of late that is meant in the tank or source that it is of.

    None where none of late is meant; asked with its name where more than one may be.
    """
    body: StoredTank | Reply | None = turn.tank_named(said.tank) if said.tank else None
    author = turn.incoming.author_id if turn.incoming.group else None
    await turn.know_waters()
    for entry in await turn.uow.log.newest(turn.chat.id, OF_LATE):
        if turn.now - entry.at > STILL_MEANT or author not in {None, entry.author_id}:
            continue
        meant = [each for each in entry.readings if _is_meant(each, said)]
        if not meant:
            if said.number is None and said.name is None:
                return None  # that was tap, of a deed
            continue
        if said.number is not None and len(meant) > 1:
            return [await turn.reply(words.of_what(said.number))]
        if said.water is not None:
            body = await sources.named_or_new(turn, said.water)
        if body is None or isinstance(body, Reply):
            return None if body is None else [body]
        shown = values_said(each.what for each in meant)
        if all(each.tank_id == body.id for each in meant):
            return [await turn.reply([words.there_already(body.name, shown)])]
        await turn.know_waters()
        anew = replace(
            replacement(turn, entry, "moved"),
            readings=tuple(
                replace(each, tank_id=body.id) if each in meant else each for each in entry.readings
            ),
        )
        return await store(turn, anew, words.moved(body.name, shown), {body.id})
    return None


def _is_meant(reading: Stored[Value], said: Right) -> bool:
    """Whether a reading has the name and the number that are told, as far as they are."""
    if said.name is not None and reading.what.analyte != said.name:
        return False
    told = {reading.what.value, reading.what.canonical}
    return said.wrong is None or any(
        isinstance(each, int | float) and abs(each - said.wrong) < SAME for each in told
    )
