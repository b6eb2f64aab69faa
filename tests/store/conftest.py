from __future__ import annotations

from collections.abc import AsyncIterator

import pytest
from sqlalchemy.engine import URL

from bot.store.database import Database
from bot.store.migrate import bring_up_to_date


@pytest.fixture
async def database(url: URL | str) -> AsyncIterator[Database]:
    database = Database(url)
    await bring_up_to_date(database)
    yield database
    await database.close()
