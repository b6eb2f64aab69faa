"""Lime that may fall out of hard fresh water, against PHREEQC's saturation of aragonite."""

from __future__ import annotations

import pytest

from core.advice.dosing import Wish, plan_kh
from core.advice.plan import Plan
from core.advice.scheduling import Schedule, in_parts
from core.advice.state import State
from tests.core.advice.tank_water import at_rest, fresh_water, own_pressure, reading, state

FORMULA_MASS = 84.007
"""NaHCO3, from atomic weights. [g/mol]"""


def held(kh: float, gh: float, ph: float) -> State:
    return state(
        reading("kh", kh, low=kh - 0.5, step=0.5),
        reading("gh", gh),
        reading("ph", ph),
        reading("temperature", 25.0),
        reading("ammonia", 0.0),
    )


@pytest.mark.parametrize(
    ("kh", "gh", "ph", "cautioned"),
    [
        (4.0, 6.0, 7.2, False),  # soft and under saturation
        (8.0, 12.0, 7.6, False),  # hard, but its CO2 holds the lime
        (12.0, 24.0, 8.3, True),  # hard and alkaline
    ],
)
def test_it_is_told_from_eight_times_saturation(
    kh: float, gh: float, ph: float, cautioned: bool
) -> None:
    told = held(kh, gh, ph)
    plan = plan_kh(Wish(target=kh + 2.0), told, known_tank=True)
    assert isinstance(plan, Plan)
    assert plan.outlook is not None
    assert ("lime_falls_out" in plan.cautions) is cautioned
    ours = in_parts(told, plan.outlook, plan.salts, plan.volume_l)
    water = fresh_water(kh, 25.0, gh, ph=ph)
    pressure = own_pressure(water)
    water.add("NaHCO3", 1000.0 * plan.grams / FORMULA_MASS / plan.volume_l, "mmol")
    at_rest(water, pressure)  # bicarbonate brings CO2: at rest there is more carbonate than at once
    theirs = 10.0 ** water.si("Aragonite")
    assert (theirs > 8.0) is cautioned
    assert isinstance(ours, Schedule)
    assert ours.saturation == pytest.approx(theirs, rel=0.05)
    water.forget()
