"""The contract of a unit of work, the same on both engines."""

from __future__ import annotations

import asyncio
from datetime import UTC, datetime, timedelta
from typing import Any

import aiosqlite
import pytest
from sqlalchemy import text
from sqlalchemy.exc import IntegrityError, StatementError

from bot.chat import off_record, open_told, replanned
from bot.chat.calls_kept import CALLED, EASED
from bot.chat.model import Address
from bot.store.chats import Chat, NewChat
from bot.store.database import Database
from bot.store.offers import BAG, STANDING, Offer
from bot.store.uow import UnitOfWork
from core.tank import Tank

NOW = datetime(2026, 3, 1, 12, tzinfo=UTC)
HERE = Address("test", "1")


async def chat_in(uow: UnitOfWork, address: Address = HERE) -> Chat:
    return await uow.chats.ensure(address, group=False, new=NewChat(), now=NOW)


async def test_what_is_not_committed_is_rolled_back(database: Database) -> None:
    async with database.write() as uow:
        await chat_in(uow)
    async with database.read() as uow:
        assert await uow.chats.find(HERE) is None


async def test_an_error_after_writing_rolls_back(database: Database) -> None:
    async def fail() -> None:
        async with database.write() as uow:
            chat = await chat_in(uow)
            await uow.tanks.add(chat.id, Tank("Fern"), NOW)
            raise ZeroDivisionError

    with pytest.raises(ZeroDivisionError):
        await fail()
    async with database.read() as uow:
        assert not await uow.tanks.any_at_all()


async def test_what_is_committed_is_found_again(database: Database) -> None:
    async with database.write() as uow:
        chat = await chat_in(uow)
        await uow.tanks.add(chat.id, Tank("Fern", volume_l=90.0), NOW)
        await uow.commit()
    async with database.read() as uow:
        (found,) = await uow.tanks.of_chat(chat.id)
        assert (found.name, found.tank.volume_l, found.tank.kind) == ("Fern", 90.0, "fresh")


async def test_counting_side_by_side_loses_nothing(database: Database) -> None:
    """8 tasks of 30 increments: read, then write, in one unit about one chat."""
    async with database.write() as uow:
        chat = await chat_in(uow)
        tank = await uow.tanks.add(chat.id, Tank("Fern", volume_l=0.0), NOW)
        await uow.commit()

    async def count() -> None:
        for _ in range(30):
            async with database.write() as uow:
                await chat_in(uow)
                held = await uow.tanks.get(tank.id)
                volume = held.tank.volume_l
                assert volume is not None
                await uow.tanks.change(tank.id, volume_l=volume + 1.0)
                await uow.commit()

    await asyncio.gather(*(count() for _ in range(8)))
    async with database.read() as uow:
        assert (await uow.tanks.get(tank.id)).tank.volume_l == 240.0


async def test_a_new_chat_met_twice_at_once_is_made_once(database: Database) -> None:
    async def meet() -> int:
        async with database.write() as uow:
            chat = await chat_in(uow)
            await uow.commit()
            return chat.id

    assert len(set(await asyncio.gather(*(meet() for _ in range(8))))) == 1


async def test_a_naive_moment_is_refused(database: Database) -> None:
    async with database.write() as uow:
        chat = await chat_in(uow)
        with pytest.raises(StatementError, match="without a zone"):
            await uow.tanks.add(chat.id, Tank("Fern"), datetime(2026, 3, 1))  # noqa: DTZ001


async def test_moments_come_back_aware_and_equal(database: Database) -> None:
    moment = datetime.fromisoformat("2026-03-29T02:30:00.123456+02:00")
    async with database.write() as uow:
        chat = await chat_in(uow)
        await uow.chats.change(chat.id, paused_until=moment)
        await uow.commit()
    async with database.read() as uow:
        found = await uow.chats.find(HERE)
    assert found is not None
    assert found.paused_until == moment
    assert found.paused_until.utcoffset() == UTC.utcoffset(None)


async def test_a_chat_that_was_gone_is_back_when_it_speaks(database: Database) -> None:
    async with database.write() as uow:
        await chat_in(uow)
        await uow.chats.leave(HERE, None, NOW)
        await uow.commit()
    async with database.write() as uow:
        gone = await uow.chats.find(HERE)
        assert gone is not None
        assert gone.gone_at == NOW
        assert (await chat_in(uow)).gone_at == NOW
        assert (await chat_in(uow)).gone_at is None


async def test_a_group_that_moved_keeps_all_it_has(database: Database) -> None:
    async with database.write() as uow:
        chat = await chat_in(uow)
        await uow.chats.leave(HERE, "-100", NOW)
        await uow.commit()
    async with database.write() as uow:
        assert (await chat_in(uow, Address("test", "-100"))).id == chat.id


async def test_sqlite_is_waited_for_on_its_thread_and_only_there(
    database: Database, monkeypatch: pytest.MonkeyPatch
) -> None:
    if not database.is_sqlite:
        pytest.skip("asyncpg has no thread")
    trips: list[object] = []
    crossing = aiosqlite.Connection._execute

    async def counted(self: aiosqlite.Connection, step: Any, *rest: Any, **named: Any) -> Any:
        trips.append(step)
        return await crossing(self, step, *rest, **named)

    async with database.write() as uow:
        await chat_in(uow)
        await uow.commit()
    monkeypatch.setattr(aiosqlite.Connection, "_execute", counted)
    async with database.write() as uow:
        assert len(trips) == 1  # BEGIN IMMEDIATE
        assert await uow.chats.find(HERE) is not None
        await uow.session.execute(text("UPDATE chats SET language = 'fr'"))
        assert len(trips) == 1
        await uow.commit()
        assert len(trips) == 2
    async with database.read() as uow:
        assert await uow.chats.find(HERE) is not None
        assert len(trips) == 3  # BEGIN; leaving takes it back with another


async def test_an_engine_error_keeps_its_kind_and_the_unit_goes_on(database: Database) -> None:
    async with database.write() as uow:
        chat = await chat_in(uow)
        await uow.tanks.add(chat.id, Tank("Fern"), NOW)
        with pytest.raises(IntegrityError):
            async with uow.session.begin_nested():
                await uow.tanks.add(chat.id, Tank("Fern"), NOW)
        assert [tank.name for tank in await uow.tanks.of_chat(chat.id)] == ["Fern"]


async def test_latest_offers_are_read_again_once_one_changes(database: Database) -> None:
    async with database.write() as uow:
        chat = await chat_in(uow)
        first = await uow.offers.add(chat.id, Offer((), NOW, expects="volume"))
        assert [offer.id for offer in await uow.offers.latest(chat.id, 3)] == [first]
        second = await uow.offers.add(chat.id, Offer((), NOW, expects="volume"))
        assert [offer.id for offer in await uow.offers.latest(chat.id, 3)] == [second, first]
        await uow.offers.close(second)
        assert [offer.expects for offer in await uow.offers.latest(chat.id)] == [None, "volume"]
        assert await uow.offers.take(first, "done")
        assert [offer.used for offer in await uow.offers.latest(chat.id, 2)] == [None, "done"]


async def test_writing_is_counted_and_reading_is_not(database: Database) -> None:
    """What was read at the same count still holds, so that no way of writing may escape it."""
    async with database.write() as uow:
        chat = await chat_in(uow)
        tank = await uow.tanks.add(chat.id, Tank("Fern", volume_l=90.0), NOW)
        offer = await uow.offers.add(chat.id, Offer((), NOW))
        for wrote in (
            lambda: uow.tanks.add(chat.id, Tank("Quarry"), NOW),
            lambda: uow.tanks.change(tank.id, volume_l=80.0),
            lambda: uow.offers.add(chat.id, Offer((), NOW, context={"called": {"tank": None}})),
            lambda: uow.offers.take(offer, "ok"),
            lambda: uow.offers.pass_by(offer),
        ):
            before = uow.writes
            await wrote()
            assert uow.writes > before
        before = uow.writes
        await uow.tanks.of_chat(chat.id)
        await uow.offers.latest(chat.id, 40)
        await uow.log.stock(tank.id, until=NOW)
        await uow.offers.add(chat.id, Offer((), NOW))  # which keeps nothing that stands
        assert uow.writes == before


async def test_what_stands_is_found_behind_any_number_of_replies(database: Database) -> None:
    async with database.write() as uow:
        chat = await chat_in(uow)
        assert await uow.offers.told_of(chat.id, "called") == []
        await uow.offers.add(chat.id, Offer((), NOW, context={"called": {"tank": 1}}))
        for _ in range(5):
            await uow.offers.add(chat.id, Offer((), NOW, context={"called": None, "asked": {}}))
        later = NOW + timedelta(hours=1)
        await uow.offers.add(chat.id, Offer((), later, context={"eased": {"tank": 1}}))
        stands = await uow.offers.told_in_order(chat.id, ["called", "eased"])
        assert stands == [("eased", later, {"tank": 1}), ("called", NOW, {"tank": 1})]
        await uow.offers.set_aside(chat.id, "called", 1)
        assert await uow.offers.told_of(chat.id, "called") == []
        with pytest.raises(KeyError):
            await uow.offers.told_of(chat.id, "asked")


def test_all_that_the_chat_keeps_so_stands() -> None:
    kept = {CALLED, EASED, off_record.NAMELESS, open_told.TOLD, replanned.RESIZED, BAG}
    assert kept == STANDING
