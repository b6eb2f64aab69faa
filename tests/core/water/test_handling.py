"""What is done to water: amounts, refusals and what is carried along."""

from __future__ import annotations

import pytest

from core.errors import OutOfRange
from core.water import (
    Assumption,
    Contradiction,
    UnknownSubstance,
    Water,
    add,
    diluted,
    from_readings,
    in_air,
    mix,
    nitrified,
    solve,
    stood,
    taken_up,
    topped_up,
    with_co2,
)

TANK = from_readings(ph=7.0, kh=4.0, gh=8.0, nitrate=40.0, temperature=25.0)
RO = Water(25.0)


def test_half_ro_halves_everything():
    half = mix([(TANK, 50.0), (RO, 50.0)])
    assert half.kh == pytest.approx(2.0, rel=1e-6)
    assert half.gh == pytest.approx(4.0, rel=1e-6)
    assert half.mg_l("nitrate") == pytest.approx(20.0, rel=1e-6)
    assert diluted(TANK, 0.5).kh == pytest.approx(2.0, rel=1e-6)


def test_heat_and_salt_go_by_mass():
    cold_sea = from_readings(salinity=35.0, kh=8.0, temperature=10.0)
    mixed = mix([(cold_sea, 1.0), (Water(20.0), 1.0)])
    share = cold_sea.density / (cold_sea.density + Water(20.0).density)
    assert mixed.salinity == pytest.approx(35.0 * share)
    assert mixed.temperature == pytest.approx(20.0 - 10.0 * share)


def test_a_mix_carries_what_was_assumed_of_its_parts_once():
    odd = from_readings(ph=6.0, kh=4.0)
    mixed = mix([(TANK, 1.0), (odd, 1.0), (TANK, 1.0)])
    assert Assumption.TEMPERATURE_25 in mixed.assumptions
    assert Assumption.CALCIUM_TO_MAGNESIUM in mixed.assumptions
    assert len(set(mixed.assumptions)) == len(mixed.assumptions)
    assert mixed.contradictions == (Contradiction.MUCH_CARBON_DIOXIDE,)
    assert mix([(TANK, 1.0), (odd, 0.0)]).contradictions == ()


def test_ten_grams_of_baking_soda_in_120_litres_common_practice():
    # 30 mg/L raise KH by one degree: 3.6 g in 120 L.
    assert add(TANK, "sodium bicarbonate", 3.6, 120.0).kh - TANK.kh == pytest.approx(1.0, abs=0.002)
    half = add(TANK, "sodium bicarbonate", 3.6, 120.0, purity=0.5)
    assert half.kh - TANK.kh == pytest.approx(0.5, abs=0.002)


def test_sea_salt_makes_sea_water():
    made = add(RO, "sea salt", 36.45, 1.0)  # 35.16 g/kg of water's own mass, salt's left out
    assert made.salinity == pytest.approx(36.45 / RO.density, rel=1e-9)
    sea = from_readings(salinity=made.salinity, temperature=25.0, pco2=420.0)
    assert made.calcium == pytest.approx(sea.calcium)
    assert in_air(made, 420.0).ph == pytest.approx(solve(sea).ph, abs=1e-3)


def test_topping_up_with_tap_creeps_with_ro_it_does_not():
    tap = from_readings(ph=7.5, kh=8.0, gh=12.0, temperature=25.0)
    creeping, kept = TANK, TANK
    for _ in range(20):
        creeping, kept = topped_up(creeping, 0.05, tap), topped_up(kept, 0.05, RO)
    assert creeping.gh == pytest.approx(TANK.gh + 20 * 0.05 * tap.gh, rel=1e-6)
    assert kept.gh == pytest.approx(TANK.gh, rel=1e-9)


def test_standing_part_way():
    full = stood(TANK, 420.0)
    half = stood(TANK, 420.0, 0.5)
    assert half.carbon == pytest.approx(0.5 * (TANK.carbon + full.carbon))
    assert stood(TANK, 420.0, 0.0) == TANK


@pytest.mark.parametrize(
    "call",
    [
        lambda: mix([]),
        lambda: mix([(TANK, 0.0)]),
        lambda: mix([(TANK, -1.0), (RO, 2.0)]),
        lambda: mix([(TANK, float("nan"))]),
        lambda: diluted(TANK, 1.1),
        lambda: stood(TANK, 0.0),
        lambda: stood(TANK, 420.0, 1.5),
        lambda: add(TANK, "sodium bicarbonate", -1.0, 100.0),
        lambda: add(TANK, "sodium bicarbonate", 1.0, 0.0),
        lambda: add(TANK, "sodium bicarbonate", 1.0, 100.0, purity=1.2),
        lambda: add(TANK, "sodium bicarbonate", float("inf"), 100.0),
        lambda: with_co2(TANK, -500.0),
        lambda: nitrified(TANK, 10.0, "ammonium"),
        lambda: taken_up(TANK, nitrate=10.0),
    ],
)
def test_what_cannot_be_done_is_refused(call):
    with pytest.raises(OutOfRange):
        call()


def test_an_unknown_substance_is_named():
    with pytest.raises(UnknownSubstance) as caught:
        add(TANK, "stardust", 1.0, 1.0)
    assert caught.value.name == "stardust"
