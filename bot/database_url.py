"""Where the database is: the forms of its URL, and a SQLite file that only its owner reads."""

from __future__ import annotations

import os
import re
from importlib.util import find_spec
from pathlib import Path

from bot.starting import StartError

SQLITE = "sqlite+aiosqlite"
POSTGRES = "postgresql+asyncpg"
FORMS = "sqlite:///path/to/file.sqlite3 or postgresql://user@host/name"

_SCHEMES = {
    "sqlite": SQLITE,
    SQLITE: SQLITE,
    "postgresql": POSTGRES,
    "postgres": POSTGRES,
    POSTGRES: POSTGRES,
}


class DatabaseUrlError(StartError, ValueError):
    """A database URL that cannot be used; the message never repeats a password."""


def async_url(url: str) -> str:
    """Turn a database URL as people write it into the one of our drivers.

    Raises
    ------
    DatabaseUrlError
        If it is of another form, of a database in memory, or of a driver that is not installed.
    """
    scheme, separator, rest = url.strip().partition("://")
    driver = _SCHEMES.get(scheme.lower())
    if not separator or driver is None:
        raise DatabaseUrlError(f"a database URL looks like {FORMS}{_meant_a_file(url)}")
    if driver == SQLITE:
        return f"{SQLITE}:///{_sqlite_path(rest)}"
    if find_spec("asyncpg") is None:
        raise DatabaseUrlError("PostgreSQL needs the extra: pip install 'meniscus[postgres]'")
    # libpq's word for it; asyncpg knows the same values under another name
    return f"{POSTGRES}://{re.sub(r'(?<=[?&])sslmode=', 'ssl=', rest)}"


def sqlite_file(url: str) -> Path | None:
    """Give the file of a SQLite URL in our driver's form; None for PostgreSQL."""
    prefix = f"{SQLITE}:///"
    return Path(url.removeprefix(prefix)) if url.startswith(prefix) else None


def file_url(path: Path) -> str:
    """Give the URL, in our driver's form, of a SQLite file."""
    return f"{SQLITE}:///{path.as_posix()}"


def data_folder() -> Path:
    """Give the user's data folder for this program, made for its owner alone.

    Raises
    ------
    DatabaseUrlError
        If it cannot be made.
    """
    import platformdirs  # not needed where --database is given

    folder = platformdirs.user_data_path("meniscus", appauthor=False)
    try:
        folder.mkdir(mode=0o700, parents=True, exist_ok=True)
    except OSError as error:
        raise DatabaseUrlError(
            f"the data folder {folder} cannot be made ({error.strerror}); give --database"
        ) from error
    return folder


def default_url() -> str:
    """Give the URL of the SQLite file in the user's data folder."""
    return file_url(data_folder() / "meniscus.sqlite3")


def prepare(url: str) -> None:
    """Make the file of a SQLite URL, readable by its owner alone, unless it is there.

    SQLite gives its ``-wal`` and ``-shm`` files the permissions of the main file.

    Raises
    ------
    DatabaseUrlError
        If the file cannot be made or opened for writing.
    """
    path = sqlite_file(url)
    if path is None:
        return
    try:
        os.close(os.open(path, os.O_RDWR | os.O_CREAT, 0o600))
    except OSError as error:
        raise DatabaseUrlError(
            f"the database file {path} cannot be opened: {error.strerror}"
        ) from error


def _sqlite_path(rest: str) -> str:
    path, question, options = rest.partition("?")
    text = path.removeprefix("/")
    if not text or ":memory:" in text or "mode=memory" in options:
        raise DatabaseUrlError(
            "a database in memory would forget every reminder; give a file: sqlite:///file.sqlite3"
        )
    if not path.startswith("/"):
        raise DatabaseUrlError(f"a SQLite URL has three slashes: sqlite:///{path}")
    if question or text.startswith("file:"):
        raise DatabaseUrlError("a SQLite URL takes no options: sqlite:///path/to/file.sqlite3")
    return Path(text).expanduser().as_posix() if text.startswith("~") else text


def _meant_a_file(url: str) -> str:
    looks_like_one = "://" not in url and url.endswith((".db", ".sqlite", ".sqlite3"))
    return f"; for the file {url} it is sqlite:///{url}" if looks_like_one else ""
