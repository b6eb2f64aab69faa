"""From readings to a water: what was given stays, what was not is assumed and said."""

from __future__ import annotations

import math

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from core.errors import OutOfRange
from core.water import co2_mg_l, pco2, ph
from core.water.errors import ImpossibleWater, MissingReading
from core.water.filling import conductivity_of_water
from core.water.readings import from_readings
from core.water.solution import solve
from core.water.water import Assumption, Contradiction, Water

A, C = Assumption, Contradiction
SOME = settings(max_examples=40)


@SOME
@given(st.floats(5.5, 8.8), st.floats(0.5, 25.0), st.floats(0.0, 30.0), st.floats(2.0, 38.0))
def test_what_was_read_is_read_again(acidity, kh, gh, celsius):
    water = from_readings(ph=acidity, kh=kh, gh=gh, temperature=celsius)
    assert ph(water) == pytest.approx(acidity, abs=1e-7)
    assert water.kh == pytest.approx(kh)
    assert water.gh == pytest.approx(gh)
    assert water.charge == pytest.approx(0.0, abs=1e-9)
    assert water.temperature == celsius


@SOME
@given(st.floats(6.5, 8.8), st.floats(1.0, 15.0), st.floats(0.0, 42.0), st.floats(5.0, 35.0))
def test_salt_water_is_read_again_too(acidity, kh, salinity, celsius):
    water = from_readings(ph=acidity, kh=kh, salinity=salinity, temperature=celsius)
    assert ph(water) == pytest.approx(acidity, abs=1e-7)
    assert water.kh == pytest.approx(kh)
    assert water.charge == pytest.approx(0.0, abs=1e-9)


@pytest.mark.parametrize(
    ("given_", "assumed", "why"),
    [
        (
            {"ph": 7.0, "kh": 4.0, "gh": 8.0, "temperature": 25.0},
            {A.CALCIUM_TO_MAGNESIUM, A.CHLORIDE_BALANCE},
            "the usual kit",
        ),
        (
            {"ph": 7.0, "kh": 8.0, "gh": 4.0, "temperature": 25.0},
            {A.CALCIUM_TO_MAGNESIUM, A.SODIUM_BALANCE},
            "softened or rift-lake water",
        ),
        (
            {"ph": 7.0, "kh": 4.0},
            {A.TEMPERATURE_25, A.HARDNESS_AS_KH, A.CALCIUM_TO_MAGNESIUM},
            "nothing but pH and KH",
        ),
        (
            {"kh": 4.0, "gh": 4.0, "temperature": 20.0},
            {A.CALCIUM_TO_MAGNESIUM, A.STANDS_IN_AIR},
            "no pH: stands in open air",
        ),
        (
            {"ph": 8.2, "salinity": 35.0, "temperature": 25.0},
            {A.SEA_SALT, A.KH_OF_SEA_SALT, A.METER_PH, A.CHLORIDE_BALANCE},
            "a marine tank without a KH reading; bromide and fluoride go as chloride",
        ),
        (
            {"ph": 7.5, "kh": 4.0, "salinity": 3.0, "salt": "table", "temperature": 20.0},
            {A.TABLE_SALT, A.HARDNESS_AS_KH, A.CALCIUM_TO_MAGNESIUM},
            "a salted pond is no sea",
        ),
        (
            {"ph": 7.0, "kh": 4.0, "gh": 8.0, "conductivity": 900.0, "temperature": 25.0},
            {A.CALCIUM_TO_MAGNESIUM, A.CHLORIDE_BALANCE, A.CONDUCTIVITY_AS_SALT},
            "more conductivity than hardness explains",
        ),
        (
            {"ph": 7.0, "co2": 20.0, "gh": 6.0, "temperature": 25.0},
            {A.CALCIUM_TO_MAGNESIUM},
            "pH with a drop checker instead of KH",
        ),
    ],
)
def test_assumptions_are_carried_along(given_, assumed, why):
    water = from_readings(**given_)
    balances = {A.SODIUM_BALANCE, A.CHLORIDE_BALANCE}
    assert set(water.assumptions) - balances == assumed - balances, why
    assert assumed <= set(water.assumptions), why


@pytest.mark.parametrize(
    ("given_", "found", "why"),
    [
        ({"ph": 6.0, "kh": 4.0}, C.MUCH_CARBON_DIOXIDE, "133 mg/L"),
        ({"ph": 9.2, "kh": 1.0}, C.HARDLY_ANY_CARBON_DIOXIDE, "0.02 mg/L"),
        (
            {"ph": 7.0, "kh": 3.0, "gh": 4.0, "calcium": 60.0},
            C.PARTS_OVER_HARDNESS,
            "60 is 8.4 °dH",
        ),
        (
            {"ph": 7.0, "kh": 8.0, "gh": 12.0, "conductivity": 100.0},
            C.CONDUCTIVITY_UNDER_IONS,
            "KH 8 and GH 12 alone conduct over 400",
        ),
        (
            {"ph": 7.0, "kh": 4.0, "gh": 4.0, "sodium": 200.0, "chloride": 10.0},
            C.CHARGE_OFF,
            "nothing balances the sodium",
        ),
    ],
)
def test_contradictions_are_computed_and_flagged(given_, found, why):
    water = from_readings(**given_)
    assert found in water.contradictions, why
    assert math.isfinite(ph(water))


def test_a_fitting_water_has_no_contradiction():
    assert from_readings(ph=7.2, kh=4.0, gh=6.0, temperature=24.0).contradictions == ()


@pytest.mark.parametrize(
    "given_",
    [
        {"ph": 1.9, "kh": 4.0},
        {"ph": 12.1, "kh": 4.0},
        {"ph": float("nan"), "kh": 4.0},
        {"ph": 7.0, "kh": -1.0},
        {"ph": 7.0, "kh": float("inf")},
        {"ph": 7.0, "kh": 4.0, "gh": -0.1},
        {"ph": 8.0, "salinity": 61.0},
        {"ph": 7.0, "kh": 4.0, "temperature": 46.0},
        {"ph": 7.0, "kh": 4.0, "nitrate": -5.0},
        {"kh": 4.0, "co2": -1.0},
    ],
)
def test_what_is_no_reading_is_refused(given_):
    with pytest.raises(OutOfRange):
        from_readings(**given_)


def test_over_5000_mg_of_carbon_dioxide_is_refused_with_the_facts():
    with pytest.raises(ImpossibleWater) as caught:
        from_readings(ph=4.3, kh=10.0)
    assert caught.value.reason == "carbon_dioxide"
    assert caught.value.given["co2_mg_l"] > 5000.0
    assert caught.value.given["kh"] == pytest.approx(10.0)


def test_among_possibilities_the_worst_is_named():
    with pytest.raises(ImpossibleWater) as caught:
        from_readings(ph=np.array([8.0, 4.0, 7.0]), kh=np.array([4.0, 5.0, 30.0]))
    assert caught.value.given["ph"] == pytest.approx(4.0)
    assert caught.value.given["kh"] == pytest.approx(5.0)


def test_more_hydroxide_than_alkalinity_is_refused():
    with pytest.raises(ImpossibleWater) as caught:
        from_readings(ph=10.0, kh=0.1)
    assert caught.value.reason == "no_carbon"


def test_possibilities_without_carbon_are_bent_not_refused():
    water = from_readings(ph=np.array([9.0, 10.0]), kh=np.array([1.0, 0.1]))
    assert np.isfinite(ph(water)).all()


def test_without_alkalinity_nothing_can_be_told():
    with pytest.raises(MissingReading) as caught:
        from_readings(ph=7.0, gh=4.0)
    assert caught.value.needed == "kh"


def test_drop_checker_and_ph_give_the_same_water_as_kh():
    by_kh = from_readings(ph=6.9, kh=5.0, gh=6.0, temperature=25.0)
    by_co2 = from_readings(ph=6.9, co2=co2_mg_l(by_kh), gh=6.0, temperature=25.0)
    assert by_co2.kh == pytest.approx(5.0, rel=1e-3)


def test_pressure_and_ph_give_the_same_water_as_kh():
    by_kh = from_readings(ph=7.4, kh=5.0, gh=6.0, temperature=25.0)
    by_air = from_readings(ph=7.4, pco2=pco2(by_kh), gh=6.0, temperature=25.0)
    assert by_air.kh == pytest.approx(5.0, rel=1e-3)


def test_ions_are_those_that_were_measured():
    water = from_readings(
        ph=7.5, kh=6.0, calcium=60.0, magnesium=10.0, nitrate=25.0, ammonia=0.5, temperature=20.0
    )
    assert water.mg_l("calcium") == pytest.approx(60.0)
    assert water.mg_l("nitrate") == pytest.approx(25.0)
    assert water.mg_l("ammonia") == pytest.approx(0.5)
    # Table R2: 2.497 Ca + 4.118 Mg in mg/L of CaCO3, over 17.848 mg/L a degree.
    assert water.gh * 17.848 == pytest.approx(2.497 * 60.0 + 4.118 * 10.0, abs=0.1)


def test_one_of_calcium_and_magnesium_leaves_the_other_to_gh():
    water = from_readings(ph=7.5, kh=6.0, gh=10.0, calcium=50.0)
    assert water.gh == pytest.approx(10.0)
    assert water.mg_l("calcium") == pytest.approx(50.0)
    assert water.mg_l("magnesium") == pytest.approx((10.0 * 17.848 - 2.497 * 50.0) / 4.118, abs=0.1)


def test_calcium_to_magnesium_can_be_said():
    water = from_readings(ph=7.5, kh=6.0, gh=10.0, calcium_to_magnesium=1.0)
    assert water.calcium == pytest.approx(water.magnesium)


def test_conductivity_is_made_up_with_salt():
    water = from_readings(ph=7.5, kh=4.0, gh=6.0, conductivity=800.0)
    assert conductivity_of_water(water) == pytest.approx(800.0, abs=1.0)


def test_high_conductivity_is_sea_salt():
    water = from_readings(ph=8.2, kh=8.0, conductivity=53_000.0)
    assert water.salinity == pytest.approx(35.1, abs=0.2)


def test_arrays_of_readings_make_one_water_of_arrays():
    acidity, kh = np.array([6.8, 7.0, 7.2]), np.array([3.0, 4.0, 5.0])
    together = solve(from_readings(ph=acidity, kh=kh, gh=6.0, temperature=25.0))
    for position in range(3):
        alone = from_readings(
            ph=float(acidity[position]), kh=float(kh[position]), gh=6.0, temperature=25.0
        )
        assert together.co2_mg_l[position] == pytest.approx(co2_mg_l(alone), rel=1e-8)


def test_water_from_readings_is_the_same_door():
    assert Water.from_readings(ph=7.0, kh=4.0) == from_readings(ph=7.0, kh=4.0)


@pytest.mark.parametrize(
    "field", [{"carbon": -1.0}, {"calcium": float("nan")}, {"salinity": 70.0}, {"sodium": 5000.0}]
)
def test_a_water_checks_itself(field):
    with pytest.raises(OutOfRange):
        Water(25.0, **field)
