"""Many rows at once: chats side by side, each in its order, until told to stop."""

from __future__ import annotations

import asyncio
from collections.abc import AsyncIterator
from contextlib import asynccontextmanager
from datetime import timedelta

from bot.clock import SystemClock
from bot.inbox.pool import Pool
from bot.inbox.rows import LEASE, Inbox
from bot.inbox.statements import SUSPECT
from bot.inbox.worker import Worker
from bot.store.database import Database
from tests.inbox.fakes import MESSENGER, Echo, Post, arrival


@asynccontextmanager
async def _running(inbox: Inbox, post: Post, echo: Echo, *, size: int = 32) -> AsyncIterator[Pool]:
    stop = asyncio.Event()
    pool = Pool(inbox, Worker(inbox, post, echo), SystemClock(), size=size, idle_s=0.05)
    running = asyncio.create_task(pool.run(stop))
    try:
        yield pool
    finally:
        stop.set()
        await running


def _inbox(database: Database, owner: str = "one", lease: timedelta = LEASE) -> Inbox:
    return Inbox(database, SystemClock(), messenger=MESSENGER, owner=owner, lease=lease)


async def test_each_chat_is_answered_in_its_order(sqlite_database: Database) -> None:
    inbox, post, echo = _inbox(sqlite_database), Post(), Echo(sqlite_database)
    chats = [f"chat {number}" for number in range(10)]
    async with _running(inbox, post, echo) as pool:
        for number in range(60):
            await inbox.receive([arrival(number, chats[number % 10], f"line {number}")])
            pool.wake()
        await post.until(lambda: len(post.sent) == 60)
    for offset, chat in enumerate(chats):
        assert post.texts(chat) == [f"heard line {number}" for number in range(offset, 60, 10)]
    assert await inbox.counts() == {"answered": 60}


async def test_a_slow_chat_holds_up_no_other(sqlite_database: Database) -> None:
    inbox, post, echo = _inbox(sqlite_database), Post(), Echo(sqlite_database)
    slow, released = asyncio.Event(), asyncio.Event()
    real = echo.handle

    async def handle(incoming, **more):  # type: ignore[no-untyped-def]
        if incoming.address.chat == "slow":
            slow.set()
            await released.wait()
        return await real(incoming, **more)

    echo.handle = handle  # type: ignore[method-assign]
    async with _running(inbox, post, echo):
        await inbox.receive([arrival(1, "slow"), arrival(2, "slow")])
        await slow.wait()
        await inbox.receive([arrival(number, f"chat {number}") for number in range(3, 20)])
        await post.until(lambda: len(post.sent) == 17)
        assert post.texts("slow") == []
        released.set()
        await post.until(lambda: len(post.texts("slow")) == 2)


async def test_more_rows_than_hands(sqlite_database: Database) -> None:
    inbox, post, echo = _inbox(sqlite_database), Post(), Echo(sqlite_database)
    await inbox.receive([arrival(number, f"chat {number}") for number in range(20)])
    async with _running(inbox, post, echo, size=3):
        await post.until(lambda: len(post.sent) == 20)
    assert echo.most_inside <= 3


async def test_work_longer_than_a_lease_keeps_its_row(sqlite_database: Database) -> None:
    lease = timedelta(seconds=1)  # a busy machine may hold the loop up for a good part of one
    inbox, post, echo = _inbox(sqlite_database, lease=lease), Post(), Echo(sqlite_database)
    rival = _inbox(sqlite_database, "rival", lease)
    echo.gate = asyncio.Event()
    await inbox.receive([arrival(1, "a")])
    async with _running(inbox, post, echo) as pool:
        await echo.entered.wait()
        ends = asyncio.get_running_loop().time() + 2 * lease.total_seconds()
        while asyncio.get_running_loop().time() < ends:
            assert await rival.claim(1) == []
            await asyncio.sleep(0.01)
        echo.gate.set()
        pool.wake()
        await post.until(lambda: len(post.sent) == 1)
    assert await inbox.counts() == {"answered": 1}


async def test_what_may_be_deadly_is_tried_alone(sqlite_database: Database) -> None:
    dead = _inbox(sqlite_database, "dead", timedelta(0))
    await dead.receive([arrival(number, f"chat {number}", f"old {number}") for number in range(3)])
    for _ in range(SUSPECT):
        assert len(await dead.claim(9)) == 3
    inbox, post, echo = _inbox(sqlite_database), Post(), Echo(sqlite_database)
    await inbox.receive([arrival(number, f"chat {number}") for number in range(3, 9)])
    beside: dict[str, int] = {}
    real = echo.handle

    async def handle(incoming, **more):  # type: ignore[no-untyped-def]
        beside[incoming.text] = len(echo.inside)
        return await real(incoming, **more)

    echo.handle = handle  # type: ignore[method-assign]
    async with _running(inbox, post, echo):
        await post.until(lambda: len(post.sent) == 9)
    assert [beside[f"old {number}"] for number in range(3)] == [0, 0, 0]
    assert post.texts()[:3] == ["heard old 0", "heard old 1", "heard old 2"]


async def test_stopping_ends_what_is_in_hand(sqlite_database: Database) -> None:
    inbox, post, echo = _inbox(sqlite_database), Post(), Echo(sqlite_database)
    echo.gate = asyncio.Event()
    await inbox.receive([arrival(1, "a"), arrival(2, "a")])
    stop = asyncio.Event()
    running = asyncio.create_task(
        Pool(inbox, Worker(inbox, post, echo), SystemClock(), idle_s=0.05).run(stop)
    )
    await echo.entered.wait()
    stop.set()
    echo.gate.set()
    await running
    assert post.texts() == ["heard kh 4"]
    assert (await inbox.counts())["answered"] == 1
    assert [job.update_id for job in await _inbox(sqlite_database, "next").claim(5)] == ["2"]


async def test_a_database_that_is_away_for_a_while_stops_nothing(
    sqlite_database: Database,
) -> None:
    inbox, post, echo = _inbox(sqlite_database), Post(), Echo(sqlite_database)
    await inbox.receive([arrival(1, "a")])
    real, failures = inbox.claim, [ConnectionError(), ConnectionError()]

    async def claim(limit: int):  # type: ignore[no-untyped-def]
        if failures:
            raise failures.pop()
        return await real(limit)

    inbox.claim = claim  # type: ignore[method-assign]
    async with _running(inbox, post, echo) as pool:
        async with asyncio.timeout(5):
            while failures:
                pool.wake()
                await asyncio.sleep(0)
        pool.wake()
        await post.until(lambda: len(post.sent) == 1)


async def test_several_processes_share_one_database(database: Database) -> None:
    posts = [Post() for _ in range(4)]
    echoes = [Echo(database) for _ in posts]
    inboxes = [_inbox(database, f"owner {number}") for number in range(4)]
    await inboxes[0].receive([arrival(number, f"chat {number % 9}") for number in range(45)])
    everyone = asyncio.Condition()
    for post in posts:
        post.accepted = everyone

    def all_sent() -> bool:
        return sum(len(post.sent) for post in posts) == 45

    async with (
        _running(inboxes[0], posts[0], echoes[0], size=4),
        _running(inboxes[1], posts[1], echoes[1], size=4),
        _running(inboxes[2], posts[2], echoes[2], size=4),
        _running(inboxes[3], posts[3], echoes[3], size=4),
    ):
        await posts[0].until(all_sent, timeout_s=20)
    handled = [number for echo in echoes for number in echo.handled]
    assert sorted(map(int, handled)) == list(range(45))
    assert await inboxes[0].counts() == {"answered": 45}
