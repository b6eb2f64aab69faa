"""Claim, settle, give back: the queries that no reminder may be lost between."""

from __future__ import annotations

import asyncio
from datetime import datetime, timedelta

from bot.chat.model import Address
from bot.store.database import Database
from bot.store.reminders import Draft, Reminder
from tests.store.test_units import NOW, chat_in

REAL = NOW
LEASE = REAL + timedelta(minutes=1)


def draft(due: datetime, what: str = "test") -> Draft:
    return Draft(
        what=what,
        kind="test",
        rule="every 7 days at 19:00",
        counts_from_done=True,
        anchor=NOW,
        next_due=due,
        wake_at=due,
        created_at=NOW,
        created_by="Anna",
    )


async def add(database: Database, *dues: datetime, chat: str = "1") -> None:
    async with database.write() as uow:
        held = await chat_in(uow, Address("test", chat))
        for number, due in enumerate(dues):
            await uow.reminders.add(held.id, draft(due, f"task {number}"))
        await uow.commit()


async def claim(database: Database, owner: str, real_now: datetime = REAL) -> list[Reminder]:
    async with database.write() as uow:
        claimed = await uow.reminders.claim(
            ("test",),
            now=NOW,
            real_now=real_now,
            lease_until=real_now + timedelta(minutes=1),
            owner=owner,
        )
        await uow.commit()
    return claimed


async def test_all_that_is_due_in_a_chat_is_claimed_together(database: Database) -> None:
    early, late = NOW - timedelta(hours=2), NOW - timedelta(hours=1)
    await add(database, late, early, NOW + timedelta(seconds=1))
    assert [each.next_due for each in await claim(database, "a")] == [early, late]
    assert await claim(database, "b") == []


async def test_one_claim_is_of_one_chat_the_longest_waiting(database: Database) -> None:
    await add(database, NOW - timedelta(hours=1), chat="1")
    await add(database, NOW - timedelta(hours=2), chat="2")
    first, second = await claim(database, "a"), await claim(database, "a")
    assert [each.chat_id for each in first + second] == [2, 1]


async def test_claimers_side_by_side_never_share(database: Database) -> None:
    for chat in range(12):
        await add(database, NOW - timedelta(minutes=chat), chat=str(chat))

    async def drain(owner: str) -> list[int]:
        taken: list[int] = []
        while claimed := await claim(database, owner):
            taken += [each.id for each in claimed]
        return taken

    drained = await asyncio.gather(*(drain(owner) for owner in "abcd"))
    # One that found every chat locked stops early; what it left is another's.
    everything = sorted(each for taken in drained for each in taken)
    assert everything == sorted(set(everything))
    rest = await drain("e")
    assert len(everything) + len(rest) == 12


async def test_a_spent_lease_is_claimed_again_and_marked(database: Database) -> None:
    await add(database, NOW)
    (first,) = await claim(database, "a")
    assert not first.maybe_repeat
    (again,) = await claim(database, "b", LEASE + timedelta(seconds=1))
    assert again.id == first.id
    assert again.maybe_repeat


async def test_only_the_owner_settles(database: Database) -> None:
    await add(database, NOW)
    (reminder,) = await claim(database, "a")
    following = NOW + timedelta(days=7)
    async with database.write() as uow:
        parts = {"next_due": following, "wake_at": following, "message_ref": "m1"}
        assert not await uow.reminders.settle(reminder, owner="b", **parts)  # type: ignore[arg-type]
        assert await uow.reminders.settle(reminder, owner="a", **parts)  # type: ignore[arg-type]
        assert not await uow.reminders.settle(reminder, owner="a", **parts)  # type: ignore[arg-type]
        await uow.commit()
    async with database.read() as uow:
        held = await uow.reminders.get(reminder.id)
        assert held is not None
        assert (held.state, held.open_due, held.next_due) == ("sent", NOW, following)
        assert await uow.reminders.next_wake(("test",)) == following
        assert await uow.reminders.next_wake(("other",)) is None


async def test_what_was_given_back_waits_for_its_real_time(database: Database) -> None:
    await add(database, NOW)
    (reminder,) = await claim(database, "a")
    not_before = REAL + timedelta(seconds=30)
    async with database.write() as uow:
        assert await uow.reminders.give_back(
            reminder, owner="a", not_before=not_before, maybe_sent=True
        )
        await uow.commit()
    assert await claim(database, "a") == []
    (again,) = await claim(database, "a", not_before)
    assert again.maybe_repeat
    assert again.attempts == 1


async def test_a_parked_or_ended_reminder_is_left_alone(database: Database) -> None:
    await add(database, NOW, NOW)
    parked, ended = await claim(database, "a")
    async with database.write() as uow:
        assert await uow.reminders.park(parked, owner="a")
        await uow.reminders.change(ended.id, ended_at=NOW, state="due")
        await uow.commit()
    assert await claim(database, "b", LEASE + timedelta(days=1)) == []


async def test_a_chat_that_is_gone_is_not_claimed(database: Database) -> None:
    await add(database, NOW)
    async with database.write() as uow:
        await uow.chats.leave(Address("test", "1"), None, NOW)
        await uow.commit()
    assert await claim(database, "a") == []
    async with database.write() as uow:
        await chat_in(uow)
        await uow.commit()
    assert len(await claim(database, "a")) == 1


async def test_what_a_dead_process_was_saying_is_taken_up_at_once(database: Database) -> None:
    await add(database, NOW)
    await claim(database, "dead")
    async with database.write() as uow:
        await uow.reminders.release("other")
        await uow.commit()
    assert await claim(database, "a") == []
    async with database.write() as uow:
        await uow.reminders.release("test")
        await uow.commit()
    (again,) = await claim(database, "a")
    assert again.maybe_repeat
