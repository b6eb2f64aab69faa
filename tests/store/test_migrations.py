"""The migrated schema is the models' schema, and upgrading is safe to do twice at once."""

from __future__ import annotations

import asyncio
from typing import Any

import pytest
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
