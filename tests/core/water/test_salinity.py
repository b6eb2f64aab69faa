"""Density, specific gravity, conductivity and oxygen against TEOS-10 (gsw) and check values."""

from __future__ import annotations

import gsw
import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from core.errors import OutOfRange
from core.water.conductivity import (
    STANDARD,
    conductivity_from_salinity,
    conductivity_of_ions,
    conductivity_of_practical,
    practical_salinity,
    salinity_from_conductivity,
)
from core.water.density import (
    REFERENCES,
    Reference,
    density,
    grams_from_practical,
    practical_from_grams,
    salinity_from_specific_gravity,
    specific_gravity,
)
from core.water.oxygen import oxygen_saturation, standard_pressure

SOME = settings(max_examples=40)
CELSIUS = st.floats(0.0, 40.0)


@pytest.mark.parametrize(
    ("practical", "celsius", "kg_m3"),
    [
        (0.0, 5.0, 999.96675),
        (0.0, 25.0, 997.04796),
        (35.0, 5.0, 1027.67547),
        (35.0, 25.0, 1023.34306),
    ],
)
def test_equation_of_state_1980_unesco_check_values_grade_m(practical, celsius, kg_m3):
    ours = 1000.0 * density(celsius, grams_from_practical(practical))
    assert ours == pytest.approx(kg_m3, abs=1e-5)


def test_density_against_teos_10():
    celsius, salinity = np.meshgrid(np.arange(0.0, 40.1, 2.0), np.arange(0.0, 42.1, 2.0))
    ours = 1000.0 * density(celsius, salinity)
    assert np.abs(ours - gsw.rho_t_exact(salinity, celsius, 0.0)).max() < 0.02


def test_reference_salinity_35_16504_at_practical_35_millero_2008_grade_a():
    assert grams_from_practical(35.0) == pytest.approx(35.16504, abs=1e-9)
    assert practical_from_grams(35.16504) == pytest.approx(35.0, abs=1e-9)
    assert grams_from_practical(20.0) == pytest.approx(gsw.SR_from_SP(20.0), rel=1e-12)


@SOME
@given(st.floats(0.5, 42.0), st.sampled_from(sorted(REFERENCES)))
def test_specific_gravity_there_and_back(salinity, name):
    gravity = specific_gravity(salinity, REFERENCES[name])
    there_and_back = salinity_from_specific_gravity(gravity, REFERENCES[name])
    assert there_and_back == pytest.approx(salinity, abs=1e-6)


@pytest.mark.parametrize("name", sorted(REFERENCES))
def test_specific_gravity_against_teos_10(name):
    reference = REFERENCES[name]
    theirs = gsw.rho_t_exact(35.0, reference.water, 0.0) / gsw.rho_t_exact(0.0, reference.pure, 0.0)
    assert specific_gravity(35.0, reference) == pytest.approx(float(theirs), abs=2e-5)


def test_the_references_differ_by_more_than_two_grams():
    # 1.0264 is 35.2 g/kg on a 25/25 scale and 37.3 on a 20/4 one: the reference must be said.
    readings = {
        name: salinity_from_specific_gravity(1.0264, REFERENCES[name]) for name in REFERENCES
    }
    assert readings["20/4"] - readings["25/25"] > 2.0


def test_hydrometer_read_warmer_than_its_scale_shows_too_little():
    as_read = salinity_from_specific_gravity(1.0250)
    corrected = salinity_from_specific_gravity(1.0250, temperature=28.0)
    assert corrected - as_read == pytest.approx(1.1, abs=0.3)


def test_fresh_water_reads_zero_salt():
    assert salinity_from_specific_gravity(0.9990) == 0.0
    assert salinity_from_specific_gravity(1.0, Reference(25.0, 25.0)) == pytest.approx(0.0)


@pytest.mark.parametrize("gravity", [0.98, 1.2, float("nan")])
def test_gravity_that_no_water_has(gravity):
    with pytest.raises(OutOfRange):
        salinity_from_specific_gravity(gravity)


def test_practical_salinity_scale_1978_definition_grade_m():
    # R = 1 at 15 °C (IPTS-68) is 35 by definition.
    assert practical_salinity(STANDARD, 15.0 / 1.00024) == pytest.approx(35.0, abs=1e-6)


def test_practical_salinity_against_teos_10():
    conductivity, celsius = np.meshgrid(
        np.array([0.2, 0.5, 1.0, 2.0, 4.0, 8.0, 15.0, 25.0, 40.0, 53.0]), np.arange(2.0, 36.0, 3.0)
    )
    theirs = gsw.SP_from_C(conductivity, celsius, 0.0)
    usable = theirs < 42.0
    ours = practical_salinity(conductivity[usable], celsius[usable])
    assert np.abs(ours - theirs[usable]).max() < 5e-4


@SOME
@given(st.floats(0.1, 50.0), CELSIUS)
def test_conductivity_there_and_back(practical, celsius):
    conductivity = conductivity_of_practical(practical, celsius)
    assert practical_salinity(conductivity, celsius) == pytest.approx(practical, abs=1e-6)


def test_conductivity_of_sea_water_at_25_degrees_against_teos_10():
    assert conductivity_of_practical(35.0) == pytest.approx(float(gsw.C_from_SP(35.0, 25.0, 0.0)))
    assert salinity_from_conductivity(conductivity_from_salinity(20.0)) == pytest.approx(20.0)


@pytest.mark.parametrize(
    ("amounts", "strength", "microsiemens"),
    [
        ({"potassium": 10.0, "chloride": 10.0}, 0.010, 1412.0),
        ({"potassium": 1.0, "chloride": 1.0}, 0.001, 147.0),
        ({"calcium": 5.0, "chloride": 10.0}, 0.015, 1204.0),
        ({"sodium": 10.0, "chloride": 10.0}, 0.010, 1185.0),
    ],
)
def test_conductivity_of_handbook_solutions_at_25_degrees_grade_m(amounts, strength, microsiemens):
    # KCl as in ISO 7888 and Standard Methods 2510; CaCl2 and NaCl as in the handbooks' tables.
    assert conductivity_of_ions(amounts, strength) == pytest.approx(microsiemens, rel=0.01)


@pytest.mark.parametrize(
    ("celsius", "milligrams", "digits"),
    [(0.0, 14.6, 1), (10.0, 11.3, 1), (20.0, 9.09, 2), (25.0, 8.26, 2), (30.0, 7.56, 2)],
)
def test_oxygen_en_25814_table_grade_b(celsius, milligrams, digits):
    assert round(oxygen_saturation(celsius), digits) == milligrams


def test_oxygen_against_teos_10_from_fresh_to_sea():
    celsius, practical = np.meshgrid(np.arange(0.0, 38.1, 4.0), np.arange(0.0, 40.1, 5.0))
    salinity = grams_from_practical(practical)
    per_kg = gsw.O2sol_SP_pt(practical, celsius) * 31.9988e-3  # µmol/kg to mg/kg
    theirs = per_kg * density(celsius, salinity)
    # Garcia & Gordon's fit there, Standard Methods' here; both to Benson & Krause's data.
    np.testing.assert_allclose(oxygen_saturation(celsius, salinity), theirs, rtol=0.006)


def test_oxygen_at_1500_m_is_about_17_percent_less_grade_a():
    assert oxygen_saturation(20.0, 0.0, 1500.0) / oxygen_saturation(20.0) == pytest.approx(
        0.83, abs=0.01
    )


def test_standard_atmosphere_iso_2533_grade_m():
    assert standard_pressure(1500.0) * 1013.25 == pytest.approx(845.6, abs=0.5)


@SOME
@given(CELSIUS, st.floats(0.0, 40.0), st.floats(0.0, 4000.0))
def test_oxygen_falls_with_warmth_salt_and_height(celsius, salinity, altitude):
    here = oxygen_saturation(celsius, salinity, altitude)
    assert oxygen_saturation(celsius + 1.0, salinity, altitude) < here
    assert oxygen_saturation(celsius, salinity + 1.0, altitude) < here
    assert oxygen_saturation(celsius, salinity, altitude + 100.0) < here


@pytest.mark.parametrize(
    "call",
    [
        lambda: density(50.0),
        lambda: density(25.0, -1.0),
        lambda: density(float("inf")),
        lambda: practical_salinity(-1.0),
        lambda: practical_salinity(99.0, 5.0),
        lambda: oxygen_saturation(60.0),
        lambda: oxygen_saturation(20.0, 0.0, 9000.0),
    ],
)
def test_out_of_range_is_refused(call):
    with pytest.raises(OutOfRange):
        call()
