from __future__ import annotations

from collections.abc import AsyncIterator
from pathlib import Path

import pytest

from bot.store.database import Database
from bot.telegram.api import Api, connect
from bot.telegram.limits import Limiter, Rates
from bot.telegram.messenger import Telegram
from tests.botapi import BotApi
from tests.engines import with_tables

FAST = Rates(chat_every=0.0, group_most=10**6, overall_most=10**6)


@pytest.fixture
async def server() -> AsyncIterator[BotApi]:
    async with BotApi(privacy=False).running() as server:
        yield server


@pytest.fixture
async def api(server: BotApi) -> AsyncIterator[Api]:
    api = await connect(server.token, server.url)
    yield api
    await api.close()


@pytest.fixture
def telegram(api: Api) -> Telegram:
    return Telegram(api, Limiter(FAST))


@pytest.fixture
async def database(tmp_path: Path) -> AsyncIterator[Database]:
    database = await with_tables(f"sqlite+aiosqlite:///{tmp_path / 'bot.sqlite3'}")
    yield database
    await database.close()
