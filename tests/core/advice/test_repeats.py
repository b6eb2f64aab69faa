"""What is said again, what is not, and how often the rules speak over invented years."""

from __future__ import annotations

from datetime import timedelta

import pytest

from core.advice.findings import Finding, Told, fresh_only, is_worse
from tests.bench.invented_years import count, count_demo
from tests.core.advice.waters import NOON, by_kit, findings, state, tank

NITRATE = Finding("nitrate", "warn", {"nitrate": 50.0, "limit": 44.0})
WORSE = Finding("nitrate", "warn", {"nitrate": 80.0, "limit": 44.0})
POISON = Finding("ammonia", "alarm", {"nh3_n": 0.06})
SOFT = Finding("does_not_suit", "note", {"analyte": "gh", "species": "guppy", "value": 5.0})
FELL = Finding("ph_moved", "warn", {"ph": 6.6, "was": 7.6, "change": -1.0})
FELL_ON = Finding("ph_moved", "warn", {"ph": 5.5, "was": 6.6, "change": -1.1})
ROSE = Finding("ph_moved", "warn", {"ph": 7.6, "was": 6.6, "change": 1.0})
ACID = Finding("does_not_suit", "note", {"analyte": "ph", "species": "guppy", "value": 6.5})


def told(finding: Finding, days_ago: float, *, seen: bool = True) -> Told:
    return Told(finding, NOON - timedelta(days=days_ago), seen)


@pytest.mark.parametrize(
    ("now", "before", "said", "reason"),
    [
        (NITRATE, [], True, "never told"),
        (NITRATE, [told(NITRATE, 1)], False, "told yesterday"),
        (NITRATE, [told(NITRATE, 1, seen=False)], True, "not seen"),
        (NITRATE, [told(NITRATE, 15)], True, "a fortnight has passed"),
        (NITRATE, [told(NITRATE, 30), told(NITRATE, 15)], False, "told twice: four weeks"),
        (NITRATE, [told(NITRATE, 43), told(NITRATE, 28)], True, "four weeks have passed"),
        (NITRATE, [told(NITRATE, 90), told(NITRATE, 75), told(NITRATE, 45)], False,
         "told thrice: eight weeks"),
        (NITRATE, [told(NITRATE, 160), told(NITRATE, 145), told(NITRATE, 115), told(NITRATE, 57)],
         True, "eight weeks at the most"),
        (NITRATE, [told(NITRATE, 100), told(NITRATE, 15)], True, "it had gone in between"),
        (WORSE, [told(NITRATE, 30), told(WORSE, 15)], True, "worse then: the wait began anew"),
        (WORSE, [told(WORSE, 20), told(NITRATE, 5)], False, "it wavers, and was as bad before"),
        (WORSE, [told(NITRATE, 1)], True, "much higher"),
        (Finding("nitrate", "warn", {"nitrate": 55.0}), [told(NITRATE, 1)], False, "hardly higher"),
        (NITRATE, [told(WORSE, 1)], True, "fell, and is still too much"),
        (WORSE, [told(WORSE, 1), told(NITRATE, 3)], False, "the last telling counts"),
        (FELL_ON, [told(FELL, 3)], True, "pH fell on from where it was told"),
        (FELL, [told(FELL, 1)], False, "the same fall"),
        (ROSE, [told(FELL, 1)], False, "back up again: a swing"),
        (POISON, [told(POISON, 0.1)], True, "an alarm is always said"),
        (SOFT, [told(ACID, 1)], True, "another analyte is another finding"),
        (SOFT, [told(SOFT, 20)], False, "a note waits a month"),
        (Finding("low_kh", "alarm", {"kh": 0.5}), [told(Finding("low_kh", "warn", {"kh": 2.0}), 1)],
         True, "graver"),
    ],
)  # fmt: skip
def test_what_is_said_again(now: Finding, before: list[Told], said: bool, reason: str) -> None:
    assert bool(fresh_only([now], before, NOON)) is said, reason


def test_poison_that_was_read_again_is_said_again_below_an_alarm_too() -> None:
    warned = Finding("ammonia", "warn", {"nh3_n": 0.03})
    before = [told(warned, 0.1)]
    assert fresh_only([warned], before, NOON, {"ammonia"}) == [warned]
    assert fresh_only([warned], before, NOON, {"kh"}) == []


def test_order_is_kept() -> None:
    assert fresh_only([POISON, NITRATE, SOFT], [told(NITRATE, 1)], NOON) == [POISON, SOFT]


def test_less_is_worse_where_it_is() -> None:
    low, lower = (Finding("low_kh", "warn", {"kh": kh}) for kh in (3.0, 2.0))
    assert is_worse(lower, low)
    assert not is_worse(low, lower)


def test_water_too_soft_is_said_once_not_for_gh_kh_and_ph() -> None:
    held = state(by_kit("gh", 3), by_kit("kh", 3), by_kit("ph", 6.4), of=tank("guppy", "molly"))
    off = [f for f in findings(held).values() if f.id == "does_not_suit"]
    assert [f.facts["analyte"] for f in off] == ["gh"]


def test_rules_do_not_chatter_over_invented_years() -> None:
    """The bench runs a hundred years; here each kind of keeper has one, from a seed."""
    _, said, lengths = count(10, 3)
    tests = sum(lengths.values())
    assert tests > 300
    assert sum(n * times for n, times in lengths.items()) / tests < 1.0
    assert all(times < tests / 5 for id_, times in said.items()), said


def test_the_demonstration_is_mostly_left_in_peace() -> None:
    """Thirteen weeks: the reef uses up KH between changes, the others are steady."""
    said = count_demo()
    assert {("Fern", "steady"), ("Quarry", "steady"), ("Lagoon", "heading")} <= set(said)
    assert sum(said.values()) <= 12
