from __future__ import annotations

from collections.abc import AsyncIterator
from pathlib import Path

import pytest
from sqlalchemy.engine import URL

from bot.store.database import Database
from tests.engines import with_tables


@pytest.fixture
async def database(url: URL | str) -> AsyncIterator[Database]:
    database = await with_tables(url)
    yield database
    await database.close()


@pytest.fixture
async def sqlite_database(tmp_path: Path) -> AsyncIterator[Database]:
    database = await with_tables(f"sqlite+aiosqlite:///{tmp_path / 'inbox.sqlite3'}")
    yield database
    await database.close()
