from __future__ import annotations

from collections.abc import AsyncIterator, Iterator
from pathlib import Path

import pytest
from sqlalchemy.engine import URL

from bot.store.database import Database
from bot.store.migrate import bring_up_to_date
from tests.inbox.engines import new_postgres_database, postgres_server


@pytest.fixture(scope="session")
def postgres(tmp_path_factory: pytest.TempPathFactory) -> Iterator[URL]:
    yield from postgres_server(tmp_path_factory.mktemp("postgres"))


@pytest.fixture(params=["sqlite", "postgresql"])
async def url(request: pytest.FixtureRequest, tmp_path: Path) -> URL | str:
    if request.param == "postgresql":
        return await new_postgres_database(request.getfixturevalue("postgres"))
    return f"sqlite+aiosqlite:///{tmp_path / 'store.sqlite3'}"


@pytest.fixture
async def database(url: URL | str) -> AsyncIterator[Database]:
    database = Database(url)
    await bring_up_to_date(database)
    yield database
    await database.close()
