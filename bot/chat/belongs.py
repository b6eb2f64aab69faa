"""What was told is of another tank or another time: ``that was quarry``, ``das war gestern``."""

from __future__ import annotations

from dataclasses import replace
from datetime import datetime

from bot.chat import asking, open_told
from bot.chat.model import Line, Reply
from bot.chat.patience import GROUP_PATIENCE, PATIENCE
from bot.chat.replacing import answered, replacement, said, store
from bot.chat.turn import Turn
from bot.chat.words import readings as words
from bot.store.log import Entry
from bot.store.tanks import StoredTank
from core.message import parse
from core.message.model import Command, Parsed
from core.message.not_there import not_there
from core.message.stray_told import stray_told
from core.message.tanks import match, named_alone


async def move(
    turn: Turn, command: Command, _parsed: Parsed, *, of: Entry | None = None
) -> list[Reply]:
    """``that was quarry``: the newest or answered entry, or another, belongs to another tank."""
    await turn.know_waters()
    quoted = of or await answered(turn)
    entry = quoted or await turn.uow.log.latest(turn.chat.id)
    if entry is None or entry.is_empty:
        return [await turn.reply(words.nothing_to_undo())]
    found = match(command.arguments, [tank.name for tank in turn.tanks])
    alone = named_alone(command.arguments, [tank.name for tank in turn.tanks])
    name = found.name if found.name is not None else alone  # it was the shop one
    tank = turn.tank_named(name) if name is not None else None
    if tank is None and (when := parse(command.arguments, turn.context()).at) is not None:
        return await at_another_time(turn, entry, when)
    if tank is None:
        return [await turn.reply(words.tank_meant([tank.name for tank in turn.tanks]))]
    if quoted is None and (open_ := await open_told.instead(turn, tank)) is not None:
        return open_
    told_of = {reading.tank_id for reading in entry.readings}
    if told_of | {event.tank_id for event in entry.events} == {tank.id}:
        return [await turn.reply([words.there_already(tank.name, said(turn, entry))])]
    moved = replace(
        replacement(turn, entry, "moved"),
        readings=tuple(replace(reading, tank_id=tank.id) for reading in entry.readings),
        events=tuple(
            event if event.what.kind == "moved_out" else replace(event, tank_id=tank.id)
            for event in entry.events
        ),
    )
    return await store(turn, moved, words.moved(tank.name, said(turn, moved)))


async def only(turn: Turn, entry_id: int, tank: StoredTank) -> list[Reply] | None:
    """``that was for the cube only``: what was told of more tanks counts in that one alone.

    What was told of another tank alone is moved; None where nothing stands.
    """
    await turn.know_waters()
    entry = await turn.uow.log.current(turn.chat.id, entry_id)
    if entry is None or entry.is_empty:
        return None
    held = {reading.tank_id for reading in entry.readings}
    held |= {event.tank_id for event in entry.events}
    if tank.id not in held or len(held) == 1:
        return await move(turn, Command("move", tank.name), Parsed("none"), of=entry)
    kept = replace(
        replacement(turn, entry, "moved"),
        readings=tuple(each for each in entry.readings if each.tank_id == tank.id),
        events=tuple(each for each in entry.events if each.tank_id == tank.id),
    )
    return await store(turn, kept, words.moved(tank.name, said(turn, kept)))


async def elsewhere(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """``it was the cube not fern``: what was just kept of the one belongs to the other.

    A dose is moved with its plan (`bot.chat.misput`).
    """
    if parsed.values or parsed.events or parsed.question or not turn.incoming.addressed:
        return None
    told = not_there(turn.incoming.text, [tank.name for tank in turn.tanks])
    latest = await turn.uow.offers.latest(turn.chat.id, 1) if told is not None else []
    patience = GROUP_PATIENCE if turn.incoming.group else PATIENCE
    if told is None or not latest or turn.now - latest[0].made_at > patience:
        return None
    other = turn.tank_named(told.other)
    entry = await turn.uow.log.current(turn.chat.id, latest[0].entry_id or 0)
    if entry is None or entry.is_empty or other is None:
        return None
    held = {reading.tank_id for reading in entry.readings}
    held |= {event.tank_id for event in entry.events}
    if held != {other.id} or any(event.what.kind == "dose" for event in entry.events):
        return None
    return await move(turn, Command("move", told.tank), Parsed("none"), of=entry)


async def stray(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """``that reading was the quarantine tank``: it is taken off the tank that it was told of.

    Of a tank on record it is moved there. Where no such is, it is asked, and kept in the buttons.
    """
    if parsed.values or parsed.events or not turn.incoming.addressed:
        return None
    if parsed.command is not None and parsed.command.name != "move":
        return None
    said_so = stray_told(turn.incoming.text, frozenset(tank.name for tank in turn.tanks))
    author = turn.incoming.author_id if turn.incoming.group else None
    entry = None if said_so is None else await turn.uow.log.latest(turn.chat.id, author)
    if entry is None or said_so is None or not entry.readings:
        return None
    if turn.now - entry.at > PATIENCE:
        return None
    found = match(said_so, [tank.name for tank in turn.tanks])
    if found.name is not None:
        return await move(turn, Command("move", found.name), Parsed("none"))
    held = {each.tank_id for each in entry.readings}
    if await open_told.pending(turn):
        return None  # that, which is asked about, is of it
    if entry.events or len(held) != 1 or turn.tank_by_id(next(iter(held))) is None:
        return None
    at = {each.at for each in entry.readings}
    was = said(turn, entry)
    await turn.uow.log.add(
        turn.chat.id, replace(replacement(turn, entry, "moved"), readings=(), events=())
    )
    values = tuple(each.what for each in entry.readings)
    told = Parsed("reading", at=min(at), values=values)
    asked = await asking.ask_stray(turn, said_so, told)
    return [replace(asked, lines=(Line(words.taken_off(was)), *asked.lines))]


async def to_meant(turn: Turn, entry: Entry, which: str) -> list[Reply] | None:
    """``i meant the big one``: the entry belongs to the largest, smallest or other tank.

    Where that could be more than one, the tank is asked for; with one tank None is meant.
    """
    told_of = {each.tank_id for each in entry.readings}
    told_of |= {each.tank_id for each in entry.events}
    fitting = [tank for tank in turn.tanks if tank.id not in told_of]
    if which != "other":
        sizes = [tank.tank.volume_l or 0.0 for tank in turn.tanks]
        wanted = (max if which == "big" else min)(sizes, default=0.0)
        fitting = [tank for tank in turn.tanks if tank.tank.volume_l == wanted and all(sizes)]
    if len(turn.tanks) < 2:
        return None
    if len(fitting) != 1:
        return [await turn.reply(words.tank_meant([tank.name for tank in turn.tanks]))]
    return await move(turn, Command("move", fitting[0].name), Parsed("none"))


async def at_another_time(turn: Turn, entry: Entry, when: datetime) -> list[Reply]:
    """``that was yesterday``: what an entry tells was measured and done then."""
    moved = replace(
        replacement(turn, entry, "moved"),
        readings=tuple(replace(reading, at=when) for reading in entry.readings),
        events=tuple(replace(event, at=when) for event in entry.events),
    )
    return await store(turn, moved, words.corrected(said(turn, entry), said(turn, moved)))
