"""The same water in PHREEQC (phreeqc.dat, through phreeqpython) and in ours, over a grid.

Used thinned by the suite and whole by tests/bench/water_accuracy.py. Every comparison yields
`Difference` values; the caller keeps the worst.
"""

from __future__ import annotations

import itertools
import math
from collections.abc import Iterable, Iterator
from dataclasses import replace
from functools import cache
from typing import Any, NamedTuple

from phreeqpython import PhreeqPython

from core.water.dosing import add
from core.water.errors import ImpossibleWater
from core.water.handling import mix
from core.water.minerals import rest_on_mineral, saturation_index
from core.water.solution import in_air, solve, with_ph
from core.water.substances import SUBSTANCES
from core.water.water import MEQ_PER_DH, Water

KH = (0.1, 0.3, 0.5, 1.0, 2.0, 4.0, 8.0, 15.0, 25.0)
GH = (0.0, 1.0, 3.0, 8.0, 15.0, 30.0)
PH = (5.0, 5.5, 6.0, 6.5, 7.0, 7.5, 8.0, 8.5, 9.0, 9.5)
CELSIUS = (2.0, 10.0, 20.0, 25.0, 30.0, 38.0)
SULFATE_SHARE = (0.0, 0.5)
AIR = (300.0, 420.0, 1000.0, 2000.0, 5000.0)

MOST_CO2 = 5000.0  # mg/L: such points of the grid are left out, as the issue says

DOSES = {
    "sodium bicarbonate": "NaHCO3",
    "potassium bicarbonate": "KHCO3",
    "sodium carbonate": "Na2CO3",
    "potassium carbonate": "K2CO3",
    "calcium chloride": "CaCl2",
    "calcium sulfate": "CaSO4",
    "magnesium sulfate": "MgSO4",
    "magnesium chloride": "MgCl2",
    "calcium hydroxide": "Ca(OH)2",
    "sodium chloride": "NaCl",
    "potassium nitrate": "KNO3",
    "monopotassium phosphate": "KH2PO4",
    "dipotassium phosphate": "K2HPO4",
    "hydrochloric acid": "HCl",
}


class Difference(NamedTuple):
    """One figure of one water: ours, theirs, and where."""

    ours: float
    theirs: float
    where: str

    @property
    def size(self) -> float:
        return abs(self.ours - self.theirs)

    @property
    def relative(self) -> float:
        return abs(self.ours / self.theirs - 1.0)


@cache
def phreeqc() -> PhreeqPython:
    return PhreeqPython()


def twin(water: Water) -> Any:
    """The same water in PHREEQC, by alkalinity and inorganic carbon; forget it after use."""
    amounts = {
        "Alkalinity": water.alkalinity,
        "C(4)": water.carbon,
        "Ca": water.calcium,
        "Mg": water.magnesium,
        "Na": water.sodium,
        "K": water.potassium,
        "Cl": water.chloride,
        "S(6)": water.sulfate,
        "N(-3)": water.ammonia,
        "N(5)": water.nitrate,
        "P": water.phosphate,
        "B": water.borate,
    }
    return phreeqc().add_solution(
        {
            "units": "mmol/kgw",
            "temp": water.temperature,
            **{name: amount for name, amount in amounts.items() if amount != 0.0},
        }
    )


def plain_water(
    kh: float, gh: float, celsius: float, sulfate_share: float = 0.0, ph: float | None = None
) -> Water | None:
    """A fresh water balanced by sodium or chloride; None where no carbon or far too much fits."""
    alkalinity, hardness = kh * MEQ_PER_DH, gh * MEQ_PER_DH / 2.0
    sulfate = sulfate_share * hardness
    lacking = alkalinity + 2.0 * sulfate - 2.0 * hardness
    water = Water(
        celsius,
        alkalinity=alkalinity,
        calcium=0.75 * hardness,
        magnesium=0.25 * hardness,
        sulfate=sulfate,
        sodium=0.3 + max(lacking, 0.0),
        chloride=0.3 + max(-lacking, 0.0),
    )
    if ph is None:
        return water
    try:
        solved = with_ph(water, ph)
    except ImpossibleWater:
        return None
    return None if solved.co2_mg_l > MOST_CO2 else solved.water


def grid(thin: int = 1) -> Iterator[tuple[str, Water]]:
    """Every `thin`-th water of the grid, with its name."""
    points = itertools.product(KH, GH, PH, CELSIUS, SULFATE_SHARE)
    for kh, gh, ph, celsius, share in itertools.islice(points, 0, None, thin):
        water = plain_water(kh, gh, celsius, share, ph)
        if water is not None:
            yield f"KH {kh} GH {gh} pH {ph} {celsius} °C sulfate {share}", water


def speciation(waters: Iterable[tuple[str, Water]]) -> Iterator[tuple[str, Difference]]:
    """PH and both saturation indices of waters as they are."""
    for where, water in waters:
        solved, theirs = solve(water), twin(water)
        yield "pH", Difference(solved.ph, theirs.pH, where)
        if water.calcium > 1e-6:
            for mineral in ("calcite", "aragonite"):
                index = saturation_index(solved, mineral)
                yield f"SI {mineral}", Difference(index, theirs.si(mineral.capitalize()), where)
        theirs.forget()


def standing(
    waters: Iterable[tuple[str, Water]], air: Iterable[float] = AIR
) -> Iterator[tuple[str, Difference]]:
    """PH after standing in air."""
    pressures = tuple(air)
    for where, water in waters:
        for pressure in pressures:
            theirs = twin(water).equalize(["CO2(g)"], [math.log10(1e-6 * pressure)])
            ours = in_air(water, pressure)
            yield "pH stood", Difference(ours.ph, theirs.pH, f"{where}, {pressure} µatm")
            theirs.forget()


def mixing(
    pairs: Iterable[tuple[tuple[str, Water], tuple[str, Water]]],
) -> Iterator[tuple[str, Difference]]:
    """PH of two waters mixed at one temperature, shut off from air."""
    for (where, one), (there, two) in pairs:
        other = replace(two, temperature=one.temperature)
        for share in (0.2, 0.5):
            mine = solve(mix([(one, 1.0 - share), (other, share)]))
            first, second = twin(one), twin(other)
            theirs = phreeqc().mix_solutions({first: 1.0 - share, second: share})
            yield "pH mixed", Difference(mine.ph, theirs.pH, f"{where} + {share} of {there}")
            for solution in (first, second, theirs):
                solution.forget()


def dosing(
    waters: Iterable[tuple[str, Water]],
) -> Iterator[tuple[str, Difference]]:
    """PH after a dose, shut off from air, where the water stays one (pH 4 to 10.5).

    Phosphates at 5 mg/L of PO4 (calcium that phosphate binds is not taken from the free), the
    rest at 0.3 mmol/L.
    """
    doses = itertools.cycle(DOSES.items())
    for where, water in waters:
        for name, formula in itertools.islice(doses, 3):
            millimoles = 0.05 if "phosphate" in name else 0.3
            grams = 0.001 * millimoles * SUBSTANCES[name].molar_mass * water.density
            mine = solve(add(water, name, grams, 1.0))
            if not 4.0 < mine.ph < 10.5:
                continue
            theirs = twin(water)
            theirs.add(formula, millimoles)
            yield "pH dosed", Difference(mine.ph, theirs.pH, f"{where} + {name}")
            theirs.forget()


def resting(waters: Iterable[tuple[str, Water]]) -> Iterator[tuple[str, Difference]]:
    """Where waters end over calcite and aragonite, shut off and in air."""
    for where, water in waters:
        for mineral, pressure in itertools.product(("calcite", "aragonite"), (None, 420.0, 2000.0)):
            mine = rest_on_mineral(water, mineral, pressure, precipitates=True)
            theirs = twin(water)
            phases, values = [mineral.capitalize()], [0.0]
            if pressure is not None:
                phases.append("CO2(g)")
                values.append(math.log10(1e-6 * pressure))
            theirs.equalize(phases, values)
            place = f"{where}, {mineral}, {pressure} µatm"
            yield "pH at rest", Difference(mine.solution.ph, theirs.pH, place)
            alkalinity = water.alkalinity + 2.0 * (theirs.total("Ca") - water.calcium)
            if alkalinity > 0.05:
                yield (
                    "KH at rest",
                    Difference(mine.solution.water.alkalinity, alkalinity, place),
                )
            theirs.forget()
