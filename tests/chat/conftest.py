from __future__ import annotations

from collections.abc import AsyncIterator
from pathlib import Path

import pytest

from tests.chat.harness import Talk, talking


@pytest.fixture
async def talk(request: pytest.FixtureRequest, tmp_path: Path) -> AsyncIterator[Talk]:
    async with talking(tmp_path, remembering=_is_as_built(request)) as opened:
        yield opened


@pytest.fixture
async def group(request: pytest.FixtureRequest, tmp_path: Path) -> AsyncIterator[Talk]:
    async with talking(tmp_path, group=True, remembering=_is_as_built(request)) as opened:
        yield opened


def _is_as_built(request: pytest.FixtureRequest) -> bool:
    """Whether a test leaves the house unpatched, so that it answers as in any other."""
    return "monkeypatch" not in request.fixturenames
