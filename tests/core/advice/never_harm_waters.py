"""The water of every part of every plan, worked out again for all of them at once."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, fields, replace
from math import inf, nan
from typing import Any

import numpy as np

from core.errors import CoreError
from core.water import Water, in_air, saturation, solve, un_ionised_fraction
from core.water.solution import with_ph
from tests.core.advice.never_harm_cases import Case

READ = ("gh", "salinity", "calcium", "magnesium", "chloride", "nitrate", "sodium")


@dataclass(frozen=True, slots=True)
class Row:
    """One part: what each part before it brought and how many there were, and what this brings.

    `blind` and `keep` are what the plan says of itself, `only` the total ammonia that it names.
    """

    case: Case
    title: str
    before: Mapping[str, float]
    count: int
    now: Mapping[str, float]
    blind: bool
    keep: bool
    only: float | None


def waters(rows: list[Row]) -> list[str]:
    """The harms of all rows: fresh and salt water apart, since their formulas differ."""
    fresh = [row for row in rows if _salinity(row.case) == 0.0 and "salinity" not in row.now]
    salty = [row for row in rows if _salinity(row.case) > 0.0 or "salinity" in row.now]
    return [harm for kind in (fresh, salty) if kind for harm in _harms(kind)]


def _harms(rows: list[Row]) -> list[str]:
    ph = np.array([_ph(row.case) for row in rows])
    cases = {id(row.case): row.case for row in rows}
    made = {key: _water(case) for key, case in cases.items()}
    begin = _joined([made[id(row.case)] for row in rows])
    known = ~np.isnan(ph)
    here = with_ph(begin, np.where(known, ph, 7.0)).pco2
    pressure = np.clip(np.where(known, here, 2000.0), 0.01, 1e6)
    now = in_air(_dosed(begin, [(row.before, row.count) for row in rows]), pressure)
    at_once = solve(_dosed(now.water, [(row.now, 1) for row in rows]))
    stood = in_air(at_once.water, pressure)
    open_now, open_after = in_air(now.water, 420.0), in_air(at_once.water, 420.0)
    open_first = in_air(begin, 420.0).ph
    moves = [at_once.ph - now.ph, stood.ph - now.ph, open_after.ph - open_now.ph]
    leaves = np.maximum(open_after.ph, np.maximum(at_once.ph, stood.ph))
    leaves_first = np.where(known, np.fmax(open_first, ph), open_first)
    expected = np.where(known, np.maximum(stood.ph, at_once.ph), leaves)
    sea = np.array([row.case.is_sea for row in rows])
    tender = sea | np.array([row.case.keeps("shrimp", "mussel") for row in rows])
    limit = 1.01 * np.where(tender, 0.03, 0.05)
    total = np.array([_total(row) for row in rows])
    total = np.where(np.isinf(total) & (leaves <= leaves_first + 0.011), 0.0, total)
    warm, salinity = np.clip(begin.temperature, 0, 50), at_once.water.salinity

    def share(at: Any) -> Any:
        return un_ionised_fraction(at, warm, salinity)

    first = un_ionised_fraction(leaves_first, warm, begin.salinity)

    freed = total * share(leaves) > limit
    full = np.maximum(saturation(stood, "aragonite"), saturation(at_once, "aragonite"))
    found = {
        "pH too fast": (np.max(np.abs(moves), axis=0) > 0.3101)
        & ~np.array([row.blind for row in rows]),
        "ammonia over the gate": total * share(expected) > limit,
        "ammonia over the gate if CO2 leaves": freed & (share(leaves) > 1.25 * 1.01 * first),
        "not told to keep CO2": freed & ~np.array([row.keep for row in rows]),
        "so full of lime that it falls out": sea & (full > 10.05),
    }
    return [
        f"{name}: {rows[i].title}" for name, where in found.items() for i in np.flatnonzero(where)
    ]


def _salinity(case: Case) -> float:
    told = case.value("salinity")
    return told if told is not None else 35.0 if case.is_sea else 0.0


def _ph(case: Case) -> float:
    """The pH that tells the tank's carbon dioxide, with a KH as young."""
    ph = case.fresh("ph")
    return nan if ph is None or case.fresh("kh") is None else ph.value


def _water(case: Case) -> Water:
    """The water of the readings; what does not fit together is left out."""
    warm = case.fresh("temperature")
    kh = case.value("kh")
    least = {"kh": kh or 0.0, "temperature": 30.0 if warm is None else warm.value}
    if _salinity(case) > 0.0:
        least["salinity"] = _salinity(case)
    told = {name: value for name in READ if (value := case.value(name)) is not None}
    try:
        return Water.from_readings(**{**told, **least})  # type: ignore[arg-type]
    except CoreError:
        return Water.from_readings(**least)  # type: ignore[arg-type]


def _joined(each: list[Water]) -> Water:
    names = [part.name for part in fields(Water) if part.type == "float"]
    columns = {name: np.array([float(getattr(water, name)) for water in each]) for name in names}
    # What no water of them holds stays a plain zero, so that its part of the work is left out.
    return Water(**{name: column if column.any() else 0.0 for name, column in columns.items()})


def _dosed(water: Water, parts: list[tuple[Mapping[str, float], int]]) -> Water:
    """The water with so many times what parts bring. [mmol/L]"""
    names = {name for brings, _ in parts for name in brings} - {"salt"}
    changed = {}
    for name in sorted(names):
        column = np.array([count * brings.get(name, 0.0) for brings, count in parts])
        changed[name] = getattr(water, name) + column / water.density
    return replace(water, **changed)


def _total(row: Row) -> float:
    """Total ammonia that counts: the upper end of a fresh reading, else what the plan names."""
    held = row.case.fresh("ammonia")
    if held is not None:
        return held.high
    return inf if row.only is None else row.only
