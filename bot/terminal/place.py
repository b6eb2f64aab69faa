"""The database that a terminal chat talks on: the keeper's own, or one that ends with it."""

from __future__ import annotations

import sys
import tempfile
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from bot.database_url import file_url, prepare, sqlite_file
from bot.terminal.lock import held


@contextmanager
def own_database(url: str | None) -> Iterator[str]:
    """Hold a database for this chat alone while the block runs, and give its URL.

    Parameters
    ----------
    url : str or None
        The keeper's database in our drivers' form. None: a temporary file, which is named on
        standard error and removed at the end with all that SQLite put beside it.

    Raises
    ------
    DatabaseBusy
        If another terminal chat holds the SQLite file.
    StartError
        If the file cannot be made.
    """
    if url is None:
        with tempfile.TemporaryDirectory(prefix="meniscus-") as folder:
            path = Path(folder) / "chat.sqlite3"
            sys.stderr.write(f"Temporary database {path}, removed at the end.\n")
            yield file_url(path)
        return
    path_or_none = sqlite_file(url)
    if path_or_none is None:  # PostgreSQL serves many at once
        yield url
        return
    prepare(url)
    with held(path_or_none):
        yield url
