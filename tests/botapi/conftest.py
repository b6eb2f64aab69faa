from __future__ import annotations

from collections.abc import AsyncIterator

import aiohttp
import pytest

from tests.botapi import BotApi
from tests.botapi.client import Caller


@pytest.fixture
async def api() -> AsyncIterator[BotApi]:
    async with BotApi().running() as server:
        yield server


@pytest.fixture
async def call(api: BotApi) -> AsyncIterator[Caller]:
    async with aiohttp.ClientSession() as session:
        yield Caller(api, session)
