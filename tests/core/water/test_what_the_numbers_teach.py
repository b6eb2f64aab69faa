"""The worked cases of the published check values' last chapters, in our own model.

Computed there with PHREEQC and an independent Davies model (grade C) unless said otherwise.
"""

from __future__ import annotations

from dataclasses import replace

import pytest

from core.water.ammonia import un_ionised_ammonia_n
from core.water.buffering import buffer_intensity, days_of_reserve, ph_after
from core.water.dosing import add, with_organic_acid
from core.water.handling import mix, stood
from core.water.life import nitrified
from core.water.minerals import rest_on_mineral
from core.water.poisons import (
    ammonia_freed,
    chloride_needed,
    chloride_to_nitrite,
    thiosulfate_needed,
)
from core.water.readings import from_readings
from core.water.solution import in_air, solve
from core.water.substances import substance
from core.water.water import Water


def grams_for(kh: float, name: str) -> float:
    """Grams a litre of a substance for so many degrees of KH."""
    return kh * 0.356652 / substance(name).alkalinity_per_gram


def test_changing_water_can_poison():
    # Old tank pH 6.0, KH 1, 2 mg/L N; half changed with tap pH 7.6, KH 8: 6.9 at once, 7.7 to
    # 8.35 stood; un-ionised ammonia about fourfold at once, 24- to 99-fold by the next morning.
    old = from_readings(ph=6.0, kh=1.0, gh=3.0, temperature=25.0, ammonia=2.0)
    tap = from_readings(ph=7.6, kh=8.0, gh=10.0, temperature=25.0)
    mixed = mix([(old, 60.0), (tap, 60.0)])
    at_once = solve(mixed).ph
    stocked, open_air = in_air(mixed, 2000.0).ph, in_air(mixed, 420.0).ph
    assert at_once == pytest.approx(6.9, abs=0.06)
    assert stocked == pytest.approx(7.7, abs=0.06)
    assert open_air == pytest.approx(8.35, abs=0.06)
    before = un_ionised_ammonia_n(2.0, 6.0, 25.0)
    assert un_ionised_ammonia_n(1.0, at_once, 25.0) / before == pytest.approx(4.0, abs=0.7)
    assert un_ionised_ammonia_n(1.0, stocked, 25.0) / before == pytest.approx(24.0, rel=0.1)
    assert un_ionised_ammonia_n(1.0, open_air, 25.0) / before == pytest.approx(99.0, rel=0.1)


def test_mixing_soft_waters():
    # Old pH 6.0 KH 1 with new pH 7.0 KH 1: 6.26 at once, not 6.5; stood 7.05 to 7.72.
    old = from_readings(ph=6.0, kh=1.0, gh=2.0, temperature=25.0)
    new = from_readings(ph=7.0, kh=1.0, gh=2.0, temperature=25.0)
    mixed = mix([(old, 1.0), (new, 1.0)])
    assert solve(mixed).ph == pytest.approx(6.26, abs=0.01)
    assert in_air(mixed, 2000.0).ph == pytest.approx(7.05, abs=0.02)
    assert in_air(mixed, 420.0).ph == pytest.approx(7.72, abs=0.02)


def test_ph_6_and_kh_4_mean_over_130_mg_of_carbon_dioxide():
    water = from_readings(ph=6.0, kh=4.0, temperature=25.0)
    assert solve(water).co2_mg_l == pytest.approx(133.0, abs=2.0)
    assert "much_carbon_dioxide" in water.contradictions


@pytest.mark.parametrize(("celsius", "low", "high"), [(25.0, 0.88, 0.97), (10.0, 0.65, 0.76)])
@pytest.mark.parametrize("kh", [2.0, 4.0, 8.0])
def test_rule_of_three_is_low(celsius: float, low: float, high: float, kh: float):
    # CO2 = 3 KH 10^(7-pH) is low by 4 to 12 % at 25 °C and by about 30 % at 10 °C.
    co2 = solve(from_readings(ph=7.0, kh=kh, gh=6.0, temperature=celsius)).co2_mg_l
    assert low < 3.0 * kh / co2 < high


def test_nitrification_takes_half_a_degree_for_ten_of_nitrate_from_food():
    tank = from_readings(ph=7.2, kh=4.0, gh=6.0, ammonia=5.0, temperature=25.0)
    assert tank.kh - nitrified(tank, 10.0, "food").kh == pytest.approx(0.45, abs=0.005)
    assert tank.kh - nitrified(tank, 10.0, "ammonium").kh == pytest.approx(0.90, abs=0.01)


def test_nitrification_factor_7_14_table_r8_grade_b():
    # 7.14 mg of CaCO3 a milligram of ammonium nitrogen; 4.4268 mg of nitrate hold one.
    tank = from_readings(ph=7.2, kh=4.0, gh=6.0, ammonia=5.0, temperature=25.0)
    lost = tank.kh - nitrified(tank, 4.4268, "ammonium").kh
    assert lost * 17.848 == pytest.approx(7.14, abs=0.01)


@pytest.mark.parametrize(("kh", "least", "most"), [(6.0, 0.03, 0.05), (0.5, 1.0, 2.5)])
def test_weak_acid_moves_standing_ph_at_low_kh_only(kh: float, least: float, most: float):
    # 0.2 mmol/L of organic acid: more than one unit at KH 0.5, a few hundredths at KH 6.
    water = from_readings(kh=kh, gh=4.0, temperature=25.0, pco2=800.0)
    moved = in_air(water, 800.0).ph - in_air(with_organic_acid(water, 0.2), 800.0).ph
    assert least < moved < most


def test_strong_acid_at_kh_3_4_and_1_common_practice_table():
    # 0.1 mmol/L of acid moves the standing pH by 0.04 at 3.4 °dH, by 0.14 at KH 1.
    for kh, shift in ((3.4, 0.04), (1.0, 0.14)):
        water = from_readings(kh=kh, gh=4.0, temperature=25.0)
        moved = in_air(water, 420.0).ph - ph_after(water, 0.1, 420.0)
        assert moved == pytest.approx(shift, abs=0.006)


def test_hydrochloric_acid_in_hard_water_table_of_cautions():
    # 73 mg/L of HCl in KH 12, pH 8.0: pH 6.36 and CO2 3.7 to 89 mg/L at once.
    water = from_readings(ph=8.0, kh=12.0, gh=12.0, temperature=25.0)
    acid = solve(add(water, "hydrochloric acid", 0.073, 1.0))
    assert solve(water).co2_mg_l == pytest.approx(3.7, abs=0.15)
    assert acid.ph == pytest.approx(6.36, abs=0.03)
    assert acid.co2_mg_l == pytest.approx(89.0, abs=2.0)


def test_ten_milligrams_of_acid_in_soft_water_end_at_ph_4():
    water = from_readings(ph=7.0, kh=0.5, gh=2.0, temperature=25.0)
    acid = solve(add(water, "hydrochloric acid", 0.010, 1.0))
    assert acid.ph == pytest.approx(4.0, abs=0.06)


def test_soda_spikes_where_bicarbonate_does_not():
    # +2.8 °dH at KH 4, pH 7.0: by sodium carbonate to pH 9.0, by bicarbonate to 7.2.
    water = from_readings(ph=7.0, kh=4.0, gh=8.0, temperature=25.0)
    soda = add(water, "sodium carbonate", grams_for(2.8, "sodium carbonate"), 1.0)
    mild = add(water, "sodium bicarbonate", grams_for(2.8, "sodium bicarbonate"), 1.0)
    assert solve(soda).ph == pytest.approx(9.0, abs=0.1)
    assert solve(mild).ph == pytest.approx(7.2, abs=0.05)


def test_carbonate_in_soft_stocked_water_table_of_limits():
    # KH 1, pH 7: +1 °dH by carbonate is +2.3 pH.
    water = from_readings(ph=7.0, kh=1.0, gh=2.0, temperature=25.0)
    soda = add(water, "sodium carbonate", grams_for(1.0, "sodium carbonate"), 1.0)
    assert solve(soda).ph - 7.0 == pytest.approx(2.3, abs=0.1)


def test_doubling_kh_by_bicarbonate_is_0_3_ph_table_of_limits():
    # KH 1 to 2: +0.298 at once, +0.300 stood.
    water = from_readings(ph=7.0, kh=1.0, gh=2.0, temperature=25.0)
    dosed = add(water, "sodium bicarbonate", grams_for(1.0, "sodium bicarbonate"), 1.0)
    assert solve(dosed).ph - solve(water).ph == pytest.approx(0.298, abs=0.006)
    assert in_air(dosed, 420.0).ph - in_air(water, 420.0).ph == pytest.approx(0.300, abs=0.006)


def test_ion_pairs_matter_after_soda():
    # Without the pairs pH after sodium carbonate in moderately hard water is up to 0.28 too high.
    water = from_readings(ph=7.5, kh=4.0, gh=8.0, temperature=25.0)
    dosed = add(water, "sodium carbonate", grams_for(2.8, "sodium carbonate"), 1.0)
    bare = replace(dosed, calcium=0.0, magnesium=0.0, sodium=dosed.sodium + 2 * dosed.calcium)
    assert 0.1 < solve(bare).ph - solve(dosed).ph < 0.35


@pytest.mark.parametrize("ph", [7.0, 7.5, 8.0])
def test_coral_does_hardly_anything_over_its_own_end(ph: float):
    # Common practice: coral and limestone act on soft acid water, hardly above pH 7.6 to 8.
    water = from_readings(ph=ph, kh=8.0, gh=12.0, temperature=25.0)
    pressure = solve(water).pco2
    rest = rest_on_mineral(water, "aragonite", pressure)
    assert rest.dissolved < {7.0: 3.0, 7.5: 0.7, 8.0: 1e-9}[ph]
    assert rest.dissolved >= 0.0


def test_coral_in_soft_water_ends_by_carbon_dioxide_not_at_a_magic_ph():
    water = from_readings(ph=6.5, kh=1.0, gh=2.0, temperature=25.0)
    ends = [rest_on_mineral(water, "calcite", air).solution for air in (420.0, 2000.0, 8000.0)]
    assert ends[0].ph > ends[1].ph > ends[2].ph
    assert ends[0].water.kh < ends[1].water.kh < ends[2].water.kh


def test_calcite_in_pure_water_in_open_air_textbook_grade_m():
    # Pure water over calcite in air comes to pH 8.3 and about 0.5 mmol/L of calcium (textbooks of
    # geochemistry, for 10^-3.5 atm at 25 °C).
    rest = rest_on_mineral(Water(25.0), "calcite", 316.0)
    assert rest.solution.ph == pytest.approx(8.3, abs=0.03)
    assert rest.dissolved == pytest.approx(0.49, abs=0.03)


def test_pure_water_in_open_air_is_ph_5_6_textbook_grade_m():
    assert in_air(Water(25.0), 420.0).ph == pytest.approx(5.6, abs=0.03)


def test_chloramine_frees_0_198_of_ammonia_table_r10_grade_c():
    assert ammonia_freed(1.0) == pytest.approx(0.198, abs=5e-4)
    assert ammonia_freed(4.0) == pytest.approx(0.79, abs=0.005)


def test_thiosulfate_seven_to_one_table_r10_grade_c_within_piper_1982_grade_a():
    assert thiosulfate_needed(1.0, excess=0.0) == pytest.approx(7.00, abs=0.01)
    # Piper et al.: 5.6 g for a US gallon at 200 mg/L, 7.40 to one.
    assert thiosulfate_needed(1.0) > 5.6 / 3.785411784 / 0.2


def test_chloride_against_nitrite_srac_462_grade_b():
    assert chloride_to_nitrite(20.0, 2.0) == 10.0
    assert chloride_needed(2.0) == 20.0


def test_buffer_intensity_open_and_closed():
    # In balance with air d alk / d pH is 2.3 alk wherever bicarbonate rules (textbook, grade M).
    water = from_readings(ph=7.4, kh=4.0, gh=6.0, temperature=25.0)
    assert buffer_intensity(water, 1000.0) == pytest.approx(2.303 * water.alkalinity, rel=0.03)
    closed = buffer_intensity(water)
    solved = solve(water)
    # Shut off: 2.3 (CO2 HCO3- / (CO2 + HCO3-)) where carbonate is small.
    between = 1000.0 * solved.co2 * solved.hco3 / (solved.co2 + solved.hco3)
    assert closed == pytest.approx(2.303 * between, rel=0.1)


def test_days_of_reserve():
    water = from_readings(ph=7.4, kh=4.0, gh=6.0, temperature=25.0)
    assert days_of_reserve(water, 0.25, 1.0) == pytest.approx(12.0)
    assert days_of_reserve(water, 0.25, 5.0) == 0.0


def test_standing_of_tap_full_of_carbon_dioxide_raises_ph_cautions():
    # Well water: pH rises by up to 1.8 on aeration.
    well = from_readings(ph=6.5, kh=5.0, gh=8.0, temperature=12.0)
    assert solve(stood(well, 420.0)).ph - 6.5 == pytest.approx(1.8, abs=0.15)
