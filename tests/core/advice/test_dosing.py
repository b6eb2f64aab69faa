"""Bicarbonate plans: mass by stoichiometry, steps and gates by the limits."""

from __future__ import annotations

import math
from datetime import UTC, datetime, timedelta

import periodictable
import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.advice import limits
from core.advice.dosing import Plan, Refusal, Wish, grams_for, plan_kh
from core.advice.state import Measured, State, ammonia_as_n
from core.tank import Tank

NOW = datetime(2026, 3, 1, 19, tzinfo=UTC)


def reading(
    analyte: str, value: float, *, age: timedelta = timedelta(), **parts: object
) -> Measured:
    ends: dict[str, object] = {"low": value, "high": value} | parts
    return Measured(analyte, value, at=NOW - age, **ends)  # type: ignore[arg-type]


def state(*readings: Measured, kind: str = "fresh", volume: float | None = 120.0) -> State:
    tank = Tank("Fern", kind=kind, volume_l=volume)  # type: ignore[arg-type]
    return State(tank, NOW, {each.analyte: each for each in readings})


def planned(wish: Wish, held: State, *, known_tank: bool = True) -> Plan:
    plan = plan_kh(wish, held, known_tank=known_tank)
    assert isinstance(plan, Plan), plan
    return plan


def refused(wish: Wish, held: State, *, known_tank: bool = True) -> Refusal:
    refusal = plan_kh(wish, held, known_tank=known_tank)
    assert isinstance(refusal, Refusal), refusal
    return refusal


@pytest.mark.parametrize(
    ("substance", "formula"),
    [("sodium bicarbonate", "NaHCO3"), ("potassium bicarbonate", "KHCO3")],
)
def test_mass_against_stoichiometry_of_periodictable(substance: str, formula: str) -> None:
    """One °dH is 10 mg/L CaO (Deutscher Haertegrad, grade B); two equivalents a mole of CaO."""
    equivalents = 2 * 0.010 / periodictable.formula("CaO").mass
    expected = 120.0 * equivalents * periodictable.formula(formula).mass
    assert grams_for(substance, 1.0, 120.0) == pytest.approx(expected, rel=2e-4)


def test_worked_example_common_practice() -> None:
    """3.6 g in 120 L raise KH by one degree: common practice, no source."""
    plan = planned(Wish(target=6, start=3, volume_l=120), state(), known_tank=False)
    assert plan.parts == pytest.approx((3.6, 3.6, 3.6), rel=2e-3)
    assert plan.every_hours == 24
    # 8.2 mg/L sodium a degree: table of cautions, computed with PHREEQC.
    assert plan.added == {"sodium": pytest.approx(3 * 8.2, rel=1e-2)}


def test_potassium_comes_with_potassium_bicarbonate() -> None:
    """13.9 mg/L potassium a degree: table of cautions, computed with PHREEQC."""
    wish = Wish(target=5, start=4, volume_l=100, substance="potassium bicarbonate")
    plan = planned(wish, state(), known_tank=False)
    assert plan.added == {"potassium": pytest.approx(13.9, rel=1e-2)}


@given(
    start=st.floats(1.6, 20),
    rise=st.floats(0.05, 8),
    volume=st.floats(1, 5000),
    ammonia=st.just(0.0),
)
def test_no_part_breaks_a_step_limit(
    start: float, rise: float, volume: float, ammonia: float
) -> None:
    kh = reading("kh", start, low=max(0.0, start - 1.0))
    plan = plan_kh(
        Wish(target=start + rise, volume_l=volume),
        state(kh, reading("ammonia", ammonia)),
        known_tank=True,
    )
    if isinstance(plan, Refusal):
        assert plan.reason == "target_implausible"
        assert start + rise > 25
        return
    degree_each = [part / grams_for(plan.substance, 1.0, volume) for part in plan.parts]
    low = kh.low
    for degrees in degree_each:
        assert degrees <= limits.KH_STEP + 1e-9
        if not plan.blind:
            assert degrees <= low * (limits.KH_FACTOR - 1) + 1e-9, "more than doubled in a day"
        low += degrees
    if not plan.blind:
        assert sum(degree_each) == pytest.approx(rise)


@pytest.mark.parametrize(
    ("told", "ph", "first"),
    [(0.5, 6.8, 0.25), (0.5, 5.0, 0.1), (1.0, 6.5, 0.25)],
    ids=["under one", "very acid", "a one-drop 1 may be 0"],
)
def test_under_kh_1_there_is_one_small_part(told: float, ph: float, first: float) -> None:
    kh = reading("kh", told, low=max(0.0, told - 1.0), step=1.0)
    held = state(kh, reading("ph", ph), reading("ammonia", 0.0))
    plan = planned(Wish(target=6), held)
    assert plan.blind
    assert len(plan.parts) == 1
    assert plan.goals[0].change == pytest.approx(first)


def test_under_kh_1_ammonia_must_be_measured() -> None:
    held = state(reading("kh", 0.5, low=0.0))
    assert refused(Wish(target=6), held).reason == "ammonia_unmeasured"


def test_a_contradiction_is_never_dosed_on() -> None:
    """PH 6 with KH 4 implies 133 mg/L CO2 (table of cautions, computed with PHREEQC)."""
    held = state(reading("kh", 4, low=3.0), reading("ph", 6.0, low=5.8, high=6.2))
    assert refused(Wish(target=6), held).reason == "contradiction"


@pytest.mark.parametrize(
    ("wish", "held", "reason"),
    [
        (Wish(target=6, start=3), state(volume=None), "volume_unknown"),
        (Wish(target=6, start=3, volume_l=0.0), state(), "volume_implausible"),
        (Wish(target=6, start=3, volume_l=3e6), state(), "volume_implausible"),
        (Wish(target=6), state(), "kh_unknown"),
        (Wish(target=6, start=7), state(), "target_reached"),
        (Wish(delta=-1, start=7), state(), "target_reached"),
        (Wish(target=70, start=7), state(), "target_implausible"),
        (Wish(target=6), state(reading("kh", 20, high=math.inf, qualifier=">")), "kh_limit"),
        (Wish(target=6, start=3, substance="sodium carbonate"), state(), "carbonate"),
        (Wish(target=6, start=3, substance="blue bottle"), state(), "substance_unknown"),
    ],
)
def test_what_gets_no_plan(wish: Wish, held: State, reason: str) -> None:
    assert refused(wish, held, known_tank=False).reason == reason


def test_an_old_reading_says_its_age_and_a_small_wish_the_kits() -> None:
    old = state(reading("kh", 3, age=timedelta(days=4), step=1.0))
    assert planned(Wish(target=6), old).is_old
    assert not planned(Wish(target=6), state(reading("kh", 3))).is_old
    assert planned(Wish(delta=1), state(reading("kh", 3, low=2.0, step=1.0))).within_kit is True
    assert planned(Wish(delta=2), state(reading("kh", 3, low=2.0, step=1.0))).within_kit is False


@pytest.mark.parametrize(
    ("basis", "per_n"),
    [(None, 1.0), ("N", 1.0), ("NH4", 1.288), ("NH3", 1.216)],
    ids=["unsaid is N, the worse", "N", "NH4", "NH3 x1.216 as printed in the cautions"],
)
def test_ammonia_bases(basis: str | None, per_n: float) -> None:
    assert ammonia_as_n(1.0, basis) == pytest.approx(1.0 / per_n, rel=1e-3)  # type: ignore[arg-type]
