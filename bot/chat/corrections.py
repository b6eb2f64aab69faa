"""Taking back and correcting: a new entry replaces an old one, and history keeps both."""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence
from dataclasses import replace
from datetime import datetime, timedelta

from bot.chat import moves, readings, reminders, sources, tanks_told
from bot.chat.answering import answer_for
from bot.chat.asking import ask
from bot.chat.model import Reply
from bot.chat.told import Told, entry_of, place, summary
from bot.chat.turn import Turn
from bot.chat.words import general
from bot.chat.words import readings as words
from bot.chat.words.text import _
from bot.store.log import Entry, Stored
from bot.store.offers import Choice, Offer
from bot.store.tanks import StoredTank
from core.message import parse
from core.message.followups import corrected, retimed
from core.message.model import Command, Event, Parsed, Value
from core.message.tanks import match

_NUMBER = re.compile(r"\d+(?:[.,]\d+)?")
_SHARE = re.compile(r"\d+(?:[.,]\d+)?\s?%?")
OF_LATE = 6
"""Entries that a correction is looked for in."""
STILL_MEANT = timedelta(hours=2)
"""So long after it a correction without a quote means an entry."""


async def undo(turn: Turn, _command: Command, _parsed: Parsed) -> list[Reply]:
    """Take back the newest entry of whoever says so, or the reminder that was made after it."""
    if (ended := await reminders.unmake(turn)) is not None:
        return ended
    await turn.know_waters()
    author = turn.incoming.author_id if turn.incoming.group else None
    entry = await turn.uow.log.latest(turn.chat.id, author)
    return await _take_back(turn, entry)


async def press_undo(turn: Turn, _offer: Offer, choice: Choice) -> list[Reply]:
    """Take back the entry that a reply confirmed, or what stands in its place by now."""
    await turn.know_waters()
    entry = await turn.uow.log.current(turn.chat.id, choice.arguments["entry_id"])
    if entry is None or entry.is_empty:
        return [await turn.reply(general.already())]
    return await _take_back(turn, entry)


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
        return await readings.keep(turn, parsed) if of_source is None else of_source
    entry = await _answered(turn) or await _told_of_late(turn, parsed)
    if entry is None:
        return await readings.keep(turn, parsed)
    return await _correct(turn, entry, parsed)


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


async def _told_of_late(turn: Turn, parsed: Parsed) -> Entry | None:
    """The newest entry of the last ones that has a value or an event of a kind told anew."""
    analytes = {value.analyte for value in parsed.values}
    kinds = {event.kind for event in parsed.events}
    kinds |= {"moved_in", "moved_out"} if "moved" in kinds else set()
    for entry in await turn.uow.log.newest(turn.chat.id, OF_LATE):
        if turn.now - entry.at > STILL_MEANT:
            return None
        if any(reading.what.analyte in analytes for reading in entry.readings):
            return entry
        if any(event.what.kind in kinds for event in entry.events):
            return entry
    return None


async def answering(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """Values in reply to an older message put that message right; None if it stored nothing."""
    await turn.know_waters()
    entry = await _answered(turn)
    return None if entry is None or entry.is_empty else await _correct(turn, entry, parsed)


async def renumber(turn: Turn, entry_id: int) -> list[Reply] | None:
    """``no, 7.4``, ``no, 4 nov`` right after ``ph 7.2``: its one number or its time, told anew."""
    said, timed = corrected(turn.incoming.text), retimed(turn.incoming.text)
    entry = await turn.uow.log.current(turn.chat.id, entry_id) if said or timed else None
    if entry is None or entry.is_empty:
        return None
    await turn.know_waters()
    if timed:
        when = parse(turn.incoming.text, turn.context()).at
        return None if when is None else await _at_another_time(turn, entry, when)
    retold = None if said is None else _retold(entry, said)
    if retold is None:
        return None
    parsed = parse(retold, turn.context())
    if parsed.doubts or not (parsed.values or parsed.events):
        return None
    turn.incoming = replace(turn.incoming, text=retold)
    return await _correct(turn, entry, parsed)


def _retold(entry: Entry, said: str) -> str | None:
    """The text of an entry with another number; None where it holds more than one."""
    if len(entry.readings) == 1 and not entry.events:
        value = entry.readings[0].what
        unit = value.unit if value.unit and said[-1].isdigit() else ""
        basis = f"as {value.basis}" if value.basis else ""
        return f"{value.analyte.replace('_', ' ')} {said} {unit} {basis}".strip()
    numbers = list((_NUMBER if said[-1].isdigit() else _SHARE).finditer(entry.text))
    if len(entry.events) != 1 or entry.readings or len(numbers) != 1:
        return None
    start, end = numbers[0].span()
    return f"{entry.text[:start]}{said}{entry.text[end:]}"


async def move(turn: Turn, command: Command, _parsed: Parsed) -> list[Reply]:
    """``that was quarry``: the newest or answered entry belongs to another tank."""
    await turn.know_waters()
    entry = await _answered(turn) or await turn.uow.log.latest(turn.chat.id)
    if entry is None or entry.is_empty:
        return [await turn.reply(words.nothing_to_undo())]
    found = match(command.arguments, [tank.name for tank in turn.tanks])
    tank = turn.tank_named(found.name) if found.name is not None else None
    if tank is None and (when := parse(command.arguments, turn.context()).at) is not None:
        return await _at_another_time(turn, entry, when)
    if tank is None:
        return [await turn.reply(words.which_tank([tank.name for tank in turn.tanks]))]
    told_of = {reading.tank_id for reading in entry.readings}
    if told_of | {event.tank_id for event in entry.events} == {tank.id}:
        return [await turn.reply([words.there_already(tank.name, _said(turn, entry))])]
    moved = replace(
        _replacement(turn, entry, "moved"),
        readings=tuple(replace(reading, tank_id=tank.id) for reading in entry.readings),
        events=tuple(
            event if event.what.kind == "moved_out" else replace(event, tank_id=tank.id)
            for event in entry.events
        ),
    )
    return await _store(turn, moved, words.moved(tank.name, _said(turn, moved)))


async def _at_another_time(turn: Turn, entry: Entry, when: datetime) -> list[Reply]:
    """``that was yesterday``: what an entry tells was measured and done then."""
    moved = replace(
        _replacement(turn, entry, "moved"),
        readings=tuple(replace(reading, at=when) for reading in entry.readings),
        events=tuple(replace(event, at=when) for event in entry.events),
    )
    return await _store(turn, moved, words.corrected(_said(turn, entry), _said(turn, moved)))


async def edited(turn: Turn) -> list[Reply]:
    """An edited message replaces what it said before; one that reads as nothing changes nothing."""
    await turn.know_waters()
    ref = turn.incoming.message_ref
    entry = None if ref is None else await turn.uow.log.by_message(turn.chat.id, ref)
    if entry is None or entry.is_empty:
        return await _edited_without_entry(turn, entry)
    turn.now = entry.at
    parsed = parse(turn.incoming.text, turn.context())
    asked: list[Reply] = []
    if parsed.command is not None and parsed.command.name == "source":
        told = await sources.told_in(turn, parsed.command)
    else:
        default = _tank_of(turn, entry)
        parsed, asked = await moves.settle(turn, moves.named(turn, parsed), default, anew=True)
        told = place(turn, parsed, default) if parsed.values or parsed.events else []
    if asked:
        return asked
    if not told:
        return [await turn.reply(words.edit_not_understood())]
    before = _said(turn, entry)
    after = entry_of(turn, told, kind="edit", replaces=entry.id)
    lead = words.corrected(before, _said(turn, after))
    replies = await _store(turn, after, lead)
    if parsed.doubts:
        replies.append(await ask(turn, parsed.doubts, parsed))
    return replies


async def _edited_without_entry(turn: Turn, entry: Entry | None) -> list[Reply]:
    """An edit of a message that stored nothing may store now; one taken back stays so."""
    if entry is not None:
        return []
    parsed = parse(turn.incoming.text, turn.context())
    return await readings.keep(turn, parsed) if parsed.values or parsed.events else []


async def _answered(turn: Turn) -> Entry | None:
    """The entry behind the message that is answered: the keeper's own, or our confirmation."""
    ref = turn.incoming.reply_to
    if ref is None:
        return None
    entry = await turn.uow.log.by_message(turn.chat.id, ref)
    if entry is not None:
        return entry
    offer = await turn.uow.offers.by_message(turn.chat.id, ref)
    if offer is None or offer.entry_id is None:
        return None
    return await turn.uow.log.current(turn.chat.id, offer.entry_id)


async def _correct(turn: Turn, entry: Entry, parsed: Parsed) -> list[Reply]:
    """Replace the values and events of an entry that are told anew, and keep its others."""
    default = _tank_of(turn, entry)
    parsed, asked = await moves.settle(turn, moves.named(turn, parsed), default, anew=True)
    if asked:
        return asked
    replies = await _put_right(
        turn, entry, place(turn, parsed, default), timed=parsed.at is not None
    )
    if parsed.doubts:
        replies.append(await ask(turn, parsed.doubts, parsed))
    return replies


async def _put_right(
    turn: Turn, entry: Entry, told: Sequence[Told], *, timed: bool = False
) -> list[Reply]:
    """Store an entry with what is told anew in its place; `timed` where it has its own moment."""
    new_readings = [
        replace(reading, at=_moment_of(entry, reading.what.analyte) or entry.at)
        if not timed and reading.what.at is None
        else reading
        for each in told
        for reading in each.readings
    ]
    new_events = [event for each in told for event in each.events]
    corrected = replace(
        _replacement(turn, entry, "correction"),
        text=turn.incoming.text,
        readings=tuple(_merged(entry.readings, new_readings)),
        events=tuple(_merged_events(entry.events, new_events)),
    )
    analytes = {reading.what.analyte for reading in new_readings}
    before = _values_said(r.what for r in entry.readings if r.what.analyte in analytes)
    after = _values_said(reading.what for reading in new_readings)
    if not new_readings:
        before, after = _said(turn, entry), _said(turn, corrected)
    return await _store(turn, corrected, words.corrected(before or _("not told"), after))


async def _take_back(turn: Turn, entry: Entry | None) -> list[Reply]:
    if entry is None or entry.is_empty:
        return [await turn.reply(words.nothing_to_undo())]
    undone = replace(_replacement(turn, entry, "undo"), readings=(), events=())
    before = await _replaced_by(turn, entry)
    if before is not None:
        undone = replace(undone, readings=before.readings, events=before.events)
    await turn.uow.log.add(turn.chat.id, undone)
    lines = [words.undone(_said(turn, entry))]
    if not undone.is_empty:
        lines.append(words.stands_again(_said(turn, undone)))
    return [await turn.reply(lines)]


async def _replaced_by(turn: Turn, entry: Entry) -> Entry | None:
    """What stood before an entry; one that an undo made stands for the entry that it restored."""
    source: Entry | None = entry
    if entry.kind == "undo" and entry.replaces is not None:
        undone = await turn.uow.log.get(turn.chat.id, entry.replaces)
        source = None if undone is None else await _replaced_by(turn, undone)
    if source is None or source.replaces is None:
        return None
    return await turn.uow.log.get(turn.chat.id, source.replaces)


async def _store(turn: Turn, entry: Entry, lead: str) -> list[Reply]:
    """Put a replacing entry on record and answer for the tanks that it is about."""
    entry_id = await turn.uow.log.add(turn.chat.id, entry)
    replies = []
    for told in _by_tank(turn, entry):
        if told.tank.role != "tank":
            replies.append(await sources.corrected(turn, told, entry_id, lead))
            continue
        replies.append(await answer_for(turn, told, entry_id, lead=lead))
        await turn.use_tank(told.tank)
    return replies


def _replacement(turn: Turn, entry: Entry, kind: str) -> Entry:
    """An entry in the place of another, with the same content so far."""
    return replace(
        entry_of(turn, ()),
        kind=kind,
        replaces=entry.id,
        readings=entry.readings,
        events=entry.events,
    )


def _by_tank(turn: Turn, entry: Entry) -> list[Told]:
    tanks = [body for body in map(turn.body_by_id, _tank_ids(entry)) if body is not None]
    return [
        Told(
            tank,
            tuple(reading for reading in entry.readings if reading.tank_id == tank.id),
            tuple(event for event in entry.events if event.tank_id == tank.id),
        )
        for tank in tanks
    ]


def _tank_of(turn: Turn, entry: Entry) -> StoredTank:
    """The tank that an entry is about, for what a correction says without naming one."""
    for tank_id in _tank_ids(entry):
        tank = turn.body_by_id(tank_id)
        if tank is not None:
            return tank
    return turn.current_tank or turn.tanks[0]


def _tank_ids(entry: Entry) -> list[int]:
    """The tanks that an entry is about, each once, in its own order."""
    ids = [reading.tank_id for reading in entry.readings]
    return list(dict.fromkeys(ids + [event.tank_id for event in entry.events]))


def _merged(old: Sequence[Stored[Value]], new: Sequence[Stored[Value]]) -> Iterable[Stored[Value]]:
    told = {(reading.tank_id, reading.what.analyte) for reading in new}
    kept = [r for r in old if (r.tank_id, r.what.analyte) not in told]
    return [*kept, *new]


def _merged_events(
    old: Sequence[Stored[Event]], new: Sequence[Stored[Event]]
) -> Iterable[Stored[Event]]:
    told = {(event.tank_id, event.what.kind) for event in new}
    return [*(e for e in old if (e.tank_id, e.what.kind) not in told), *new]


def _moment_of(entry: Entry, analyte: str) -> datetime | None:
    return next((r.at for r in entry.readings if r.what.analyte == analyte), None)


def _said(turn: Turn, entry: Entry) -> str:
    """What an entry has on record, in one line."""
    return " · ".join(summary(turn, told) for told in _by_tank(turn, entry))


def _values_said(values: Iterable[Value]) -> str:
    return words.values(list(values), {})
