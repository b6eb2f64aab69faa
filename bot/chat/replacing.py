"""One entry in the place of another: what it is about, how it is said, and that it is kept."""

from __future__ import annotations

from collections.abc import Container, Iterable, Mapping, Sequence
from dataclasses import replace

from bot.chat import sources
from bot.chat.answering import answer_for
from bot.chat.model import Reply
from bot.chat.told import Told, entry_of, summary
from bot.chat.turn import Turn
from bot.chat.words import names
from bot.chat.words import readings as words
from bot.chat.words.text import _
from bot.store.log import Entry
from bot.store.tanks import StoredTank
from core.message.model import Value


async def store(
    turn: Turn, entry: Entry, lead: str | Mapping[int, str], of: Container[int] | None = None
) -> list[Reply]:
    """Put a replacing entry on record and answer for the tanks that it is about.

    `lead` opens the answers, or is one for each tank by its id.
    `of` are the ids of those that something new is told of, where others keep what they had.
    """
    entry_id = await turn.uow.log.add(turn.chat.id, entry)
    return await _answers(turn, entry, entry_id, lead, of)


async def store_all(turn: Turn, entries: Sequence[tuple[Entry, str]]) -> list[Reply]:
    """Put several on record, each with what opens its answer; none is judged before all stand."""
    kept = [(each, await turn.uow.log.add(turn.chat.id, each), lead) for each, lead in entries]
    found = [await _answers(turn, each, entry_id, lead, None) for each, entry_id, lead in kept]
    return [reply for replies in found for reply in replies]


async def _answers(
    turn: Turn,
    entry: Entry,
    entry_id: int,
    lead: str | Mapping[int, str],
    of: Container[int] | None,
) -> list[Reply]:
    replies = []
    for told in _by_tank(turn, entry):
        if of is not None and told.tank.id not in of:
            continue
        opened = (
            lead if isinstance(lead, str) else names.of_tank(told.tank.name, lead[told.tank.id])
        )
        if told.tank.role != "tank":
            replies.append(await sources.corrected(turn, told, entry_id, opened))
            continue
        replies.append(await answer_for(turn, told, entry_id, lead=opened))
        await turn.use_tank(told.tank)
    return replies


def replacement(turn: Turn, entry: Entry, kind: str) -> Entry:
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


def tank_of(turn: Turn, entry: Entry) -> StoredTank:
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


def said(turn: Turn, entry: Entry) -> str:
    """What an entry has on record, in one line."""
    return " · ".join(summary(turn, told) for told in _by_tank(turn, entry))


def each_corrected(before: Entry, after: Entry) -> dict[int, str]:
    """What was put right in each tank of an entry, by the tank's id."""
    return {
        tank_id: words.corrected(
            values_said(r.what for r in before.readings if r.tank_id == tank_id) or _("not told"),
            values_said(r.what for r in after.readings if r.tank_id == tank_id) or _("not told"),
        )
        for tank_id in dict.fromkeys(reading.tank_id for reading in after.readings)
    }


def values_said(values: Iterable[Value]) -> str:
    """Values in one line, as they were told."""
    return words.values(list(values), {})


async def answered(turn: Turn) -> Entry | None:
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
