"""One terminal chat a SQLite file: a second one is told so."""

from __future__ import annotations

import os
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from bot.starting import StartError

if sys.platform == "win32":
    import msvcrt
else:
    import fcntl


class DatabaseBusy(StartError):
    """Another terminal chat holds the file."""

    def __init__(self, path: Path) -> None:
        self.path = path
        super().__init__(f"another chat has {path} open; close it, or give another --database")


@contextmanager
def held(path: Path) -> Iterator[None]:
    """Hold a database file for this process while the block runs.

    The lock is the operating system's, on a file beside the database, so that it ends with the
    process however that ends; a file left behind by a kill is no obstacle. It is not on the
    database itself, where it would get in the way of SQLite's own locks.

    Raises
    ------
    DatabaseBusy
        If another process holds it.
    """
    real = path.resolve()
    side = real.with_name(f"{real.name}-lock")
    descriptor = _take(side, path)
    try:
        yield
    finally:
        if sys.platform != "win32":  # where an open file cannot be removed: there it stays
            side.unlink(missing_ok=True)  # still under the lock, so that nobody else's goes
        os.close(descriptor)


def _take(side: Path, database: Path) -> int:
    """Lock the side file, and be sure that it is still the one that has this name."""
    while True:
        descriptor = os.open(side, os.O_RDWR | os.O_CREAT, 0o600)
        try:
            _lock(descriptor)
            if _is_still(descriptor, side):
                return descriptor
        except OSError as error:
            os.close(descriptor)
            if isinstance(error, BlockingIOError | PermissionError):
                raise DatabaseBusy(database) from None
            raise
        os.close(descriptor)  # its holder removed it between our opening and our locking


def _lock(descriptor: int) -> None:
    if sys.platform == "win32":
        msvcrt.locking(descriptor, msvcrt.LK_NBLCK, 1)
    else:
        fcntl.flock(descriptor, fcntl.LOCK_EX | fcntl.LOCK_NB)


def _is_still(descriptor: int, side: Path) -> bool:
    try:
        return os.path.samestat(os.fstat(descriptor), side.stat())
    except FileNotFoundError:
        return False
