"""Long conversations, run apart from the rest: `pytest tests/talks`."""

from __future__ import annotations

from tests.chat.conftest import group as group
from tests.chat.conftest import talk as talk
