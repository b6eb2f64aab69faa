"""A second opinion on doses: a checker that knows only the limits.

It takes what a keeper would do with an answer (so many grams, so many times, so many hours apart)
and works out the water again, for all cases at once, from the readings. It shares no code with the
planner: its limits are written here again, its masses are periodictable's; only the solver of
`core.water`, which PHREEQC checks elsewhere, is common to both.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass, field
from datetime import timedelta
from functools import cache

import periodictable

from core.advice.plan import Plan, Refusal, Weighed
from tests.core.advice.never_harm_cases import Case
from tests.core.advice.never_harm_waters import Row, waters

DEGREE = 2.0 * 10.0 / periodictable.formula("CaO").mass
"""meq/L of one °dH."""


@cache
def mass(formula: str) -> float:
    return float(periodictable.formula(formula).mass)


BRINGS: dict[str, tuple[float, dict[str, float]]] = {
    # mass of one mole [g]; moles of each part of a water, alkalinity in equivalents
    "sodium bicarbonate": (mass("NaHCO3"), {"alkalinity": 1, "carbon": 1, "sodium": 1}),
    "potassium bicarbonate": (mass("KHCO3"), {"alkalinity": 1, "carbon": 1, "potassium": 1}),
    "sodium carbonate decahydrate": (
        mass("Na2CO3(H2O)10"), {"alkalinity": 2, "carbon": 1, "sodium": 2},
    ),
    "potassium carbonate": (mass("K2CO3"), {"alkalinity": 2, "carbon": 1, "potassium": 2}),
    "calcium chloride": (mass("CaCl2"), {"calcium": 1, "chloride": 2}),
    "calcium chloride dihydrate": (mass("CaCl2(H2O)2"), {"calcium": 1, "chloride": 2}),
    "calcium sulfate": (mass("CaSO4"), {"calcium": 1, "sulfate": 1}),
    "calcium sulfate dihydrate": (mass("CaSO4(H2O)2"), {"calcium": 1, "sulfate": 1}),
    "magnesium sulfate": (mass("MgSO4"), {"magnesium": 1, "sulfate": 1}),
    "magnesium sulfate heptahydrate": (mass("MgSO4(H2O)7"), {"magnesium": 1, "sulfate": 1}),
    "magnesium chloride": (mass("MgCl2"), {"magnesium": 1, "chloride": 2}),
    "magnesium chloride hexahydrate": (mass("MgCl2(H2O)6"), {"magnesium": 1, "chloride": 2}),
    "potassium nitrate": (mass("KNO3"), {"potassium": 1, "nitrate": 1}),
    "monopotassium phosphate": (mass("KH2PO4"), {"potassium": 1, "phosphate": 1}),
    "potassium sulfate": (mass("K2SO4"), {"potassium": 2, "sulfate": 1}),
    "sodium chloride": (mass("NaCl"), {"sodium": 1, "chloride": 1}),
    # Reference Composition, Millero et al. 2008, table 3: mole fractions and mean mass (M).
    "sea salt": (
        31.4038218,
        {
            "sodium": 0.4188071, "magnesium": 0.0471678, "calcium": 0.0091823,
            "potassium": 0.0091159, "chloride": 0.4874839, "sulfate": 0.0252152,
            "carbon": 0.0015340 + 0.0002134 + 0.0000086, "borate": 0.0000900 + 0.0002807,
            "alkalinity": 0.0015340 + 2 * 0.0002134 + 0.0000900 + 0.0000071,
        },
    ),
}  # fmt: skip
IONS = {
    "calcium": "Ca", "magnesium": "Mg", "nitrate": "NO3", "phosphate": "PO4", "potassium": "K",
}  # fmt: skip
STEPS = {"gh": 2.0, "calcium": 20.0, "magnesium": 50.0, "salinity": 1.0}
"""A day: GH in fresh water, calcium and magnesium in the sea, salinity up."""


@dataclass
class Verdict:
    """What came of many cases: how many were planned, refused and why, and every harm found."""

    planned: int = 0
    safe: int = 0
    safe_planned: int = 0
    emergencies: int = 0
    upkeeps: int = 0
    refused: Counter[str] = field(default_factory=Counter)
    goals: Counter[str] = field(default_factory=Counter)
    harms: list[str] = field(default_factory=list)

    def add(self, other: Verdict) -> None:
        """Count another's verdict in."""
        for name in self.__dataclass_fields__:
            setattr(self, name, getattr(self, name) + getattr(other, name))


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
        verdict.emergencies += answer.emergency
        verdict.upkeeps += answer.upkeep is not None and answer.upkeep.salt is not None
        verdict.goals["+".join(sorted(case.targets))] += 1
        verdict.harms += [f"{harm}: {case}" for harm in _simple(case, answer)]
        if all(salt.substance in BRINGS for salt in answer.salts):
            rows += _rows(case, answer)
    if rows:
        verdict.harms += waters(rows)
    return verdict


def _rows(case: Case, plan: Plan) -> Iterator[Row]:
    """Every part of a plan, and the daily need once all parts are in."""
    volume = case.state.tank.volume_l or 0.0
    part = brought(plan.salts, volume / 1000.0 * plan.count)
    keep = plan.gate is not None and plan.gate.keep_co2
    only = None if plan.gate is None else plan.gate.only_below
    for number in range(plan.count):
        title = f"part {number + 1} of {plan.count}, {case}"
        yield Row(case, title, part, number, part, plan.blind, keep, only)
    if plan.upkeep is not None and plan.upkeep.salt is not None:
        need = brought((plan.upkeep.salt,), volume / 1000.0)
        yield Row(case, f"daily need, {case}", part, plan.count, need, False, keep, only)


def brought(salts: tuple[Weighed, ...], thousand_litres: float) -> dict[str, float]:
    """What salts bring to so much water. [mmol/L], salinity [g/L]"""
    found: dict[str, float] = {}
    for salt in salts:
        molar, parts = BRINGS[salt.substance]
        per_litre = salt.grams / thousand_litres
        for name, moles in parts.items():
            found[name] = found.get(name, 0.0) + moles * per_litre / molar
        if salt.substance in {"sea salt", "sodium chloride"}:
            found["salt"] = found.get("salt", 0.0) + per_litre / 1000.0
        if salt.substance == "sea salt":
            found["salinity"] = found.get("salinity", 0.0) + per_litre / 1000.0
    return found


def _simple(case: Case, plan: Plan) -> Iterator[str]:
    """What needs no chemistry: names, masses, hours, daily steps, and that the wish is reached."""
    if any(salt.substance == "sodium carbonate" for salt in plan.salts):
        yield "a number without knowing the hydrate"
    if any(salt.substance not in BRINGS for salt in plan.salts):
        yield "a number for what nobody knows"
        return
    if plan.every_hours < 24:
        yield "parts too close"
    moved = rises(brought(plan.salts, (case.state.tank.volume_l or 0.0) / 1000.0))
    yield from _kh(case, plan, moved["kh"])
    for analyte, step in STEPS.items():
        if _is_bound(case, plan, analyte) and moved[analyte] / plan.count > step * 1.001:
            yield f"{analyte} too fast"
    for analyte, target in case.targets.items():
        start = case.value(analyte)
        if start is None:
            continue
        if target < start - 1e-9:
            yield f"raised {analyte} that was to be lowered"
        off = 2e-3 * abs(target) + 0.021 * (target - start)
        if not plan.blind and abs(start + moved[analyte] - target) > off:
            yield f"does not reach the wished {analyte}"
    if case.is_sea and moved["kh"] > 0.01 and moved["calcium"] > 1.0 and not moved["salinity"]:
        yield "calcium and buffer at one time"
    strong = any("carbonate" in s.substance.replace("bicarb", "") for s in plan.salts)
    if strong and not case.is_sea:
        yield "carbonate near animals"
    if moved["potassium"] > 0.0 and case.keeps("mussel") and "sea salt" not in case.substance:
        yield "potassium with mussels"
    yield from _contradicts(case)
    yield from _need(case, plan)


def _is_bound(case: Case, plan: Plan, analyte: str) -> bool:
    """In the sea calcium and magnesium have steps of their own; sea salt moves them by salinity."""
    if any(salt.substance == "sea salt" for salt in plan.salts):
        fresh = not case.is_sea and case.state.tank.kind != "brackish"
        return analyte == "salinity" or (
            analyte == "gh" and fresh and (case.value("salinity") or 0.0) <= 1.0
        )
    return analyte in ({"calcium", "magnesium", "salinity"} if case.is_sea else {"gh", "salinity"})


def rises(parts: dict[str, float]) -> dict[str, float]:
    """How far each analyte goes, from what was brought."""
    of = {name: parts.get(name, 0.0) for name in (*IONS, "alkalinity", "salt")}
    found = {name: of[name] * mass(formula) for name, formula in IONS.items()}
    found["kh"] = of["alkalinity"] / DEGREE
    found["gh"] = 2.0 * (of["calcium"] + of["magnesium"]) / DEGREE
    found["salinity"] = of["salt"]
    return found


def _kh(case: Case, plan: Plan, rise: float) -> Iterator[str]:
    kh = case.state.readings.get("kh")
    if kh is None or rise <= 0.0:
        return
    if kh.low < 1.0 and "salinity" not in case.targets:
        ph = case.fresh("ph")
        acid = ph is not None and ph.value < 5.5
        if plan.count > 1 or rise > (0.1001 if acid else 0.2501):
            yield "a blind plan"
        if case.fresh("ammonia") is None:
            yield "a blind plan without ammonia measured"
        return
    each = rise / plan.count
    most = 2.0 if plan.emergency and _is_emergency(case) else 1.0
    if each > min(most, max(kh.low, 1.0)) + 1e-3:
        yield "KH too fast"
    if each > 1.001 and not plan.emergency:
        yield "an emergency's pace that is not said"


def _is_emergency(case: Case) -> bool:
    """Little buffer, pH that fell by half a unit or is said to have crashed, ammonia measured."""
    kh, ph, tank = case.fresh("kh"), case.fresh("ph"), case.state.tank
    if kh is None or ph is None or case.fresh("ammonia") is None or tank.soft:
        return False
    if kh.low < 1.0 or kh.value >= (7.0 if case.is_sea else 60.0 / 17.848):
        return False
    if case.called and ph.value < 6.5:
        return True
    for then in case.state.earlier:
        apart = ph.at - then.at
        off = apart.total_seconds() / 3600.0 % 24.0
        same_hour = min(off, 24.0 - off) <= 3.0
        if same_hour and apart <= timedelta(days=3) and then.value - ph.value >= 0.5 - 1e-6:
            return True
    return False


def _contradicts(case: Case) -> Iterator[str]:
    ph, kh = case.fresh("ph"), case.fresh("kh")
    if ph is None or kh is None or case.is_sea:
        return
    # 3 KH 10^(7 - pH), common practice, from the ends that give the least.
    if 3.0 * kh.low * 10.0 ** (7.0 - ph.value - 0.2) > 50.0:
        yield "dosed on a contradiction"
    if not 4.0 <= ph.value <= 10.5:
        yield "dosed on an impossible pH"


def _need(case: Case, plan: Plan) -> Iterator[str]:
    """The daily amount is what two readings show to be used, and no more than a day's step."""
    if plan.upkeep is None or plan.upkeep.salt is None:
        return
    name = plan.upkeep.analyte
    earlier, later = case.state.history[name]
    days = (later.at - earlier.at).total_seconds() / 86400.0
    used = (earlier.value - later.value) / days
    given = rises(brought((plan.upkeep.salt,), (case.state.tank.volume_l or 0.0) / 1000.0))[name]
    if not case.is_sea or abs(given - used) > 0.002 * used:
        yield "a daily need that the readings do not show"
    if given > {"kh": 1.0, "calcium": 20.0, "magnesium": 50.0}[name] * 1.001:
        yield "a daily need over a day's step"
    if earlier.low <= later.high:
        yield "a daily need that the kit cannot see"
