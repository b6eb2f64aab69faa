"""What a message says of one tank, on its way from the parser to the store."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from datetime import UTC, datetime
from typing import Any, Final

from bot.chat.derived import classes_of
from bot.chat.moves import parted
from bot.chat.turn import Turn
from bot.chat.words import readings as words
from bot.store.log import Entry, Stored
from bot.store.tanks import StoredTank
from core.message.model import Event, Parsed, Value
from core.message.waters import SALTED
from core.message.wire import to_json


@dataclass(frozen=True, slots=True)
class Told:
    """What a message says of one tank."""

    tank: StoredTank
    readings: tuple[Stored[Value], ...]
    events: tuple[Stored[Event], ...]

    @property
    def at(self) -> datetime:
        """The latest moment that is spoken of."""
        moments = [reading.at for reading in self.readings]
        return max(moments + [event.at for event in self.events])


def place(turn: Turn, parsed: Parsed, default: StoredTank) -> list[Told]:
    """Sort what a message says by tank, in the order in which the tanks are named."""
    at = (parsed.at or turn.now).astimezone(UTC)
    readings: dict[int, list[Stored[Value]]] = {}
    events: dict[int, list[Stored[Event]]] = {}
    tanks: dict[int, StoredTank] = {}

    def tank_for(name: str | None) -> StoredTank:
        stored = turn.tank_named(name) if name else None
        stored = stored or (turn.tank_named(parsed.tank) if parsed.tank else None) or default
        return tanks.setdefault(stored.id, stored)

    for value in parsed.values:
        tank = tank_for(value.tank)
        moment = (value.at or at).astimezone(UTC)
        readings.setdefault(tank.id, []).append(Stored(value, tank.id, moment))
    for told in parsed.events:
        for name, event in parted(told):
            tank = tank_for(name)
            moment = (event.at or at).astimezone(UTC)
            event = _changed(event, tank)  # noqa: PLW2901
            events.setdefault(tank.id, []).append(Stored(event, tank.id, moment))
    return [
        Told(tank, tuple(readings.get(tank.id, ())), tuple(events.get(tank.id, ())))
        for tank in tanks.values()
    ]


REFILLED: Final = 0.25
"""From this share of the tank on, what was filled in is new water; common practice."""


def _changed(event: Event, stored: StoredTank) -> Event:
    """A refill of much water is a change: so much does not evaporate. One of salt water is not."""
    volume, filled = stored.tank.volume_l, event.litres
    if event.kind != "top_up" or not volume or not filled or event.substance == SALTED:
        return event
    return replace(event, kind="water_change") if filled >= REFILLED * volume else event


def entry_of(turn: Turn, told: Sequence[Told], **changes: Any) -> Entry:
    """The entry that puts on record what was told."""
    incoming = turn.incoming
    entry = Entry(
        update_id=incoming.update_id,
        kind="message",
        text=incoming.text,
        at=turn.now,
        author_id=incoming.author_id,
        author_name=incoming.author_name,
        message_ref=incoming.message_ref,
        readings=tuple(reading for each in told for reading in each.readings),
        events=tuple(event for each in told for event in each.events),
    )
    return replace(entry, **changes)


def summary(turn: Turn, told: Told) -> str:
    """One line of what is on record for a tank."""
    parts = _by_time(turn, told)
    parts += [words.event(event.what) for event in told.events]
    return words.line(told.tank.name, parts, told.at.astimezone(turn.chat.zone), turn.local_now)


def _by_time(turn: Turn, told: Told) -> list[str]:
    """The values of a tank; where one was told twice, those of each time with it."""
    groups = {told.at: [reading.what for reading in told.readings]}
    if len({reading.what.analyte for reading in told.readings}) < len(told.readings):
        groups = {}
        for reading in sorted(told.readings, key=lambda each: each.at):
            groups.setdefault(reading.at, []).append(reading.what)
    parts = []
    for at, values in groups.items():
        part = words.values(values, classes_of(values, told.tank.tank))
        own = at.astimezone(turn.chat.zone)
        parts.append(part if at == told.at else words.then(part, own, turn.local_now))
    return parts


def values_json(told: Told) -> list[dict[str, Any]]:
    """What was told of a tank as `meniscus parse` writes it."""
    values = tuple(reading.what for reading in told.readings)
    written: list[dict[str, Any]] = to_json(Parsed("reading", values=values))["values"]
    return written
