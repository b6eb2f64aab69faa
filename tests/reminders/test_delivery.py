"""Delivery against every way in which a messenger fails."""

from __future__ import annotations

from collections.abc import AsyncIterator
from datetime import UTC, datetime, timedelta
from pathlib import Path

import pytest

from bot.chat.model import Address, Reply
from bot.clock import SimulatedClock
from bot.delivery import ChatGone, DeliveryError, MaybeSent, Refused, Throttled, Unreachable
from bot.reminders.delivery import Delivery
from bot.store.database import Database
from bot.store.migrate import bring_up_to_date
from bot.store.reminders import Reminder
from tests.store.test_reminders import add
from tests.store.test_units import NOW, chat_in


class Post:
    """A courier that fails as it is told to, and keeps what it took."""

    messenger = "test"

    def __init__(self) -> None:
        self.faults: list[DeliveryError] = []
        self.taken: list[tuple[Address, Reply]] = []

    async def send(self, address: Address, reply: Reply) -> str:
        if self.faults:
            raise self.faults.pop(0)
        self.taken.append((address, reply))
        return f"m{len(self.taken)}"


@pytest.fixture
async def database(tmp_path: Path) -> AsyncIterator[Database]:
    database = Database(f"sqlite+aiosqlite:///{tmp_path / 'due.sqlite3'}")
    await bring_up_to_date(database)
    yield database
    await database.close()


@pytest.fixture
def post() -> Post:
    return Post()


@pytest.fixture
def real() -> SimulatedClock:
    return SimulatedClock(datetime(2026, 6, 1, tzinfo=UTC))


@pytest.fixture
def delivery(database: Database, post: Post, real: SimulatedClock) -> Delivery:
    delivery = Delivery(database, SimulatedClock(NOW), real)
    delivery.add(post)
    return delivery


async def the_reminder(database: Database, number: int = 1) -> Reminder:
    async with database.read() as uow:
        found = await uow.reminders.get(number)
    assert found is not None
    return found


async def test_what_is_due_goes_out_once(
    database: Database, delivery: Delivery, post: Post
) -> None:
    await add(database, NOW)
    assert await delivery.deliver_due() == 1
    assert await delivery.deliver_due() == 0
    held = await the_reminder(database)
    assert (held.state, held.open_due, held.message_ref) == ("sent", NOW, "m1")
    assert held.next_due is not None
    assert held.next_due > NOW
    assert len(post.taken) == 1


@pytest.mark.parametrize(
    ("fault", "wait", "repeat"),
    [
        (Unreachable("down"), 2.0, False),
        (Throttled(33.0), 33.0, False),
        (MaybeSent("no answer"), 2.0, True),
    ],
    ids=["certainly not sent", "too many", "may have arrived"],
)
async def test_a_passing_failure_is_tried_again_after_its_time(
    database: Database,
    delivery: Delivery,
    post: Post,
    real: SimulatedClock,
    fault: DeliveryError,
    wait: float,
    repeat: bool,
) -> None:
    await add(database, NOW)
    post.faults = [fault]
    assert await delivery.deliver_due() == 0
    real.move_by(timedelta(seconds=wait - 0.5))
    assert await delivery.deliver_due() == 0
    real.move_by(timedelta(seconds=1))
    assert await delivery.deliver_due() == 1
    ((_, reply),) = post.taken
    assert reply.facts["reminders"][0]["maybe_repeat"] is repeat
    assert ("had this one before" in reply.text) is repeat


async def test_back_off_grows_to_its_most(
    database: Database, delivery: Delivery, post: Post, real: SimulatedClock
) -> None:
    await add(database, NOW)
    for wait in (2, 4, 8, 16, 32, 64, 120, 120):
        post.faults = [Unreachable("down")]
        assert await delivery.deliver_due() == 0
        assert post.faults == [], "was not tried when its time had come"
        real.move_by(timedelta(seconds=wait))


async def test_what_is_refused_is_set_aside_and_never_sent_again(
    database: Database, delivery: Delivery, post: Post, real: SimulatedClock
) -> None:
    await add(database, NOW)
    post.faults = [Refused("bad markup")]
    assert await delivery.deliver_due() == 0
    real.move_by(timedelta(days=1))
    assert await delivery.deliver_due() == 0
    assert (await the_reminder(database)).state == "parked"


async def test_a_chat_that_is_gone_gets_no_retry_and_is_back_when_it_speaks(
    database: Database, delivery: Delivery, post: Post, real: SimulatedClock
) -> None:
    await add(database, NOW)
    post.faults = [ChatGone("blocked")]
    assert await delivery.deliver_due() == 0
    real.move_by(timedelta(days=1))
    assert await delivery.deliver_due() == 0
    assert await delivery.next_due() is None
    async with database.write() as uow:
        await chat_in(uow)
        await uow.commit()
    assert await delivery.deliver_due() == 1


async def test_a_group_that_moved_gets_it_under_its_new_id(
    database: Database, delivery: Delivery, post: Post
) -> None:
    await add(database, NOW)
    post.faults = [ChatGone("migrated", moved_to="-1001")]
    assert await delivery.deliver_due() == 1
    assert [address.chat for address, _ in post.taken] == ["-1001"]


async def test_a_fault_in_one_chat_does_not_hold_up_another(
    database: Database, delivery: Delivery, post: Post
) -> None:
    await add(database, NOW - timedelta(hours=1), chat="1")
    await add(database, NOW, chat="2")
    post.faults = [Unreachable("down")]
    assert await delivery.deliver_due() == 1


async def test_a_process_that_died_while_sending_is_taken_over_and_says_so(
    database: Database, delivery: Delivery, post: Post, real: SimulatedClock
) -> None:
    await add(database, NOW)
    async with database.write() as uow:  # as far as a process got that was killed
        lease = real.now() + timedelta(seconds=60)
        await uow.reminders.claim(
            ("test",), now=NOW, real_now=real.now(), lease_until=lease, owner="dead"
        )
        await uow.commit()
    assert await delivery.deliver_due() == 0
    real.move_by(timedelta(seconds=61))
    assert await delivery.deliver_due() == 1
    ((_, reply),) = post.taken
    assert "had this one before" in reply.text


async def test_a_chat_of_a_messenger_without_courier_waits(
    database: Database, real: SimulatedClock
) -> None:
    await add(database, NOW)
    other = Delivery(database, SimulatedClock(NOW), real)
    assert await other.deliver_due() == 0
    assert await other.next_due() is None
    assert (await the_reminder(database)).state == "due"
