from __future__ import annotations

import gc
from collections.abc import Iterator
from pathlib import Path

import pytest
from hypothesis import settings
from sqlalchemy.engine import URL

from tests.engines import new_postgres_database, postgres_server

settings.register_profile("untimed", settings(), deadline=None)  # speed is of tests/bench
settings.load_profile("untimed")


def pytest_collection_finish() -> None:
    """Leave what was loaded and collected out of the collector's walks: an eighth of all time."""
    gc.collect()
    gc.freeze()
    gc.set_threshold(20_000, 20, 200)


@pytest.fixture(scope="session")
def postgres() -> Iterator[URL]:
    """A PostgreSQL server that lives as long as the tests."""
    yield from postgres_server()


@pytest.fixture(params=["sqlite", "postgresql"])
async def url(request: pytest.FixtureRequest, tmp_path: Path) -> URL | str:
    """An empty database, once on each engine."""
    if request.param == "postgresql":
        return await new_postgres_database(request.getfixturevalue("postgres"))
    return f"sqlite+aiosqlite:///{tmp_path / 'store.sqlite3'}"
