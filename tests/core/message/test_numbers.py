"""Digits, points and commas."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.message import doubts, numbers


@pytest.mark.parametrize(
    ("run", "value", "grouped", "problem"),
    [
        ("7", 7.0, None, None),
        ("7.2", 7.2, None, None),
        ("7,2", 7.2, None, None),
        (".25", 0.25, None, None),
        (",25", 0.25, None, None),
        ("0.25", 0.25, None, None),
        ("1.250", 1.25, 1250.0, None),  # either: the analyte decides
        ("1,250", 1.25, 1250.0, None),
        ("1.234,5", 1234.5, None, None),
        ("1,234.5", 1234.5, None, None),
        ("1'250", 1250.0, None, None),
        ("1.234.567", 1234567.0, None, None),
        ("0.250", 0.25, None, None),  # no thousands begin with a nought
        ("025", None, None, doubts.BAD_NUMBER),
        ("05", None, None, doubts.BAD_NUMBER),
        ("1.2.3", None, None, doubts.BAD_NUMBER),
        ("7,4,8", None, None, doubts.BAD_NUMBER),
        ("9" * 13, None, None, doubts.BAD_NUMBER),
    ],
)
def test_read(run: str, value: float | None, grouped: float | None, problem: str | None) -> None:
    found = numbers.read(run)
    assert (found.value, found.grouped, found.problem) == (value, grouped, problem)


@given(st.text("0123456789.,'", min_size=1, max_size=40))
def test_never_raises_and_never_without_an_answer(run: str) -> None:
    found = numbers.read(run)
    assert (found.value is None) == (found.problem is not None)
