"""Two values under each other's name: exchanged in the newest entry of late that has both."""

from __future__ import annotations

from dataclasses import replace

from bot.chat.corrections import OF_LATE, STILL_MEANT
from bot.chat.model import Reply
from bot.chat.replacing import answered, replacement, store, values_said
from bot.chat.retelling import typed_again
from bot.chat.turn import Turn
from bot.chat.words import readings as words
from bot.store.log import Entry, Stored
from core.message import parse
from core.message.model import Parsed, Value
from core.message.swapped import swapped


async def answer(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """Exchange the numbers of two names; None where nothing of that is told."""
    names = swapped(turn.incoming.text)
    if names is None or parsed.values or parsed.events or not turn.incoming.addressed:
        return None
    await turn.know_waters()
    entry = await _with_both(turn, names)
    first, second = _pair(entry, names) if entry is not None else (None, None)
    if entry is None or first is None or second is None:
        return [await turn.reply(words.nothing_to_put_right())]
    anew = (_told_as(turn, first, second), _told_as(turn, second, first))
    if anew[0] is None or anew[1] is None:
        return [await turn.reply(words.nothing_to_put_right())]
    exchanged = {id(first): anew[0], id(second): anew[1]}
    corrected = replace(
        replacement(turn, entry, "correction"),
        text=turn.incoming.text,
        readings=tuple(exchanged.get(id(each), each) for each in entry.readings),
    )
    before = values_said([first.what, second.what])
    after = values_said([anew[0].what, anew[1].what])
    return await store(turn, corrected, words.corrected(before, after), {first.tank_id})


async def _with_both(turn: Turn, names: tuple[str, str]) -> Entry | None:
    """The answered entry, or the newest one of late, in which each name has one number."""
    if (entry := await answered(turn)) is not None:
        return entry
    for entry in await turn.uow.log.newest(turn.chat.id, OF_LATE):
        if turn.now - entry.at > STILL_MEANT:
            return None
        if None not in _pair(entry, names):
            return entry
    return None


def _pair(
    entry: Entry, names: tuple[str, str]
) -> tuple[Stored[Value] | None, Stored[Value] | None]:
    """The one reading of each name, both of the same water; None where it is not one."""
    found = [[r for r in entry.readings if r.what.analyte == name] for name in names]
    if [len(each) for each in found] != [1, 1] or found[0][0].tank_id != found[1][0].tank_id:
        return None, None
    return found[0][0], found[1][0]


def _told_as(turn: Turn, old: Stored[Value], other: Stored[Value]) -> Stored[Value] | None:
    """A reading with the number of another, in the unit that it was typed in; None if it is none.

    A unit that the other has no use for is left out; what it is then reads as it is typed.
    """
    number = typed_again(other.what)
    told = parse(f"{old.what.analyte.replace('_', ' ')} {number}", turn.context())
    if number is None or len(told.values) != 1 or told.doubts:
        return None
    return replace(old, what=replace(told.values[0], at=old.what.at, tank=old.what.tank))
