"""Findings for one reading of a tank with five years of history, kept well and neglected.

Six analytes measured each day, a change a week, animals on record. Prints the median and the
95th percentile beside a plain pass over the same readings, and how long the first look at the
animals' table takes in a fresh interpreter. Run:
python -m tests.bench.findings_speed [RUNS]
"""

from __future__ import annotations

import random
import statistics
import subprocess
import sys
import time
from collections.abc import Callable, Mapping
from dataclasses import replace
from datetime import timedelta

from core.advice._slopes import pooled_slope
from core.advice.findings import find
from core.advice.state import Happening, Measured, State, newest
from core.message.model import Event
from core.tank import Stock, Tank
from tests.core.advice.waters import NOON, by_kit

DAYS = 5 * 365
VALUES = {"temperature": 25.0, "ph": 7.1, "kh": 5.0, "gh": 8.0, "nitrate": 20.0, "ammonia": 0.0}
NEGLECTED = VALUES | {"ph": 6.2, "kh": 2.0, "nitrate": 120.0}
STOCK = ("neon tetras", "corydoras", "amano shrimps", "anubias", "ancistrus")


def five_years(chance: random.Random, values: Mapping[str, float] = VALUES) -> State:
    """A tank with its history, somewhat noisy."""
    history: dict[str, tuple[Measured, ...]] = {
        analyte: tuple(
            by_kit(analyte, round(value + chance.gauss(0.0, 0.05) * value, 1), float(ago))
            for ago in range(DAYS)
        )
        for analyte, value in values.items()
    }
    events = tuple(
        Happening(NOON - timedelta(days=7 * week, hours=2), Event("water_change", percent=30.0))
        for week in range(DAYS // 7)
    )
    latest = newest(reading for told in history.values() for reading in told)
    tank = Tank("Fern", volume_l=90.0, stock=tuple(Stock(name, 6) for name in STOCK))
    source = {"kh": by_kit("kh", 8), "ph": by_kit("ph", 7.6), "gh": by_kit("gh", 12)}
    return State(tank, NOON, latest, history["ph"][1:40], history, events, source)


def timed(act: Callable[[], object], runs: int) -> tuple[list[float], list[float]]:
    """Milliseconds of each run by the clock and of this process alone, each in order of size."""
    spent, worked = [], []
    for _ in range(runs):
        pooled_slope.cache_clear()  # each message brings a new reading
        start, begun = time.perf_counter(), time.process_time()
        act()
        worked.append((time.process_time() - begun) * 1000.0)
        spent.append((time.perf_counter() - start) * 1000.0)
    return sorted(spent), sorted(worked)


FIRST_LOOK = (
    "import time; from core.advice.findings import find; from core.advice.livestock import lookup;"
    " start = time.perf_counter(); lookup('neon tetras'); print(time.perf_counter() - start)"
)


def first_look() -> float:
    """Milliseconds of the first name looked up in a process of its own, the least of five."""
    run = [sys.executable, "-c", FIRST_LOOK]
    said = [subprocess.run(run, capture_output=True, check=True, text=True) for _ in range(5)]
    return min(float(one.stdout) for one in said) * 1000.0


def main() -> None:
    """Measure and print."""
    runs = int(sys.argv[1]) if len(sys.argv) > 1 else 200
    state = five_years(random.Random(5))  # noqa: S311 - invented data
    neglected = five_years(random.Random(6), NEGLECTED)  # noqa: S311 - invented data
    told = frozenset(VALUES)
    print(f"first look at the table, fresh interpreter: {first_look():.1f} ms")
    assert "neglected" in {finding.id for finding in find(neglected, told)}
    find(state, told)
    for what, act in (
        ("findings, all told", lambda: find(state, told)),
        ("findings, all told, neglected", lambda: find(neglected, told)),
        ("findings, kh told", lambda: find(state, frozenset({"kh"}))),
        ("findings, without history", lambda: find(replace(state, history={}), told)),
        ("one pass over the history", lambda: [sum(r.value for r in told_) for told_ in
                                               state.history.values()]),
    ):  # fmt: skip
        told_of = [
            f"median {statistics.median(each):.2f} ms, 95 % under {each[int(0.95 * runs)]:.2f} ms"
            for each in timed(act, runs)
        ]
        print(f"{what}: {told_of[0]}; of the process alone {told_of[1]}")


if __name__ == "__main__":
    main()
