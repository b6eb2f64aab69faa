"""One database, two engines: connections, units of work, and the schema brought up to date."""

from __future__ import annotations

import asyncio
from collections.abc import AsyncIterator
from contextlib import AbstractAsyncContextManager, asynccontextmanager, nullcontext
from typing import Any

import orjson
from sqlalchemy import event
from sqlalchemy.engine import URL, Connection, make_url
from sqlalchemy.ext.asyncio import AsyncEngine, AsyncSession, create_async_engine

from bot.store.sqlite_driver import Driver
from bot.store.uow import UnitOfWork

BUSY_MS = 10_000
"""How long a SQLite writer waits for another before it gives up."""

WRITE = "meniscus_write"

_NEW_OFFER = "INSERT INTO offers"
"""What a reply offers tells nothing new but where it keeps what stands, which `Offers` counts."""


class Database:
    """Where everything is remembered.

    Parameters
    ----------
    url : str or URL
        An async URL of SQLAlchemy: ``sqlite+aiosqlite:///path`` or ``postgresql+asyncpg://…``.
    """

    def __init__(self, url: str | URL) -> None:
        self.url = make_url(url)
        self.engine: AsyncEngine = create_async_engine(
            self.url,
            pool_pre_ping=not self.is_sqlite,
            module=Driver() if self.is_sqlite else None,
            json_deserializer=orjson.loads,  # what replies offered is read again by every message
        )
        self.writes = 0
        """Statements but queries that were sent: what was read at the same count still holds."""
        event.listen(self.engine.sync_engine, "before_cursor_execute", self._count)
        # SQLite has one writer at a time, and lets the others sleep and try again: within one
        # process they queue instead. PostgreSQL sorts its writers out itself.
        self._turn_to_write: AbstractAsyncContextManager[None] = (
            asyncio.Lock() if self.is_sqlite else nullcontext()
        )
        if self.is_sqlite:
            event.listen(self.engine.sync_engine, "connect", _prepare_sqlite)
            event.listen(self.engine.sync_engine, "begin", _begin_sqlite)

    @property
    def is_sqlite(self) -> bool:
        """True on SQLite, False on PostgreSQL."""
        return self.url.get_backend_name() == "sqlite"

    @asynccontextmanager
    async def write(self) -> AsyncIterator[UnitOfWork]:
        """Open a unit of work that may write; it rolls back unless told to commit."""
        async with self._turn_to_write, self._unit({WRITE: True}) as uow:
            yield uow

    @asynccontextmanager
    async def read(self) -> AsyncIterator[UnitOfWork]:
        """Open a unit of work that only reads, and so waits for no writer."""
        async with self._unit({WRITE: False}) as uow:
            yield uow

    @asynccontextmanager
    async def _unit(self, options: dict[str, Any]) -> AsyncIterator[UnitOfWork]:
        async with AsyncSession(self.engine, expire_on_commit=False) as session:
            await session.connection(execution_options=options)
            # leaving the session rolls back what was not committed
            yield UnitOfWork(session, lambda: self.writes)

    def _count(self, _connection: Any, _cursor: Any, statement: str, *_how: Any) -> None:
        if not statement.startswith(("SELECT", _NEW_OFFER)):
            self.writes += 1

    async def close(self) -> None:
        """Give all connections back."""
        await self.engine.dispose()


def _prepare_sqlite(connection: Any, _record: Any) -> None:
    """Take BEGIN out of the driver's hands and set what durability and waiting ask for."""
    connection.isolation_level = None
    cursor = connection.cursor()
    for pragma in (
        f"busy_timeout = {BUSY_MS}",
        "journal_mode = WAL",
        "synchronous = FULL",
        "foreign_keys = ON",
    ):
        cursor.execute(f"PRAGMA {pragma}")
    cursor.close()


def _begin_sqlite(connection: Connection) -> None:
    """Take the write lock at the start, so that reading and then writing cannot lose an update."""
    writes = connection.get_execution_options().get(WRITE, False)
    connection.exec_driver_sql("BEGIN IMMEDIATE" if writes else "BEGIN")
