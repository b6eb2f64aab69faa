"""The tank as what went in since its test has made it, and when that is an emergency."""

from __future__ import annotations

import pytest

from core.advice.by_now import by_now
from core.advice.danger import is_emergency
from core.advice.since import moved_today
from core.advice.state import Happening, State
from tests.core.advice.waters import by_kit, done, read, state, tank

SIXTY = tank("guppy", volume_l=60.0)
TESTED = (
    by_kit("kh", 3.0, 0.2), by_kit("gh", 6.0, 0.2), by_kit("ph", 6.8, 0.2),
    read("temperature", 25.0, 0.2), read("ammonia", 0.0, 0.2), read("nitrate", 20.0, 0.2),
)  # fmt: skip
TAP = (by_kit("kh", 3.0), by_kit("gh", 6.0), by_kit("ph", 7.6))


def soda(grams: float, days_ago: float = 0.1) -> Happening:
    return done("dose", days_ago, substance="sodium bicarbonate", grams=grams)


def held(*events: Happening, more: tuple = ()) -> State:
    return state(*TESTED, *more, of=SIXTY, events=events, source=TAP)


def test_a_dose_moves_kh_by_its_grams_and_ph_with_it() -> None:
    """30 g of NaHCO3 (84.007 g/mol) in 60 L are 5.952 meq/L, 16.69 °dH (1 °dH is 0.3566 meq/L).

    At one pressure of CO2 pH goes with the logarithm of KH: log10(19.69 / 3) is 0.82, less a
    little that ions shield of each other.
    """
    now = by_now(held(soda(30.0)))
    assert now.readings["kh"].value == pytest.approx(19.69, abs=0.02)
    assert now.readings["kh"].low == pytest.approx(18.69, abs=0.02)
    assert now.readings["ph"].value == pytest.approx(7.6, abs=0.06)
    assert now.readings["gh"].value == pytest.approx(6.0)
    assert now.readings["kh"].at == held().readings["kh"].at


def test_a_change_after_the_dose_takes_its_share_out() -> None:
    """Half of 19.69 and half of the tap's 3 are 11.35."""
    now = by_now(held(soda(30.0, 0.1), done("water_change", 0.05, percent=50.0)))
    assert now.readings["kh"].value == pytest.approx(11.35, abs=0.03)


def test_nitrate_that_went_in_is_counted() -> None:
    """6 g of KNO3 in 60 L are 61.3 mg/L (62.004 / 101.10)."""
    now = by_now(held(done("dose", 0.1, substance="potassium nitrate", grams=6.0)))
    assert now.readings["nitrate"].value == pytest.approx(81.3, abs=0.1)


@pytest.mark.parametrize(
    "events",
    [
        (),
        (soda(30.0, 0.3),),
        (done("dose", 0.1, substance="fertilizer", millilitres=5.0),),
        (done("water_change", 0.1, percent=30.0),),
    ],
    ids=["nothing", "before the test", "of unknown strength", "a change alone"],
)
def test_else_the_readings_stand(events: tuple[Happening, ...]) -> None:
    before = held(*events)
    assert by_now(before) is before


def test_what_was_read_after_the_dose_stands_as_it_was_read() -> None:
    now = by_now(held(soda(30.0), more=(by_kit("ph", 8.0),)))
    assert now.readings["ph"].value == 8.0
    assert now.readings["kh"].value == pytest.approx(19.69, abs=0.02)


def test_a_days_start_is_never_less_than_was_read_before_the_dose() -> None:
    """KH was 3 before 16.7 went in: no start of the day is -13.7."""
    refused = moved_today(held(soda(30.0)), {"kh": 5.0})
    assert refused is not None
    assert refused.facts["was"] == 3.0
    unread = state(by_kit("kh", 18.0), of=SIXTY, events=(soda(30.0),))
    refused = moved_today(unread, {"kh": 10.0})
    assert refused is not None
    assert refused.facts["was"] == pytest.approx(1.31, abs=0.02)
    little = moved_today(state(by_kit("kh", 12.0), of=SIXTY, events=(soda(30.0),)), {"kh": 10.0})
    assert little is not None
    assert little.facts["was"] == 0.0


EMERGENCIES = [
    ("speak: 16.7 °dH at once, untested", held(soda(30.0)), True),
    ("speak: tested since, and it is still there",
     held(soda(30.0), more=(by_kit("kh", 18.0), by_kit("ph", 8.0))), True),
    ("speak: potassium of five times its limit, beside shrimps",
     state(*TESTED, of=tank("cherry shrimp", volume_l=60.0),
           events=(done("dose", 0.1, substance="potassium sulfate", grams=13.4),)), True),
    ("silent: nothing went in", held(), False),
    ("silent: two days' steps are a warning", held(soda(3.5)), False),
    ("silent: tested since, and two of 16.7 are left",
     held(soda(30.0), more=(by_kit("kh", 5.0), by_kit("ph", 7.0))), False),
    ("edge: a day later it is none",
     state(by_kit("kh", 3.0, 2), by_kit("ph", 6.8, 2), of=SIXTY, events=(soda(30.0, 1.1),)), False),
    ("edge: 5 g of potassium sulfate are 37 mg/L, twice the limit of shrimps",
     state(*TESTED, of=tank("cherry shrimp", volume_l=60.0),
           events=(done("dose", 0.1, substance="potassium sulfate", grams=5.0),)), False),
]  # fmt: skip


@pytest.mark.parametrize(("case", "tank_", "is_one"), EMERGENCIES, ids=[e[0] for e in EMERGENCIES])
def test_an_overdose_is_an_emergency_while_it_is_there(
    case: str, tank_: State, is_one: bool
) -> None:
    assert is_emergency(tank_) is is_one, case
