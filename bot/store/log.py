"""What keepers told us: entries with their readings and events, only ever added to.

An entry counts while no other entry replaces it. A correction replaces an entry by a new one
that holds all that is right now; an undo replaces it by what stood before, or by nothing.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime
from functools import cache
from typing import Any, Generic, TypeVar, cast

from sqlalchemy import (
    ColumnElement,
    Integer,
    Row,
    RowMapping,
    Select,
    Table,
    bindparam,
    exists,
    func,
    select,
)
from sqlalchemy.ext.asyncio import AsyncSession

from bot.store.models import EntryRow, EventRow, ReadingRow
from bot.store.rows import new_row
from core.advice.stock import COMING, GOING, Came
from core.message.model import Event, Value

T = TypeVar("T", Value, Event)


@dataclass(frozen=True, slots=True)
class Stored(Generic[T]):
    """A value or an event with where and when it belongs."""

    what: T
    tank_id: int
    at: datetime
    entry_id: int = 0
    """What told it; 0 before it is on record."""


@dataclass(frozen=True, slots=True)
class Entry:
    """Something that somebody said or pressed, and what it put on record."""

    update_id: str
    kind: str
    text: str
    at: datetime
    author_id: str = ""
    author_name: str = ""
    message_ref: str | None = None
    replaces: int | None = None
    readings: tuple[Stored[Value], ...] = ()
    events: tuple[Stored[Event], ...] = ()
    id: int = 0

    @property
    def is_empty(self) -> bool:
        """True where nothing is on record, as after an undo."""
        return not self.readings and not self.events


_ENTRIES, _READINGS, _EVENTS = (
    cast("Table", of.__table__) for of in (EntryRow, ReadingRow, EventRow)
)
"""The tables themselves: rows of hundreds, for which mapped objects cost more than all else."""

_ENTRY_COLUMNS = (
    "update_id", "message_ref", "author_id", "author_name", "kind", "text", "at", "replaces",
)  # fmt: skip
_NEW, _NEW_READINGS, _NEW_EVENTS = (of.insert() for of in (_ENTRIES, _READINGS, _EVENTS))

_EVENT_COLUMNS = (
    "percent", "litres", "grams", "millilitres", "spoons", "count", "substance", "species", "text",
)  # fmt: skip


_HEIR = _ENTRIES.alias("heir")
LIVE: ColumnElement[bool] = ~exists().where(_HEIR.c.replaces == _ENTRIES.c.id)
"""Of the entry in the surrounding query: nothing replaces it. Made once, since making it costs
more than running it."""

_READING_COLUMNS = tuple(
    _READINGS.c[name]
    for name in (
        "analyte", "value", "low", "high", "qualifier", "unit", "canonical_low", "canonical_high",
        "canonical_unit", "basis", "tank_id", "measured_at", "entry_id",
    )
)  # fmt: skip
"""In the order in which `_reading` takes them: of one tank there may be hundreds."""
_NEWEST_FIRST = (_READINGS.c.measured_at.desc(), _READINGS.c.id.desc())
_EVENT_ALL = tuple(_EVENTS.c)


@cache
def _readings(analytes: bool, since: bool, until: bool, limit: bool) -> Select[Any]:
    """Build the query for a tank's readings with these restrictions, once."""
    query = (
        select(*_READING_COLUMNS)
        .join(_ENTRIES, _ENTRIES.c.id == _READINGS.c.entry_id)
        .where(_READINGS.c.tank_id == bindparam("tank"), LIVE)
        .order_by(*_NEWEST_FIRST)
    )
    if analytes:
        query = query.where(_READINGS.c.analyte.in_(bindparam("analytes", expanding=True)))
    if since:
        query = query.where(_READINGS.c.measured_at >= bindparam("since"))
    if until:
        query = query.where(_READINGS.c.measured_at <= bindparam("until"))
    return query.limit(bindparam("most", type_=Integer)) if limit else query


def _last_of_each() -> Select[Any]:
    place = func.row_number().over(partition_by=_READINGS.c.analyte, order_by=_NEWEST_FIRST)
    ranked = (
        select(_READINGS.c.id, place.label("place"))
        .join(_ENTRIES, _ENTRIES.c.id == _READINGS.c.entry_id)
        .where(
            _READINGS.c.tank_id == bindparam("tank"),
            _READINGS.c.analyte.in_(bindparam("analytes", expanding=True)),
            _READINGS.c.measured_at <= bindparam("until"),
            LIVE,
        )
        .subquery()
    )
    return (
        select(*_READING_COLUMNS)
        .join(ranked, ranked.c.id == _READINGS.c.id)
        .where(ranked.c.place == 1)
    )


_LAST_OF_EACH = _last_of_each()


@cache
def _events(kinds: bool, since: bool) -> Select[Any]:
    """Build the query for a tank's events with these restrictions, once."""
    query = (
        select(*_EVENT_ALL)
        .join(_ENTRIES, _ENTRIES.c.id == _EVENTS.c.entry_id)
        .where(_EVENTS.c.tank_id == bindparam("tank"), LIVE)
        .order_by(_EVENTS.c.happened_at.desc(), _EVENTS.c.id.desc())
    )
    if kinds:
        query = query.where(_EVENTS.c.kind.in_(bindparam("kinds", expanding=True)))
    return query.where(_EVENTS.c.happened_at >= bindparam("since")) if since else query


_READINGS_OF_ENTRY = (
    select(*_READING_COLUMNS)
    .where(_READINGS.c.entry_id == bindparam("entry"))
    .order_by(_READINGS.c.id)
)
_EVENTS_OF_ENTRY = (
    select(*_EVENT_ALL).where(_EVENTS.c.entry_id == bindparam("entry")).order_by(_EVENTS.c.id)
)

_STOCK = (
    select(_EVENTS.c.kind, _EVENTS.c.species, _EVENTS.c.count)
    .join(_ENTRIES, _ENTRIES.c.id == _EVENTS.c.entry_id)
    .where(
        _EVENTS.c.tank_id == bindparam("tank"),
        _EVENTS.c.kind.in_(sorted(COMING | GOING)),
        _EVENTS.c.happened_at <= bindparam("until"),
        LIVE,
    )
    .order_by(_EVENTS.c.happened_at, _EVENTS.c.id)
)


class Log:
    """Queries about what was told, in one unit of work."""

    def __init__(self, session: AsyncSession) -> None:
        self._session = session

    async def add(self, chat_id: int, entry: Entry) -> int:
        """Put an entry on record and return its id."""
        columns = {name: getattr(entry, name) for name in _ENTRY_COLUMNS}
        entry_id = await new_row(self._session, _NEW, {"chat_id": chat_id, **columns})
        if entry.readings:
            told = [_reading_columns(entry_id, reading) for reading in entry.readings]
            await self._session.execute(_NEW_READINGS, told)
        if entry.events:
            events = [_event_columns(entry_id, event) for event in entry.events]
            await self._session.execute(_NEW_EVENTS, events)
        return entry_id

    async def by_update(self, chat_id: int, update_id: str) -> Entry | None:
        """Find the entry that a delivery made, if it was handled before."""
        return await self._one(_ENTRIES.c.chat_id == chat_id, _ENTRIES.c.update_id == update_id)

    async def by_message(self, chat_id: int, message_ref: str) -> Entry | None:
        """Find what stands today in the place of what a message once put on record."""
        found = await self._one(
            _ENTRIES.c.chat_id == chat_id, _ENTRIES.c.message_ref == message_ref
        )
        return None if found is None else await self.current(chat_id, found.id)

    async def current(self, chat_id: int, entry_id: int) -> Entry | None:
        """Follow an entry of this chat to what stands in its place today."""
        found = await self.get(chat_id, entry_id)
        while found is not None:
            heir = await self._one(_ENTRIES.c.replaces == found.id)
            if heir is None:
                return found
            found = heir
        return None

    async def get(self, chat_id: int, entry_id: int) -> Entry | None:
        """Give one entry of this chat, replaced or not."""
        return await self._one(_ENTRIES.c.chat_id == chat_id, _ENTRIES.c.id == entry_id)

    async def latest(self, chat_id: int, author_id: str | None = None) -> Entry | None:
        """Give the newest entry that still has something on record, of one author if named."""
        holds = (
            exists().where(_READINGS.c.entry_id == _ENTRIES.c.id)
            | exists().where(_EVENTS.c.entry_id == _ENTRIES.c.id)
        )  # fmt: skip
        mine: tuple[ColumnElement[bool], ...] = (
            () if author_id is None else (_ENTRIES.c.author_id == author_id,)
        )
        return await self._one(_ENTRIES.c.chat_id == chat_id, LIVE, holds, *mine)

    async def newest(self, chat_id: int, count: int) -> list[Entry]:
        """Give the newest entries that nothing has replaced, the newest first."""
        rows = await self._session.execute(
            select(_ENTRIES)
            .where(_ENTRIES.c.chat_id == chat_id, LIVE)
            .order_by(_ENTRIES.c.id.desc())
            .limit(count)
        )
        return [await self._entry(row) for row in rows.all()]

    async def readings(
        self,
        tank_id: int,
        *,
        analytes: Sequence[str] = (),
        since: datetime | None = None,
        until: datetime | None = None,
        limit: int | None = None,
    ) -> list[Stored[Value]]:
        """Readings of a tank that count today, newest first by when they were measured."""
        query = _readings(bool(analytes), since is not None, until is not None, limit is not None)
        asked = {
            "tank": tank_id, "analytes": analytes, "since": since, "until": until, "most": limit
        }  # fmt: skip
        return [_reading(row) for row in await self._session.execute(query, asked)]

    async def last_of_each(
        self, tank_id: int, analytes: Sequence[str], *, until: datetime
    ) -> list[Stored[Value]]:
        """The newest reading of each of some analytes, however old, as of a moment."""
        asked = {"tank": tank_id, "analytes": analytes, "until": until}
        return [_reading(row) for row in await self._session.execute(_LAST_OF_EACH, asked)]

    async def events(
        self, tank_id: int, *, kinds: Sequence[str] = (), since: datetime | None = None
    ) -> list[Stored[Event]]:
        """Events of a tank that count today, newest first."""
        query = _events(bool(kinds), since is not None)
        asked = {"tank": tank_id, "kinds": kinds, "since": since}
        return [_event(row) for row in (await self._session.execute(query, asked)).mappings()]

    async def stock(self, tank_id: int, *, until: datetime) -> list[Came]:
        """Animals that came and went up to a moment, in the order in which they did."""
        asked = {"tank": tank_id, "until": until}
        return [Came(*row) for row in await self._session.execute(_STOCK, asked)]

    async def _one(self, *conditions: ColumnElement[bool]) -> Entry | None:
        found = await self._session.execute(
            select(_ENTRIES).where(*conditions).order_by(_ENTRIES.c.id.desc()).limit(1)
        )
        row = found.one_or_none()
        return None if row is None else await self._entry(row)

    async def _entry(self, row: Row[Any]) -> Entry:
        asked = {"entry": row.id}
        readings = await self._session.execute(_READINGS_OF_ENTRY, asked)
        events = (await self._session.execute(_EVENTS_OF_ENTRY, asked)).mappings()
        return Entry(
            id=row.id,
            update_id=row.update_id,
            kind=row.kind,
            text=row.text,
            at=row.at,
            author_id=row.author_id,
            author_name=row.author_name,
            message_ref=row.message_ref,
            replaces=row.replaces,
            readings=tuple(map(_reading, readings)),
            events=tuple(map(_event, events)),
        )


def _reading_columns(entry_id: int, reading: Stored[Value]) -> dict[str, Any]:
    value = reading.what
    low, high = (
        value.canonical
        if isinstance(value.canonical, tuple)
        else (value.canonical, value.canonical)
    )
    return {
        "entry_id": entry_id,
        "tank_id": reading.tank_id,
        "analyte": value.analyte,
        "value": value.value,
        "low": value.low,
        "high": value.high,
        "qualifier": value.qualifier,
        "unit": value.unit,
        "canonical_low": low,
        "canonical_high": high,
        "canonical_unit": value.canonical_unit,
        "basis": value.basis,
        "measured_at": reading.at,
    }


def _event_columns(entry_id: int, event: Stored[Event]) -> dict[str, Any]:
    return {
        "entry_id": entry_id,
        "tank_id": event.tank_id,
        "kind": event.what.kind,
        "happened_at": event.at,
        **{name: getattr(event.what, name) for name in _EVENT_COLUMNS},
    }


def _reading(row: Sequence[Any]) -> Stored[Value]:
    analyte, value, low, high, qualifier, unit, least, most, canonical_unit, basis, *where = row
    tank, at, entry = where
    canonical = least if least is None or most is None or least == most else (least, most)
    what = Value(analyte, value, low, high, qualifier, unit, canonical, canonical_unit, basis)
    return Stored(what, tank, at, entry)


def _event(row: RowMapping) -> Stored[Event]:
    amounts: dict[str, Any] = {name: row[name] for name in _EVENT_COLUMNS}
    what = Event(kind=row["kind"], **amounts)
    return Stored(what, row["tank_id"], row["happened_at"], row["entry_id"])
