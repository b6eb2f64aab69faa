"""How often each rule speaks over invented years of plausible tanks, and which talks most.

A dozen kinds of keeper, from careful to forgetful; tests by coarse kits, changes when they
remember. At each test `find` runs as the chat would run it, and `fresh_only` drops repeats.
Run: python -m tests.bench.invented_years [YEARS]
"""

from __future__ import annotations

import random
import sys
from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass, field
from datetime import datetime, timedelta

from bot import demo
from core.advice.findings import Told, find, fresh_only
from core.advice.state import Happening, Measured, State, measured
from core.message import parse
from core.message.model import Context, Event
from core.tank import Stock, Tank
from tests.core.advice.waters import NOON

STEPS = {"kh": 1.0, "gh": 1.0, "ph": 0.2, "nitrate": 5.0, "ammonia": 0.25, "nitrite": 0.1,
         "temperature": 0.5}  # fmt: skip


@dataclass(frozen=True)
class Keeper:
    """A tank and how it is kept: its water, what it uses up a day, test and change rhythm."""

    name: str
    kind: str
    stock: tuple[str, ...]
    source: dict[str, float]
    per_day: dict[str, float]
    test_every: int
    change_every: int
    share: float
    forgets: float = 0.1
    new: bool = False
    tests: tuple[str, ...] = field(default=("ph", "kh", "gh", "nitrate", "temperature"))


SOFT = {"ph": 7.0, "kh": 5.0, "gh": 7.0, "nitrate": 5.0, "temperature": 24.5}
HARD = {"ph": 8.0, "kh": 13.0, "gh": 16.0, "nitrate": 10.0, "temperature": 25.5}
SALT = {"ph": 8.2, "kh": 8.5, "nitrate": 2.0, "temperature": 25.5}
USED = {"kh": -0.05, "nitrate": 1.0, "ph": -0.01}
FULL = ("ph", "kh", "gh", "nitrate", "temperature", "ammonia", "nitrite")

KEEPERS = (
    Keeper("careful, planted", "fresh", ("neon tetra", "corydoras", "amano shrimp"), SOFT, USED,
           7, 7, 0.3),
    Keeper("easy-going community", "fresh", ("guppy", "bronze cory"), HARD | {"kh": 8, "gh": 13},
           USED, 10, 14, 0.3, 0.2),
    Keeper("rift lake", "fresh", ("yellow lab", "rusty cichlid"), HARD, {"nitrate": 1.2,
           "kh": -0.06}, 7, 10, 0.4),
    Keeper("neglected", "fresh", ("zebra danio",), SOFT | {"kh": 8.0, "ph": 7.6},
           {"nitrate": 1.2, "kh": -0.07, "ph": -0.02}, 14, 90, 0.2, 0.4),
    Keeper("goldfish", "fresh", ("goldfish",), HARD | {"kh": 8, "gh": 12, "temperature": 19.0},
           {"nitrate": 1.5, "kh": -0.1}, 7, 7, 0.4, 0.2),
    Keeper("reef", "marine", ("clownfish", "euphyllia"), SALT, {"kh": -0.03, "nitrate": 0.15},
           4, 14, 0.15, tests=("ph", "kh", "nitrate", "temperature")),
    Keeper("new tank", "fresh", ("zebra danio",), SOFT, USED, 3, 7, 0.25, new=True, tests=FULL),
    Keeper("soft water for livebearers", "fresh", ("guppy", "molly"), SOFT | {"kh": 3, "gh": 5},
           USED, 7, 7, 0.3),
    Keeper("topped up with tap", "fresh", ("ancistrus",), SOFT | {"gh": 10, "kh": 7},
           {"gh": 0.08, "nitrate": 0.8}, 10, 45, 0.1, 0.3),
    Keeper("nobody on record", "fresh", (), SOFT, USED, 14, 14, 0.3, 0.3),
)  # fmt: skip


def year(keeper: Keeper, chance: random.Random) -> Iterator[tuple[State, frozenset[str]]]:
    """The states at each test of a year, with what was told."""
    water = dict(keeper.source)
    history: dict[str, list[Measured]] = {}
    events: list[Happening] = []
    stock = tuple(Stock(name, 6) for name in keeper.stock)
    tank = Tank("Fern", keeper.kind, 100.0, stock=stock)  # type: ignore[arg-type]
    start = NOON - timedelta(days=365)
    source = {of: told_by_kit(of, value, start) for of, value in keeper.source.items()}
    for day in range(366):
        now = start + timedelta(days=day, minutes=chance.randrange(0, 240))
        for of, change in keeper.per_day.items():
            water[of] = max(0.0, water[of] + change * chance.uniform(0.5, 1.5))
        if day % keeper.test_every == 0 and chance.random() > keeper.forgets:
            told = _test(keeper, water, day, now, chance)
            for reading in told:
                history.setdefault(reading.analyte, []).append(reading)
            yield (
                _state(tank, now, history, events, source, keeper, start),
                frozenset(r.analyte for r in told),
            )
        due = day % keeper.change_every == keeper.change_every - 1
        if due and chance.random() > keeper.forgets:
            mixed = keeper.share
            water = {of: v + mixed * (keeper.source[of] - v) for of, v in water.items()}
            events.append(Happening(now, Event("water_change", percent=100 * mixed)))


def _test(
    keeper: Keeper, water: dict[str, float], day: int, now: datetime, chance: random.Random
) -> list[Measured]:
    extra = {"ammonia": 0.0, "nitrite": 0.0}
    if keeper.new:
        extra = {"ammonia": max(0.0, 1.5 - abs(day - 12) / 8.0),
                 "nitrite": max(0.0, 2.0 - abs(day - 25) / 6.0)}  # fmt: skip
    values = water | extra
    return [
        told_by_kit(of, values[of] + chance.gauss(0.0, 0.3 * STEPS[of]) * (values[of] > 0), now)
        for of in keeper.tests
    ]


def told_by_kit(analyte: str, value: float, at: datetime) -> Measured:
    """The reading that a usual kit gives of a true value."""
    step = STEPS[analyte]
    told = max(0.0, round(value / step) * step)
    if analyte in {"kh", "gh"}:
        return Measured(analyte, told, max(0.0, told - step), told, at, step=step)
    if analyte in {"nitrate", "ammonia", "nitrite", "temperature"}:
        return Measured(analyte, told, told, told, at)
    return Measured(analyte, told, told - step, told + step, at, step=step)


def _state(
    tank: Tank, now: datetime, history: dict[str, list[Measured]], events: list[Happening],
    source: dict[str, Measured], keeper: Keeper, start: datetime,
) -> State:  # fmt: skip
    latest = {of: told[-1] for of, told in history.items()}
    earlier = tuple(reversed(history.get("ph", [])[:-1]))
    held = {of: tuple(told) for of, told in history.items()}
    began = start if keeper.new else start - timedelta(days=500)
    return State(tank, now, latest, earlier, held, tuple(events), source, began)


def count(years: int, seed: int) -> tuple[Counter[str], Counter[str], Counter[int]]:
    """How often each finding holds, how often it is said afresh, and how many a test says."""
    chance = random.Random(seed)  # noqa: S311 - invented data
    holds: Counter[str] = Counter()
    said: Counter[str] = Counter()
    lengths: Counter[int] = Counter()
    for number in range(years):
        told_before: list[Told] = []
        for state, told in year(KEEPERS[number % len(KEEPERS)], chance):
            found = find(state, told)
            fresh = fresh_only(found, told_before, state.now)
            told_before += [Told(f, state.now) for f in fresh[:3]]
            holds.update(f.id for f in found)
            said.update(f.id for f in fresh[:3])
            lengths[len(fresh)] += 1
    return holds, said, lengths


def demo_season() -> Iterator[tuple[str, State, frozenset[str]]]:
    """The states at each test of the demonstration's tanks, from the lines that it sends."""
    chance = random.Random(demo.SEED)  # noqa: S311 - invented data, the same each time
    start = NOON - timedelta(weeks=demo.WEEKS)
    for invented in demo.TANKS:
        animals = tuple(Stock(text.partition(" ")[2], 6) for text in invented.stock)
        tank = Tank(invented.name, invented.kind, invented.volume_l, stock=animals)
        history: dict[str, tuple[Measured, ...]] = {}
        events: list[Happening] = []
        for day, text in demo._season(invented, chance):
            now = start + timedelta(days=day)
            parsed = parse(text, Context(now))
            events += [Happening(now, event) for event in parsed.events]
            told = [r for v in parsed.values if (r := measured(v, now, tank)) is not None]
            for reading in told:
                history[reading.analyte] = (*history.get(reading.analyte, ()), reading)
            if told:
                latest = {of: kept[-1] for of, kept in history.items()}
                earlier = tuple(reversed(history.get("ph", ())[:-1]))
                state = State(tank, now, latest, earlier, dict(history), tuple(events))
                yield invented.name, state, frozenset(r.analyte for r in told)


def count_demo() -> Counter[tuple[str, str]]:
    """How often each finding is said afresh over the demonstration's season, by tank."""
    said: Counter[tuple[str, str]] = Counter()
    told_before: dict[str, list[Told]] = {}
    for name, state, told in demo_season():
        before = told_before.setdefault(name, [])
        fresh = fresh_only(find(state, told), before, state.now)[:3]
        before += [Told(f, state.now) for f in fresh]
        said.update((name, f.id) for f in fresh)
    return said


def main() -> None:
    """Count and print, the chattiest first."""
    print("the demonstration's season:", dict(count_demo().most_common()))
    years = int(sys.argv[1]) if len(sys.argv) > 1 else 100
    holds, said, lengths = count(years, 3)
    tests = sum(lengths.values())
    print(f"{years} years, {tests} tests; fresh findings a test: {dict(sorted(lengths.items()))}")
    for id_, times in said.most_common():
        print(f"{id_:24} said {times:5} ({times / tests:6.1%} of tests), held {holds[id_]:5}")


if __name__ == "__main__":
    main()
