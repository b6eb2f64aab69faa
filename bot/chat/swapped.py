"""What was told the wrong way round: two values' names, or two tanks' values, put right.

Two values under each other's name are exchanged in the newest entry of late that has both; two
tanks' values in the newest entry, where it is of two tanks. What is told anew beside it goes to the
tanks that are named there, and what one of them had of the other's goes with it.
"""

from __future__ import annotations

from dataclasses import replace

from bot.chat import corrections, readings
from bot.chat.corrections import OF_LATE, STILL_MEANT
from bot.chat.model import Reply
from bot.chat.replacing import (
    answered,
    each_corrected,
    replacement,
    said,
    store,
    store_all,
    values_said,
)
from bot.chat.retelling import typed_again
from bot.chat.turn import Turn
from bot.chat.words import readings as words
from bot.store.log import Entry, Stored
from bot.store.tanks import StoredTank
from core.message import parse
from core.message.described import resolved
from core.message.model import Parsed, Value
from core.message.swapped import behind_swap, swapped, told_swapped, whose_each
from core.message.tanks import match


async def answer(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """Exchange the numbers of two names, or of two tanks; None where nothing of that is told."""
    if turn.incoming.addressed and (each := whose_each(turn.incoming.text)):
        return await _each_moved(turn, each)
    if turn.incoming.addressed and (behind := behind_swap(turn.incoming.text)) is not None:
        return await _told_anew(turn, behind)
    if turn.incoming.addressed and told_swapped(turn.incoming.text):
        return await _of_tanks(turn)
    names = swapped(turn.incoming.text)
    if names is None or parsed.values or parsed.events or not turn.incoming.addressed:
        return None
    await turn.know_waters()
    entry = await _with_both(turn, names)
    first, second = _pair(entry, names) if entry is not None else (None, None)
    if entry is None or first is None or second is None:
        return [await turn.reply(words.nothing_to_put_right())]
    return await _of_names(turn, entry, first, second)


async def _of_names(
    turn: Turn, entry: Entry, first: Stored[Value], second: Stored[Value]
) -> list[Reply]:
    """Two values of an entry, each under the other's name."""
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


async def _told_anew(turn: Turn, text: str) -> list[Reply] | None:
    """`swapped those, big is kh 5 and cube kh 3`: each tank's values in its own.

    None where what stands behind it does not name its tanks.
    """
    told = parse(text, turn.context())
    if told.question is not None or told.events or not told.values or told.doubts:
        return None
    if not all(value.tank or told.tank for value in told.values):
        return None
    entry = await corrections.told_of_late(turn, told)
    turn.incoming = replace(turn.incoming, text=text)
    if entry is None:
        return await readings.keep(turn, told)
    await turn.know_waters()
    exchanged = _exchanged(turn, entry)
    if exchanged is not None and all(_is_in(turn, exchanged, told, v) for v in told.values):
        return await _stored(turn, entry, exchanged)
    return await corrections.told_anew(turn, entry, told, swapped=True)


async def _each_moved(turn: Turn, told: tuple[tuple[str, str], ...]) -> list[Reply] | None:
    """`the kh 6 was the shrimp one, kh 2 was the big one`: each goes there, or none does."""
    found: list[tuple[Entry, Stored[Value], StoredTank]] = []
    for typed, name in told:
        stored = _tank_said(turn, name)
        read = parse(typed, turn.context())
        if stored is None or len(read.values) != 1 or read.doubts:
            return None
        at = await _on_record(turn, read.values[0])
        if at is None or at[1].tank_id == stored.id:
            return None
        found.append((*at, stored))
    if len({stored.id for _entry, _reading, stored in found}) != len(found):
        return None
    await turn.know_waters()
    anew: list[tuple[Entry, str]] = []
    for entry in _once([entry for entry, _reading, _stored in found]):
        into = {reading.what: stored for of, reading, stored in found if of.id == entry.id}
        moved = tuple(
            replace(each, tank_id=into[each.what].id, what=replace(each.what, tank=None))
            if each.what in into
            else each
            for each in entry.readings
        )
        corrected = replace(replacement(turn, entry, "correction"), readings=moved)
        if anew:  # entries of one message: each needs an id of its own
            corrected = replace(corrected, update_id=f"{corrected.update_id}:{len(anew)}")
        (first, *others) = into.values()
        names = first.name if not others else ", ".join(each.name for each in into.values())
        anew.append((corrected, words.moved(names, said(turn, corrected))))
    return await store_all(turn, anew)


def _once(entries: list[Entry]) -> list[Entry]:
    """Each entry once, in the order told."""
    return list({entry.id: entry for entry in entries}.values())


def _tank_said(turn: Turn, called: str) -> StoredTank | None:
    """The tank of a name or of its size."""
    context = turn.context()
    name = match(called, context.tanks).name or resolved(context.looks).get(f"{called} one")
    return None if name is None else turn.tank_named(name)


async def _on_record(turn: Turn, value: Value) -> tuple[Entry, Stored[Value]] | None:
    """The newest reading of late that is told so; None where it is not one."""
    for entry in await turn.uow.log.newest(turn.chat.id, OF_LATE):
        if turn.now - entry.at > STILL_MEANT:
            return None
        same = (value.analyte, value.canonical)
        fits = [each for each in entry.readings if (each.what.analyte, each.what.canonical) == same]
        if fits:
            return (entry, fits[0]) if len(fits) == 1 else None
    return None


def _is_in(turn: Turn, readings_: tuple[Stored[Value], ...], told: Parsed, value: Value) -> bool:
    """Whether a value is told of its tank already."""
    tank = turn.tank_named(value.tank or told.tank or "")
    same = (None if tank is None else tank.id, value.analyte, value.canonical)
    return any((r.tank_id, r.what.analyte, r.what.canonical) == same for r in readings_)


async def _of_tanks(turn: Turn) -> list[Reply] | None:
    """`i swapped those`, right behind readings of two tanks: each has what the other had.

    Behind the two values of one tank each is of the other's name.
    """
    entry = await answered(turn) or next(iter(await turn.uow.log.newest(turn.chat.id, 1)), None)
    if entry is None or turn.now - entry.at > STILL_MEANT:
        return None
    exchanged = _exchanged(turn, entry)
    if exchanged is not None:
        await turn.know_waters()
        return await _stored(turn, entry, exchanged)
    names = {each.what.analyte for each in entry.readings}
    if len(entry.readings) != 2 or len(names) != 2 or entry.events:
        return None  # of more than two it is open which are meant
    await turn.know_waters()
    first, second = entry.readings
    return await _of_names(turn, entry, first, second)


def _exchanged(turn: Turn, entry: Entry) -> tuple[Stored[Value], ...] | None:
    """The readings of an entry, each in the other of its two tanks; None where it has not two."""
    tanks = list(dict.fromkeys(reading.tank_id for reading in entry.readings))
    if len(tanks) != 2 or entry.events or any(turn.tank_by_id(each) is None for each in tanks):
        return None
    other = {tanks[0]: tanks[1], tanks[1]: tanks[0]}
    return tuple(
        replace(each, tank_id=other[each.tank_id], what=replace(each.what, tank=None))
        for each in entry.readings
    )


async def _stored(turn: Turn, entry: Entry, exchanged: tuple[Stored[Value], ...]) -> list[Reply]:
    corrected = replace(
        replacement(turn, entry, "correction"), text=turn.incoming.text, readings=exchanged
    )
    return await store(turn, corrected, each_corrected(entry, corrected))


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
