"""New animals home: what differs, which order of work, how long, and when not at all."""

from __future__ import annotations

from datetime import timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.advice.arrivals import (
    FLOAT_MINUTES,
    LONGEST_DRIP,
    MIX_MINUTES,
    Arrival,
    arrive,
)
from core.advice.bags import bag_ammonia
from core.advice.livestock import species
from core.advice.quarantine import QUARANTINE, QUARANTINE_DAYS
from core.advice.state import Measured, State
from tests.core.advice.waters import NOON, read, state, tank

HOME = (read("temperature", 25.0), read("ph", 7.2), read("gh", 8.0), read("kh", 5.0))


def bag(*readings: Measured) -> dict[str, Measured]:
    return {reading.analyte: reading for reading in readings}


def ids(plan: Arrival) -> list[str]:
    return [step.id for step in plan.steps]


def home(*extra: Measured, **parts: object) -> State:
    return state(*HOME, *extra, **parts)  # type: ignore[arg-type]


LIKE = bag(read("temperature", 24.0), read("ph", 7.0), read("gh", 9.0), read("kh", 5.0))


def test_a_short_way_in_like_water_is_float_and_mix() -> None:
    plan = arrive(LIKE, home(), hours=1.0)
    assert not plan.keep_closed
    assert ids(plan) == [
        "dim_light", "float_closed", "add_tank_water", "net_over", "discard_bag_water", "watch",
    ]  # fmt: skip
    assert plan.minutes == FLOAT_MINUTES + MIX_MINUTES


def test_float_and_mix_are_at_least_a_quarter_of_an_hour_each_grade_b() -> None:
    """Text headed 7.5 Acclimatizing fish (grade B): float 15 min, then tank water 15 min."""
    assert FLOAT_MINUTES >= 15.0
    assert MIX_MINUTES >= 15.0


@pytest.mark.parametrize("hours", [6.0, None], ids=["long", "unknown is taken for long"])
def test_a_long_closed_bag_is_not_left_open(hours: float | None) -> None:
    plan = arrive(LIKE, home(), hours=hours)
    assert plan.keep_closed
    assert "open_and_move" in ids(plan)
    assert "add_tank_water" not in ids(plan)
    assert ids(plan).index("float_closed") < ids(plan).index("open_and_move")


def test_a_long_way_into_other_water_goes_by_a_container_of_clean_water() -> None:
    other = LIKE | bag(read("gh", 16.0))
    assert ids(arrive(other, home(), hours=8.0)) == [
        "dim_light", "float_closed", "prepare_container", "open_and_move", "add_tank_water",
        "net_over", "discard_bag_water", "watch",
    ]  # fmt: skip


def test_bag_water_never_goes_into_the_tank() -> None:
    for hours in (0.5, 9.0):
        assert "discard_bag_water" in ids(arrive(LIKE, home(), hours=hours))


def test_ammonia_jumps_when_the_bag_loses_its_carbon_dioxide() -> None:
    """2 mg/L at pH 6.5 is harmless; in open air at KH 5 it is far over 0.05 mg/L NH3-N."""
    found = bag_ammonia(
        bag(read("ammonia", 2.0), read("ph", 6.5), read("kh", 5.0), read("temperature", 25.0)),
        home(),
    )
    assert found is not None
    assert found.nh3_n < 0.01
    assert found.ph_open > 8.0
    assert found.nh3_n_open > 20 * found.nh3_n
    assert found.is_dangerous
    assert not found.kh_assumed


def test_a_dangerous_bag_stays_closed_however_short_the_way() -> None:
    foul = LIKE | bag(read("ammonia", 2.0), read("ph", 6.5))
    assert arrive(foul, home(), hours=0.5).keep_closed


def test_without_ammonia_nothing_is_claimed_of_the_bag() -> None:
    assert bag_ammonia(bag(read("ph", 6.5)), home()) is None


def test_without_ph_only_the_open_bag_is_judged() -> None:
    found = bag_ammonia(bag(read("ammonia", 1.0)), home())
    closed = bag_ammonia(bag(read("ammonia", 1.0), read("ph", 6.5)), home())
    assert found is not None
    assert closed is not None
    assert found.ph is None
    assert found.nh3_n is None
    assert found.nh3_n_open == pytest.approx(closed.nh3_n_open)


@pytest.mark.parametrize(
    ("salinity", "kinds", "days"),
    [
        (35.0, ["clownfish"], 0),
        (32.0, ["clownfish"], 3),
        (38.0, ["clownfish"], 2),
        (38.0, ["cleaner shrimp"], 3),
        (34.0, ["cleaner shrimp"], 0),
    ],
    ids=["like", "3 up at 1 a day", "3 down at 2 a day", "3 down, invertebrates", "1 is borne"],
)
def test_salinity_goes_by_the_daily_limits(salinity: float, kinds: list[str], days: int) -> None:
    plan = arrive(
        bag(read("salinity", salinity)),
        state(read("salinity", 35.0), of=tank(kind="marine")),
        [species(name) for name in kinds],
        hours=1.0,
    )
    assert plan.days == days
    assert ("hold_in_quarantine" in ids(plan)) is (days > 0)


@pytest.mark.parametrize(
    ("parts", "hours", "days"),
    [
        ([read("kh", 1.0)], 1.0, 1.0),
        ([read("kh", 4.0)], 1.0, 0.0),
        ([read("kh", 5.0), read("ph", 6.4)], 9.0, 0.0),
        ([read("kh", 1.0), read("ph", 7.2)], 9.0, 1.0),
        ([read("ph", 6.6)], 1.0, 1.0),
        ([read("ph", 6.8)], 1.0, 0.0),
        ([read("ph", 6.4)], 9.0, 0.0),
        ([read("ph", 8.0)], 9.0, 1.0),
    ],
    ids=[
        "a fifth of the KH is 0.7 pH stood", "KH 4 to 5 is 0.1",
        "the same KH: the low pH is CO2 and leaves", "CO2 hides that the waters differ",
        "KH unknown, a short way: pH counts", "0.4 apart", "KH unknown, a long way: CO2",
        "down to a lower pH counts always",
    ],
)  # fmt: skip
def test_ph_more_than_a_half_apart_takes_a_day_like_with_like_grade_b(
    parts: list[Measured], hours: float, days: float
) -> None:
    """Text headed 7.5 Acclimatizing fish (grade B): over 0.5 pH, at least 24 h."""
    assert arrive(bag(*parts), home(), hours=hours).days == days


def test_tender_animals_get_twice_the_time() -> None:
    usual = arrive(LIKE, home(), [species("neon tetra")], hours=1.0)
    tender = arrive(LIKE, home(), [species("cherry shrimp")], hours=1.0)
    assert tender.minutes - FLOAT_MINUTES == 2 * (usual.minutes - FLOAT_MINUTES)


@pytest.mark.parametrize(
    ("extra", "reason"),
    [
        ((read("nitrite", 1.0, basis="ion"),), "nitrite"),
        ((read("ammonia", 9.0), read("nitrite", 0.0)), "ammonia"),
        ((read("total_chlorine", 0.5),), "chlorine"),
    ],
)
def test_not_into_poisoned_water(extra: tuple[Measured, ...], reason: str) -> None:
    plan = arrive(LIKE, home(*extra), hours=1.0)
    first = plan.steps[0]
    assert first.id == "not_yet"
    assert first.facts == {"reason": reason}


def test_not_into_a_tank_that_is_cycling() -> None:
    young = home(read("ammonia", 0.5), read("nitrite", 0.0), began=NOON - timedelta(days=9))
    assert arrive(LIKE, young, hours=1.0).steps[0].id == "not_yet"


def test_water_that_does_not_suit_is_said() -> None:
    plan = arrive(LIKE, home(), [species("tropheus")], hours=1.0)
    assert {misfit.analyte for misfit in plan.misfits} == {"ph", "kh", "gh"}


def test_nothing_known_of_the_bag_is_still_a_plan() -> None:
    plan = arrive({}, state())
    assert plan.keep_closed
    assert plan.ammonia is None
    assert ids(plan)[0] == "dim_light"


VALUES = {"temperature": (5, 35), "ph": (4.5, 9.0), "gh": (0, 30), "kh": (0, 20),
          "salinity": (0, 40), "ammonia": (0, 8)}  # fmt: skip


@given(
    st.fixed_dictionaries(
        {}, optional={of: st.floats(*map(float, span)) for of, span in VALUES.items()}
    ),
    st.one_of(st.none(), st.floats(0, 72)),
)
def test_any_bag_has_a_plan_of_sane_length(values: dict[str, float], hours: float | None) -> None:
    held = {of: read(of, value) for of, value in values.items()}
    plan = arrive(held, home(), [species("cherry shrimp")], hours)
    assert plan.minutes <= FLOAT_MINUTES + 5 * 30 + LONGEST_DRIP + 1
    assert ids(plan)[-1] == "watch"
    if plan.ammonia is not None:
        assert plan.ammonia.nh3_n_open >= (plan.ammonia.nh3_n or 0.0)


def test_quarantine_is_four_weeks_with_daily_looks_common_practice() -> None:
    assert QUARANTINE_DAYS == 28
    every = {duty.id: duty.every_days for duty in QUARANTINE}
    assert every["look"] == 1
    assert set(every) == {"look", "test", "change"}
    assert all(1 <= days <= 7 for days in every.values())


@pytest.mark.parametrize(
    ("kinds", "days"),
    [(["clownfish"], 0), (["turbo snail"], 2), ([], 2)],
    ids=["fish: 2 g/kg down a day", "an invertebrate: 1", "nobody said: as an invertebrate"],
)
def test_salinity_falls_by_who_comes_common_practice(kinds: list[str], days: int) -> None:
    sea = state(read("salinity", 35.0), of=tank(kind="marine"))
    bag = {"salinity": read("salinity", 37.0)}
    assert arrive(bag, sea, [species(kind) for kind in kinds], hours=1.0).days == days


@pytest.mark.parametrize(
    ("inside", "outside", "deciding", "days"),
    [
        (read("temperature", 26.0), read("temperature", 16.0), "temperature", 1.0),
        (read("temperature", 20.0), read("temperature", 24.0), None, 0.0),
        (read("tds", 600.0), read("tds", 120.0), "tds", 4.0),
        (read("tds", 150.0), read("tds", 120.0), None, 0.0),
        (read("conductivity", 300.0), read("conductivity", 600.0), "conductivity", 2.0),
    ],
    ids=["ten degrees", "four degrees", "a fifth of the solids", "alike", "twice"],
)
def test_warmth_and_solids_far_apart_ask_for_days(
    inside: Measured, outside: Measured, deciding: str | None, days: float
) -> None:
    """ln(600/120)/ln(1.5) is 3.97 days; common practice, no source."""
    plan = arrive({inside.analyte: inside}, state(outside), hours=1.0)
    assert (plan.deciding, plan.days) == (deciding, days)
