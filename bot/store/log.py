"""What keepers told us: entries with their readings and events, only ever added to.

An entry counts while no other entry replaces it. A correction replaces an entry by a new one
that holds all that is right now; an undo replaces it by what stood before, or by nothing.
"""

from __future__ import annotations

from collections.abc import Sequence
from datetime import datetime
from typing import Any

from sqlalchemy import ColumnElement, Row, exists, select
from sqlalchemy.ext.asyncio import AsyncSession

from bot.store import log_rows
from bot.store.entries import Entry, Stored
from bot.store.rows import new_row
from core.advice.stock import Came
from core.message.model import Event, Value

__all__ = ["Entry", "Log", "Stored"]


class Log:
    """Queries about what was told, in one unit of work."""

    def __init__(self, session: AsyncSession) -> None:
        self._session = session

    async def add(self, chat_id: int, entry: Entry) -> int:
        """Put an entry on record and return its id."""
        columns = {name: getattr(entry, name) for name in log_rows.ENTRY_COLUMNS}
        entry_id = await new_row(self._session, log_rows.NEW, {"chat_id": chat_id, **columns})
        if entry.readings:
            told = [log_rows.reading_columns(entry_id, reading) for reading in entry.readings]
            await self._session.execute(log_rows.NEW_READINGS, told)
        if entry.events:
            events = [log_rows.event_columns(entry_id, event) for event in entry.events]
            await self._session.execute(log_rows.NEW_EVENTS, events)
        return entry_id

    async def by_update(self, chat_id: int, update_id: str) -> Entry | None:
        """Find the entry that a delivery made, if it was handled before."""
        return await self._one(
            log_rows.ENTRIES.c.chat_id == chat_id, log_rows.ENTRIES.c.update_id == update_id
        )

    async def by_message(self, chat_id: int, message_ref: str) -> Entry | None:
        """Find what stands today in the place of what a message once put on record."""
        found = await self._one(
            log_rows.ENTRIES.c.chat_id == chat_id, log_rows.ENTRIES.c.message_ref == message_ref
        )
        return None if found is None else await self.current(chat_id, found.id)

    async def current(self, chat_id: int, entry_id: int) -> Entry | None:
        """Follow an entry of this chat to what stands in its place today."""
        found = await self.get(chat_id, entry_id)
        while found is not None:
            heir = await self._one(log_rows.ENTRIES.c.replaces == found.id)
            if heir is None:
                return found
            found = heir
        return None

    async def get(self, chat_id: int, entry_id: int) -> Entry | None:
        """Give one entry of this chat, replaced or not."""
        return await self._one(
            log_rows.ENTRIES.c.chat_id == chat_id, log_rows.ENTRIES.c.id == entry_id
        )

    async def latest(self, chat_id: int, author_id: str | None = None) -> Entry | None:
        """Give the newest entry that still has something on record, of one author if named."""
        holds = (
            exists().where(log_rows.READINGS.c.entry_id == log_rows.ENTRIES.c.id)
            | exists().where(log_rows.EVENTS.c.entry_id == log_rows.ENTRIES.c.id)
        )  # fmt: skip
        mine: tuple[ColumnElement[bool], ...] = (
            () if author_id is None else (log_rows.ENTRIES.c.author_id == author_id,)
        )
        return await self._one(log_rows.ENTRIES.c.chat_id == chat_id, log_rows.LIVE, holds, *mine)

    async def newest(self, chat_id: int, count: int) -> list[Entry]:
        """Give the newest entries that nothing has replaced, the newest first."""
        rows = await self._session.execute(
            select(log_rows.ENTRIES)
            .where(log_rows.ENTRIES.c.chat_id == chat_id, log_rows.LIVE)
            .order_by(log_rows.ENTRIES.c.id.desc())
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
        query = log_rows.readings(
            bool(analytes), since is not None, until is not None, limit is not None
        )
        asked = {
            "tank": tank_id, "analytes": analytes, "since": since, "until": until, "most": limit
        }  # fmt: skip
        return [log_rows.reading(row) for row in await self._session.execute(query, asked)]

    async def last_of_each(
        self, tank_id: int, analytes: Sequence[str], *, until: datetime
    ) -> list[Stored[Value]]:
        """The newest reading of each of some analytes, however old, as of a moment."""
        asked = {"tank": tank_id, "analytes": analytes, "until": until}
        return [
            log_rows.reading(row)
            for row in await self._session.execute(log_rows.LAST_OF_EACH, asked)
        ]

    async def events(
        self, tank_id: int, *, kinds: Sequence[str] = (), since: datetime | None = None
    ) -> list[Stored[Event]]:
        """Events of a tank that count today, newest first."""
        query = log_rows.events(bool(kinds), since is not None)
        asked = {"tank": tank_id, "kinds": kinds, "since": since}
        return [
            log_rows.event(row) for row in (await self._session.execute(query, asked)).mappings()
        ]

    async def stock(self, tank_id: int, *, until: datetime) -> list[Came]:
        """Animals that came and went up to a moment, in the order in which they did."""
        asked = {"tank": tank_id, "until": until}
        return [Came(*row) for row in await self._session.execute(log_rows.STOCK, asked)]

    async def _one(self, *conditions: ColumnElement[bool]) -> Entry | None:
        found = await self._session.execute(
            select(log_rows.ENTRIES)
            .where(*conditions)
            .order_by(log_rows.ENTRIES.c.id.desc())
            .limit(1)
        )
        row = found.one_or_none()
        return None if row is None else await self._entry(row)

    async def _entry(self, row: Row[Any]) -> Entry:
        asked = {"entry": row.id}
        readings = await self._session.execute(log_rows.READINGS_OF_ENTRY, asked)
        events = (await self._session.execute(log_rows.EVENTS_OF_ENTRY, asked)).mappings()
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
            readings=tuple(map(log_rows.reading, readings)),
            events=tuple(map(log_rows.event, events)),
        )
