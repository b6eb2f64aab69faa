"""A second opinion on water changes: random tanks, sources and shares, and what the limits forbid.

As `never_harm`: what a keeper would do with the answer is worked out again, step by step, with the
limits written here again and the masses mixed here.
"""

from __future__ import annotations

import random
from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass, field, replace

from core.advice.change_plan import ChangePlan, plan_change
from core.advice.changes import waters_of
from core.advice.state import Measured, State
from core.tank import Stock, Tank, TankKind
from core.water import Water, in_air, solve, un_ionised_fraction
from core.water.solution import with_ph
from tests.core.advice.tank_water import NOW

CONSERVED = (
    "salinity", "alkalinity", "carbon", "calcium", "magnesium", "sodium", "potassium", "chloride",
    "sulfate", "borate",
)  # fmt: skip


@dataclass(frozen=True, slots=True)
class Change:
    """A tank, its source, and the share that is asked about."""

    tank: dict[str, float]
    source: dict[str, float]
    kh_low: float
    share: float
    built_safe: bool
    kind: TankKind = "fresh"
    kept: str | None = None

    @property
    def limit(self) -> float:
        """Un-ionised ammonia that nothing may pass. [mg/L as N]"""
        return 0.03 if self.kind == "marine" or self.kept == "cherry shrimp" else 0.05

    def __str__(self) -> str:
        return f"{self.share:.2f} of {self.source} into {self.tank} (KH from {self.kh_low})"


def cases(count: int, seed: int) -> Iterator[Change]:
    """Random changes of fresh water; one in five built to be safe by a schedule."""
    chance = random.Random(seed)  # noqa: S311 - cases, the same each time
    for number in range(count):
        kinds = (_any, _any, _any, _salty)
        yield _safe(chance) if number % 5 == 0 else chance.choice(kinds)(chance)


def _salty(chance: random.Random) -> Change:
    """Brackish water or the sea, with fish only, with others, or with nobody on record."""
    kind: TankKind = chance.choice(("brackish", "marine"))
    salinity = float(chance.randint(2, 15) if kind == "brackish" else chance.randint(30, 36))
    kh = float(chance.randint(5, 12))
    tank = {
        "kh": kh,
        "ph": round(chance.uniform(7.6, 8.4), 1),
        "temperature": 25.0,
        "salinity": salinity,
        "ammonia": chance.choice((0.0, 0.0, 0.1, 0.5)),
    }
    source = {
        "kh": max(1.0, kh + chance.uniform(-3, 3)),
        "ph": round(chance.uniform(7.6, 8.4), 1),
        "temperature": 25.0,
        "salinity": max(0.0, salinity + chance.uniform(-12, 8)),
    }
    kept = chance.choice((None, "ocellaris clownfish", "cherry shrimp"))
    share = round(chance.uniform(0.05, 0.6), 2)
    return Change(tank, source, kh - 0.5, share, built_safe=False, kind=kind, kept=kept)


def _any(chance: random.Random) -> Change:
    kh = round(chance.choice((chance.uniform(0.2, 3), chance.uniform(0.5, 15))), 1)
    tank = {
        "kh": kh,
        "gh": round(chance.uniform(0, 20), 1),
        "ph": round(chance.uniform(5.5, 8.8), 1),
        "temperature": float(chance.randint(16, 30)),
        "ammonia": chance.choice((0.0, 0.0, 0.1, 0.25, 0.5, 1.0, 2.0)),
    }
    pure = chance.random() < 0.2
    source = {
        "kh": 0.0 if pure else round(chance.uniform(0.5, 18), 1),
        "gh": 0.0 if pure else round(chance.uniform(0, 22), 1),
        "temperature": tank["temperature"] + chance.choice((0, 0, 0, -2, -6)),
    }
    if not pure:
        source["ph"] = round(chance.uniform(6.5, 8.5), 1)
    low = max(0.0, kh - chance.choice((0.1, 0.5, 1.0)))
    return Change(tank, source, low, round(chance.uniform(0.05, 0.95), 2), built_safe=False)


def _safe(chance: random.Random) -> Change:
    """Waters that differ, but not wildly; no ammonia, temperature matched."""
    kh, gh = float(chance.randint(3, 10)), float(chance.randint(4, 14))
    tank = {"kh": kh, "gh": gh, "ph": round(7.0 + chance.uniform(0, 0.6), 1), "temperature": 25.0}
    source = {
        "kh": max(1.5, kh + chance.uniform(-3, 3)),
        "gh": max(1.5, gh + chance.uniform(-4, 4)),
        "ph": round(7.2 + chance.uniform(0, 0.6), 1),
        "temperature": 25.0 + chance.choice((0, -1, 1)),
    }
    share = round(chance.uniform(0.05, 0.6), 2)
    return Change(tank | {"ammonia": 0.0}, source, kh - 0.5, share, built_safe=True)


def answer(case: Change) -> ChangePlan:
    """What the planner of the chat answers."""

    def state(readings: dict[str, float]) -> State:
        held = {name: Measured(name, v, v, v, NOW) for name, v in readings.items()}
        stock = () if case.kept is None else (Stock(case.kept, 4),)
        return State(Tank("Fern", case.kind, 100.0, stock=stock), NOW, held)

    tank = state(case.tank)
    kh = replace(tank.readings["kh"], low=case.kh_low)
    tank = replace(tank, readings={**tank.readings, "kh": kh})
    waters = waters_of(tank, state(case.source))
    assert waters is not None
    return plan_change(waters, case.share)


@dataclass
class Verdict:
    """What came of many changes."""

    as_asked: int = 0
    in_steps: int = 0
    refused: Counter[str] = field(default_factory=Counter)
    safe: int = 0
    safe_planned: int = 0
    harms: list[str] = field(default_factory=list)

    def add(self, other: Verdict) -> None:
        """Count another's verdict in."""
        for name in self.__dataclass_fields__:
            setattr(self, name, getattr(self, name) + getattr(other, name))


def judge(count: int, seed: int) -> Verdict:
    """Ask, carry out every step, and look for what the limits forbid."""
    verdict = Verdict()
    for case in cases(count, seed):
        plan = answer(case)
        verdict.safe += case.built_safe
        if not plan.steps:
            verdict.refused[", ".join(plan.broken)] += 1
            continue
        verdict.safe_planned += case.built_safe
        if len(plan.steps) == 1:
            verdict.as_asked += 1
        else:
            verdict.in_steps += 1
        verdict.harms += [f"{harm}: {case}" for harm in carried_out(case, plan.steps)]
    return verdict


def carried_out(case: Change, steps: tuple[float, ...]) -> Iterator[str]:
    """Change by change, a day apart, the tank at its own CO2 and temperature in between."""
    asked = case.tank
    names = ("kh", "gh", "temperature", "salinity")
    made = Water.from_readings(**{name: asked[name] for name in names if name in asked})  # type: ignore[arg-type]
    here = with_ph(made, asked["ph"])
    pressure, water = min(max(here.pco2, 0.01), 1e6), here.water
    source = Water.from_readings(**case.source)  # type: ignore[arg-type]
    low, total = case.kh_low, asked["ammonia"]
    leaves_first = _poison(total, max(in_air(water, 420.0).ph, asked["ph"]), water)
    left = 1.0
    for share in steps:
        mixed = _mixed(water, source, share)
        warm = replace(mixed, temperature=water.temperature)
        rest = in_air(warm, pressure)
        now, after, stood = solve(water).ph, solve(mixed).ph, rest.ph
        open_now, open_after = in_air(water, 420.0).ph, in_air(warm, 420.0).ph
        total *= 1.0 - share
        if max(abs(after - now), abs(stood - now), abs(open_after - open_now)) > 0.3105:
            yield "pH too fast"
        if abs(mixed.kh - water.kh) > 1.011 or mixed.kh - water.kh > _most(case, low) + 0.011:
            yield "KH too fast"
        if case.kind == "fresh" and abs(mixed.gh - water.gh) > 2.011:
            yield "GH too fast"
        if mixed.salinity - water.salinity > 1.011:
            yield "salinity up too fast"
        if water.salinity - mixed.salinity > (
            2.011 if case.kept == "ocellaris clownfish" else 1.011
        ):
            yield "salinity down too fast"
        if abs(mixed.temperature - water.temperature) > 2.011:
            yield "temperature too fast"
        if mixed.kh < 0.999 and mixed.kh < water.kh - 0.001:
            yield "KH ends under 1"
        if max(_poison(total, stood, warm), _poison(total, after, mixed)) > 1.01 * case.limit:
            yield "ammonia over the gate"
        leaves = _poison(total, max(open_after, after, stood), warm)
        if leaves > 1.01 * case.limit and leaves > 1.26 * leaves_first:
            yield "ammonia over the gate if CO2 leaves"
        low += (source.kh - low) * share
        water, left = rest.water, left * (1.0 - share)
    if abs(1.0 - left - case.share) > 1e-6:
        yield "does not change what was asked"


def _most(case: Change, low: float) -> float:
    """How far KH may rise: never more than doubled, or one small part where it is too low."""
    if low >= 1.0:
        return low
    return 0.1 if case.tank["ph"] < 5.5 else 0.25


def _poison(total: float, ph: float, water: Water) -> float:
    return total * un_ionised_fraction(ph, water.temperature, water.salinity)


def _mixed(water: Water, source: Water, share: float) -> Water:
    """By mass, shut off from air; volumes weigh by density."""
    old, new = (1.0 - share) * water.density, share * source.density
    parts = {
        name: (getattr(water, name) * old + getattr(source, name) * new) / (old + new)
        for name in (*CONSERVED, "temperature")
    }
    return replace(water, **parts)
