"""A bare client of the server, for its own tests and for drivers."""

from __future__ import annotations

from typing import Any

import aiohttp

from tests.botapi.server import BotApi


class Caller:
    """Calls methods and hands back the JSON, errors too."""

    def __init__(self, api: BotApi, session: aiohttp.ClientSession) -> None:
        self._root = f"{api.url}/bot{api.token}"
        self._url = api.url
        self._session = session

    async def __call__(self, method: str, **params: Any) -> dict[str, Any]:
        async with self._session.post(f"{self._root}/{method}", json=params) as response:
            answer: dict[str, Any] = await response.json()
            assert answer.get("ok") or answer["error_code"] == response.status
            return answer

    async def control(self, action: str, **asked: Any) -> Any:
        async with self._session.post(f"{self._url}/control/{action}", json=asked) as response:
            return await response.json()
