from __future__ import annotations

from collections.abc import AsyncIterator
from pathlib import Path

import pytest

from tests.chat.harness import Talk, talking


@pytest.fixture
async def talk(tmp_path: Path) -> AsyncIterator[Talk]:
    async with talking(tmp_path) as opened:
        yield opened


@pytest.fixture
async def group(tmp_path: Path) -> AsyncIterator[Talk]:
    async with talking(tmp_path, group=True) as opened:
        yield opened
