from __future__ import annotations

from collections.abc import AsyncIterator, Iterator
from pathlib import Path

import pytest
from sqlalchemy.engine import URL

from bot.store.database import Database
from tests.inbox.engines import new_postgres_database, postgres_server, with_tables


@pytest.fixture(scope="session")
def postgres() -> Iterator[URL]:
    yield from postgres_server()


@pytest.fixture(params=["sqlite", "postgresql"])
async def database(request: pytest.FixtureRequest, tmp_path: Path) -> AsyncIterator[Database]:
    url: URL | str = f"sqlite+aiosqlite:///{tmp_path / 'inbox.sqlite3'}"
    if request.param == "postgresql":
        url = await new_postgres_database(request.getfixturevalue("postgres"))
    database = await with_tables(url)
    yield database
    await database.close()


@pytest.fixture
async def sqlite_database(tmp_path: Path) -> AsyncIterator[Database]:
    database = await with_tables(f"sqlite+aiosqlite:///{tmp_path / 'inbox.sqlite3'}")
    yield database
    await database.close()
