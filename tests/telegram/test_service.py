"""Everything wired, in this process: starting, working side by side, ending."""

from __future__ import annotations

import asyncio
from collections.abc import AsyncIterator
from contextlib import asynccontextmanager
from typing import Any, cast

import pytest
from pydantic import SecretStr

from bot.chat.model import Address, Line, Reply
from bot.clock import SystemClock
from bot.inbox.model import Arrival
from bot.inbox.rows import Inbox
from bot.settings import Settings, Telegram
from bot.store.database import Database
from bot.telegram import poller, service
from bot.telegram.poller import TokenRefused
from tests.botapi import BotApi, Fault
from tests.inbox.fakes import Echo
from tests.telegram.conftest import FAST


class House(Echo):
    """The conversation that says everything back, with what the service asks of the app."""

    def __init__(self, database: Database) -> None:
        super().__init__(database)
        self.database = database
        self.couriers: list[Any] = []
        self.taken_over = ""

    def add_courier(self, courier: Any) -> None:
        self.couriers.append(courier)

    async def take_over(self, messenger: str) -> None:
        self.taken_over = messenger


class Quiet:
    """A waker with nothing to wake."""

    def __init__(self) -> None:
        self.ended = False

    async def run(self, stop: asyncio.Event) -> None:
        await stop.wait()
        self.ended = True


class Broken:
    """A waker that fails once something was said."""

    def __init__(self) -> None:
        self.fail = asyncio.Event()

    async def run(self, _stop: asyncio.Event) -> None:
        await self.fail.wait()
        raise ZeroDivisionError


def _settings(server: BotApi) -> Settings:
    telegram = Telegram(token=SecretStr(server.token), api_url=server.url)
    return Settings(telegram=telegram)


@asynccontextmanager
async def _serving(server: BotApi, house: House, waker: Any) -> AsyncIterator[asyncio.Task[None]]:
    stop = asyncio.Event()
    running = asyncio.create_task(
        service.run(cast("Any", house), _settings(server), stop, waker=waker, rates=FAST)
    )
    try:
        yield running
    finally:
        stop.set()
        await asyncio.wait({running}, timeout=15)
    await running


async def test_a_message_is_answered_and_the_menu_set(server: BotApi, database: Database) -> None:
    house, waker, anna = House(database), Quiet(), server.world.person("Anna")
    chat = server.world.private(anna)
    async with _serving(server, house, waker):
        server.world.say(chat, anna, "a < b|c")
        await server.until(lambda: len(server.texts()) == 1)
        reminder = Reply((Line("test Fern"),), kind="reminder")
        assert await house.couriers[0].send(Address("telegram", str(chat.id)), reminder)
    assert server.texts() == ["heard a < b\nheard c", "test Fern"]
    assert waker.ended
    assert {command["command"] for command in server.commands} >= {"help", "tank", "privacy"}


async def test_a_webhook_left_over_does_not_stop_polling(
    server: BotApi, database: Database
) -> None:
    server.webhook = {"url": "https://example.org/hook"}
    anna = server.world.person("Anna")
    async with _serving(server, House(database), Quiet()):
        server.world.say(server.world.private(anna), anna, "kh 4")
        await server.until(lambda: server.texts() == ["heard kh 4"])


async def test_it_waits_for_the_network_to_come_up(
    server: BotApi, database: Database, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(service, "LONGEST_PAUSE_S", 0.01)
    server.faults.append(Fault("getMe", code=502, times=3))
    anna = server.world.person("Anna")
    server.world.say(server.world.private(anna), anna, "kh 4")
    async with _serving(server, House(database), Quiet()):
        await server.until(lambda: server.texts() == ["heard kh 4"])


async def test_it_can_be_stopped_while_the_network_is_down(
    server: BotApi, database: Database
) -> None:
    server.faults.append(Fault("getMe", code=502, times=None))
    async with _serving(server, House(database), Quiet()):
        await server.until(lambda: server.calls)


@pytest.mark.parametrize("method", ["getMe", "getUpdates"])
async def test_a_refused_token(server: BotApi, database: Database, method: str) -> None:
    server.faults.append(Fault(method, code=401, times=None))
    waker = Quiet()
    with pytest.raises(TokenRefused):
        async with _serving(server, House(database), waker) as running:
            await asyncio.wait({running}, timeout=10)
    assert waker.ended == (method == "getUpdates"), "what ran beside it was ended in order"


async def test_a_part_that_fails_ends_the_others_in_order(
    server: BotApi, database: Database
) -> None:
    waker, anna = Broken(), server.world.person("Anna")
    serving = service.run(
        cast("Any", House(database)), _settings(server), asyncio.Event(), waker=waker, rates=FAST
    )
    running = asyncio.create_task(serving)
    server.world.say(server.world.private(anna), anna, "kh 4")
    await server.until(lambda: server.texts() == ["heard kh 4"])
    waker.fail.set()
    with pytest.raises(ZeroDivisionError):
        await running
    inbox = Inbox(database, SystemClock(), messenger="telegram", owner="x")
    assert await inbox.counts() == {"answered": 1}


async def test_what_a_dead_process_held_is_taken_over_at_once(
    server: BotApi, database: Database
) -> None:
    anna = server.world.person("Anna")
    chat = server.world.private(anna)
    server.world.say(chat, anna, "kh 4")
    dead = Inbox(database, SystemClock(), messenger="telegram", owner="dead")
    (waiting,) = server.updates._queue
    raw = poller.sort_batch([waiting.payload], poller.Me(1, "x"), SystemClock().now())
    assert [arrival.chat for arrival in raw.arrivals] == [str(chat.id)]
    await dead.receive(cast("list[Arrival]", raw.arrivals))
    assert await dead.claim(1)
    house = House(database)
    async with _serving(server, house, Quiet()):
        await server.until(lambda: server.texts() == ["heard kh 4"], timeout=8)
    assert house.taken_over == "telegram", "reminders as well as messages"


async def test_a_chat_that_blocked_us_comes_back(server: BotApi, database: Database) -> None:
    house, anna = House(database), server.world.person("Anna")
    chat = server.world.private(anna)
    async with _serving(server, house, Quiet()):
        chat.standing = "blocked"
        server.world.say(chat, anna, "kh 4")
        await server.until(lambda: any(call.code == 403 for call in server.calls))
        server.world.membership(chat, anna, "member", "kicked")
        chat.standing = "ok"
        server.world.say(chat, anna, "kh 5")
        await server.until(lambda: server.texts() == ["heard kh 5"])
    assert house.gone == [(str(chat.id), None)] * 2
    assert sum(call.code == 403 for call in server.calls) == 1
