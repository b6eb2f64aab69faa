"""A reef's daily need, buffer in an emergency, iron, salinity, and doses on stale readings."""

from __future__ import annotations

from dataclasses import replace
from datetime import timedelta

import periodictable
import pytest

from core.advice import limits
from core.advice.changes import waters_of
from core.advice.crash import kh_step
from core.advice.dosing import Wish, plan_kh
from core.advice.effects import effects_of
from core.advice.iron import plan_iron
from core.advice.plan import Plan, Refusal
from core.advice.salts import SaltWish, plan_salts
from core.advice.state import Happening, State
from core.message.model import Event
from tests.core.advice.tank_water import NOW, reading, state

DAY = timedelta(days=1)


def reef(kh_before: float, *events: Happening, ammonia: bool = True) -> State:
    """A reef at KH 7.5 now, and two days ago at another."""
    now = reading("kh", 7.5, low=7.0, step=0.5)
    then = reading("kh", kh_before, low=kh_before - 0.5, step=0.5, age=2 * DAY)
    others = [
        reading(name, value)
        for name, value in (("ph", 8.2), ("salinity", 35.0), ("temperature", 25.0))
    ]
    clean = [reading("ammonia", 0.0)] if ammonia else []
    held = state(now, *others, *clean, kind="marine", volume=200.0)
    return replace(held, history={"kh": (then, now)}, events=events)


def dose(held: State, target: float) -> Plan:
    plan = plan_kh(Wish(target=target), held, known_tank=True)
    assert isinstance(plan, Plan)
    return plan


def test_the_daily_need_of_two_readings_by_stoichiometry() -> None:
    """KH 9 to 7.5 in two days: 0.75 °dH a day, 22.5 mg/L NaHCO3 (30 mg/L a degree, practice)."""
    need = dose(reef(9.0), 9.0).upkeep
    assert need is not None
    assert need.salt is not None
    assert need.used.per_day == pytest.approx(0.75)
    assert (need.used.low, need.used.high) == pytest.approx((0.5, 1.0), abs=0.26)
    assert need.salt.grams == pytest.approx(0.75 * 29.96 * 200 / 1000, rel=2e-3)


@pytest.mark.parametrize(
    ("held", "why"),
    [
        (reef(8.0), "within the kits' steps"),
        (reef(9.0, Happening(NOW - DAY, Event("dose", grams=5.0))), "dosed in between"),
        (reef(9.0, Happening(NOW - DAY, Event("water_change", percent=10.0))), "changed"),
        (replace(reef(9.0), events=None), "nobody looked up what was done"),
        (replace(reef(9.0), history={}), "one reading"),
        (replace(reef(9.0), tank=replace(reef(9.0).tank, kind="fresh")), "no reef"),
    ],
    ids=lambda value: value if isinstance(value, str) else "",
)
def test_no_need_is_told_where_two_readings_do_not_show_it(held: State, why: str) -> None:
    plan = plan_kh(Wish(target=9.0), held, known_tank=True)
    if isinstance(plan, Plan):
        assert plan.upkeep is None, why
    else:
        assert plan.reason == "dosed_since", why


def test_a_need_over_a_days_step_has_no_grams() -> None:
    need = dose(reef(10.5), 9.0).upkeep
    assert need is not None
    assert need.used.per_day == pytest.approx(1.5)
    assert need.salt is None


def test_the_need_is_held_to_the_gate_like_the_parts() -> None:
    """With ammonia unknown the condition of the first sentence covers the daily amount too."""
    unknown = reef(9.0, ammonia=False)
    bare = replace(unknown, history={})
    with_need, without = dose(unknown, 9.0).gate, dose(bare, 9.0).gate
    assert with_need is not None
    assert without is not None
    assert (with_need.only_below or 9.0) <= (without.only_below or 0.0)


def test_calcium_and_buffer_are_never_planned_together() -> None:
    held = reef(9.0)
    held = replace(held, readings={**held.readings, "calcium": reading("calcium", 400.0)})
    answer = plan_salts(SaltWish({"calcium": 420.0, "kh": 9.0}), held, known_tank=True)
    assert isinstance(answer, Refusal)
    assert answer.reason == "one_at_a_time"


# Emergencies ------------------------------------------------------------------------------


def crashed(fell: float = 0.8, *, kh: float = 2.5, ph: float = 6.4, hours: int = 24) -> State:
    held = state(
        reading("kh", kh, low=kh - 0.5, step=0.5), reading("ph", ph), reading("ammonia", 0.0)
    )
    return replace(held, earlier=(reading("ph", ph + fell, age=timedelta(hours=hours)),))


def test_an_emergency_raises_kh_at_twice_the_pace_and_says_so() -> None:
    plan = dose(crashed(), 4.5)
    assert plan.emergency
    assert plan.count == 1
    assert plan.goals[0].change == pytest.approx(2.0)


@pytest.mark.parametrize(
    ("held", "called", "step"),
    [
        (crashed(), False, 2.0),
        (crashed(kh=2.0), False, 1.5),  # never more than doubles the low end
        (crashed(kh=1.4), False, 1.0),  # a low end under 1: never
        (crashed(kh=4.0), False, 1.0),  # buffer enough
        (crashed(0.4), False, 1.0),
        (crashed(hours=36), False, 1.0),  # another hour of the day: not like with like
        (crashed(hours=96), False, 1.0),
        (crashed(0.0), True, 2.0),  # the keeper's word, with pH under 6.5
        (crashed(0.0, ph=6.8), True, 1.0),
    ],
)
def test_when_it_is_an_emergency(held: State, called: bool, step: float) -> None:
    assert kh_step(held, called=called) == pytest.approx(step)


def test_no_emergency_without_ammonia_measured_or_in_soft_water() -> None:
    held = crashed()
    unmeasured = replace(held, readings={k: v for k, v in held.readings.items() if k != "ammonia"})
    assert kh_step(unmeasured) == limits.KH_STEP
    assert kh_step(replace(held, tank=replace(held.tank, soft=True))) == limits.KH_STEP


# Iron -------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("name", "formula"),
    [
        ("ferrous sulfate heptahydrate", "FeSO4(H2O)7"),
        ("ferrous gluconate dihydrate", "FeC12H22O14(H2O)2"),
    ],
)
def test_iron_by_periodictable(name: str, formula: str) -> None:
    held = state(reading("iron", 0.05), volume=90.0)
    (plan,) = plan_iron(name, 0.15, None, None, held)
    assert isinstance(plan, Plan)
    share = periodictable.formula("Fe").mass / periodictable.formula(formula).mass
    assert plan.grams == pytest.approx(0.1 * 90 / 1000 / share, rel=2e-4)


@pytest.mark.parametrize("name", [None, "iron chelate", "plant food"])
def test_iron_of_unknown_strength_gets_no_number(name: str | None) -> None:
    answer = plan_iron(name, 0.1, None, 90.0, state(reading("iron", 0.0)))
    assert isinstance(answer, Refusal)
    assert answer.reason == "iron_strength"


# Salinity ---------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("stock", "slow"),
    [
        (("ocellaris clownfish",), False),
        (("ocellaris clownfish", "cherry shrimp"), True),
        (("some beast",), True),
        ((), True),
    ],
)
def test_salinity_falls_faster_only_with_fish_on_record(stock: tuple[str, ...], slow: bool) -> None:
    held = state(reading("kh", 8.0), reading("salinity", 34.0), kind="marine", stock=stock)
    waters = waters_of(held, state(reading("kh", 8.0), reading("salinity", 20.0)))
    assert waters is not None
    assert waters.invertebrates is slow


def test_sea_salt_is_bound_by_salinity_in_the_sea_and_by_hardness_in_fresh_water() -> None:
    """One gram a litre: a day in the sea; about 10 °dH of GH, five days, in fresh water."""
    sea = state(reading("kh", 8.0), reading("salinity", 33.0), kind="marine")
    (in_sea,) = effects_of("sea salt", 100.0, 100.0, sea)
    (in_fresh,) = effects_of("sea salt", 100.0, 100.0, state(reading("kh", 8.0)))
    assert not isinstance(in_sea, str)
    assert in_sea.days == 1  # type: ignore[union-attr]
    assert in_fresh.days in {5, 6}  # type: ignore[union-attr]


# A reading from before a dose -----------------------------------------------------------------


def test_no_second_dose_on_the_reading_from_before_the_first() -> None:
    held = state(reading("kh", 4.0, low=3.0, age=DAY), reading("ammonia", 0.0))
    soda = Event("dose", grams=3.0, substance="sodium bicarbonate")
    salt = Event("dose", grams=3.0, substance="potassium nitrate")
    after = replace(held, events=(Happening(NOW, soda),))
    answer = plan_kh(Wish(target=6.0), after, known_tank=True)
    assert isinstance(answer, Refusal)
    assert answer.reason == "dosed_since"
    for harmless in (Happening(NOW, salt), Happening(NOW - 2 * DAY, soda)):
        assert isinstance(
            plan_kh(Wish(target=6.0), replace(held, events=(harmless,)), known_tank=True), Plan
        )


def test_a_reading_from_before_a_change_is_to_be_taken_again() -> None:
    held = state(reading("kh", 4.0, low=3.0, age=DAY), reading("ammonia", 0.0))
    small, large = (Happening(NOW, Event("water_change", percent=p)) for p in (5.0, 30.0))
    assert dose(replace(held, events=(small,)), 6.0).changed_since
    assert not dose(held, 6.0).changed_since
    refused = plan_kh(Wish(target=6.0), replace(held, events=(large,)), known_tank=True)
    assert isinstance(refused, Refusal)
    assert refused.reason == "diluted_since"
    # 30 % of a source that differs by 1 °dH moves KH by 0.3: the reading is still of use.
    alike = replace(held, events=(large,), source={"kh": reading("kh", 5.0)})
    assert dose(alike, 6.0).changed_since


@pytest.mark.parametrize(
    ("hours", "grams", "kh", "refused"),
    [
        (1.0, 3.0, 5.0, True),
        (21.0, 3.0, 5.0, True),
        (23.0, 3.0, 5.0, False),
        (1.0, 0.3, 4.1, False),
    ],
    ids=["an hour ago", "the evening before", "a day ago", "a tenth of a step"],
)
def test_what_went_in_within_a_day_counts_into_its_step(
    hours: float, grams: float, kh: float, refused: bool
) -> None:
    """3 g of sodium bicarbonate in 100 L are 1 °dH: 30 mg/L, common practice."""
    salt = Event("dose", grams=grams, substance="sodium bicarbonate")
    held = state(reading("kh", kh), reading("ammonia", 0.0), reading("ph", 7.2))
    held = replace(
        held,
        tank=replace(held.tank, volume_l=100.0),
        events=(Happening(NOW - timedelta(hours=hours), salt),),
    )
    answer = plan_kh(Wish(target=kh + 0.85), held, known_tank=True)
    assert (isinstance(answer, Refusal) and answer.reason == "moved_today") == refused
