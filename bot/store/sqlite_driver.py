"""SQLite's driver for SQLAlchemy, which crosses to the connection's thread only where it may wait.

SQLAlchemy's own adapter crosses over four times for each statement: to open a cursor, to execute,
to fetch and to close. The crossings cost more than our statements, of which a message has a dozen
or two. Waiting is what BEGIN does, for the lock, and COMMIT, for the disk. Within a transaction a
statement waits for nobody: a writer has the lock, and a reader of a write-ahead log needs none.
"""

from __future__ import annotations

import sqlite3
from collections import deque
from collections.abc import Callable
from contextlib import closing
from typing import Any

import aiosqlite
from sqlalchemy.dialects.sqlite.aiosqlite import (
    AsyncAdapt_aiosqlite_connection,
    AsyncAdapt_aiosqlite_cursor,
    AsyncAdapt_aiosqlite_dbapi,
)
from sqlalchemy.util import await_only


class _Cursor(AsyncAdapt_aiosqlite_cursor):
    """What a statement gave, all of it fetched and its cursor closed at once.

    A statement that is left half read would keep its locks; here none ever is.
    """

    __slots__ = ("_outcome",)

    def __init__(self, adapt_connection: AsyncAdapt_aiosqlite_connection) -> None:
        self._adapt_connection = adapt_connection
        self._connection = adapt_connection._connection
        self._rows = deque()
        self._outcome: tuple[Any, int, Any] = (None, -1, None)

    @property
    def description(self) -> Any:
        """Names of the columns; None of a statement without rows."""
        return self._outcome[0]

    @property
    def rowcount(self) -> int:
        """How many rows were changed; -1 where that says nothing."""
        return self._outcome[1]

    @property
    def lastrowid(self) -> Any:
        """Id of the row that was put in last."""
        return self._outcome[2]

    def execute(self, operation: str, parameters: Any = None) -> None:
        """Execute a statement and fetch what it gives."""
        self._run(lambda cursor: cursor.execute(operation, parameters or ()))

    def executemany(self, operation: str, seq_of_parameters: Any) -> None:
        """Execute a statement once for each of several sets of parameters."""
        self._run(lambda cursor: cursor.executemany(operation, seq_of_parameters))

    def close(self) -> None:
        """Drop what was not read; the database's own cursor is closed already."""
        self._rows.clear()

    async def _async_soft_close(self) -> None:
        """Do nothing: nothing is open."""

    def _run(self, step: Callable[[sqlite3.Cursor], object]) -> None:
        driver: Any = self._connection

        def run() -> tuple[list[Any], tuple[Any, int, Any]]:
            with closing(driver._conn.cursor()) as cursor:
                step(cursor)
                rows = cursor.fetchall() if cursor.description else []
                return rows, (cursor.description, cursor.rowcount, cursor.lastrowid)

        try:
            rows, self._outcome = (
                run() if driver.in_transaction else await_only(driver._execute(run))
            )
        except Exception as error:  # noqa: BLE001 - it raises, under the name that callers know
            self._adapt_connection._handle_exception(error)
        self._rows = deque(rows)


class _Connection(AsyncAdapt_aiosqlite_connection):
    __slots__ = ()

    _cursor_cls: Any = _Cursor

    def rollback(self) -> None:
        """Take back what was not committed, without a trip where there is nothing."""
        driver: Any = self._connection
        if driver._connection is not None and driver.in_transaction:
            super().rollback()


class Driver(AsyncAdapt_aiosqlite_dbapi):
    """The module of database functions that an engine is given."""

    def __init__(self) -> None:
        super().__init__(aiosqlite, sqlite3)

    def connect(self, *arguments: Any, **options: Any) -> AsyncAdapt_aiosqlite_connection:
        """Open a connection, with a thread of its own; no two threads are ever in it at once."""
        made = super().connect(*arguments, **{**options, "check_same_thread": False})
        return _Connection(self, made._connection)
