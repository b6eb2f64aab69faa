"""What must hold for any water: conservation, symmetry, monotony, there and back, arrays."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from core.water.dosing import add, with_co2, with_organic_acid
from core.water.errors import ImpossibleWater
from core.water.handling import diluted, evaporated, mix, stood, topped_up
from core.water.life import nitrified, taken_up
from core.water.minerals import rest_on_mineral, saturation_index
from core.water.solution import (
    in_air,
    solve,
    with_carbon_in_air,
    with_ph,
    with_ph_and_carbon,
    with_ph_and_pressure,
)
from core.water.substances import SUBSTANCES
from core.water.water import AMOUNTS, Water

SOME = settings(max_examples=40)
amount = st.floats(0.0, 5.0)
trace = st.one_of(st.just(0.0), st.floats(1e-4, 0.3))
litres = st.floats(0.5, 500.0)


@st.composite
def waters(draw: st.DrawFn, most_salinity: float = 42.0) -> Water:
    salinity = draw(st.one_of(st.just(0.0), st.floats(0.0, most_salinity)))
    return Water(
        temperature=draw(st.floats(1.0, 39.0)),
        salinity=salinity,
        alkalinity=draw(st.floats(0.02, 9.0)),
        carbon=draw(st.floats(0.02, 12.0)),
        calcium=draw(amount) + 0.29 * salinity,
        magnesium=draw(amount) + 1.5 * salinity,
        sodium=draw(amount) + 13.3 * salinity,
        potassium=draw(trace) + 0.3 * salinity,
        chloride=draw(amount) + 15.5 * salinity,
        sulfate=draw(amount) + 0.8 * salinity,
        ammonia=draw(trace),
        nitrate=draw(trace),
        phosphate=draw(trace),
        borate=draw(trace),
        organic=draw(trace),
    )


def close(one: Water, two: Water, names=("temperature", "salinity", *AMOUNTS)) -> None:
    for name in names:
        assert getattr(one, name) == pytest.approx(getattr(two, name), rel=1e-9, abs=1e-9), name


@SOME
@given(waters())
def test_ph_and_alkalinity_lead_back_to_the_carbon(water):
    solved = solve(water)
    assume(2.0 < solved.ph < 12.0)
    again = with_ph(water, solved.ph)
    assert again.water.carbon == pytest.approx(water.carbon, rel=1e-6)


@SOME
@given(waters())
def test_all_pairs_of_two_knowns_tell_the_same_water(water):
    solved = solve(water)
    assume(4.0 < solved.ph < 10.5)
    pressure = solved.pco2
    assume(0.01 < pressure < 1e6)
    carbon, alkalinity = water.carbon, water.alkalinity
    assert in_air(water, pressure).ph == pytest.approx(solved.ph, abs=1e-6)
    both = with_ph_and_pressure(water, solved.ph, pressure).water
    assert both.carbon == pytest.approx(carbon, rel=1e-6)
    assert both.alkalinity == pytest.approx(alkalinity, rel=1e-6, abs=1e-6)
    by_carbon = with_ph_and_carbon(water, solved.ph).water
    assert by_carbon.alkalinity == pytest.approx(alkalinity, rel=1e-6, abs=1e-6)
    in_balance = with_carbon_in_air(water, pressure)
    # Where nearly all carbon is CO2, the pressure hardly tells the pH.
    if carbon - 1000.0 * solved.co2 > 0.01 * carbon:
        assert in_balance.ph == pytest.approx(solved.ph, abs=1e-4)


@SOME
@given(waters(), litres, waters(), litres)
def test_mixing_commutes_and_conserves(one, a, two, b):
    together = mix([(one, a), (two, b)])
    close(together, mix([(two, b), (one, a)]))
    mass_a, mass_b = a * one.density, b * two.density
    for name in ("temperature", "salinity", *AMOUNTS):
        held = getattr(together, name) * (mass_a + mass_b)
        brought = getattr(one, name) * mass_a + getattr(two, name) * mass_b
        assert held == pytest.approx(brought, rel=1e-9, abs=1e-9), name


@SOME
@given(waters(), waters(), waters())
def test_mixing_associates_by_mass(one, two, three):
    def by_mass(*parts: tuple[Water, float]) -> Water:
        return mix([(water, mass / water.density) for water, mass in parts])

    left = by_mass((by_mass((one, 1.0), (two, 2.0)), 3.0), (three, 4.0))
    right = by_mass((one, 1.0), (by_mass((two, 2.0), (three, 4.0)), 6.0))
    close(left, right)
    assert solve(left).ph == pytest.approx(solve(right).ph, abs=1e-8)


@SOME
@given(waters(), st.floats(300.0, 5000.0), st.floats(0.0, 1.0))
def test_standing_changes_carbon_only_and_partway_lies_between(water, pressure, share):
    end, part = stood(water, pressure), stood(water, pressure, share)
    close(end, water, ("temperature", "salinity", *(n for n in AMOUNTS if n != "carbon")))
    low, high = sorted((water.carbon, end.carbon))
    assert low - 1e-9 <= part.carbon <= high + 1e-9
    assert solve(end).pco2 == pytest.approx(pressure, rel=1e-6)


@SOME
@given(waters(), st.sampled_from(sorted(SUBSTANCES)), st.floats(0.0, 10.0), litres)
def test_dosing_adds_the_substance_and_nothing_else(water, name, grams_a_litre, volume):
    grams = grams_a_litre * volume  # far more in little sea water is refused, and rightly
    dosed = add(water, name, grams, volume, purity=0.9)
    substance = SUBSTANCES[name]
    moles = grams * 0.9 / substance.molar_mass
    kilograms = volume * water.density
    for field in AMOUNTS:
        expected = substance.alkalinity if field == "alkalinity" else substance.ions.get(field, 0.0)
        gained = (getattr(dosed, field) - getattr(water, field)) * kilograms / 1000.0
        assert gained == pytest.approx(expected * moles, rel=1e-6, abs=1e-9), field


@SOME
@given(waters(most_salinity=4.0), st.floats(0.001, 1.0))
def test_acid_never_raises_ph_and_base_never_lowers_it(water, millimoles):
    before = solve(water).ph
    acid = add(water, "hydrochloric acid", 0.036458 * millimoles, 1.0)
    assert solve(acid).ph <= before + 1e-7
    base = add(water, "sodium bicarbonate", 0.084006 * millimoles, 1.0)
    strong = add(water, "calcium hydroxide", 0.0370465 * millimoles, 1.0)
    # Lime brings calcium, which pairs with carbonate: without any carbon to speak of it only rises.
    assert solve(replace(strong, calcium=water.calcium)).ph >= before - 1e-7
    assert in_air(base, 420.0).ph > in_air(water, 420.0).ph


@SOME
@given(waters(), st.floats(1.0, 80.0))
def test_carbon_dioxide_lowers_ph(water, milligrams):
    assert solve(with_co2(water, milligrams)).ph < solve(water).ph


@SOME
@given(waters(), st.floats(0.01, 0.5))
def test_weak_acid_lowers_ph_and_its_shift_shrinks_with_buffer(water, millimoles):
    water = replace(water, organic=0.0)
    before, after = in_air(water, 800.0).ph, in_air(with_organic_acid(water, millimoles), 800.0).ph
    assert after < before + 1e-7
    more = replace(water, alkalinity=water.alkalinity + 2.0, sodium=water.sodium + 2.0)
    shift = in_air(more, 800.0).ph - in_air(with_organic_acid(more, millimoles), 800.0).ph
    assert shift < before - after + 1e-4


@SOME
@given(waters(), st.floats(300.0, 4000.0))
def test_more_carbon_dioxide_in_the_air_means_lower_ph(water, pressure):
    assert in_air(water, 1.2 * pressure).ph < in_air(water, pressure).ph


@SOME
@given(waters(), st.floats(0.05, 0.9))
def test_evaporating_and_topping_up_with_pure_water_gives_it_back(water, share):
    assume(water.salinity / (1.0 - share) < 59.0)
    assume(max(water.sodium, water.chloride) / (1.0 - share) < 999.0)
    close(topped_up(water, share, Water(water.temperature)), water)
    thick = evaporated(water, share)
    assert thick.calcium * (1.0 - share) == pytest.approx(water.calcium)
    close(diluted(thick, share), water)


@SOME
@given(waters(), st.floats(0.01, 3.0))
def test_processes_keep_the_balance_of_charges(water, milligrams):
    water = replace(water, ammonia=0.5, nitrate=0.5, phosphate=0.5, potassium=0.5)
    for after in (
        nitrified(water, milligrams, "ammonium"),
        nitrified(water, milligrams, "food"),
        taken_up(water, nitrate=0.1, ammonia=0.1, phosphate=0.05, potassium=0.1),
        stood(water, 420.0),
        add(water, "magnesium sulfate heptahydrate", 1.0, 10.0),
    ):
        assert after.charge == pytest.approx(water.charge, abs=1e-8)


@settings(max_examples=20)
@given(waters(most_salinity=30.0), st.sampled_from(["calcite", "aragonite"]), st.booleans())
def test_a_medium_never_carries_a_water_past_saturation(water, mineral, open_to_air):
    pressure = 800.0 if open_to_air else None
    start = in_air(water, 800.0) if open_to_air else solve(water)
    rest = rest_on_mineral(water, mineral, pressure)
    if saturation_index(start, mineral) >= 0.0:
        assert rest.dissolved == 0.0
    else:
        assert rest.dissolved > 0.0
        assert saturation_index(rest.solution, mineral) == pytest.approx(0.0, abs=1e-5)


@settings(max_examples=15)
@given(st.lists(waters(), min_size=2, max_size=6))
def test_arrays_give_what_floats_give(each):
    together = Water(
        **{
            name: np.array([getattr(water, name) for water in each])
            for name in ("temperature", "salinity", *AMOUNTS)
        }
    )
    closed, stands = solve(together), in_air(together, 420.0)
    by_ph = with_ph(together, 8.0)
    for position, water in enumerate(each):
        assert closed.ph[position] == pytest.approx(solve(water).ph, abs=3e-9)
        assert stands.ph[position] == pytest.approx(in_air(water, 420.0).ph, abs=3e-9)
        assert closed.co2[position] == pytest.approx(solve(water).co2, rel=1e-8)
        alone = saturation_index(solve(water))
        assert saturation_index(closed)[position] == pytest.approx(alone, abs=1e-6)
        try:
            carbon = with_ph(water, 8.0).water.carbon
        except ImpossibleWater:
            continue
        assert by_ph.water.carbon[position] == pytest.approx(carbon, rel=1e-8)


def test_resting_in_arrays_gives_what_floats_give():
    alkalinity = np.array([0.2, 1.0, 4.0])
    together = Water(25.0, alkalinity=alkalinity, carbon=alkalinity * 1.1, calcium=0.4, sodium=1.0)
    rest = rest_on_mineral(together, "aragonite", 800.0)
    for position, value in enumerate(alkalinity.tolist()):
        alone = rest_on_mineral(
            replace(together, alkalinity=value, carbon=value * 1.1), "aragonite", 800.0
        )
        assert rest.dissolved[position] == pytest.approx(alone.dissolved, abs=1e-6)


def test_many_blocks_and_shapes():
    alkalinity = np.linspace(0.1, 5.0, 20_001)
    solved = solve(Water(20.0, alkalinity=alkalinity, carbon=1.02 * alkalinity, sodium=alkalinity))
    assert solved.ph.shape == alkalinity.shape
    for position in (0, 8191, 8192, 20_000):
        a = float(alkalinity[position])
        alone = solve(Water(20.0, alkalinity=a, carbon=1.02 * a, sodium=a)).ph
        assert solved.ph[position] == pytest.approx(alone, abs=1e-9)
    square = np.array([[1.0, 2.0], [3.0, 4.0]])
    assert solve(Water(20.0, alkalinity=square, carbon=square, sodium=square)).ph.shape == (2, 2)
