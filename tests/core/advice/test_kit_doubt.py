"""The interval that the kits leave on a plan, against truths drawn within the kits' steps."""

from __future__ import annotations

import random

import pytest

from core.advice.dosing import Wish, plan_kh
from core.advice.kit_doubt import KitDoubt, doubt_of
from core.advice.plan import Plan, Refusal
from core.advice.state import State
from tests.core.advice.tank_water import at_rest, fresh_water, own_pressure, reading, state

FORMULA_MASS = 84.007
"""NaHCO3, from atomic weights. [g/mol]"""


def held(ammonia: float = 0.15, ph: float = 7.2, kh: float = 4.0) -> State:
    return state(
        reading("kh", kh, low=kh - 1.0, step=1.0),
        reading("gh", 6.0, low=5.0, step=1.0),
        reading("ph", ph, low=ph - 0.2, high=ph + 0.2, step=0.2),
        reading("ammonia", ammonia, low=ammonia / 2, high=1.5 * ammonia),
        reading("temperature", 25.0),
    )


def planned(state_: State) -> Plan:
    plan = plan_kh(Wish(target=6.0), state_, known_tank=True)
    assert isinstance(plan, Plan)
    return plan


def test_nine_in_ten_truths_lie_inside_by_phreeqc() -> None:
    """The plan is carried out in PHREEQC on waters that the same kits would read the same."""
    plan = planned(held())
    doubt = doubt_of(plan)
    assert doubt is not None
    chance = random.Random(2)  # noqa: S311 - the same each time
    inside, tried = {"kh": 0, "stood": 0, "leaves": 0}, 60
    for _ in range(tried):
        kh, gh = chance.uniform(3, 4), chance.uniform(5, 6)
        ph, litres = chance.uniform(7.0, 7.4), 120.0 * chance.uniform(0.95, 1.05)
        water = fresh_water(kh, 25.0, gh, ph=ph)
        pressure = own_pressure(water)
        water.add("NaHCO3", 1000.0 * plan.grams / FORMULA_MASS / litres, "mmol")
        after = kh + 1000.0 * plan.grams / FORMULA_MASS / litres / 0.356652
        inside["kh"] += doubt.kh[0] <= after <= doubt.kh[1]
        inside["stood"] += doubt.ph_stood[0] <= at_rest(water, pressure) <= doubt.ph_stood[1]
        inside["leaves"] += doubt.ph_leaves[0] <= at_rest(water, 420.0) <= doubt.ph_leaves[1]
        water.forget()
    # Nine in ten, less three standard errors of sixty draws (0.116).
    assert all(count >= 0.78 * tried for count in inside.values()), inside


def test_the_middle_figures_lie_inside_and_it_is_the_same_each_time() -> None:
    plan = planned(held())
    doubt, again = doubt_of(plan), doubt_of(plan)
    assert doubt == again
    assert isinstance(doubt, KitDoubt)
    assert plan.last is not None
    assert plan.gate is not None
    assert plan.gate.nh3_n is not None
    assert doubt.ph_stood[0] < plan.last.expected < doubt.ph_stood[1]
    assert doubt.ph_at_once is not None
    assert doubt.ph_at_once[0] < plan.last.at_once < doubt.ph_at_once[1]
    assert doubt.nh3_n is not None
    assert 0.0 < doubt.nh3_n[0] < doubt.nh3_n[1]
    # The gate reckons with the upper end of ammonia, here 0.225 of 0.15 mg/L.
    assert doubt.nh3_n[0] < plan.gate.nh3_n[0]


def test_an_exact_kit_leaves_only_the_volume() -> None:
    exact = state(
        reading("kh", 4.0, low=3.99, high=4.01),
        reading("ph", 7.2, low=7.199, high=7.201),
        reading("temperature", 25.0),
    )
    doubt = doubt_of(planned(exact))
    assert doubt is not None
    # Two degrees in 5 % more or less water.
    assert doubt.kh == pytest.approx((5.9, 6.1), abs=0.03)
    assert doubt.nh3_n is None
    assert doubt.gh is None


def _from_ten(total: float) -> Plan | Refusal:
    return plan_kh(Wish(target=11.0), held(total, 8.3, 10.0), known_tank=True)


def test_it_tells_where_the_doubt_alone_passes_the_gate() -> None:
    """The plan itself passes; the upper end of pH and of ammonia together would not."""
    doubts = [
        doubt
        for total in (0.05, 0.2, 0.25, 0.3, 0.35, 0.4)
        if isinstance(plan := _from_ten(total), Plan) and (doubt := doubt_of(plan)) is not None
    ]
    assert any(doubt.over_gate for doubt in doubts)
    assert not all(doubt.over_gate for doubt in doubts)


def test_nothing_is_said_where_kh_cannot_be_told() -> None:
    blind = state(
        reading("kh", 0.5, low=0.0, step=0.5), reading("ph", 6.5), reading("ammonia", 0.0)
    )
    assert doubt_of(planned(blind)) is None
