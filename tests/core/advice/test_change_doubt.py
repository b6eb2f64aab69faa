"""The interval that the kits leave on a change, against truths drawn within the kits' steps."""

from __future__ import annotations

import random
from dataclasses import replace

from core.advice.change_doubt import ChangeDoubt, doubt_of_change
from core.advice.change_plan import largest_safe_share, plan_change
from core.advice.changes import waters_of
from core.advice.state import Measured, State
from tests.core.advice.tank_water import at_rest, fresh_water, own_pressure, phreeqc, reading, state

SHARE = 0.25


def tank(ph: float = 7.2) -> State:
    return state(
        reading("kh", 5.0, low=4.0, step=1.0),
        reading("gh", 8.0, low=7.0, step=1.0),
        reading("ph", ph, low=ph - 0.2, high=ph + 0.2, step=0.2),
        reading("ammonia", 0.1, low=0.05, high=0.15),
        reading("temperature", 25.0),
    )


def tap() -> State:
    return state(
        reading("kh", 8.0, low=7.0, step=1.0),
        reading("gh", 10.0, low=9.0, step=1.0),
        reading("ph", 7.6, low=7.4, high=7.8, step=0.2),
        reading("temperature", 25.0),
    )


def doubt(old: State, new: State) -> ChangeDoubt:
    waters = waters_of(old, new)
    assert waters is not None
    found = doubt_of_change(old, new, waters, plan_change(waters, SHARE))
    assert found is not None
    return found


def test_nine_in_ten_truths_lie_inside_by_phreeqc() -> None:
    """The change is carried out in PHREEQC on waters that the same kits would read the same."""
    found = doubt(tank(), tap())
    chance = random.Random(3)  # noqa: S311 - the same each time
    inside, tried = {"at_once": 0, "stood": 0, "if_co2_leaves": 0}, 60
    for _ in range(tried):
        old = fresh_water(
            chance.uniform(4, 5), 25.0, chance.uniform(7, 8), ph=chance.uniform(7, 7.4)
        )
        new = fresh_water(
            chance.uniform(7, 8), 25.0, chance.uniform(9, 10), ph=chance.uniform(7.4, 7.8)
        )
        pressure = own_pressure(old)
        share = SHARE * chance.uniform(0.95, 1.05)
        mix = phreeqc().mix_solutions({old: 1.0 - share, new: share})
        truths = {"at_once": float(mix.pH), "stood": at_rest(mix, pressure)}
        truths["if_co2_leaves"] = at_rest(mix, 420.0)
        for stage, ph in truths.items():
            low, high = found.stages[stage]["ph"]
            inside[stage] += low <= ph <= high
        for water in (old, new, mix):
            water.forget()
    # Nine in ten, less three standard errors of sixty draws (0.116).
    assert all(count >= 0.78 * tried for count in inside.values()), inside


def test_the_largest_share_lies_between_its_ends_as_the_planner_finds_it() -> None:
    """The planner asked for each truth by itself, to its whole percentage."""
    old, new = tank(), tap()
    low, high = doubt(old, new).largest_safe_share
    chance = random.Random(5)  # noqa: S311 - the same each time
    inside, tried = 0, 40
    for _ in range(tried):
        waters = waters_of(_true(old, chance), _true(new, chance))
        assert waters is not None
        found = largest_safe_share(replace(waters, kh_low=4.0))
        inside += low - 0.01 <= found / chance.uniform(0.95, 1.05) <= high + 0.01
    assert inside >= 0.76 * tried  # nine in ten, less three standard errors of forty draws


def _true(told: State, chance: random.Random) -> State:
    """One of the waters that the kits would read so."""
    readings = {name: _within(each, chance) for name, each in told.readings.items()}
    return replace(told, readings=readings)


def _within(each: Measured, chance: random.Random) -> Measured:
    doubt = 0.5 if each.analyte == "temperature" else 0.0  # of the tank's thermometer
    value = chance.uniform(each.low - doubt, each.high + doubt)
    return replace(each, value=value, low=value, high=value)


def test_the_ammonia_decides_only_where_the_doubt_reaches_the_gate() -> None:
    calm, near = doubt(tank(), tap()), doubt(tank(8.5), tap())
    assert calm.retest_first == ()
    assert near == doubt(tank(8.5), tap()), "the same readings give the same interval"
    high = near.stages["stood"]["nh3_n"][1]
    assert high > calm.stages["stood"]["nh3_n"][1]
