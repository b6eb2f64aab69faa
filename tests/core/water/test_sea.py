"""Sea and brackish water against PyCO2SYS, and the hand-over from fresh water."""

from __future__ import annotations

import math
from dataclasses import replace

import numpy as np
import PyCO2SYS
import pytest
from PyCO2SYS.equilibria import p1atm

from core.water.density import grams_from_practical
from core.water.minerals import saturation, saturation_index
from core.water.ph_scales import (
    hydrogen_activity_per_total,
    ln_bisulfate_constant,
    ln_hydrogen_fluoride_constant,
    sea_share,
    total_fluoride,
    total_sulfate,
)
from core.water.readings import from_readings
from core.water.sea_constants import ln_henry, ln_sea_constants
from core.water.solution import in_air, solve
from core.water.water import Water
from tests.core.water.against_phreeqc import twin

WATERS_MILLERO_WOOSLEY = 15
LUEKER = 10
SALINITIES = np.array([5.0, 10.0, 15.0, 20.0, 25.0, 30.0, 35.0, 42.0])


def sea(practical: np.ndarray, celsius: np.ndarray, alkalinity: np.ndarray) -> Water:
    grams = grams_from_practical(practical)
    plain = from_readings(salinity=grams, temperature=celsius)
    return replace(plain, alkalinity=alkalinity)


def pyco2sys(water: Water, practical, constants: int, par2, par2_type: int) -> dict:
    return PyCO2SYS.sys(
        par1=1000.0 * water.alkalinity,
        par2=par2,
        par1_type=1,
        par2_type=par2_type,
        salinity=practical,
        temperature=water.temperature,
        total_borate=1000.0 * water.borate,
        total_calcium=1000.0 * water.calcium,
        opt_k_carbonic=constants,
        opt_pH_scale=1,
    )


def grid() -> tuple[np.ndarray, ...]:
    mesh = np.meshgrid(
        SALINITIES[2:], [2.0, 10.0, 20.0, 25.0, 30.0, 38.0], [1.5, 2.3, 3.0, 4.5], [0.8, 0.9, 0.97]
    )
    return tuple(axis.ravel() for axis in mesh)


def test_closed_sea_water_with_the_same_constants():
    practical, celsius, alkalinity, ratio = grid()
    water = replace(sea(practical, celsius, alkalinity), carbon=alkalinity * ratio)
    theirs = pyco2sys(water, practical, WATERS_MILLERO_WOOSLEY, 1000.0 * water.carbon, 2)
    ours = solve(water)
    assert np.abs(ours.ph_total - theirs["pH_total"]).max() < 0.005
    assert np.abs(ours.pco2 / theirs["pCO2"] - 1.0).max() < 0.01
    np.testing.assert_allclose(
        saturation(ours, "aragonite"), theirs["saturation_aragonite"], rtol=0.01
    )
    np.testing.assert_allclose(saturation(ours, "calcite"), theirs["saturation_calcite"], rtol=0.01)


def test_stood_sea_water_with_the_same_constants():
    practical, celsius, alkalinity, _ = grid()
    for pressure in (300.0, 5000.0):
        water = sea(practical, celsius, alkalinity)
        theirs = pyco2sys(water, practical, WATERS_MILLERO_WOOSLEY, pressure, 4)
        assert np.abs(in_air(water, pressure).ph_total - theirs["pH_total"]).max() < 0.01


def test_against_the_constants_of_lueker_2000_where_they_hold():
    # Lueker et al. are the oceanographers' first choice, made for salinity 19 to 43, 2 to 35 °C.
    practical, celsius, alkalinity, ratio = (
        axis[(grid()[0] >= 20.0) & (grid()[1] <= 35.0)] for axis in grid()
    )
    water = replace(sea(practical, celsius, alkalinity), carbon=alkalinity * ratio)
    theirs = pyco2sys(water, practical, LUEKER, 1000.0 * water.carbon, 2)
    # The two sets of constants themselves are 0.02 apart at the warm end.
    assert np.abs(solve(water).ph_total - theirs["pH_total"]).max() < 0.025


@pytest.mark.parametrize("celsius", [2.0, 25.0, 38.0])
@pytest.mark.parametrize("practical", [5.0, 20.0, 35.0, 42.0])
def test_every_constant_is_that_of_its_source(practical: float, celsius: float):
    kelvin = celsius + 273.15
    ours = ln_sea_constants(celsius, practical)
    to_total = 1.0 + total_sulfate(practical) / math.exp(ln_bisulfate_constant(celsius, practical))
    fluoride = total_fluoride(practical) / math.exp(
        ln_hydrogen_fluoride_constant(celsius, practical)
    )
    to_total = to_total / (to_total + fluoride)
    k1, k2 = p1atm.k_H2CO3_TOT_WMW14(kelvin, practical)
    phosphoric = p1atm.kH3PO4_SWS_YM95(kelvin, practical)
    pairs = {
        "k1": (ours.k1, k1),
        "k2": (ours.k2, k2),
        "water": (ours.water, p1atm.kH2O_SWS_M95(kelvin, practical) * to_total),
        "boric": (ours.boric, p1atm.kBOH3_TOT_D90b(kelvin, practical)),
        "phosphoric 1": (ours.phosphoric_1, phosphoric[0] * to_total),
        "phosphoric 2": (ours.phosphoric_2, phosphoric[1] * to_total),
        "phosphoric 3": (ours.phosphoric_3, phosphoric[2] * to_total),
        "bisulfate": (
            ln_bisulfate_constant(celsius, practical),
            p1atm.kHSO4_FREE_D90a(kelvin, practical),
        ),
        "fluoride": (
            ln_hydrogen_fluoride_constant(celsius, practical),
            p1atm.kHF_FREE_DR79(kelvin, practical),
        ),
    }
    for name, (ln_ours, theirs) in pairs.items():
        assert math.exp(ln_ours) == pytest.approx(float(theirs), rel=1e-9), name


def test_weiss_1974_check_value_grade_m():
    # 0.02839 mol/kg/atm at 25 °C and salinity 35, as the seacarb and CO2SYS manuals print it.
    assert math.exp(ln_henry(25.0, 35.0)) == pytest.approx(0.02839, abs=2e-5)


def test_mucci_1983_at_25_degrees_and_35_grade_m():
    ours = ln_sea_constants(25.0, 35.0)
    assert -math.log10(math.exp(ours.calcite)) == pytest.approx(6.3693, abs=2e-3)
    assert -math.log10(math.exp(ours.aragonite)) == pytest.approx(6.1883, abs=2e-3)


def test_a_meter_reads_about_0_14_over_the_total_scale_at_25_degrees():
    # Check values, "What the numbers teach".
    assert math.log10(1.0 / hydrogen_activity_per_total(25.0, 35.0)) == pytest.approx(
        0.14, abs=0.01
    )


def test_borate_is_0_2_to_0_4_degrees_of_kh_in_the_sea():
    # Check values: 0.2 to 0.4 °dH of a marine KH reading is borate.
    water = from_readings(salinity=35.2, kh=8.0, ph=8.2, temperature=25.0)
    without = solve(replace(water, borate=0.0))
    borate = water.alkalinity - 1000.0 * (without.hco3 + 2.0 * without.co3)
    carbonate = 1000.0 * (solve(water).hco3 + 2.0 * solve(water).co3)
    share = (water.alkalinity - carbonate) / 0.356652 * water.density
    assert 0.2 < share < 0.45
    assert borate < water.alkalinity - carbonate


def test_reef_at_kh_11_and_ph_8_4_is_far_over_saturation():
    # Cautions, computed with PHREEQC: aragonite saturation 8.3 at KH 11, pH 8.4. PHREEQC's pH is
    # an activity, so its ratio lies between the meter's reading and the total scale's.
    water = from_readings(salinity=35.2, kh=11.0, ph=8.4, temperature=25.0)
    assert 6.5 < saturation(solve(water)) < 9.5


@pytest.mark.parametrize("celsius", [5.0, 15.0, 25.0, 35.0])
@pytest.mark.parametrize("kh", [2.0, 7.0, 15.0])
@pytest.mark.parametrize("pressure", [420.0, 2000.0])
def test_hand_over_from_fresh_to_sea_makes_no_step(celsius: float, kh: float, pressure: float):
    salinity = np.arange(2.0, 25.0, 0.1)
    water = from_readings(salinity=salinity, kh=kh, temperature=celsius)
    solved = in_air(water, pressure)
    steps = np.abs(np.diff(solved.ph))
    assert steps.max() < 0.004, "a tenth of a gram of salt moves pH by less than 0.004"
    blended = (salinity[1:] > 5.0) & (salinity[:-1] < 15.0)
    assert steps[blended].max() < 0.0025, "and in the blend by no more than beside it"
    # No kink either: the slope changes little from one tenth to the next.
    assert np.abs(np.diff(solved.ph, n=2)).max() < 0.0006
    indices = saturation_index(solved)
    assert np.abs(np.diff(indices)).max() < 0.03


def test_share_of_the_sea_is_a_smooth_step():
    assert sea_share(5.0) == 0.0
    assert sea_share(15.0) == 1.0
    assert sea_share(10.0) == pytest.approx(0.5)


@pytest.mark.parametrize("celsius", [10.0, 25.0])
@pytest.mark.parametrize("salinity", [1.0, 3.0, 5.0])
def test_brackish_water_under_5_against_phreeqc(celsius: float, salinity: float):
    # Under 5 g/kg the explicit pairs work; PHREEQC has the same with every ion's own size.
    water = from_readings(salinity=salinity, kh=5.0, ph=8.0, temperature=celsius)
    solved = solve(water)
    theirs = twin(water)
    assert solved.ph == pytest.approx(theirs.pH, abs=0.03)
    assert saturation_index(solved) == pytest.approx(theirs.si("Calcite"), abs=0.06)


def test_middle_of_the_blend_against_phreeqc():
    # PHREEQC's model is still usable at 10 g/kg; ours must not leave it far behind.
    water = from_readings(salinity=10.0, kh=6.0, ph=8.0, temperature=25.0)
    assert solve(water).ph == pytest.approx(twin(water).pH, abs=0.08)
