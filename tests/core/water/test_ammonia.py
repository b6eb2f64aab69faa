"""Ammonia against its sources: tables R4, R5 and R6 of the check values, and PyCO2SYS."""

from __future__ import annotations

import math

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from core.errors import OutOfRange
from core.water.ammonia import (
    acute_criterion,
    chronic_criterion,
    un_ionised_ammonia_n,
    un_ionised_fraction,
)

PH = st.floats(5.0, 10.0)
SOME = settings(max_examples=40)
CELSIUS = st.floats(0.0, 40.0)
SALINITY = st.floats(0.0, 42.0)


@pytest.mark.parametrize(
    ("ph", "temperature", "fraction"),
    [
        (8.0, 20.0, 0.0381),
        (8.0, 24.0, 0.0502),
        (8.4, 28.0, 0.1495),
    ],
)
def test_emerson_1975_table_as_reproduced_in_ufifas_fa16_grade_b(ph, temperature, fraction):
    assert un_ionised_fraction(ph, temperature) == pytest.approx(fraction, abs=5.1e-5)


@pytest.mark.parametrize(
    ("ph", "temperature", "printed", "why"),
    [
        (8.0, 32.0, 0.0877, "the whole 32 °C column is that of 32.66 °C"),
        (7.4, 20.0, 0.0096, "misprint; the equation gives 0.0098"),
    ],
)
def test_fa16_cells_that_contradict_the_equation_they_cite_grade_c(ph, temperature, printed, why):
    assert abs(un_ionised_fraction(ph, temperature) / printed - 1.0) > 0.02, why


def test_srac_463_worked_example_grade_a():
    assert un_ionised_fraction(8.6, 30.0) == pytest.approx(0.2422, abs=5e-5)
    assert un_ionised_ammonia_n(3.0, 8.6, 30.0) == pytest.approx(0.73, abs=0.005)


@pytest.mark.parametrize(
    ("ph", "total", "un_ionised"), [(7.0, 263.6, 1.39), (8.0, 38.8, 1.82), (9.0, 4.5, 1.49)]
)
def test_tomasso_1980_lethal_totals_grade_a(ph, total, un_ionised):
    # The abstract gives no temperature; its rows agree on one of 23 to 24 °C.
    assert un_ionised_ammonia_n(total, ph, 23.3) == pytest.approx(un_ionised, rel=0.08)


@pytest.mark.parametrize(
    ("ph", "temperature", "salinity", "scale", "fraction"),
    [
        (8.0, 25.0, 35.0, "total", 0.0556),
        (8.0, 25.0, 35.0, "free", 0.0440),
        (8.0, 10.0, 0.0, "total", 0.0183),
        (8.0, 25.0, 0.0, "total", 0.0539),
        (7.8, 25.0, 35.0, "total", 0.0358),
        (7.8, 25.0, 35.0, "free", 0.0282),
    ],
)
def test_clegg_whitfield_1995_help_page_grade_a(ph, temperature, salinity, scale, fraction):
    # The page works per kg of water, we per kg of sea water: 3.6 % apart at salinity 35.
    ours = un_ionised_fraction(ph, temperature, salinity, scale=scale)
    assert ours == pytest.approx(fraction * (1.0 - 0.001005 * salinity), rel=0.01)


def test_clegg_whitfield_1995_per_kg_of_sea_water_grade_a():
    assert un_ionised_fraction(8.0, 25.0, 35.0, scale="total") == pytest.approx(0.0537, abs=5e-5)


def test_a_meter_in_sea_water_overstates_ammonia_by_a_quarter_if_taken_as_total_scale():
    assert un_ionised_fraction(8.2, 25.0, 35.0, scale="total") == pytest.approx(0.083, abs=5e-4)
    assert un_ionised_fraction(8.2, 25.0, 35.0) == pytest.approx(0.062, abs=5e-4)


@pytest.mark.parametrize("salinity", [5.0, 20.0, 35.0, 42.0])
@pytest.mark.parametrize("temperature", [2.0, 25.0, 38.0])
def test_constant_and_meter_scale_agree_with_pyco2sys(temperature, salinity):
    from PyCO2SYS.convert import fH_TWB82
    from PyCO2SYS.equilibria.p1atm import kNH3_TOT_CW95

    from core.water.ammonia import ln_ammonium_constant
    from core.water.ph_scales import hydrogen_activity_per_total

    kelvin = temperature + 273.15
    theirs = float(kNH3_TOT_CW95(kelvin, salinity))
    assert math.exp(ln_ammonium_constant(temperature, salinity)) == pytest.approx(theirs, rel=1e-9)
    if salinity >= 15.0:  # below, the meter's coefficient leans to Debye-Hückel
        # Fluoride is the difference between the sea-water and the total scale: 1 to 3 %.
        ours = hydrogen_activity_per_total(temperature, salinity)
        assert 1.0 < ours / float(fH_TWB82(kelvin, salinity)) < 1.03


@pytest.mark.parametrize(
    ("ph", "temperature", "acute", "chronic", "digits"),
    [
        (7.0, 20.0, 17.0, 1.9, (0, 1)),
        (8.0, 20.0, 3.9, 0.78, (1, 2)),
        (8.0, 25.0, 2.6, 0.56, (1, 2)),
        (8.0, 30.0, 1.7, 0.41, (1, 2)),
        (8.5, 20.0, 1.5, 0.35, (1, 2)),
        (6.5, 20.0, 23.0, 2.1, (0, 1)),
    ],
)
def test_epa_2013_grade_b_at_ph_7_else_c(ph, temperature, acute, chronic, digits):
    assert round(acute_criterion(ph, temperature), digits[0]) == acute
    assert round(chronic_criterion(ph, temperature), digits[1]) == chronic


def test_epa_2013_without_trout_differs_only_in_the_cold():
    assert acute_criterion(7.0, 25.0, oncorhynchus=False) == acute_criterion(7.0, 25.0)
    assert acute_criterion(7.0, 5.0, oncorhynchus=False) > acute_criterion(7.0, 5.0)


def test_epa_2013_chronic_is_flat_below_7_degrees():
    assert chronic_criterion(7.5, 2.0) == chronic_criterion(7.5, 7.0)


@SOME
@given(PH, CELSIUS, SALINITY)
def test_fraction_is_a_fraction_and_rises_with_ph_and_temperature(ph, temperature, salinity):
    fraction = un_ionised_fraction(ph, temperature, salinity)
    assert 0.0 < fraction < 1.0
    assert un_ionised_fraction(ph + 0.1, temperature, salinity) > fraction
    assert un_ionised_fraction(ph, temperature + 0.5, salinity) > fraction


@SOME
@given(PH, CELSIUS)
def test_step_from_fresh_formula_to_salt_formula_is_under_one_percent(ph, temperature):
    fresh = un_ionised_fraction(ph, temperature, 0.0)
    assert un_ionised_fraction(ph, temperature, 1e-6) == pytest.approx(fresh, rel=0.01)


@SOME
@given(PH, CELSIUS, st.floats(0.01, 40.0))
def test_no_jump_on_the_way_to_sea_water(ph, temperature, salinity):
    before = un_ionised_fraction(ph, temperature, salinity)
    assert un_ionised_fraction(ph, temperature, salinity * 1.05) == pytest.approx(before, rel=0.02)


def test_arrays_give_what_floats_give():
    ph = np.array([6.0, 7.5, 8.2, 9.0])
    celsius = np.array([2.0, 20.0, 25.0, 38.0])
    salt = np.array([0.0, 2.0, 10.0, 35.0])
    rows = list(zip(ph.tolist(), celsius.tolist(), salt.tolist(), strict=True))
    for function, together, one_by_one in (
        (
            "fraction",
            un_ionised_fraction(ph, celsius, salt),
            [un_ionised_fraction(*r) for r in rows],
        ),
        ("acute", acute_criterion(ph, celsius), [acute_criterion(*r[:2]) for r in rows]),
        ("chronic", chronic_criterion(ph, celsius), [chronic_criterion(*r[:2]) for r in rows]),
    ):
        np.testing.assert_allclose(together, one_by_one, rtol=1e-9, err_msg=function)


@pytest.mark.parametrize(
    ("arguments", "what"),
    [
        ((1.9, 25.0), "pH"),
        ((float("nan"), 25.0), "pH"),
        ((7.0, 51.0), "temperature"),
        ((7.0, 25.0, -0.1), "salinity"),
        ((7.0, 25.0, 61.0), "salinity"),
        ((np.array([7.0, 13.0]), 25.0), "pH"),
    ],
)
def test_what_is_not_water_is_refused_with_the_facts(arguments, what):
    with pytest.raises(OutOfRange) as caught:
        un_ionised_fraction(*arguments)
    assert caught.value.what == what


def test_negative_total_ammonia_is_refused():
    with pytest.raises(OutOfRange):
        un_ionised_ammonia_n(-0.1, 8.0, 25.0)
