"""Faults, limits and hooks: what makes the server worth testing against."""

from __future__ import annotations

import sys
from asyncio import create_subprocess_exec, subprocess
from pathlib import Path

import aiohttp
import pytest

from tests.botapi import BotApi, Call, Fault
from tests.botapi.client import Caller


async def test_429_names_its_wait(api: BotApi, call: Caller) -> None:
    chat = api.world.private(api.world.person("Anna"))
    api.faults.append(Fault("sendMessage", code=429, retry_after=7))
    answer = await call("sendMessage", chat_id=chat.id, text="x")
    assert answer["description"] == "Too Many Requests: retry after 7"
    assert answer["parameters"] == {"retry_after": 7}
    assert (await call("sendMessage", chat_id=chat.id, text="x"))["ok"]


@pytest.mark.parametrize(("drop", "effect"), [("before", 0), ("after", 1)])
async def test_dropped_connections(api: BotApi, call: Caller, drop: str, effect: int) -> None:
    chat = api.world.private(api.world.person("Anna"))
    api.faults.append(Fault("sendMessage", drop=drop))  # type: ignore[arg-type]
    with pytest.raises(aiohttp.ClientConnectionError):
        await call("sendMessage", chat_id=chat.id, text="x")
    assert len(api.accepted()) == effect


async def test_a_fault_of_one_chat_leaves_the_others_alone(api: BotApi, call: Caller) -> None:
    one, two = (api.world.private(api.world.person(name)) for name in ("Anna", "Ben"))
    api.faults.append(Fault("sendMessage", times=None, chat=one.id, code=500))
    assert (await call("sendMessage", chat_id=one.id, text="x"))["error_code"] == 500
    assert (await call("sendMessage", chat_id=two.id, text="x"))["ok"]
    assert (await call("sendMessage", chat_id=one.id, text="x"))["error_code"] == 500


async def test_an_answer_that_is_not_json(api: BotApi) -> None:
    api.faults.append(Fault("getMe", code=502, body="<html>Bad Gateway</html>"))
    async with (
        aiohttp.ClientSession() as session,
        session.get(f"{api.url}/bot{api.token}/getMe") as response,
    ):
        assert response.status == 502
        assert (await response.text()).startswith("<html>")


async def test_limits_when_asked_for(api: BotApi, call: Caller) -> None:
    now = 1_000_000.0
    api.world.clock = lambda: now
    api.limits.chat_per_second = 1
    api.limits.group_per_minute = 2
    group = api.world.group("Reading room")
    assert (await call("sendMessage", chat_id=group.id, text="1"))["ok"]
    assert (await call("sendMessage", chat_id=group.id, text="2"))["error_code"] == 429
    now += 1
    assert (await call("sendMessage", chat_id=group.id, text="3"))["ok"]
    now += 1
    refused = await call("sendMessage", chat_id=group.id, text="4")
    assert refused["parameters"]["retry_after"] == 58
    assert api.limits.refused == 2


async def test_hooks_see_each_stage(api: BotApi, call: Caller) -> None:
    seen: list[tuple[str, str, bool]] = []

    def note(stage: str, made: Call) -> None:
        seen.append((stage, made.method, made.accepted))

    api.hooks.append(note)
    await call("getMe")
    await api.until(lambda: len(seen) == 3)
    assert seen == [
        ("arrived", "getMe", False),
        ("accepted", "getMe", True),
        ("answered", "getMe", True),
    ]


async def test_it_runs_as_a_process_of_its_own() -> None:
    import json

    root = Path(__file__).parents[2]
    process = await create_subprocess_exec(
        sys.executable, "-m", "tests.botapi", "--port", "0", cwd=root, stdout=subprocess.PIPE
    )
    assert process.stdout is not None
    try:
        told = json.loads(await process.stdout.readline())
        async with (
            aiohttp.ClientSession() as session,
            session.get(f"{told['url']}/bot{told['token']}/getMe") as response,
        ):
            assert (await response.json())["ok"]
    finally:
        process.terminate()
        assert await process.wait() == 0
