"""The inbox table on both engines: kept once, in order, under a lease."""

from __future__ import annotations

import asyncio
from datetime import UTC, datetime, timedelta

from sqlalchemy import func, select

from bot.clock import SimulatedClock
from bot.inbox.model import Arrival, Job
from bot.inbox.rows import LEASE, Inbox, NotMine
from bot.inbox.statements import SUSPECT
from bot.store.database import Database
from bot.store.models import InboxRow
from tests.inbox.fakes import MESSENGER, arrival

START = datetime(2026, 3, 1, 12, tzinfo=UTC)
SECOND = timedelta(seconds=1)


def _inbox(database: Database, clock: SimulatedClock, owner: str = "one") -> Inbox:
    return Inbox(database, clock, messenger=MESSENGER, owner=owner)


def _ids(jobs: list[Job]) -> list[str]:
    return [job.update_id for job in jobs]


async def _row(database: Database, update_id: str) -> InboxRow:
    async with database.read() as uow:
        found = await uow.session.scalars(select(InboxRow).where(InboxRow.update_id == update_id))
        return found.one()


async def test_an_update_is_kept_once(database: Database) -> None:
    inbox = _inbox(database, SimulatedClock(START))
    batch = [arrival(1, "a"), arrival(2, "b"), arrival(1, "a")]
    assert await inbox.receive(batch) == 2
    assert await inbox.receive(batch) == 0
    other = Inbox(database, SimulatedClock(START), messenger="other", owner="one")
    assert await other.receive(batch[:1]) == 1, "another messenger numbers for itself"
    assert await inbox.counts() == {"waiting": 2}


async def test_a_chat_has_one_row_out_at_a_time_the_oldest(database: Database) -> None:
    inbox = _inbox(database, SimulatedClock(START))
    await inbox.receive([arrival(1, "a"), arrival(2, "a"), arrival(3, "b"), arrival(4, "c")])
    first = await inbox.claim(2)
    assert _ids(first) == ["1", "3"]
    assert _ids(await inbox.claim(10)) == ["4"]
    assert await inbox.claim(10) == []
    await inbox.answered(first[0], 1)
    assert _ids(await inbox.claim(10)) == ["2"]


async def test_a_lease_that_ran_out_is_taken_by_another(database: Database) -> None:
    clock = SimulatedClock(START)
    dead, alive = _inbox(database, clock, "dead"), _inbox(database, clock, "alive")
    await dead.receive([arrival(1, "a")])
    (lost,) = await dead.claim(1)
    clock.move_by(LEASE - SECOND)
    assert await alive.claim(1) == []
    clock.move_by(SECOND)
    (found,) = await alive.claim(1)
    assert (found.update_id, found.attempts, found.interrupted) == ("1", 2, True)
    await dead.answered(lost, 1)
    assert (await _row(database, "1")).state == "taken", "a settled row of somebody else"
    await alive.answered(found, 1)
    assert (await _row(database, "1")).state == "answered"


async def test_a_renewed_lease_holds(database: Database) -> None:
    clock = SimulatedClock(START)
    inbox, other = _inbox(database, clock), _inbox(database, clock, "other")
    await inbox.receive([arrival(1, "a")])
    (job,) = await inbox.claim(1)
    for _ in range(4):
        clock.move_by(LEASE - SECOND)
        await inbox.renew([job.id])
        assert await other.claim(1) == []


async def test_replies_written_by_one_who_lost_the_row_are_refused(database: Database) -> None:
    clock = SimulatedClock(START)
    slow, quick = _inbox(database, clock, "slow"), _inbox(database, clock, "quick")
    await slow.receive([arrival(1, "a")])
    (job,) = await slow.claim(1)
    clock.move_by(LEASE)
    await quick.claim(1)
    refused = False
    async with database.write() as uow:
        try:
            await slow.note_handled(uow, job, "[]")
        except NotMine:
            refused = True
    assert refused
    try:
        await slow.note_sent(job, 1)
    except NotMine:
        return
    raise AssertionError("a progress was noted by one who lost the row")


async def test_a_handled_row_comes_back_with_its_replies(database: Database) -> None:
    clock = SimulatedClock(START)
    inbox = _inbox(database, clock)
    await inbox.receive([arrival(1, "a")])
    (job,) = await inbox.claim(1)
    async with database.write() as uow:
        await inbox.note_handled(uow, job, "kept")
        await uow.commit()
    await inbox.note_sent(job, 2)
    clock.move_by(LEASE)
    (again,) = await inbox.claim(1)
    assert (again.replies, again.sent, again.interrupted) == ("kept", 2, True)


async def test_a_row_put_back_waits_its_time_and_keeps_its_chat_in_order(
    database: Database,
) -> None:
    clock = SimulatedClock(START)
    inbox = _inbox(database, clock)
    await inbox.receive([arrival(1, "a"), arrival(2, "a")])
    (job,) = await inbox.claim(5)
    await inbox.postpone(job, timedelta(seconds=40), in_doubt=False)
    clock.move_by(timedelta(seconds=39))
    assert await inbox.claim(5) == []
    clock.move_by(SECOND)
    (again,) = await inbox.claim(5)
    assert (again.update_id, again.interrupted) == ("1", False)
    await inbox.postpone(again, SECOND, in_doubt=True)
    clock.move_by(SECOND)
    assert (await inbox.claim(5))[0].interrupted


async def test_an_unreadable_update_is_parked_and_holds_nobody_up(database: Database) -> None:
    inbox = _inbox(database, SimulatedClock(START))
    await inbox.receive([Arrival("1", "", "{", "no JSON"), Arrival("2", "", "[", "no JSON")])
    await inbox.receive([arrival(3, "a")])
    assert _ids(await inbox.claim(5)) == ["3"]
    row = await _row(database, "1")
    assert (row.state, row.raw, row.error) == ("parked", "{", "no JSON")


async def test_letting_go_frees_what_one_holds_and_release_frees_the_dead(
    database: Database,
) -> None:
    clock = SimulatedClock(START)
    one, two = _inbox(database, clock, "one"), _inbox(database, clock, "two")
    await one.receive([arrival(1, "a"), arrival(2, "b")])
    await one.claim(1)
    await one.let_go()
    assert _ids(await two.claim(1)) == ["1"]
    assert await two.release_all() == 0, "its own rows are not a dead owner's"
    assert await one.release_all() == 1
    assert _ids(await one.claim(5)) == ["1", "2"]


async def test_being_taken_beside_a_deadly_message_is_not_held_against_a_row(
    database: Database,
) -> None:
    clock = SimulatedClock(START)
    inbox = _inbox(database, clock)
    await inbox.receive([arrival(1, "a"), arrival(2, "b")])
    for crash in range(1, 40):
        jobs = await inbox.claim(5)
        assert [job.attempts for job in jobs] == [min(crash, SUSPECT)] * 2
        clock.move_by(LEASE)
    tried = await inbox.count_trial((await inbox.claim(5))[0])
    clock.move_by(LEASE)
    assert [job.attempts for job in await inbox.claim(5)] == [SUSPECT + 1, SUSPECT]
    assert tried.attempts == SUSPECT + 1


async def test_pruning_forgets_only_what_was_answered_long_ago(database: Database) -> None:
    clock = SimulatedClock(START)
    inbox = _inbox(database, clock)
    await inbox.receive([arrival(number, str(number)) for number in range(1, 5)])
    old, parked, _ = await inbox.claim(3)
    await inbox.answered(old, 1)
    await inbox.park(parked, "reference")
    clock.move_by(timedelta(days=3))
    (young,) = [job for job in await inbox.claim(9) if job.update_id == "4"]
    await inbox.answered(young, 1)
    assert await inbox.prune(clock.now() - timedelta(days=1)) == 1
    assert await inbox.counts() == {"answered": 1, "parked": 1, "taken": 1}


async def test_claimers_side_by_side_never_take_the_same_row(database: Database) -> None:
    clock = SimulatedClock(START)
    chats = 12
    owners = [_inbox(database, clock, f"owner {number}") for number in range(4)]
    batch = [arrival(number, f"chat {number % chats}") for number in range(60)]
    await owners[0].receive(batch)
    order: dict[str, list[int]] = {}

    async def work(inbox: Inbox) -> None:
        idle = 0
        while idle < 10:
            jobs = await inbox.claim(3)
            idle = 0 if jobs else idle + 1
            for job in jobs:
                order.setdefault(job.chat, []).append(int(job.update_id))
                await inbox.answered(job, 1)

    await asyncio.gather(*(work(inbox) for inbox in owners))
    assert sum(map(len, order.values())) == len(batch)
    assert all(numbers == sorted(set(numbers)) for numbers in order.values())
    async with database.read() as uow:
        most = await uow.session.scalar(select(func.max(InboxRow.attempts)))
    assert most == 1
