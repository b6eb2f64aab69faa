"""The ammonia gate: what pH it reckons with, what it refuses, and the total that it bears."""

from __future__ import annotations

import math
from dataclasses import replace
from datetime import UTC, datetime, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.advice import limits
from core.advice.ammonia_gate import is_tender
from core.advice.dosing import Plan, Refusal, Wish, plan_kh
from core.advice.state import State
from core.tank import Stock, Tank
from core.water.ammonia import chronic_criterion, un_ionised_fraction
from tests.core.advice.tank_water import (
    at_rest,
    fresh_water,
    own_pressure,
    phreeqc,
    reading,
    state,
    told,
)


def planned(wish: Wish, held: object) -> Plan:
    plan = plan_kh(wish, held, known_tank=True)  # type: ignore[arg-type]
    assert isinstance(plan, Plan), plan
    return plan


def reason(wish: Wish, held: object) -> str:
    refusal = plan_kh(wish, held, known_tank=True)  # type: ignore[arg-type]
    assert isinstance(refusal, Refusal), refusal
    assert not any("gram" in name or "part" in name for name in refusal.facts)
    return refusal.reason


@pytest.mark.parametrize("celsius", [10.0, 25.0, 30.0])
@pytest.mark.parametrize(
    ("ph", "kh", "target"), [(6.6, 2.0, 5.0), (7.2, 4.0, 6.0), (8.0, 10.0, 12.0)]
)
def test_ph_at_once_and_stood_against_phreeqc(
    celsius: float, ph: float, kh: float, target: float
) -> None:
    """The tank keeps its own CO2 between parts; PHREEQC (phreeqc.dat), limit 0.02 of the issue."""
    wish = Wish(target=target, volume_l=100.0)
    plan = planned(wish, told(("kh", kh), ("ph", ph), ("temperature", celsius), ("ammonia", 0.0)))
    water = fresh_water(kh, celsius, ph=ph)
    pressure = own_pressure(water)
    for _ in plan.parts:
        water.add("NaHCO3", (target - kh) / len(plan.parts) * 0.356652, "mmol")
        at_once = float(water.pH)
        expected = at_rest(water, pressure)
    assert plan.last.at_once == pytest.approx(at_once, abs=0.02)
    assert plan.last.expected == pytest.approx(expected, abs=0.02)
    assert plan.last.leaves == pytest.approx(at_rest(water, 420.0), abs=0.02)


def test_without_a_ph_the_range_is_from_a_stocked_tank_to_open_air() -> None:
    plan = planned(Wish(target=6.0), told(("kh", 3.0), ("temperature", 25.0), ("ammonia", 0.0)))
    water = fresh_water(3.0, 25.0)
    water.add("NaHCO3", 3.0 * 0.356652, "mmol")
    assert not plan.outlook.co2_known
    assert plan.last.expected == pytest.approx(at_rest(water, 2000.0), abs=0.02)
    assert plan.last.leaves == pytest.approx(at_rest(water, 420.0), abs=0.02)


def test_where_plants_take_the_co2_the_last_ph_and_its_rise_count() -> None:
    """PH 8.9 at KH 4 is over what open air gives: that, with the predicted rise, is highest."""
    plan = planned(
        Wish(target=5.0), told(("kh", 4.0), ("ph", 8.9), ("temperature", 25.0), ("ammonia", 0.0))
    )
    in_air = at_rest(fresh_water(5.0, 25.0), 420.0)
    assert in_air < 8.9
    assert plan.last.leaves >= plan.last.expected > in_air


@pytest.mark.parametrize("celsius", [10.0, 25.0, 30.0])
def test_raised_over_the_gate_if_co2_leaves_is_refused(celsius: float) -> None:
    """At pH 6.6 today's share is next to nothing; KH 3 to 6 doubles it wherever the CO2 goes."""
    held = told(("kh", 3.0), ("ph", 6.6), ("ammonia", 2.0), ("temperature", celsius))
    after = 2.0 * un_ionised_fraction(at_rest(fresh_water(6.0, celsius), 420.0), celsius)
    assert after > limits.NH3_GATE
    assert reason(Wish(target=6), held) == "ammonia"


def test_a_small_rise_over_the_gate_gets_grams_and_a_word_about_co2() -> None:
    """KH 10 to 11 adds a tenth: refused only where the expected figure is over the gate."""
    held = told(("kh", 10.0), ("ph", 7.0), ("ammonia", 1.0), ("temperature", 25.0))
    plan = planned(Wish(target=11), held)
    assert plan.gate is not None
    assert plan.gate.keep_co2
    assert plan.gate.nh3_n is not None
    expected, leaves = plan.gate.nh3_n
    assert expected < limits.NH3_GATE < leaves
    much = told(("kh", 10.0), ("ph", 7.9), ("ammonia", 1.5), ("temperature", 25.0))
    assert reason(Wish(target=11), much) == "ammonia"


def test_under_the_gate_nothing_is_said_about_co2() -> None:
    plan = planned(
        Wish(target=6), told(("kh", 4.0), ("ph", 7.2), ("ammonia", 0.0), ("temperature", 25.0))
    )
    assert plan.gate is not None
    assert not plan.gate.keep_co2
    assert plan.gate.nh3_n == (0.0, 0.0)


def test_the_upper_end_of_a_colour_step_counts() -> None:
    step = reading("ammonia", 0.1, low=0.0, high=0.5)
    held = state(reading("kh", 3), step, reading("temperature", 25.0))
    assert reason(Wish(target=6), held) == "ammonia"


def test_off_the_end_of_the_scale_is_refused() -> None:
    over = reading("ammonia", 0.01, high=math.inf, qualifier=">")
    assert reason(Wish(target=6), state(reading("kh", 3), over)) == "ammonia"


@pytest.mark.parametrize("morning", [8.6, 7.25], ids=["clearly higher", "within the kit's doubt"])
def test_a_ph_that_was_higher_today_comes_again(morning: float) -> None:
    """What a plan adds comes on top of the swing of the day."""
    now = reading("ph", 7.2)
    held = replace(
        told(("kh", 3.0), ("ph", 7.2), ("ammonia", 0.25), ("temperature", 25.0)),
        history={"ph": (reading("ph", morning, age=timedelta(hours=4)), now)},
    )
    if morning < 7.5:
        planned(Wish(target=5), held)
        return
    assert 0.25 * un_ionised_fraction(morning + 0.1, 25.0) > limits.NH3_GATE
    assert reason(Wish(target=5), held) == "ammonia"


def test_the_swing_of_the_day_lowers_the_total_that_is_borne() -> None:
    calm = told(("kh", 3.0), ("ph", 7.2), ("temperature", 25.0))
    swung = replace(
        calm,
        history={"ph": (reading("ph", 8.6, age=timedelta(hours=4)), reading("ph", 7.2))},
    )
    least, most = (planned(Wish(target=5), held).gate for held in (swung, calm))
    assert least is not None
    assert most is not None
    assert least.only_below is not None
    assert most.only_below is not None
    assert least.only_below <= limits.NH3_GATE / un_ionised_fraction(8.6, 25.0) < most.only_below


@pytest.mark.parametrize("ammonia", [None, timedelta(days=4)], ids=["never measured", "old"])
def test_unknown_ammonia_makes_a_plan_with_a_condition(ammonia: timedelta | None) -> None:
    known = [] if ammonia is None else [reading("ammonia", 0.0, age=ammonia)]
    held = state(reading("kh", 3), reading("temperature", 25.0), *known)
    gate = planned(Wish(target=6), held).gate
    assert gate is not None
    assert gate.only_below is not None
    ph = at_rest(fresh_water(6.0, 25.0), 420.0)
    exact = limits.NH3_GATE / un_ionised_fraction(ph, 25.0)
    assert gate.only_below <= exact + 0.01
    assert gate.only_below == pytest.approx(exact, abs=0.02)


@given(
    kh=st.integers(2, 15),
    rise=st.integers(1, 5),
    ph=st.floats(6.4, 8.4),
    celsius=st.floats(8, 32),
)
def test_the_total_that_it_bears_is_the_highest_that_passes_the_same_gate(
    kh: int, rise: int, ph: float, celsius: float
) -> None:
    water = (("kh", float(kh)), ("ph", ph), ("temperature", celsius))
    plan = plan_kh(Wish(target=float(kh + rise)), told(*water), known_tank=True)
    if isinstance(plan, Refusal):
        assert plan.reason == "contradiction"
        return
    assert plan.gate is not None
    below = plan.gate.only_below
    assert below is not None
    step = 0.0101 if below < 1.0 else 0.101
    at, over = (
        plan_kh(Wish(target=float(kh + rise)), told(*water, ("ammonia", total)), known_tank=True)
        for total in (below, below + step)
    )
    assert isinstance(at, Plan)
    if isinstance(over, Refusal):
        assert over.reason == "ammonia"
    else:  # then the long-term limit of US EPA 2013 was the lower one
        highest = max(max(stage.at_once, stage.expected) for stage in plan.stages)
        chronic = chronic_criterion(min(max(highest, ph, 6.5), 9.0), min(celsius, 30.0))
        assert below <= chronic < below + step


@pytest.mark.parametrize(
    "stock", ["amano shrimps", "swan mussel", "guppy fry", "alevines de guppy"]
)
def test_tender_animals_have_the_stricter_gate(stock: str) -> None:
    water = (("kh", 3.0), ("temperature", 25.0))
    tender, other = (
        planned(Wish(target=6), told(*water, stock=kept)).gate for kept in ((stock,), ("tetra",))
    )
    assert tender is not None
    assert other is not None
    assert (tender.limit, other.limit) == (limits.NH3_GATE_TENDER, limits.NH3_GATE)
    assert (tender.only_below or 0.0) < (other.only_below or 0.0)


def test_the_sea_has_it_too_and_its_own_formula() -> None:
    """PH 8.2, 25 °C, 35 g/kg: 6.2 % on the meter's scale (check values R5, computed)."""
    water = (("kh", 7.0), ("ph", 8.2), ("temperature", 25.0), ("salinity", 35.0))
    gate = planned(Wish(target=8), told(*water, ("ammonia", 0.1), kind="marine")).gate
    assert gate is not None
    assert gate.limit == limits.NH3_GATE_TENDER
    assert gate.nh3_n is not None
    assert 0.1 * 0.055 < gate.nh3_n[0] < 0.1 * 0.075


def test_where_temperature_decides_it_is_asked() -> None:
    """0.25 mg/L at the end pH of KH 6: over the gate at 30 °C, under it at 10 °C (Emerson 1975)."""
    held = state(reading("kh", 3), reading("ammonia", 0.25))
    assert reason(Wish(target=6), held) == "temperature_unknown"
    cool = state(reading("kh", 3), reading("ammonia", 0.25), reading("temperature", 10.0))
    gate = planned(Wish(target=6), cool).gate
    assert gate is not None
    assert gate.nh3_n is not None
    leaves = 0.25 * un_ionised_fraction(at_rest(fresh_water(6.0, 10.0), 420.0), 10.0)
    assert gate.nh3_n[1] == pytest.approx(leaves, rel=0.05)


def test_phreeqc_itself_gives_the_worked_doubling() -> None:
    """KH 1 to 2 by bicarbonate: +0.298 at once, +0.300 stood (limits table, PHREEQC)."""
    before, after = (
        at_rest(phreeqc().add_solution_simple({"NaHCO3": kh * 0.356652}, temperature=25), 420.0)
        for kh in (1.0, 2.0)
    )
    assert after - before == pytest.approx(0.300, abs=0.01)
    held = told(("kh", 1.0), ("ph", 7.0), ("temperature", 25.0), ("ammonia", 0.0))
    plan = plan_kh(Wish(target=2.0), held, known_tank=True)
    assert isinstance(plan, Plan)
    assert len(plan.parts) == 1
    assert plan.last.at_once - 7.0 == pytest.approx(0.298, abs=0.01)


@pytest.mark.parametrize(
    ("species", "tender"),
    [
        ("amano shrimps", True),
        ("guppy fry", True),
        ("neon tetras", False),
        ("shrimp", True),
        ("snails", True),
        ("schnecken", True),
        ("krewetki", True),
        ("fish", False),
    ],
)
def test_the_stricter_gate_is_for_kinds_that_bear_less(species: str, tender: bool) -> None:
    held = State(Tank("Fern", stock=(Stock(species, 6),)), datetime(2026, 3, 1, tzinfo=UTC))
    assert is_tender(held) is tender
