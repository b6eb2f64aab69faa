"""Polling: in the inbox before it is confirmed, whatever the network and the server do."""

from __future__ import annotations

import asyncio
import random
import warnings
from collections.abc import AsyncIterator, Awaitable, Callable
from contextlib import asynccontextmanager
from functools import partial
from typing import Any

import pytest
from sqlalchemy import select

from bot.clock import SystemClock
from bot.inbox.rows import Inbox
from bot.store.database import Database
from bot.store.models import InboxRow
from bot.telegram import api
from bot.telegram import poller as module
from bot.telegram.api import Api, connect
from bot.telegram.poller import Poller, PollingStuck, TokenRefused
from tests.botapi import TOKEN, BotApi, Fault


@pytest.fixture(autouse=True)
def quick(monkeypatch: pytest.MonkeyPatch) -> None:
    """Let pauses between attempts be short."""
    monkeypatch.setattr(module, "LONGEST_PAUSE_S", 0.02)
    monkeypatch.setattr(module, "CONFLICT_PAUSE_S", 0.02)


def _inbox(database: Database) -> Inbox:
    return Inbox(database, SystemClock(), messenger="telegram", owner="one")


def _reach(server: BotApi) -> Callable[[], Awaitable[Api]]:
    return partial(connect, server.token, server.url)


@asynccontextmanager
async def _polling(server: BotApi, inbox: Inbox, **more: Any) -> AsyncIterator[asyncio.Task[None]]:
    stop = asyncio.Event()
    reach = more.pop("reach", _reach(server))
    poller = Poller(reach, inbox, SystemClock(), lambda: None, **{"poll_s": 2, **more})
    running = asyncio.create_task(poller.run(stop))
    try:
        yield running
    finally:
        stop.set()
        await asyncio.wait({running})
    running.result()


async def _rows(database: Database) -> list[InboxRow]:
    async with database.read() as uow:
        return list(await uow.session.scalars(select(InboxRow).order_by(InboxRow.id)))


def _say(server: BotApi, count: int) -> None:
    anna = server.world.person("Anna")
    for number in range(count):
        server.world.say(server.world.private(anna), anna, f"kh {number}")


async def test_nothing_is_confirmed_before_it_is_committed(
    server: BotApi, database: Database
) -> None:
    inbox = _inbox(database)
    committed: list[str] = []
    confirmed_at: list[tuple[int, int]] = []
    real = inbox.receive

    async def receive(arrivals: Any) -> int:
        new = await real(arrivals)
        committed.extend(arrival.update_id for arrival in arrivals)
        return new

    inbox.receive = receive  # type: ignore[method-assign]

    def note(stage: str, call: Any) -> None:
        if stage == "arrived" and call.method == "getUpdates":
            confirmed_at.append((int(call.params.get("offset", 0)), len(committed)))

    server.hooks.append(note)
    _say(server, 250)
    async with _polling(server, inbox):
        await server.until(lambda: not server.updates.pending)
    ids = list(map(int, committed))
    assert ids == sorted(set(ids))
    assert len(ids) == 250
    for offset, kept in confirmed_at:
        assert sum(1 for number in ids if number < offset) <= kept
    assert [row.state for row in await _rows(database)] == ["waiting"] * 250


async def test_a_failed_commit_moves_no_offset(server: BotApi, database: Database) -> None:
    inbox = _inbox(database)
    real, failures = inbox.receive, [ConnectionError(), ConnectionError()]

    async def receive(arrivals: Any) -> int:
        if failures:
            raise failures.pop()
        return await real(arrivals)

    inbox.receive = receive  # type: ignore[method-assign]
    _say(server, 3)
    async with _polling(server, inbox):
        await server.until(lambda: not server.updates.pending)
    assert len(await _rows(database)) == 3


async def test_updates_in_many_copies_and_any_order_are_kept_once(
    server: BotApi, database: Database
) -> None:
    server.updates.copies = 3
    server.updates.shuffle = random.Random(5)  # noqa: S311
    _say(server, 120)
    async with _polling(server, _inbox(database)):
        await server.until(lambda: not server.updates.pending)
    ids = [row.update_id for row in await _rows(database)]
    assert len(ids) == len(set(ids)) == 120


async def test_bad_updates_are_parked_and_hold_nobody_up(
    server: BotApi, database: Database, caplog: pytest.LogCaptureFixture
) -> None:
    anna = server.world.person("Anna")
    chat = server.world.private(anna)
    for number in range(40):
        server.world.say(chat, anna, f"kh {number}")
        server.updates.put({"message": {"chat": None, "text": "my secret"}})
    server.updates.put({"message": {}, "update_id": "no number"})
    server.updates.put("not even an object")
    server.world.say(chat, anna, "the last")
    async with _polling(server, _inbox(database)):
        await server.until(lambda: not server.updates.pending)
    states = [row.state for row in await _rows(database)]
    assert (states.count("waiting"), states.count("parked")) == (41, 42)
    assert all(row.error for row in await _rows(database) if row.state == "parked")
    assert caplog.text.count("is parked") >= 42
    assert "secret" not in caplog.text


async def test_an_update_without_number_alone_is_passed_in_the_end(
    server: BotApi, database: Database
) -> None:
    _say(server, 1)
    async with _polling(server, _inbox(database)):
        await server.until(lambda: not server.updates.pending)
        server.updates.put("nothing of ours")
        await server.until(lambda: not server.updates.pending)
        _say(server, 1)
        await server.until(lambda: not server.updates.pending)
    assert len(await _rows(database)) == 3


async def test_what_is_not_for_us_is_confirmed_and_not_kept(
    server: BotApi, database: Database
) -> None:
    anna, group = server.world.person("Anna"), server.world.group("Room")
    server.world.say(group, anna, "/start@other_bot")
    server.world.service(group, anna, new_chat_members=[])
    server.world.say(group, anna, "a plain line")
    async with _polling(server, _inbox(database)):
        await server.until(lambda: not server.updates.pending)
    assert len(await _rows(database)) == 1


TROUBLE = [
    (Fault("getUpdates", code=500), "their trouble"),
    (Fault("getUpdates", code=502, body="<html>"), "a gateway's"),
    (Fault("getUpdates", drop="before"), "a broken connection"),
    (Fault("getUpdates", drop="after"), "a broken answer"),
    (Fault("getUpdates", code=429, retry_after=1), "asked to wait"),
    (Fault("getUpdates", code=409), "another poller"),
    (Fault("getUpdates", code=400, description="Bad Request: x"), "a mistake of ours"),
    (Fault("getUpdates", code=200, body="no json"), "an answer nobody can read"),
    (Fault("getMe", code=500), "trouble while connecting"),
]


@pytest.mark.parametrize(("fault", "why"), TROUBLE)
async def test_polling_outlives_trouble(
    server: BotApi, database: Database, fault: Fault, why: str
) -> None:
    waits = 1 if fault.code == 429 else 3
    server.faults.append(Fault(**{**_fields(fault), "times": waits}))
    _say(server, 2)
    async with _polling(server, _inbox(database)):
        await server.until(lambda: not server.updates.pending)
    assert len(await _rows(database)) == 2, why


def _fields(fault: Fault) -> dict[str, Any]:
    return {name: getattr(fault, name) for name in Fault.__dataclass_fields__}


async def test_a_second_poller_waits_and_takes_over(server: BotApi, database: Database) -> None:
    async with _polling(server, _inbox(database)):
        await server.until(lambda: server.calls)
        async with _polling(server, _inbox(database)):
            await server.until(lambda: any(call.code == 409 for call in server.calls))
        _say(server, 1)
        await server.until(lambda: not server.updates.pending)
    assert len(await _rows(database)) == 1


@pytest.mark.parametrize("method", ["getMe", "getUpdates"])
async def test_a_refused_token_stops_with_a_clear_message(
    server: BotApi, database: Database, method: str
) -> None:
    server.faults.append(Fault(method, code=401, times=None))
    with pytest.raises(TokenRefused) as caught:
        async with _polling(server, _inbox(database)) as running:
            await asyncio.wait({running}, timeout=5)
    assert "telegram.token" in str(caught.value)
    assert TOKEN not in str(caught.value)


async def test_a_poll_longer_than_the_librarys_patience(
    server: BotApi, database: Database, monkeypatch: pytest.MonkeyPatch
) -> None:
    # the library reads for 5 s unless told otherwise; made shorter so that a short poll shows it
    monkeypatch.setattr(api, "HTTPXRequest", partial(api.HTTPXRequest, read_timeout=0.3))
    with warnings.catch_warnings():
        warnings.simplefilter("error")
        async with _polling(server, _inbox(database), poll_s=1):
            await server.until(lambda: len(server.accepted("getUpdates")) == 1)
    assert all(call.accepted for call in server.calls)


class Hanging:
    """A connection whose polls never end, the way a lost socket does."""

    def __init__(self, api: Api) -> None:
        self._api = api
        self.me = api.me

    async def updates(self, *_: Any) -> list[Any]:
        await asyncio.Event().wait()
        return []

    async def close(self) -> None:
        await self._api.close()


async def test_a_hanging_poll_gets_a_new_connection(server: BotApi, database: Database) -> None:
    made: list[Any] = []

    async def reach() -> Any:
        api = await connect(server.token, server.url)
        made.append(api if made else Hanging(api))
        return made[-1]

    _say(server, 1)
    async with _polling(server, _inbox(database), reach=reach, patience_s=0.2):
        await server.until(lambda: not server.updates.pending)
    assert len(made) == 2


async def test_a_poll_that_hangs_again_ends_the_process(server: BotApi, database: Database) -> None:
    async def reach() -> Any:
        return Hanging(await connect(server.token, server.url))

    with pytest.raises(PollingStuck):
        async with _polling(server, _inbox(database), reach=reach, patience_s=0.05) as running:
            await asyncio.wait({running}, timeout=5)


async def test_identifiers_that_jump_back(server: BotApi, database: Database) -> None:
    async with _polling(server, _inbox(database)):
        _say(server, 2)
        await server.until(lambda: not server.updates.pending)
        server.updates.jump(5)
        _say(server, 2)
        await server.until(lambda: not server.updates.pending)
    assert [row.update_id for row in await _rows(database)] == ["1000", "1001", "5", "6"]


async def test_stopping_during_a_poll_is_at_once(server: BotApi, database: Database) -> None:
    async with _polling(server, _inbox(database), poll_s=30):
        await server.until(lambda: any(call.method == "getUpdates" for call in server.calls))
        started = asyncio.get_running_loop().time()
    assert asyncio.get_running_loop().time() - started < 2
