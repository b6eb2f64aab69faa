"""Which messages tell a sum of dead; words ours."""

from __future__ import annotations

from datetime import UTC, datetime

import pytest

from core.message import parse
from core.message.dead_total import DeadTotal, read
from core.message.model import Context

CONTEXT = Context(now=datetime(2026, 3, 2, 18, tzinfo=UTC))


def _read(text: str) -> DeadTotal | None:
    return read(text, parse(text, CONTEXT))


@pytest.mark.parametrize(
    ("text", "count", "species", "dead", "sure"),
    [
        ("two dead now", 2, None, True, False),
        ("3 dead already", 3, None, True, False),
        ("so 3 dead in all", 3, None, True, True),
        ("thats 3 dead now", 3, None, True, True),
        ("3 neons dead in total", 3, "neons", True, True),
        ("lost 4 altogether", 4, None, True, True),
        ("thats 4 cherry shrimps now", 4, "cherry shrimps", False, True),
        ("that makes four", 4, None, False, True),
        ("das macht 3", 3, None, False, True),
        ("siamo a 3 morti", 3, None, True, True),
    ],
)
def test_a_sum(text: str, count: int, species: str | None, dead: bool, sure: bool) -> None:
    assert _read(text) == DeadTotal(count, species, dead, sure, False)


def test_of_today() -> None:
    told = _read("3 dead in all today")
    assert told is not None
    assert told.today


@pytest.mark.parametrize(
    "text",
    [
        "3 dead",
        "another one dead",
        "2 more died",
        "2 more dead now",
        "2 died just now",
        "3 dead in all?",
        "3 dead in all tanks",
        "3 left in all",
        "6 in total",
        "3 now",
        "6 neons now",
        "its 25 now",
        "kh 3 now",
        "thats 3 days now",
        "if 3 die in all",
        "not 3 dead in all",
    ],
)
def test_no_sum(text: str) -> None:
    assert _read(text) is None
