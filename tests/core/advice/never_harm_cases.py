"""Random but plausible tanks, readings and wishes; one in five built so that help is possible."""

from __future__ import annotations

import random
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from datetime import timedelta
from math import inf, log10
from typing import Any

from core.advice.dosing import Wish, plan_kh
from core.advice.plan import Plan, Refusal
from core.advice.salts import SaltWish, plan_salts
from core.advice.state import Measured, State
from core.tank import Stock, Tank
from tests.core.advice.tank_water import NOW

UNKNOWN = ("blue bottle", "ph up", "a white powder", "buffer plus", "hydrochloric acid", "vinegar")
BUFFERS = (
    "sodium bicarbonate",
    "potassium bicarbonate",
    "sodium carbonate",
    "sodium carbonate decahydrate",
    "potassium carbonate",
)
HARDENERS = (
    "calcium chloride",
    "calcium chloride dihydrate",
    "calcium sulfate",
    "calcium sulfate dihydrate",
    "magnesium sulfate",
    "magnesium sulfate heptahydrate",
    "magnesium chloride",
    "magnesium chloride hexahydrate",
)
FOODS = {
    "nitrate": "potassium nitrate",
    "phosphate": "monopotassium phosphate",
    "potassium": "potassium sulfate",
}


@dataclass(frozen=True, slots=True)
class Case:
    """One tank, its readings, and a wish for one or two analytes."""

    state: State
    substance: str
    targets: Mapping[str, float]
    built_safe: bool
    called: bool = False

    def __str__(self) -> str:
        readings = ", ".join(
            f"{r.analyte} {r.low:g}-{r.value:g} ({(NOW - r.at).total_seconds() / 86400:.1f} d)"
            for r in self.state.readings.values()
        )
        tank = self.state.tank
        wish = ", ".join(f"{name} {target:g}" for name, target in self.targets.items())
        return f"{tank.kind} {tank.volume_l} L, {readings}: {self.substance} to {wish}"

    def value(self, analyte: str) -> float | None:
        held = self.state.readings.get(analyte)
        return None if held is None else held.value

    def fresh(self, analyte: str) -> Measured | None:
        held = self.state.readings.get(analyte)
        return held if held is not None and NOW - held.at <= timedelta(days=3) else None

    @property
    def is_sea(self) -> bool:
        return self.state.tank.kind == "marine"

    def keeps(self, *words: str) -> bool:
        names = " ".join(stock.species for stock in self.state.tank.stock)
        return any(word in names for word in words)


def cases(count: int, seed: int = 1) -> Iterator[Case]:
    """Random but plausible tanks and wishes; one in five built to be safe."""
    chance = random.Random(seed)  # noqa: S311 - cases, the same each time
    for number in range(count):
        yield (_safe if number % 5 == 0 else chance.choices(*KINDS)[0])(chance)


def planned(case: Case) -> list[Plan | Refusal]:
    """What the planner of the chat answers to a case."""
    if set(case.targets) == {"kh"}:
        wish = Wish(target=case.targets["kh"], substance=case.substance, called=case.called)
        return [plan_kh(wish, case.state, known_tank=True)]
    named = (case.substance,) if len(case.targets) == 1 else ()
    found = plan_salts(SaltWish(case.targets, substances=named), case.state, known_tank=True)
    return list(found) if isinstance(found, tuple) else [found]


def _measured(
    name: str, value: float, chance: random.Random, *, step: float, old: bool = False
) -> Measured:
    days = chance.choice((0, 1, 2, 4, 20)) if old else 0
    low = max(0.0, value - step)
    high = value + step if name not in {"kh", "gh"} else value
    return Measured(name, value, low, high, NOW - timedelta(days=days), step=step)


def _ammonia(chance: random.Random, *, old: bool) -> Measured:
    if chance.random() < 0.01:
        return Measured("ammonia", 8.0, 8.0, inf, NOW, qualifier=">")
    value = chance.choice((0.0, 0.0, 0.25, 0.5, 1.0, 2.0, 4.0))
    return _measured("ammonia", value, chance, step=0.1, old=old)


def _any(chance: random.Random) -> Case:
    """Fresh water mostly, with what is unknown, old or off; buffers and hardness."""
    kind = chance.choices(("fresh", "marine", "brackish", "pond"), (8, 1, 1, 1))[0]
    step = chance.choice((0.1, 0.5, 1.0))
    kh = round(chance.choice((chance.uniform(0, 3), chance.uniform(0, 15))) / step) * step
    gh = float(round(chance.uniform(0, 20)))
    known = {"kh": _measured("kh", kh, chance, step=step, old=_old(chance))}
    spans = {
        "gh": (gh, 1.0),
        "ph": (round(chance.uniform(4.5, 9.2), 1), 0.2),
        "temperature": (round(chance.uniform(4, 32)), 0.0),
    }
    for name, (value, fine) in spans.items():
        if chance.random() < 0.75:
            known[name] = _measured(name, value, chance, step=fine, old=_old(chance))
    if chance.random() < 0.75:
        known["ammonia"] = _ammonia(chance, old=_old(chance))
    if kind == "marine":
        known["salinity"] = _measured("salinity", round(chance.uniform(28, 38)), chance, step=0.0)
    stock = chance.choice(((), (), ("cherry shrimp",), ("neon tetra",), ("swan mussel",)))
    names = [*BUFFERS, *HARDENERS, "sodium bicarbonate", "sodium bicarbonate", *UNKNOWN]
    wish, targets = chance.random(), {}
    if wish >= 0.6:
        targets["gh"] = gh + chance.uniform(-2, 12)
    if wish < 0.75:
        targets["kh"] = kh + chance.uniform(-2, 8)
    return Case(_state(known, kind, chance, stock), chance.choice(names), targets, False)


def _old(chance: random.Random) -> bool:
    return chance.random() < 0.2


def _sea(chance: random.Random, *, safe: bool = False) -> Case:
    """A reef: buffer, calcium, magnesium or salinity, often with what it uses up a day."""
    kh = chance.randint(10, 18) / 2 if safe else chance.randint(6, 26) / 2
    values = {
        "kh": (kh, 0.5),
        "calcium": (float(chance.randint(340 if safe else 300, 430 if safe else 490)), 10.0),
        "magnesium": (float(chance.randint(1100, 1300 if safe else 1450)), 25.0),
        "salinity": (float(chance.randint(31, 36)), 0.5),
        "ph": (round(chance.uniform(7.9, 8.3) if safe else chance.uniform(7.5, 8.7), 1), 0.2),
        "temperature": (float(chance.randint(23, 28)), 0.0),
    }
    known = {
        name: _measured(name, value, chance, step=step, old=not safe and _old(chance))
        for name, (value, step) in values.items()
        if safe or name in {"kh", "salinity"} or chance.random() < 0.8
    }
    clean = Measured("ammonia", 0.0, 0.0, 0.0, NOW)
    known["ammonia"] = clean if safe else _ammonia(chance, old=_old(chance))
    name, salts, least, most = chance.choice(SEA_WISHES)
    if safe and name == "salinity" and known["salinity"].value > 34:
        known["salinity"] = _measured("salinity", 33.0, chance, step=0.5)
    held = known.get(name)
    start = 400.0 if held is None else held.value
    targets = {name: start + chance.uniform(least, 0.4 * most if safe else most)}
    if not safe and chance.random() < 0.1:
        targets["kh"] = kh + 1.0
    salt = salts[0] if safe else chance.choice(salts)
    history: dict[str, Any] = {}
    if held is not None and chance.random() < 0.6:
        earlier = Measured(
            name,
            held.value + chance.uniform(-0.02, 0.15) * (kh if name == "kh" else 0.5 * start),
            0.0,
            0.0,
            held.at - timedelta(days=chance.choice((1, 2, 3, 7))),
            step=held.step,
        )
        half = held.step
        earlier = Measured(
            name, earlier.value, earlier.value - half, earlier.value, earlier.at, step=half
        )
        history = {"history": {name: (earlier, held)}, "events": ()}
    return Case(_state(known, "marine", chance, (), **history), salt, targets, safe)


SEA_WISHES: tuple[tuple[str, tuple[str, ...], float, float], ...] = (
    ("kh", BUFFERS, 0.2, 5.0),
    ("calcium", ("calcium chloride dihydrate", "calcium chloride"), 5.0, 120.0),
    ("magnesium", ("magnesium chloride hexahydrate", "magnesium sulfate heptahydrate"), 10, 300.0),
    ("salinity", ("sea salt", "sodium chloride"), 0.2, 6.0),
)


def _brackish(chance: random.Random) -> Case:
    """Salt into fresh or brackish water."""
    salinity = chance.choice((0.0, 0.5, 3.0, 8.0, 15.0))
    kh = float(chance.randint(2, 12))
    known = {
        "salinity": _measured("salinity", salinity, chance, step=0.5),
        "kh": _measured("kh", kh, chance, step=1.0),
        "ph": _measured("ph", round(7.2 + chance.uniform(0, 1), 1), chance, step=0.2),
        "ammonia": _ammonia(chance, old=_old(chance)),
        "temperature": _measured("temperature", 25.0, chance, step=0.0),
    }
    kind = "brackish" if salinity > 1 or chance.random() < 0.5 else "fresh"
    targets = {"salinity": salinity + chance.uniform(-1, 8)}
    salt = chance.choice(("sea salt", "sea salt", "sodium chloride", *UNKNOWN[:2]))
    return Case(_state(known, kind, chance, ()), salt, targets, False)


def _crash(chance: random.Random) -> Case:
    """Little buffer and a pH that fell, or is said to have crashed; some of it not so."""
    step = chance.choice((0.1, 0.5, 1.0))
    kh = round(chance.uniform(0.5, 5) / step) * step
    ph = round(6.3 + log10(max(kh, 0.5)) + chance.uniform(-0.3, 0.6), 1)
    known = {
        "kh": _measured("kh", kh, chance, step=step, old=_old(chance)),
        "ph": _measured("ph", ph, chance, step=0.2, old=_old(chance)),
        "gh": _measured("gh", float(chance.randint(2, 10)), chance, step=1.0),
        "temperature": _measured("temperature", 24.0, chance, step=0.0),
    }
    if chance.random() < 0.8:
        value = chance.choice((0.0, 0.0, 0.25, 1.0))
        known["ammonia"] = _measured("ammonia", value, chance, step=0.1, old=_old(chance))
    earlier = Measured(
        "ph",
        ph + chance.uniform(0.1, 1.4),
        0.0,
        0.0,
        known["ph"].at - timedelta(hours=chance.choice((24, 26, 48, 54, 72, 96, 7))),
    )
    kind = chance.choice(("fresh", "fresh", "pond"))
    state = _state(known, kind, chance, (), earlier=(earlier,), soft=chance.random() < 0.1)
    targets = {"kh": kh + chance.uniform(0.5, 6)}
    return Case(state, "sodium bicarbonate", targets, False, called=chance.random() < 0.4)


def _food(chance: random.Random) -> Case:
    """Nitrate, phosphate and potassium for plants."""
    name = chance.choice(tuple(FOODS))
    start = float(chance.randint(0, 10)) / (10.0 if name == "phosphate" else 1.0)
    known = {
        name: _measured(name, start, chance, step=0.0),
        "kh": _measured("kh", float(chance.randint(0, 8)), chance, step=1.0),
        "ph": _measured("ph", round(chance.uniform(6.4, 7.6), 1), chance, step=0.2),
        "ammonia": _ammonia(chance, old=_old(chance)),
    }
    rise = chance.uniform(0.1, 2.0) if name == "phosphate" else chance.uniform(-2, 30)
    stock = chance.choice(((), ("cherry shrimp",), ("swan mussel",), ("neon tetra",)))
    return Case(_state(known, "fresh", chance, stock), FOODS[name], {name: start + rise}, False)


KINDS: tuple[tuple[Callable[[random.Random], Case], ...], tuple[int, ...]] = (
    (_any, _sea, _brackish, _crash, _food),
    (12, 4, 1, 2, 1),
)


def _safe(chance: random.Random) -> Case:
    """A tank that plainly can be helped: all known today, no ammonia, a modest wish."""
    if chance.random() < 0.2:
        return _sea(chance, safe=True)
    kh, gh = float(chance.randint(2, 10)), float(chance.randint(3, 12))
    ph = 6.95 + log10(kh / 4.0) + chance.uniform(-0.2, 0.6)
    readings = {
        "kh": _measured("kh", kh, chance, step=chance.choice((0.5, 1.0))),
        "gh": _measured("gh", gh, chance, step=1.0),
        "ph": _measured("ph", round(ph, 1), chance, step=0.2),
        "ammonia": Measured("ammonia", 0.0, 0.0, 0.0, NOW),
        "temperature": _measured("temperature", chance.uniform(18, 28), chance, step=0.0),
    }
    of_gh = chance.random() < 0.4
    substance = chance.choice(
        (
            "calcium chloride dihydrate",
            "magnesium sulfate heptahydrate",
            "calcium sulfate dihydrate",
        )
        if of_gh
        else ("sodium bicarbonate", "sodium bicarbonate", "potassium bicarbonate")
    )
    targets = {"gh": gh + chance.uniform(0.5, 6)} if of_gh else {"kh": kh + chance.uniform(0.5, 5)}
    return Case(_state(readings, "fresh", chance, ()), substance, targets, True)


def _state(
    readings: dict[str, Measured],
    kind: str,
    chance: random.Random,
    stock: tuple[str, ...],
    *,
    soft: bool = False,
    **parts: Any,
) -> State:
    tank = Tank(
        "Fern",
        kind=kind,  # type: ignore[arg-type]
        volume_l=round(10 ** chance.uniform(0.5, 3.5), 1),
        soft=soft,
        stock=tuple(Stock(species, 5) for species in stock),
    )
    return State(tank, NOW, readings, **parts)
