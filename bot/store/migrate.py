"""The schema, brought up to date at the start; Alembic loads only if there is work for it."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

from sqlalchemy import inspect, text

if TYPE_CHECKING:
    from alembic.config import Config
    from sqlalchemy.engine import Connection

    from bot.store.database import Database

HEAD = "0008"
"""The newest revision; a test keeps it equal to the scripts."""

SCRIPTS = Path(__file__).parent / "migrations"

_PG_LOCK = 0x6D656E69
"""Any number of ours: two processes that start together upgrade one after the other."""


async def bring_up_to_date(database: Database) -> None:
    """Upgrade a database to the newest schema, all of it or nothing.

    Raises
    ------
    NewerSchema
        If the database was written by a later version of this program.
    """
    async with database.write() as uow:
        connection = await uow.session.connection()
        await connection.run_sync(_upgrade)
        await uow.commit()


def config() -> Config:
    """Alembic's configuration, made in code: there is no ini file to lose."""
    from alembic.config import Config

    made = Config()
    made.set_main_option("script_location", str(SCRIPTS).replace("%", "%%"))
    return made


class NewerSchema(Exception):
    """The database belongs to a later version of the program.

    Attributes
    ----------
    revision : str
        The revision found in the database.
    """

    def __init__(self, revision: str) -> None:
        self.revision = revision
        super().__init__(f"the database is at revision {revision}, newer than {HEAD}")


def _upgrade(connection: Connection) -> None:
    if connection.dialect.name == "postgresql":
        connection.execute(text("SELECT pg_advisory_xact_lock(:key)"), {"key": _PG_LOCK})
    revision = _revision(connection)
    if revision == HEAD:
        return
    if revision is not None and revision > HEAD:
        raise NewerSchema(revision)
    from alembic import command

    alembic = config()
    alembic.attributes["connection"] = connection
    command.upgrade(alembic, "head")


def _revision(connection: Connection) -> str | None:
    if not inspect(connection).has_table("alembic_version"):
        return None
    found: str | None = connection.scalar(text("SELECT version_num FROM alembic_version"))
    return found
