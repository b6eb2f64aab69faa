"""The migrated schema is the models' schema, and upgrading is safe to do twice at once."""

from __future__ import annotations

import asyncio
from typing import Any

import pytest
from alembic import command
from alembic.autogenerate import compare_metadata
from alembic.migration import MigrationContext
from alembic.script import ScriptDirectory
from sqlalchemy import Connection, text
from sqlalchemy.engine import URL

from bot.store.database import Database
from bot.store.migrate import HEAD, NewerSchema, bring_up_to_date, config
from bot.store.models import Base


def differences(connection: Connection) -> list[Any]:
    context = MigrationContext.configure(connection, opts={"compare_type": True})
    return list(compare_metadata(context, Base.metadata))


async def test_the_migrated_schema_is_that_of_the_models(database: Database) -> None:
    async with database.read() as uow:
        connection = await uow.session.connection()
        assert await connection.run_sync(differences) == []


def test_the_constant_is_the_newest_script() -> None:
    assert ScriptDirectory.from_config(config()).get_current_head() == HEAD


async def test_two_that_start_together_upgrade_once(url: URL | str) -> None:
    one, other = Database(url), Database(url)
    await asyncio.gather(bring_up_to_date(one), bring_up_to_date(other))
    async with one.read() as uow:
        assert not await uow.tanks.any_at_all()
    await one.close()
    await other.close()


async def test_a_newer_database_is_left_alone(database: Database) -> None:
    async with database.write() as uow:
        await uow.session.execute(text("UPDATE alembic_version SET version_num = '9999'"))
        await uow.commit()
    with pytest.raises(NewerSchema) as caught:
        await bring_up_to_date(database)
    assert caught.value.revision == "9999"


def to_revision(connection: Connection, revision: str) -> None:
    alembic = config()
    alembic.attributes["connection"] = connection
    command.upgrade(alembic, revision)


async def test_what_stood_before_the_index_stands_after_it(url: URL | str) -> None:
    """A call for help of yesterday is not forgotten by an upgrade."""
    database = Database(url)
    async with database.write() as uow:
        connection = await uow.session.connection()
        await connection.run_sync(to_revision, "0007")
        await uow.session.execute(
            text(
                "INSERT INTO chats (messenger, external, is_group, zone, zone_known, fahrenheit,"
                " us_gallons, language, created_at)"
                " VALUES ('test', '1', false, 'UTC', false, false, false, 'en', CURRENT_TIMESTAMP)"
            )
        )
        for payload in ('{"context": {"called": {"tank": 1}}}', '{"context": {}}'):
            await uow.session.execute(
                text(
                    "INSERT INTO offers (chat_id, made_at, payload)"
                    " SELECT id, CURRENT_TIMESTAMP, CAST(:payload AS JSON) FROM chats"
                    if connection.dialect.name == "postgresql"
                    else "INSERT INTO offers (chat_id, made_at, payload)"
                    " SELECT id, '2026-03-01 12:00:00.000000', :payload FROM chats"
                ),
                {"payload": payload},
            )
        await uow.commit()
    await bring_up_to_date(database)
    async with database.read() as uow:
        chat = (await uow.session.execute(text("SELECT id FROM chats"))).scalar_one()
        assert [held for _, held in await uow.offers.told_of(chat, "called")] == [{"tank": 1}]
    await database.close()
