"""Correcting: a new entry replaces an old one, and history keeps both."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import replace
from datetime import datetime, timedelta

from bot.chat import (
    belongs,
    dead_total,
    moves,
    of_day,
    product_doses,
    readings,
    sources,
    tanks_told,
)
from bot.chat.asking import ask
from bot.chat.model import Reply
from bot.chat.replacing import (
    answered,
    each_corrected,
    replacement,
    said,
    store,
    tank_of,
    values_said,
)
from bot.chat.retelling import retold_as, typed_again
from bot.chat.tank_volumes import ask_of_other
from bot.chat.told import Told, place
from bot.chat.turn import Turn
from bot.chat.words import readings as words
from bot.chat.words.text import _
from bot.store.log import Entry, Stored
from core.message import parse
from core.message.amends import corrected, exchanged, renamed, retimed, substance_meant
from core.message.meant import tank_meant
from core.message.model import Command, Event, Parsed, Value
from core.message.tanks import named_alone

OF_LATE = 6
"""Entries that a correction is looked for in."""
STILL_MEANT = timedelta(hours=2)
"""So long after it a correction without a quote means an entry."""


async def correct(turn: Turn, command: Command, parsed: Parsed) -> list[Reply]:
    """``no, kh 5``: put right the newest entry that says it otherwise, or the answered one.

    Where none of late does, nothing is put right: it is told now.
    """
    of_tank = not (parsed.values or parsed.events)
    if of_tank and (described := await tanks_told.told(turn, parsed)) is not None:
        return described
    await turn.know_waters()
    if of_tank and sources.may_be_told(parsed):
        of_source = await _correct_source(turn, command)
        if of_source is not None:
            return of_source
    other = renamed(turn.incoming.text) if of_tank else None
    if other is not None and (anew := await _renamed_of_late(turn, *other)) is not None:
        return anew
    if of_tank and not parsed.doubts:
        named = named_alone(command.arguments, [tank.name for tank in turn.tanks])
        if named is not None:  # i meant the big one
            return await belongs.move(turn, Command("move", named), parsed)
        if (redosed := await _dose_of_late(turn, command.arguments)) is not None:
            return redosed
        of_volume = await ask_of_other(turn)
        return [of_volume or await turn.reply(words.nothing_to_put_right())]
    late = await told_of_late(turn, parsed)
    entry = await answered(turn) or await of_day.meant(turn, parsed, late)
    if entry is None:
        return await readings.keep(turn, parsed)
    if parsed.doubts and of_day.stands(entry, parsed) and not parsed.events:
        return [await ask(turn, parsed.doubts, parsed)]  # what is to be put right is doubtful
    return await told_anew(turn, entry, parsed)


async def _dose_of_late(turn: Turn, said: str) -> list[Reply] | None:
    """``no, 3 g epsom``: an amount and its thing in the place of the newest dose of late."""
    meant = parse(f"dosed {said}", turn.context())
    if meant.doubts or meant.values or [each.kind for each in meant.events] != ["dose"]:
        return None
    if meant.events[0].grams is None or meant.events[0].substance is None:
        return None
    entry = await answered(turn) or next(iter(await turn.uow.log.newest(turn.chat.id, 1)), None)
    if entry is None or turn.now - entry.at > STILL_MEANT or entry.readings:
        return None
    doses = [each.what.kind for each in entry.events] == ["dose"]
    return await as_dose(turn, entry, said) if doses else None


async def _correct_source(turn: Turn, command: Command) -> list[Reply] | None:
    """``no, tap kh 8``: put a source right, or keep what is new; None where it is no source's."""
    told = await sources.told_in(turn, command)
    bodies = {each.tank.id for each in told}
    for entry in await turn.uow.log.newest(turn.chat.id, OF_LATE) if told else ():
        if turn.now - entry.at > STILL_MEANT:
            break
        if any(reading.tank_id in bodies for reading in entry.readings):
            return await _put_right(turn, entry, told)
    return await sources.told(turn, command.arguments)


async def told_of_late(turn: Turn, parsed: Parsed) -> Entry | None:
    """The newest entry of the last ones that has a value or an event of a kind told anew.

    One that tells the values already is not the one to be put right, where another is.
    """
    same: Entry | None = None
    analytes = {value.analyte for value in parsed.values}
    kinds = {event.kind for event in parsed.events}
    kinds |= {"moved_in", "moved_out"} if "moved" in kinds else set()
    for entry in await turn.uow.log.newest(turn.chat.id, OF_LATE):
        if turn.now - entry.at > STILL_MEANT:
            break
        if any(reading.what.analyte in analytes for reading in entry.readings):
            if parsed.events or not of_day.stands(entry, parsed):
                return entry
            same = same or entry
        if any(event.what.kind in kinds for event in entry.events):
            return entry
    return same


async def answering(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """Values in reply to an older message put that message right; None if it stored nothing."""
    await turn.know_waters()
    entry = await answered(turn)
    return None if entry is None or entry.is_empty else await told_anew(turn, entry, parsed)


async def renumber(turn: Turn, entry_id: int) -> list[Reply] | None:
    """``no, 7.4``, ``no, 4 nov``, ``i meant gh``: number, time or name right after, told anew."""
    text = turn.incoming.text
    number, timed, named = corrected(text), retimed(text), renamed(text)
    other = exchanged(text)
    which = tank_meant(text)
    thing = substance_meant(text)
    about = number or timed or named or other or which or thing
    entry = await turn.uow.log.current(turn.chat.id, entry_id) if about else None
    if entry is None or entry.is_empty:
        return None
    await turn.know_waters()
    if thing is not None:
        return await _of_another_thing(turn, entry, thing)
    if named is not None:
        return await under_name(turn, entry, *named)
    if which is not None:
        return await belongs.to_meant(turn, entry, which)
    if timed:
        when = parse(turn.incoming.text, turn.context()).at
        return None if when is None else await belongs.at_another_time(turn, entry, when)
    if other is not None:
        number = other[0] if _tells(entry, other[1]) else None
    return None if number is None else await with_number(turn, entry, number)


async def with_number(turn: Turn, entry: Entry, number: str) -> list[Reply] | None:
    """An entry with another number in the place of its only one; None where it has more."""
    retold = retold_as(entry, number)
    parsed = None if retold is None else parse(retold, turn.context())
    if retold is None or parsed is None:
        return None
    parsed = dead_total.recounted(entry, retold, parsed, parse(entry.text, turn.context()))
    if parsed.doubts or not (parsed.values or parsed.events):
        return None
    turn.incoming = replace(turn.incoming, text=retold)
    return await told_anew(turn, entry, parsed)


async def with_grams(turn: Turn, entry_id: int, grams: float) -> list[Reply] | None:
    """The grams of a dose that was put on record, put right; None where it is no such entry."""
    entry = await turn.uow.log.current(turn.chat.id, entry_id)
    if entry is None or entry.readings or len(entry.events) != 1:
        return None
    dose = entry.events[0].what
    if dose.kind != "dose" or (dose.grams is None and dose.millilitres is not None):
        return None
    return await as_dose(turn, entry, f"{grams:g} g {dose.substance or ''}")


async def with_substance(turn: Turn, entry_id: int, substance: str) -> list[Reply] | None:
    """What it was of which a dose was put on record; None where it is no such entry."""
    entry = await turn.uow.log.current(turn.chat.id, entry_id)
    return None if entry is None else await _of_another_thing(turn, entry, substance)


async def as_dose(turn: Turn, entry: Entry, told: str) -> list[Reply]:
    """Put an entry right as a dose of so much of a thing."""
    await turn.know_waters()
    retold = f"dosed {told}".strip()
    turn.incoming = replace(turn.incoming, text=retold)
    return await told_anew(turn, entry, parse(retold, turn.context()))


async def _of_another_thing(turn: Turn, entry: Entry, name: str) -> list[Reply] | None:
    """``i meant baking soda``: as much as is on record, of what was meant."""
    dose = entry.events[0].what if len(entry.events) == 1 and not entry.readings else None
    if dose is None or dose.kind != "dose" or not (dose.grams or dose.spoons):
        return None
    amount = f"{dose.grams:g} g" if dose.grams else f"{dose.spoons:g} tsp"
    return await as_dose(turn, entry, f"{amount} {name}")


def _tells(entry: Entry, number: float) -> bool:
    """Whether the only value of an entry is a number."""
    return [reading.what.value for reading in entry.readings] == [number]


async def _renamed_of_late(turn: Turn, named: str, wrong: str | None) -> list[Reply] | None:
    """The answered entry, or the newest one of late with such a value, under another name."""
    entry = await _told_as(turn, wrong)
    return None if entry is None else await under_name(turn, entry, named, wrong)


async def _told_as(turn: Turn, analyte: str | None) -> Entry | None:
    """The answered entry, or the newest one of late that has a value of an analyte, or any."""
    if (entry := await answered(turn)) is not None:
        return entry
    for entry in await turn.uow.log.newest(turn.chat.id, OF_LATE):
        if turn.now - entry.at > STILL_MEANT:
            return None
        if any(analyte in {None, reading.what.analyte} for reading in entry.readings):
            return entry
    return None


async def under_name(
    turn: Turn, entry: Entry, named: str, instead_of: str | None
) -> list[Reply] | None:
    """``i meant gh``, ``gh not kh``: the number of an entry under another name.

    None where it is open which of its values is meant, where it has one of that name already, or
    where the number is none of such a thing.
    """
    wrong = [r for r in entry.readings if instead_of in {None, r.what.analyte}]
    if len(wrong) != 1 or any(r.what.analyte == named for r in entry.readings):
        return None
    (old,) = wrong
    number = typed_again(old.what)
    parsed = parse(f"{named.replace('_', ' ')} {number}", turn.context())
    if number is None or len(parsed.values) != 1 or parsed.doubts:
        return None
    new = replace(old, what=replace(parsed.values[0], at=old.what.at, tank=old.what.tank))
    corrected = replace(
        replacement(turn, entry, "correction"),
        text=turn.incoming.text,
        readings=tuple(new if each is old else each for each in entry.readings),
    )
    lead = words.corrected(values_said([old.what]), values_said([new.what]))
    return await store(turn, corrected, lead, {new.tank_id})


async def told_anew(
    turn: Turn, entry: Entry, parsed: Parsed, *, swapped: bool = False
) -> list[Reply]:
    """Replace the values and events of an entry that are told anew, and keep its others.

    Where two tanks' were `swapped`, what is told of one anew was the other's by mistake.
    """
    default = tank_of(turn, entry)
    parsed, asked = await moves.settle(turn, moves.named(turn, parsed), default, anew=True)
    if asked:
        return asked
    told = place(turn, parsed, default)
    replies = await _put_right(turn, entry, told, timed=parsed.at is not None, swapped=swapped)
    warned = [await product_doses.too_much(turn, each) for each in told]
    replies += [each for each in warned if each is not None]
    if parsed.doubts:
        replies.append(await ask(turn, parsed.doubts, parsed))
    return replies


async def _put_right(
    turn: Turn,
    entry: Entry,
    told: Sequence[Told],
    *,
    timed: bool = False,
    swapped: bool = False,
) -> list[Reply]:
    """Store an entry with what is told anew in its place; `timed` where it has its own moment."""
    new_readings = [
        replace(reading, at=_moment_of(entry, reading.what.analyte) or entry.at)
        if not timed and reading.what.at is None
        else reading
        for each in told
        for reading in each.readings
    ]
    new_events = [
        replace(event, at=_when_done(entry, event.what.kind) or event.at)
        if not timed and event.what.at is None
        else event
        for each in told
        for event in each.events
    ]
    old = [r for r in entry.readings if not (swapped and _went_over(r, new_readings))]
    corrected = replace(
        replacement(turn, entry, "correction"),
        text=turn.incoming.text,
        readings=tuple(_merged(old, new_readings)),
        events=tuple(_merged_events(entry.events, new_events)),
    )
    anew = {(reading.tank_id, reading.what.analyte) for reading in new_readings}
    before = values_said(r.what for r in entry.readings if (r.tank_id, r.what.analyte) in anew)
    after = values_said(reading.what for reading in new_readings)
    if not new_readings:
        before, after = said(turn, entry), said(turn, corrected)
    of = {each.tank_id for each in new_readings} | {each.tank_id for each in new_events}
    if len({each.tank_id for each in new_readings}) > 1 and not new_events:
        return await store(turn, corrected, each_corrected(entry, corrected), of)
    return await store(turn, corrected, words.corrected(before or _("not told"), after), of)


def _merged(old: Sequence[Stored[Value]], new: Sequence[Stored[Value]]) -> Iterable[Stored[Value]]:
    told = {(reading.tank_id, reading.what.analyte) for reading in new}
    kept = [r for r in old if (r.tank_id, r.what.analyte) not in told]
    return [*kept, *new]


def _went_over(old: Stored[Value], new: Sequence[Stored[Value]]) -> bool:
    """Whether a value is told anew of another tank, and other ones of its own."""
    if all(each.tank_id != old.tank_id for each in new):
        return False
    same = (old.what.analyte, old.what.canonical)
    others = [each.what for each in new if each.tank_id != old.tank_id]
    return any((each.analyte, each.canonical) == same for each in others)


def _merged_events(
    old: Sequence[Stored[Event]], new: Sequence[Stored[Event]]
) -> Iterable[Stored[Event]]:
    told = {(event.tank_id, event.what.kind) for event in new}
    return [*(e for e in old if (e.tank_id, e.what.kind) not in told), *new]


def _when_done(entry: Entry, kind: str) -> datetime | None:
    return next((each.at for each in entry.events if each.what.kind == kind), None)


def _moment_of(entry: Entry, analyte: str) -> datetime | None:
    return next((r.at for r in entry.readings if r.what.analyte == analyte), None)
