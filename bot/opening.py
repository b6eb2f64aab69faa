"""The application on its database, with what goes wrong there put into words."""

from __future__ import annotations

import gc
import sys
from collections.abc import AsyncIterator
from contextlib import AsyncExitStack, asynccontextmanager
from typing import TYPE_CHECKING, Final

from bot.database_url import prepare, sqlite_file
from bot.starting import StartError

if TYPE_CHECKING:
    from bot.app import App
    from bot.clock import Clock
    from bot.defaults import Defaults


WALKS: Final = (700, 10, 200)
"""When the collector walks through the young, the middle and all objects: through all of them,
20 ms for what is loaded with the first answers, twenty times less often than by default."""


@asynccontextmanager
async def opened(url: str, clock: Clock, defaults: Defaults) -> AsyncIterator[App]:
    """Open the application on a database for as long as the block runs.

    Parameters
    ----------
    url : str
        The database, in our drivers' form (`bot.database_url.async_url`).
    clock : Clock
        What time it is.
    defaults : Defaults
        What a new chat starts with.

    Raises
    ------
    StartError
        If the database cannot be opened: no permission, no such folder, not a database, no
        server, a wrong password, written by a later version.
    """
    from bot.app import App  # SQLAlchemy takes most of a cold start

    prepare(url)
    async with AsyncExitStack() as stack:
        try:
            app = await stack.enter_async_context(App.open(url, clock, defaults))
        except _database_errors() as error:
            place = sqlite_file(url) or "the PostgreSQL database"
            raise StartError(f"{place} cannot be opened: {_first_line(error)}") from error
        gc.freeze()  # the code stays: to walk through all of it would hold up an answer by 0.1 s
        gc.set_threshold(*WALKS)
        yield app


def _database_errors() -> tuple[type[Exception], ...]:
    """Give the errors that drivers raise, without loading a driver that is not in use."""
    from sqlalchemy.exc import SQLAlchemyError  # loaded by the application, as is the next

    from bot.store.migrate import NewerSchema

    asyncpg = sys.modules.get("asyncpg")
    return (SQLAlchemyError, OSError, NewerSchema, *([asyncpg.PostgresError] if asyncpg else []))


def _first_line(error: Exception) -> str:
    cause = getattr(error, "orig", None) or error
    return str(cause).partition("\n")[0] or type(cause).__name__
