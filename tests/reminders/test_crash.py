"""A crash at each statement of claim, send and settle: none lost, and a repeat says so."""

from __future__ import annotations

import shutil
from collections.abc import Iterator
from contextlib import contextmanager
from datetime import UTC, datetime, timedelta
from pathlib import Path
from typing import Any

import pytest
from sqlalchemy import event

from bot.chat.model import Address, Reply
from bot.clock import SimulatedClock
from bot.reminders.delivery import Delivery
from bot.store.database import Database
from bot.store.migrate import bring_up_to_date
from tests.store.test_reminders import add
from tests.store.test_units import NOW

REAL = datetime(2026, 6, 1, tzinfo=UTC)
CHATS = {"1": 2, "2": 1}
"""Chats with how many reminders are due in each."""


class Crash(BaseException):
    """The process is gone: nothing after this runs."""


class Post:
    """A messenger that keeps what it accepted; it may be the last thing a process does."""

    messenger = "test"

    def __init__(self) -> None:
        self.accepted: list[tuple[str, bool]] = []
        self.crash_after: int | None = None

    async def send(self, _address: Address, reply: Reply) -> str:
        for each in reply.facts["reminders"]:
            self.accepted.append((f"{_address.chat}/{each['what']}", each["maybe_repeat"]))
        if self.crash_after is not None and len(self.accepted) >= self.crash_after:
            raise Crash
        return "m"


@contextmanager
def crashing(database: Database, at: int) -> Iterator[list[int]]:
    """Let the process die when it is about to run its statement number `at`."""
    count = [0]

    def before(*_: Any) -> None:
        count[0] += 1
        if count[0] >= at:
            raise Crash

    engine = database.engine.sync_engine
    event.listen(engine, "before_cursor_execute", before)
    try:
        yield count
    finally:
        event.remove(engine, "before_cursor_execute", before)


@pytest.fixture
async def prepared(tmp_path: Path) -> Path:
    """A file with what is due, to be copied: making one takes longer than a run."""
    path = tmp_path / "prepared.sqlite3"
    database = Database(f"sqlite+aiosqlite:///{path}")
    await bring_up_to_date(database)
    for chat, count in CHATS.items():
        await add(database, *[NOW] * count, chat=chat)
    await database.close()
    return path


def copied(prepared: Path, name: str) -> str:
    path = prepared.with_name(f"{name}.sqlite3")
    shutil.copyfile(prepared, path)
    return f"sqlite+aiosqlite:///{path}"


async def run_until_crash(database: Database, post: Post, at: int) -> bool:
    """Deliver with a crash at a statement; True where it came so far."""
    delivery = Delivery(database, SimulatedClock(NOW), SimulatedClock(REAL))
    delivery.add(post)
    with crashing(database, at):
        try:
            while await delivery._lane():
                pass
        except Crash:
            return True
    return False


async def take_over(database: Database, post: Post) -> None:
    """Another process comes when the leases have run out."""
    later = Delivery(database, SimulatedClock(NOW), SimulatedClock(REAL + timedelta(seconds=61)))
    later.add(post)
    await later.deliver_due()
    assert await later.deliver_due() == 0


def check(post: Post, context: str) -> None:
    """Everything that was due was said; what was said twice says the second time that it may be."""
    seen: set[str] = set()
    for what, maybe_repeat in post.accepted:
        assert what not in seen or maybe_repeat, f"{context}: a silent repeat of {what}"
        seen.add(what)
    expected = {f"{chat}/task {n}" for chat, count in CHATS.items() for n in range(count)}
    assert seen == expected, f"{context}: lost {expected - seen}"


async def test_a_crash_at_each_statement(prepared: Path) -> None:
    crashes = 0
    for at in range(1, 200):
        url, post = copied(prepared, str(at)), Post()
        database = Database(url)
        crashed = await run_until_crash(database, post, at)
        await database.close()
        database = Database(url)
        await take_over(database, post)
        await database.close()
        check(post, f"crash at statement {at}")
        if not crashed:
            break
        crashes += 1
    else:
        raise AssertionError("it never came to the end")
    assert crashes > 10


async def test_a_crash_between_sending_and_settling(prepared: Path) -> None:
    for number in range(1, 4):
        database, post = Database(copied(prepared, str(number))), Post()
        post.crash_after = number
        assert await run_until_crash(database, post, at=10_000)
        post.crash_after = None
        await take_over(database, post)
        await database.close()
        check(post, f"crash after {number} were accepted")
        assert any(maybe_repeat for _, maybe_repeat in post.accepted)
