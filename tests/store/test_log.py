"""What keepers told us is only ever added to; what counts is what nothing replaces."""

from __future__ import annotations

from dataclasses import replace
from datetime import UTC, timedelta

import pytest
from sqlalchemy import func, select
from sqlalchemy.exc import IntegrityError

from bot.store.database import Database
from bot.store.log import Entry, Stored
from bot.store.models import EntryRow, ReadingRow
from bot.store.uow import UnitOfWork
from core.message.model import Event, Value
from core.tank import Tank
from tests.store.test_units import NOW, chat_in

KH = Value("kh", 4.0, unit="°dH", canonical=4.0, canonical_unit="°dH")
RANGE = Value("nitrate", None, 20.0, 40.0, canonical=(20.0, 40.0), canonical_unit="mg/L")
ABSENT = Value("nitrite", None, qualifier="<", canonical_unit="mg/L")


def entry(update_id: str, *values: Value, tank_id: int, **changes: object) -> Entry:
    made = Entry(
        update_id,
        "message",
        "as typed",
        NOW,
        author_id="a",
        message_ref=f"m{update_id}",
        readings=tuple(Stored(value, tank_id, NOW) for value in values),
    )
    return replace(made, **changes)  # type: ignore[arg-type]


async def tank_in(uow: UnitOfWork) -> tuple[int, int]:
    chat = await chat_in(uow)
    tank = await uow.tanks.add(chat.id, Tank("Fern"), NOW)
    return chat.id, tank.id


@pytest.mark.parametrize("value", [KH, RANGE, ABSENT], ids=["number", "range", "not detected"])
async def test_a_value_comes_back_as_it_was_told(database: Database, value: Value) -> None:
    async with database.write() as uow:
        _, tank = chat_id, tank_id = await tank_in(uow)
        await uow.log.add(chat_id, entry("1", value, tank_id=tank_id))
        (found,) = await uow.log.readings(tank)
    assert found.what == value
    assert found.at == NOW


async def test_an_event_comes_back_as_it_was_told(database: Database) -> None:
    told = Event("dose", grams=5.0, substance="sodium bicarbonate")
    async with database.write() as uow:
        chat_id, tank_id = await tank_in(uow)
        held = entry("1", tank_id=tank_id, events=(Stored(told, tank_id, NOW),))
        await uow.log.add(chat_id, held)
        (found,) = await uow.log.events(tank_id, kinds=("dose",))
        assert found.what == told
        assert await uow.log.events(tank_id, kinds=("fed",)) == []


async def test_a_replaced_entry_no_longer_counts_and_stays_on_record(database: Database) -> None:
    async with database.write() as uow:
        chat_id, tank_id = await tank_in(uow)
        first = await uow.log.add(chat_id, entry("1", KH, tank_id=tank_id))
        right = replace(KH, value=5.0, canonical=5.0)
        second = await uow.log.add(chat_id, entry("2", right, tank_id=tank_id, replaces=first))
        assert [r.what.value for r in await uow.log.readings(tank_id)] == [5.0]
        assert await uow.session.scalar(select(func.count()).select_from(ReadingRow)) == 2
        followed = await uow.log.current(chat_id, first)
        assert followed is not None
        assert followed.id == second
        by_message = await uow.log.by_message(chat_id, "m1")
        assert by_message is not None
        assert by_message.id == second


async def test_the_latest_entry_is_one_that_still_holds_something(database: Database) -> None:
    async with database.write() as uow:
        chat_id, tank_id = await tank_in(uow)
        first = await uow.log.add(chat_id, entry("1", KH, tank_id=tank_id))
        second = await uow.log.add(chat_id, entry("2", KH, tank_id=tank_id))
        await uow.log.add(chat_id, entry("3", tank_id=tank_id, replaces=second))
        latest = await uow.log.latest(chat_id)
        assert latest is not None
        assert latest.id == first
        assert await uow.log.latest(chat_id, author_id="somebody else") is None


async def test_one_delivery_makes_one_entry(database: Database) -> None:
    async with database.write() as uow:
        chat_id, tank_id = await tank_in(uow)
        await uow.log.add(chat_id, entry("1", KH, tank_id=tank_id))
        with pytest.raises(IntegrityError):
            await uow.log.add(chat_id, entry("1", KH, tank_id=tank_id))


async def test_another_chat_does_not_see_an_entry(database: Database) -> None:
    async with database.write() as uow:
        chat_id, tank_id = await tank_in(uow)
        made = await uow.log.add(chat_id, entry("1", KH, tank_id=tank_id))
        assert await uow.log.get(chat_id + 1, made) is None
        assert await uow.log.current(chat_id + 1, made) is None


async def test_readings_are_ordered_by_when_they_were_measured(database: Database) -> None:
    async with database.write() as uow:
        chat_id, tank_id = await tank_in(uow)
        for number, hours in enumerate((0, -5, 3)):
            told = entry(str(number), KH, tank_id=tank_id)
            at = NOW + timedelta(hours=hours)
            moved = tuple(replace(reading, at=at) for reading in told.readings)
            await uow.log.add(chat_id, replace(told, readings=moved))
        hours_found = [(r.at - NOW) / timedelta(hours=1) for r in await uow.log.readings(tank_id)]
        assert hours_found == [3, 0, -5]
        until = await uow.log.readings(tank_id, until=NOW, limit=1)
        assert [r.at for r in until] == [NOW]
        since = await uow.log.readings(tank_id, since=NOW, analytes=("kh",))
        assert len(since) == 2


async def test_entries_keep_who_said_what_and_when(database: Database) -> None:
    async with database.write() as uow:
        chat_id, tank_id = await tank_in(uow)
        await uow.log.add(chat_id, entry("1", KH, tank_id=tank_id, author_name="Anna"))
        row = await uow.session.scalar(select(EntryRow))
    assert row is not None
    assert (row.text, row.author_name, row.at) == ("as typed", "Anna", NOW.astimezone(UTC))


async def test_the_last_of_each_analyte_however_old(database: Database) -> None:
    async with database.write() as uow:
        chat_id, tank_id = await tank_in(uow)
        for number, (analyte, days) in enumerate([("kh", 90), ("kh", 80), ("ph", 1), ("gh", -1)]):
            value = replace(KH, analyte=analyte, value=float(days), canonical=float(days))
            told = entry(str(number), value, tank_id=tank_id)
            at = NOW - timedelta(days=days)
            moved = tuple(replace(reading, at=at) for reading in told.readings)
            await uow.log.add(chat_id, replace(told, readings=moved))
        found = await uow.log.last_of_each(tank_id, ("kh", "ph", "gh"), until=NOW)
    assert {reading.what.analyte: reading.what.value for reading in found} == {"kh": 80, "ph": 1}
