"""A second opinion on plans: random tanks and wishes, and a checker that knows only the limits.

The checker takes what a keeper would do with an answer (so many grams, so many times, so many
hours apart) and works out the water again, for all cases at once, from the readings. It shares no
code with the planner: its limits are written here again, its masses are periodictable's; only the
solver of `core.water`, which PHREEQC checks elsewhere, is common to both.
"""

from __future__ import annotations

import random
from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass, field, replace
from datetime import timedelta
from typing import Any

import numpy as np
import periodictable

from core.advice.dosing import Wish, plan_kh
from core.advice.plan import Plan, Refusal
from core.advice.salts import SaltWish, plan_salts
from core.advice.state import Measured, State
from core.tank import Stock, Tank
from core.water import Water, in_air, solve, un_ionised_fraction
from core.water.solution import with_ph
from tests.core.advice.tank_water import NOW

DEGREE = 2.0 * 10.0 / periodictable.formula("CaO").mass
"""meq/L of one °dH."""


def mass(formula: str) -> float:
    return float(periodictable.formula(formula).mass)


BRINGS: dict[str, tuple[float, float, float, float, float]] = {
    # alkalinity [eq], calcium, magnesium, carbon [mol] of one mole; its mass [g]
    "sodium bicarbonate": (1, 0, 0, 1, mass("NaHCO3")),
    "potassium bicarbonate": (1, 0, 0, 1, mass("KHCO3")),
    "sodium carbonate": (2, 0, 0, 1, mass("Na2CO3")),
    "sodium carbonate decahydrate": (2, 0, 0, 1, mass("Na2CO3(H2O)10")),
    "potassium carbonate": (2, 0, 0, 1, mass("K2CO3")),
    "calcium chloride": (0, 1, 0, 0, mass("CaCl2")),
    "calcium chloride dihydrate": (0, 1, 0, 0, mass("CaCl2(H2O)2")),
    "calcium sulfate": (0, 1, 0, 0, mass("CaSO4")),
    "calcium sulfate dihydrate": (0, 1, 0, 0, mass("CaSO4(H2O)2")),
    "magnesium sulfate": (0, 0, 1, 0, mass("MgSO4")),
    "magnesium sulfate heptahydrate": (0, 0, 1, 0, mass("MgSO4(H2O)7")),
    "magnesium chloride": (0, 0, 1, 0, mass("MgCl2")),
    "magnesium chloride hexahydrate": (0, 0, 1, 0, mass("MgCl2(H2O)6")),
}
UNKNOWN = ("blue bottle", "ph up", "a white powder", "buffer plus", "hydrochloric acid", "vinegar")


@dataclass(frozen=True, slots=True)
class Case:
    """One tank, its readings, and a wish for KH or GH (or both)."""

    state: State
    substance: str
    kh: float | None
    gh: float | None
    built_safe: bool

    def __str__(self) -> str:
        readings = ", ".join(
            f"{r.analyte} {r.low:g}-{r.value:g} ({(NOW - r.at).days} d)"
            for r in self.state.readings.values()
        )
        tank = self.state.tank
        return (
            f"{tank.kind} {tank.volume_l} L, {readings}: {self.substance} to kh {self.kh},"
            f" gh {self.gh}"
        )

    def value(self, analyte: str) -> float | None:
        held = self.state.readings.get(analyte)
        return None if held is None else held.value


def cases(count: int, seed: int = 1) -> Iterator[Case]:
    """Random but plausible tanks and wishes; one in five built to be safe."""
    chance = random.Random(seed)  # noqa: S311 - cases, the same each time
    for number in range(count):
        yield _safe(chance) if number % 5 == 0 else _any(chance)


def _measured(
    name: str, value: float, chance: random.Random, *, step: float, old: bool
) -> Measured:
    days = chance.choice((0, 1, 2, 4, 20)) if old else 0
    low = max(0.0, value - step)
    high = value + step if name not in {"kh", "gh"} else value
    return Measured(name, value, low, high, NOW - timedelta(days=days), step=step)


def _any(chance: random.Random) -> Case:
    kind = chance.choices(("fresh", "marine", "brackish", "pond"), (8, 1, 1, 1))[0]
    step = chance.choice((0.1, 0.5, 1.0))
    kh = round(chance.choice((chance.uniform(0, 3), chance.uniform(0, 15))) / step) * step
    spans = {
        "kh": (kh, step),
        "gh": (round(chance.uniform(0, 20)), 1.0),
        "ph": (round(chance.uniform(4.5, 9.2), 1), 0.2),
        "ammonia": (chance.choice((0.0, 0.0, 0.25, 0.5, 1.0, 2.0, 4.0)), 0.1),
        "temperature": (round(chance.uniform(4, 32)), 0.0),
        "salinity": (round(chance.uniform(28, 38)), 0.0),
    }
    known = {
        name: _measured(name, value, chance, step=fine, old=chance.random() < 0.2)
        for name, (value, fine) in spans.items()
        if name == "kh" or (name != "salinity" and chance.random() < 0.75)
    }
    if kind == "marine":
        known["salinity"] = _measured("salinity", spans["salinity"][0], chance, step=0.0, old=False)
    stock = chance.choice(((), (), ("cherry shrimp",), ("neon tetra",), ("swan mussel",)))
    names = [*BRINGS, "sodium bicarbonate", "sodium bicarbonate", *UNKNOWN]
    wish = chance.random()
    return Case(
        _state(known, kind, chance, stock),
        chance.choice(names),
        kh + chance.uniform(-2, 8) if wish < 0.75 else None,
        spans["gh"][0] + chance.uniform(-2, 12) if wish >= 0.6 else None,
        built_safe=False,
    )


def _safe(chance: random.Random) -> Case:
    """A tank that plainly can be helped: all known today, no ammonia, a modest wish."""
    kh, gh = float(chance.randint(2, 10)), float(chance.randint(3, 12))
    ph = 6.95 + np.log10(kh / 4.0) + chance.uniform(-0.2, 0.6)
    readings = {
        "kh": _measured("kh", kh, chance, step=chance.choice((0.5, 1.0)), old=False),
        "gh": _measured("gh", gh, chance, step=1.0, old=False),
        "ph": _measured("ph", round(float(ph), 1), chance, step=0.2, old=False),
        "ammonia": Measured("ammonia", 0.0, 0.0, 0.0, NOW),
        "temperature": _measured(
            "temperature", chance.uniform(18, 28), chance, step=0.0, old=False
        ),
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
    return Case(
        _state(readings, "fresh", chance, ()),
        substance,
        None if of_gh else kh + chance.uniform(0.5, 5),
        gh + chance.uniform(0.5, 6) if of_gh else None,
        built_safe=True,
    )


def _state(
    readings: dict[str, Measured], kind: str, chance: random.Random, stock: tuple[str, ...]
) -> State:
    tank = Tank(
        "Fern",
        kind=kind,  # type: ignore[arg-type]
        volume_l=round(10 ** chance.uniform(0.5, 3.5), 1),
        stock=tuple(Stock(species, 5) for species in stock),
    )
    return State(tank, NOW, readings)


# --- the checker --------------------------------------------------------------------------------


@dataclass
class Verdict:
    """What came of many cases: how many were planned, refused and why, and every harm found."""

    planned: int = 0
    safe: int = 0
    safe_planned: int = 0
    refused: Counter[str] = field(default_factory=Counter)
    harms: list[str] = field(default_factory=list)


@dataclass
class Row:
    """One part of a plan, as numbers for the arrays."""

    case: Case
    plan: Plan
    number: int


def judge(answers: list[tuple[Case, Plan | Refusal]]) -> Verdict:
    """Look at every part of every plan for what the limits forbid."""
    verdict = Verdict()
    rows: list[Row] = []
    for case, answer in answers:
        verdict.safe += case.built_safe
        if isinstance(answer, Refusal):
            verdict.refused[answer.reason] += 1
            if any(word in name for name in answer.facts for word in ("gram", "part", "dose")):
                verdict.harms.append(f"a refusal with an amount: {case}")
            continue
        verdict.planned += 1
        verdict.safe_planned += case.built_safe
        verdict.harms += [f"{harm}: {case}" for harm in _simple(case, answer)]
        if all(salt.substance in BRINGS for salt in answer.salts):
            rows += [Row(case, answer, number) for number in range(answer.count)]
    if rows:
        verdict.harms += _waters(rows)
    return verdict


def _simple(case: Case, plan: Plan) -> Iterator[str]:
    """What needs no chemistry: names, masses, hours, steps of KH and GH."""
    if any(salt.substance == "sodium carbonate" for salt in plan.salts):
        yield "a number without knowing the hydrate"
    if any(salt.substance not in BRINGS for salt in plan.salts):
        yield "a number for what nobody knows"
        return
    if plan.every_hours < 24:
        yield "parts too close"
    volume = case.state.tank.volume_l or 0.0
    kh_rise, gh_rise = _rises(plan, volume)
    start, low = case.state.readings["kh"].value, case.state.readings["kh"].low
    if low < 1.0 and kh_rise > 0:
        acid = _fresh(case, "ph") is not None and (_fresh(case, "ph") or 9.0) < 5.5
        if plan.count > 1 or kh_rise > (0.1001 if acid else 0.2501):
            yield "a blind plan"
        if _fresh(case, "ammonia") is None:
            yield "a blind plan without ammonia measured"
    elif kh_rise / plan.count > min(1.0, low) + 1e-3:
        yield "KH too fast"
    if gh_rise / plan.count > 2.0 + 1e-3 and case.state.tank.kind != "marine":
        yield "GH too fast"
    if case.kh is not None and low >= 1.0 and abs(start + kh_rise - case.kh) > 1e-3 * case.kh:
        yield "does not reach the wish"
    if case.kh is not None and case.kh < start - 1e-9:
        yield "raised what was to be lowered"
    gh = case.value("gh")
    if case.gh is not None and gh is not None and abs(gh + gh_rise - case.gh) > 0.05:
        yield "does not reach the wished GH"
    ph = _fresh(case, "ph")
    kh = _fresh(case, "kh")
    if ph is not None and kh is not None and case.state.tank.kind != "marine":
        # 3 KH 10^(7 - pH), common practice, from the ends that give the least.
        if 3.0 * low * 10.0 ** (7.0 - ph - 0.2) > 50.0:
            yield "dosed on a contradiction"
        if not 4.0 <= ph <= 10.5:
            yield "dosed on an impossible pH"


def _rises(plan: Plan, volume: float) -> tuple[float, float]:
    kh = gh = 0.0
    for salt in plan.salts:
        alkalinity, calcium, magnesium, _, molar = BRINGS[salt.substance]
        moles = 1000.0 * salt.grams / molar / volume
        kh += moles * alkalinity / DEGREE
        gh += 2.0 * moles * (calcium + magnesium) / DEGREE
    return kh, gh


def _fresh(case: Case, analyte: str) -> float | None:
    held = case.state.readings.get(analyte)
    fresh = held is not None and NOW - held.at <= timedelta(days=3)
    return held.value if held is not None and fresh else None


def _waters(rows: list[Row]) -> list[str]:
    """Every part of every plan at once: pH steps and un-ionised ammonia, at once and stood."""
    sea = np.array([row.case.state.tank.kind == "marine" for row in rows])
    harms = []
    for choice in (sea, ~sea):
        chosen = [row for row, is_in in zip(rows, choice, strict=True) if is_in]
        if chosen:
            harms += _one_kind(chosen)
    return harms


def _one_kind(rows: list[Row]) -> list[str]:
    sea = rows[0].case.state.tank.kind == "marine"
    column = lambda get: np.array([get(row) for row in rows], dtype=float)  # noqa: E731
    warm = column(
        lambda r: 30.0 if _fresh(r.case, "temperature") is None else _fresh(r.case, "temperature")
    )
    kh = column(lambda r: r.case.state.readings["kh"].value)
    gh = column(lambda r: kh_or(r.case))
    ph = column(
        lambda r: (
            np.nan
            if _fresh(r.case, "ph") is None or _fresh(r.case, "kh") is None
            else _fresh(r.case, "ph")
        )
    )
    given: dict[str, Any] = {"salinity": column(lambda r: r.case.value("salinity"))} if sea else {}
    gh_given: dict[str, Any] = {} if sea else {"gh": gh}
    before = Water.from_readings(kh=kh, temperature=warm, **gh_given, **given)
    known = ~np.isnan(ph)
    here = with_ph(before, np.where(known, ph, 7.0)).pco2
    pressure = np.clip(np.where(known, here, 2000.0), 0.01, 1e6)
    start = in_air(before, pressure)
    now = in_air(_dosed(start.water, rows, 0, behind=True), pressure)
    at_once = solve(_dosed(now.water, rows, 1))
    stood = in_air(at_once.water, pressure)
    open_now, open_after = in_air(now.water, 420.0), in_air(at_once.water, 420.0)
    open_start = in_air(start.water, 420.0)
    steps = np.max(
        np.abs([at_once.ph - now.ph, stood.ph - now.ph, open_after.ph - open_now.ph]), axis=0
    )
    free = np.array([row.plan.blind for row in rows])
    salinity = given.get("salinity", 0.0)

    def share(at: Any) -> Any:
        return un_ionised_fraction(at, np.clip(warm, 0, 50), salinity)

    leaves = np.maximum(open_after.ph, np.maximum(at_once.ph, stood.ph))
    leaves_first = np.where(known, np.fmax(open_start.ph, ph), open_start.ph)
    expected = np.where(known, np.maximum(stood.ph, at_once.ph), leaves)
    total = column(_total)
    rises = leaves > leaves_first + 0.011
    total = np.where(np.isinf(total) & ~rises, 0.0, total)
    tender = np.array([_tender(row.case) for row in rows])
    limit = np.where(tender, 0.03, 0.05)
    over = total * share(expected) > limit * 1.01
    freed = (total * share(leaves) > limit * 1.01) & (
        share(leaves) > 1.25 * 1.01 * share(leaves_first)
    )
    silent = (total * share(leaves) > limit * 1.01) & ~np.array(
        [row.plan.gate is not None and row.plan.gate.keep_co2 for row in rows]
    )
    found = {
        "pH too fast": (steps > 0.3101) & ~free,
        "ammonia over the gate": over,
        "ammonia over the gate if CO2 leaves": freed,
        "not told to keep CO2": silent,
    }
    return [
        f"{name}: part {rows[i].number + 1} of {rows[i].plan.count}, {rows[i].case}"
        for name, where in found.items()
        for i in np.flatnonzero(where)
    ]


def planned(case: Case) -> list[Plan | Refusal]:
    """What the planner of the chat answers to a case."""
    if case.gh is None and case.kh is not None:
        wish = Wish(target=case.kh, substance=case.substance)
        return [plan_kh(wish, case.state, known_tank=True)]
    targets = {name: t for name, t in (("gh", case.gh), ("kh", case.kh)) if t is not None}
    named = (case.substance,) if len(targets) == 1 else ()
    plans = plan_salts(SaltWish(targets, substances=named), case.state, known_tank=True)
    return list(plans) if isinstance(plans, tuple) else [plans]


def kh_or(case: Case) -> float:
    """GH, or KH where it is unknown."""
    gh = case.value("gh")
    return case.state.readings["kh"].value if gh is None else gh


def _total(row: Row) -> float:
    held = row.case.state.readings.get("ammonia")
    if held is not None and _fresh(row.case, "ammonia") is not None:
        return held.high
    only = None if row.plan.gate is None else row.plan.gate.only_below
    return np.inf if only is None else only


def _tender(case: Case) -> bool:
    words = " ".join(stock.species for stock in case.state.tank.stock)
    return case.state.tank.kind == "marine" or "shrimp" in words or "mussel" in words


def _dosed(water: Water, rows: list[Row], parts: int, *, behind: bool = False) -> Water:
    """The water with all parts before each row's own (`behind`), or with so many more."""
    amounts = np.zeros((6, len(rows)))
    for place, row in enumerate(rows):
        count = row.number if behind else parts
        for salt in row.plan.salts:
            *brings, molar = BRINGS[salt.substance]
            each = 1000.0 * salt.grams / row.plan.count / molar / row.plan.volume_l
            amounts[:4, place] += count * each * np.array(brings)
            counter = 4 if "chloride" in salt.substance else 5
            amounts[counter, place] += count * each * (brings[1] + brings[2])
    amounts /= water.density
    return replace(
        water,
        alkalinity=water.alkalinity + amounts[0],
        calcium=water.calcium + amounts[1],
        magnesium=water.magnesium + amounts[2],
        carbon=water.carbon + amounts[3],
        sodium=water.sodium + amounts[0],  # potassium does the same to the strength
        chloride=water.chloride + 2.0 * amounts[4],
        sulfate=water.sulfate + amounts[5],
    )
