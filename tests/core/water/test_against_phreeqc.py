"""Fresh water against PHREEQC: a thinned grid and random cases. The whole grid is in tests/bench.

The limits are the issue's: pH 0.02, saturation index 0.03; at rest over a mineral pH 0.03 and
KH 3 %.
"""

from __future__ import annotations

import itertools
import math

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from core.water.constants import FRESH_CONSTANTS, fresh_constant
from core.water.minerals import saturation_index
from core.water.solution import in_air, solve, with_ph
from core.water.water import Water
from tests.core.water import against_phreeqc as grid_module
from tests.core.water.against_phreeqc import (
    Difference,
    dosing,
    grid,
    mixing,
    plain_water,
    resting,
    speciation,
    standing,
    twin,
)

LIMITS = {
    "pH": 0.02,
    "SI calcite": 0.03,
    "SI aragonite": 0.03,
    "pH stood": 0.02,
    "pH mixed": 0.02,
    "pH dosed": 0.02,
    "pH at rest": 0.03,
    "KH at rest": 0.03,
}
RELATIVE = {"KH at rest"}
FEW = settings(max_examples=30)


def check(differences) -> None:
    worst: dict[str, tuple[float, Difference]] = {}
    for kind, difference in differences:
        size = difference.relative if kind in RELATIVE else difference.size
        if kind not in worst or size > worst[kind][0]:
            worst[kind] = (size, difference)
    assert worst, "the grid was empty"
    for kind, (size, difference) in worst.items():
        assert size < LIMITS[kind], f"{kind}: {difference}"


def test_speciation_over_the_grid():
    check(speciation(grid(thin=13)))


def test_standing_over_the_grid():
    check(standing(grid(thin=101)))


def test_mixing_over_the_grid():
    waters = list(grid(thin=83))
    check(mixing(zip(waters, reversed(waters), strict=True)))


def test_dosing_over_the_grid():
    check(dosing(grid(thin=53)))


def test_rest_over_minerals_over_the_grid():
    check(resting(grid(thin=211)))


fresh_waters = st.builds(
    plain_water,
    kh=st.floats(0.1, 25.0),
    gh=st.floats(0.0, 30.0),
    celsius=st.floats(2.0, 38.0),
    sulfate_share=st.floats(0.0, 0.9),
    ph=st.floats(5.0, 9.5),
)


@FEW
@given(fresh_waters)
def test_random_waters_as_they_are(water: Water | None):
    assume(water is not None)
    check(speciation([("random", water)]))


@FEW
@given(fresh_waters, st.floats(300.0, 5000.0))
def test_random_waters_stood(water: Water | None, pressure: float):
    assume(water is not None)
    check(standing([("random", water)], [pressure]))


@FEW
@given(fresh_waters, fresh_waters)
def test_random_waters_mixed(one: Water | None, two: Water | None):
    assume(one is not None)
    assume(two is not None)
    check(mixing([(("one", one), ("two", two))]))


@pytest.mark.parametrize(
    ("field", "amount", "why"),
    [
        ("ammonia", 0.3, "4 mg/L of ammonium nitrogen; at pH 9 a third of it is base"),
        ("phosphate", 0.05, "5 mg/L of phosphate"),
        ("borate", 0.05, "a little boron"),
        ("nitrate", 1.0, "62 mg/L of nitrate, ionic strength only"),
        ("potassium", 1.0, "39 mg/L"),
    ],
)
@pytest.mark.parametrize("ph", [6.0, 7.5, 9.0])
def test_minor_parts(field: str, amount: float, why: str, ph: float):
    plain = plain_water(2.0, 5.0, 25.0, 0.2)
    water = Water(
        25.0,
        alkalinity=plain.alkalinity,
        calcium=plain.calcium,
        magnesium=plain.magnesium,
        sodium=plain.sodium,
        chloride=plain.chloride,
        sulfate=plain.sulfate,
        **{field: amount},
    )
    # Ammonium takes pKa 9.246 of Emerson (1975); PHREEQC's own is 9.244.
    solved = with_ph(water, ph)
    theirs = twin(solved.water)
    assert solved.ph == pytest.approx(theirs.pH, abs=0.02), why


@pytest.mark.parametrize("celsius", [2.0, 15.0, 25.0, 38.0])
@pytest.mark.parametrize("pressure", [420.0, 2000.0])
def test_stood_saturation_index(celsius: float, pressure: float):
    water = plain_water(8.0, 12.0, celsius, 0.3)
    solved = in_air(water, pressure)
    theirs = twin(solved.water)
    assert saturation_index(solved) == pytest.approx(theirs.si("Calcite"), abs=0.03)


@pytest.mark.parametrize(
    ("name", "log_k"),
    [
        ("calcite", -8.480),
        ("aragonite", -8.336),
        ("ca_hco3", 1.11),
        ("ca_co3", 3.22),
    ],
)
def test_plummer_busenberg_1982_at_25_degrees_grade_a(name: str, log_k: float):
    assert math.log10(fresh_constant(name, 25.0)) == pytest.approx(log_k, abs=0.005)


@pytest.mark.parametrize(
    ("name", "log_k"),
    [("henry", -1.468), ("k1", -6.352), ("k2", -10.329), ("water", -13.998)],
)
def test_log_constants_of_the_usgs_database_at_25_degrees(name: str, log_k: float):
    assert math.log10(fresh_constant(name, 25.0)) == pytest.approx(log_k, abs=0.003)


def test_every_constant_names_its_source():
    assert all(row.source and row.reaction for row in FRESH_CONSTANTS.values())


def test_the_grid_is_the_issue_s():
    assert min(grid_module.KH) == 0.1
    assert max(grid_module.KH) == 25.0
    assert max(grid_module.GH) == 30.0
    assert (min(grid_module.CELSIUS), max(grid_module.CELSIUS)) == (2.0, 38.0)
    assert (min(grid_module.AIR), max(grid_module.AIR)) == (300.0, 5000.0)
    assert len(list(itertools.islice(grid(thin=50), 100))) > 50


def test_pure_water_is_neutral():
    assert solve(Water(25.0)).ph == pytest.approx(7.0, abs=0.01)
