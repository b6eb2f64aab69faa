"""Potassium summed over doses and changes (limits from memory, marked so there)."""

from __future__ import annotations

from dataclasses import replace
from datetime import timedelta

import pytest

from core.advice.dosing import Wish, plan_kh
from core.advice.plan import Plan, Refusal
from core.advice.potassium import dosed_so_far, left_of_measured
from core.advice.state import Happening, State
from core.message.model import Event
from tests.core.advice.tank_water import NOW, reading, told

WATER = (("kh", 4.0), ("ph", 7.2), ("temperature", 25.0), ("ammonia", 0.0))
WISH = Wish(target=5.0, substance="potassium bicarbonate")


def after(*events: tuple[int, Event], stock: tuple[str, ...] = ()) -> State:
    held = told(*WATER, stock=stock)
    happened = tuple(Happening(NOW - timedelta(days=days), event) for days, event in events)
    return replace(held, events=happened)


def dose(grams: float) -> Event:
    return Event("dose", grams=grams, substance="potassium bicarbonate")


def test_doses_add_up_and_changes_take_away() -> None:
    """4.29 g in 120 L are 13.9 mg/L potassium (table of cautions, PHREEQC)."""
    events = ((9, dose(4.29)), (5, Event("water_change", percent=50.0)), (2, dose(4.29)))
    assert dosed_so_far(after(*events), "potassium") == pytest.approx(1.5 * 13.9, rel=0.01)


def test_a_measured_value_begins_anew_and_what_is_to_come_is_not_counted() -> None:
    held = after((9, dose(4.29)), (2, dose(4.29)), (-1, dose(4.29)))
    seen = replace(reading("potassium", 15.0), at=NOW - timedelta(days=5))
    held = replace(held, readings={**held.readings, "potassium": seen})
    assert dosed_so_far(held, "potassium") == pytest.approx(13.9, rel=0.01)


@pytest.mark.parametrize(
    ("earlier", "stock", "cautioned"),
    [(0.0, (), False), (0.0, ("cherry shrimp",), False), (4.29, ("cherry shrimp",), True),
     (4.29, ("neon tetra",), False), (15.0, ("neon tetra",), True)],
)  # fmt: skip
def test_over_twenty_with_shrimps_over_fifty_else(
    earlier: float, stock: tuple[str, ...], cautioned: bool
) -> None:
    plan = plan_kh(WISH, after((3, dose(earlier)), stock=stock), known_tank=True)
    assert isinstance(plan, Plan)
    assert ("potassium" in plan.cautions) is cautioned


@pytest.mark.parametrize(
    ("measured", "stock", "cautioned"),
    [(15.0, ("cherry shrimp",), True), (5.0, ("cherry shrimp",), False),
     (15.0, ("neon tetra",), False), (45.0, ("neon tetra",), True), (15.0, ("snails",), True)],
)  # fmt: skip
def test_what_was_measured_counts_with_the_dose(
    measured: float, stock: tuple[str, ...], cautioned: bool
) -> None:
    """KH from 4 to 5 by the bicarbonate brings 13.9 mg/L."""
    held = after(stock=stock)
    seen = replace(reading("potassium", measured), at=NOW - timedelta(days=5))
    held = replace(held, readings={**held.readings, "potassium": seen})
    plan = plan_kh(WISH, held, known_tank=True)
    assert isinstance(plan, Plan)
    assert ("potassium" in plan.cautions) is cautioned


def test_changes_since_thin_what_was_measured_towards_the_source() -> None:
    held = after((9, Event("water_change", percent=90.0)), (2, Event("water_change", percent=50.0)))
    seen = replace(reading("potassium", 40.0), at=NOW - timedelta(days=5))
    held = replace(held, readings={**held.readings, "potassium": seen})
    assert left_of_measured(held, "potassium") == pytest.approx(20.0)
    held = replace(held, source={"potassium": reading("potassium", 10.0)})
    assert left_of_measured(held, "potassium") == pytest.approx(25.0)
    sea = replace(held, readings={**held.readings, "salinity": reading("salinity", 35.0)})
    assert left_of_measured(sea, "potassium") == 0.0


def test_none_for_mussels() -> None:
    plan = plan_kh(WISH, after(stock=("swan mussel",)), known_tank=True)
    assert isinstance(plan, Refusal)
    assert plan.reason == "potassium_mussels"
