"""Random but plausible water changes; one in five built so that a schedule of safe ones exists."""

from __future__ import annotations

import random
from collections.abc import Iterator
from dataclasses import dataclass, field, replace

from core.advice.change_plan import ChangePlan, plan_change
from core.advice.changes import salinity_unknown, waters_of, with_chloramine
from core.advice.danger import cut_to_kh, is_acid, poison_in
from core.advice.state import Measured, State
from core.tank import Stock, Tank, TankKind
from tests.core.advice.tank_water import NOW

STEPS = {"ammonia": 0.05, "nitrite": 0.02, "copper": 0.02}
"""Half a step of the kits of poisons: what is read as so much may be so much more. [mg/L]"""


@dataclass(frozen=True, slots=True)
class Change:
    """A tank, its source, and the share that is asked about; what is absent nobody measured.

    `treated` is the share of the new water that a supplier may have treated, unmeasured.
    """

    tank: dict[str, float]
    source: dict[str, float]
    kh_low: float
    share: float
    built_safe: bool = False
    kind: TankKind = "fresh"
    kept: str | None = None
    soft: bool = False
    treated: float = 0.0

    @property
    def limit(self) -> float:
        """Un-ionised ammonia that nothing may pass. [mg/L as N]"""
        return 0.03 if self.kind == "marine" or self.kept == "cherry shrimp" else 0.05

    @property
    def fish_only(self) -> bool:
        return self.kept in {"ocellaris clownfish", "neon tetra"}

    @property
    def salinity(self) -> float | None:
        """Of the tank; None for brackish water that nobody measured. [g/kg]"""
        usual = {"marine": 35.0, "brackish": None}
        return self.tank.get("salinity", usual.get(self.kind, 0.0))

    def __str__(self) -> str:
        kept = "" if self.kept is None else f" with {self.kept}"
        told = f"{self.share:.2f} of {self.source} into {self.kind}{kept} {self.tank}"
        return f"{told} (KH from {self.kh_low}, treated {self.treated}, soft {self.soft})"


@dataclass(frozen=True, slots=True)
class Answer:
    """What the planner says: a plan, and how much pure water the new one is cut with."""

    plan: ChangePlan | None
    refused: str = ""
    ro_share: float = field(default=0.0)


def cases(count: int, seed: int) -> Iterator[Change]:
    """Random changes of all kinds of water."""
    chance = random.Random(seed)  # noqa: S311 - cases, the same each time
    for number in range(count):
        kinds = (_any, _any, _unknown, _tainted, _salty, _poisoned)
        yield _safe(chance) if number % 5 == 0 else chance.choice(kinds)(chance)


def answer(case: Change) -> Answer:
    """What the planner of the chat answers."""

    def state(readings: dict[str, float], tank: Tank) -> State:
        held = {
            n: Measured(n, v, v, v + STEPS.get(n, 0.0) * (v > 0.0), NOW)
            for n, v in readings.items()
        }
        return State(tank, NOW, held)

    stock = () if case.kept is None else (Stock(case.kept, 4),)
    tank = state(case.tank, Tank("Fern", case.kind, 100.0, soft=case.soft, stock=stock))
    kh = replace(tank.readings["kh"], low=case.kh_low)
    tank = replace(tank, readings={**tank.readings, "kh": kh})
    if salinity_unknown(tank):
        return Answer(None, "salinity unknown")
    waters = waters_of(tank, state(case.source, Tank("tap")))
    assert waters is not None
    emergency, cut = poison_in(tank) is not None, 0.0
    if emergency and is_acid(waters):
        waters, cut = cut_to_kh(waters)
    measured = case.treated == 0.0 or "total_chlorine" in case.source
    counted = waters if measured else with_chloramine(waters, case.treated * (1.0 - cut))
    plan = plan_change(waters, case.share, counted=counted, emergency=emergency)
    return Answer(plan, ", ".join(plan.broken), cut)


def _any(chance: random.Random) -> Change:
    """Fresh water of any hardness, with what the tap brings measured."""
    kh = round(chance.choice((chance.uniform(0.2, 3), chance.uniform(0.5, 15))), 1)
    tank = {
        "kh": kh,
        "gh": round(chance.choice((chance.uniform(0, 3), chance.uniform(0, 20))), 1),
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
    return _of(chance, tank, source, share=chance.uniform(0.05, 0.95))


def _unknown(chance: random.Random) -> Change:
    """The same with much that nobody measured: hardness, conductivity, pH, ammonia."""
    case = _any(chance)
    tank, source = dict(case.tank), dict(case.source)
    (tank if chance.random() < 0.5 else source).pop("gh")
    if chance.random() < 0.6:
        tank["conductivity"] = float(chance.randint(80, 900))
        source["conductivity"] = float(chance.randint(5, 900))
    for name in ("ph", "ammonia"):
        if chance.random() < 0.3:
            tank.pop(name)
    return replace(case, tank=tank, source=source, share=round(chance.uniform(0.05, 0.6), 2))


def _tainted(chance: random.Random) -> Change:
    """Waters near to each other, so that what taints the new one decides."""
    case = _safe(chance)
    tank, source = dict(case.tank), dict(case.source)
    tank["ph"] = round(chance.uniform(6.4, 8.4), 1)
    for name, worst in (("copper", 0.3), ("nitrite", 0.6), ("ammonia", 1.5)):
        if chance.random() < 0.4:
            source[name] = round(chance.uniform(0.0, worst), 2)
        if chance.random() < 0.2:
            tank[name] = round(chance.uniform(0.0, worst), 2)
    if chance.random() < 0.3:
        source["total_chlorine"] = round(chance.uniform(0.0, 4.0), 1)
        source["chlorine"] = round(source["total_chlorine"] * chance.random(), 1)
    if chance.random() < 0.2:
        tank.pop("ammonia")
    kept = chance.choice((None, "cherry shrimp", "neon tetra"))
    treated = chance.choice((0.0, 1.0, 1.0, 0.5))
    return replace(case, tank=tank, source=source, kept=kept, treated=treated, built_safe=False)


def _poisoned(chance: random.Random) -> Change:
    """Ammonia or nitrite at its alarm, or near it; the new water is what there is."""
    case = _any(chance)
    source = dict(case.source)
    tank = case.tank | {"ph": round(chance.uniform(6.6, 8.2), 1)}
    if chance.random() < 0.5:
        tank["ammonia"] = chance.choice((1.0, 2.0, 4.0))
    else:
        tank |= {"ammonia": chance.choice((0.0, 0.1)), "nitrite": chance.choice((0.1, 0.5, 2.0))}
    if chance.random() < 0.3:
        source["ammonia"] = round(chance.uniform(0.0, 1.5), 2)
    return replace(case, tank=tank, source=source)


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
    if chance.random() < 0.25:
        source.pop("salinity")
    if chance.random() < 0.1:
        tank.pop("salinity")
    kept = chance.choice((None, "ocellaris clownfish", "cherry shrimp"))
    case = _of(chance, tank, source, share=chance.uniform(0.05, 0.6))
    return replace(case, kh_low=kh - 0.5, kind=kind, kept=kept, soft=False)


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


def _of(
    chance: random.Random, tank: dict[str, float], source: dict[str, float], share: float
) -> Change:
    low = max(0.0, tank["kh"] - chance.choice((0.1, 0.5, 1.0)))
    treated = chance.choice((0.0, 1.0))
    soft = chance.random() < 0.1
    return Change(tank, source, low, round(share, 2), soft=soft, treated=treated)
