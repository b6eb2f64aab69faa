"""Whether a filter is ready for animals (common practice, no source)."""

from __future__ import annotations

from datetime import timedelta

import pytest

from core.advice.readiness import ready
from core.advice.state import State
from tests.core.advice.waters import NOON, done, read, state, tank


def clear(*days_ago: float) -> list[object]:
    return [read(each, 0.0, day) for day in days_ago for each in ("ammonia", "nitrite")]


PEAK = [read("ammonia", 2.0, 20.0), read("nitrite", 1.0, 12.0)]
SOFTLY = [read("ammonia", 0.5), read("nitrite", 0.0), read("ph", 6.5)]
TOLD = {
    "ammonia is there": (
        state(read("ammonia", 1.0), read("nitrite", 0.0), read("ph", 8.2)),
        "poison",
    ),
    "nitrite is there": (state(read("ammonia", 0.0), read("nitrite", 0.5)), "poison"),
    "too little of it to be a poison": (
        state(
            read("ammonia", 0.5), read("nitrite", 0.0), read("ph", 6.5), began=NOON - timedelta(9)
        ),
        "cycling",
    ),
    "nothing was measured": (state(), "unmeasured"),
    "one of the two": (state(read("ammonia", 0.0)), "unmeasured"),
    "zeros of long ago": (state(*clear(30.0)), "unmeasured"),  # type: ignore[arg-type]
    "zeros without a peak": (state(*clear(3.0, 0.0)), "unproven"),  # type: ignore[arg-type]
    "twice clear after a peak": (
        state(*PEAK, *clear(3.0, 0.0), began=NOON - timedelta(21)),  # type: ignore[arg-type]
        "cycled",
    ),
    "once clear after a peak": (
        state(*PEAK, *clear(0.0), began=NOON - timedelta(21)),  # type: ignore[arg-type]
        "unproven",
    ),
    "animals live in it": (
        state(*clear(1.0), of=tank("neon tetra"), events=[done("added", 40.0)]),  # type: ignore[arg-type]
        "settled",
    ),
    "animals came after the test": (
        state(*clear(2.0), of=tank("neon tetra"), events=[done("added", 1.0)]),  # type: ignore[arg-type]
        "unmeasured",
    ),
    "animals in a tank of last week": (
        state(*clear(0.0), of=tank("neon tetra"), began=NOON - timedelta(7)),  # type: ignore[arg-type]
        "unproven",
    ),
}


@pytest.mark.parametrize(("of", "verdict"), TOLD.values(), ids=TOLD.keys())
def test_zeros_count_only_with_proof(of: State, verdict: str) -> None:
    found = ready(of)
    assert found.verdict == verdict
    assert (found.finding is not None) == (verdict in {"poison", "cycling"})
    assert bool(found.missing) == (verdict == "unmeasured")
