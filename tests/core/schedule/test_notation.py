"""The stored form of rules."""

from datetime import UTC, datetime, time, timedelta, timezone
from zoneinfo import ZoneInfo

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from core.errors import CoreError
from core.schedule import (
    BadRule,
    Every,
    Monthly,
    NaiveTime,
    NthWeekday,
    Once,
    Weekly,
    Yearly,
    from_text,
    parse_request,
    to_text,
)
from tests.core.schedule import strategies as our

BERLIN = ZoneInfo("Europe/Berlin")
NOW = datetime(2026, 3, 4, 12, tzinfo=UTC)
offsets = st.integers(-14 * 60, 14 * 60).map(lambda m: timezone(timedelta(minutes=m)))
onces = st.datetimes(timezones=offsets | our.zones).map(Once)

FORMS = [
    ("once 2026-03-04T19:30+01:00", Once(datetime(2026, 3, 4, 19, 30, tzinfo=BERLIN))),
    ("every 1 hour", Every(1, "hours")),
    ("every 12 hours", Every(12, "hours")),
    ("every 1 day at 19:00", Every(1, "days", time(19))),
    ("every 7 days at 19:00", Every(7, "days", time(19))),
    ("every 10 days", Every(10, "days")),
    ("every 10 days at 00:00", Every(10, "days", time(0))),
    ("every 2 weeks at 08:05", Every(2, "weeks", time(8, 5))),
    ("every 1 month", Every(1, "months")),
    ("every sunday at 10:00", Weekly((6,), time(10))),
    ("every monday, thursday at 18:30", Weekly((3, 0, 3), time(18, 30))),
    ("every day at 09:00", Weekly((0, 1, 2, 3, 4, 5, 6), time(9))),
    ("every 2 weeks on sunday at 10:00", Weekly((6,), time(10), 2)),
    ("day 1 of every month at 09:00", Monthly((1,), time(9))),
    ("day 1, 15 of every month at 09:00", Monthly((15, 1), time(9))),
    ("day 31 of every 3 months at 09:00", Monthly((31,), time(9), 3)),
    ("first sunday of every month at 10:00", NthWeekday(1, 6, time(10))),
    ("last friday of every month at 10:00", NthWeekday(-1, 4, time(10))),
    ("every year on 4 may at 09:00", Yearly(5, 4, time(9))),
    ("every year on 29 february at 09:00", Yearly(2, 29, time(9))),
]


@pytest.mark.parametrize(("text", "rule"), FORMS, ids=[text for text, _ in FORMS])
def test_form(text, rule):
    assert to_text(rule) == text
    assert from_text(text) == rule


@given(our.repeating | onces)
def test_round_trip(rule):
    assert from_text(to_text(rule)) == rule


@pytest.mark.parametrize(
    "text",
    [
        "",
        "every",
        "every 0 days",
        "every 07 days",
        "every 7 days ",
        "Every 7 days",
        "every 7 day",
        "every 1 days",
        "every 7 days at 25:00",
        "every 7 days at 9:00",
        "every 12 hours at 09:00",
        "every 99999 days",
        "every thursday, monday at 09:00",
        "every monday, monday at 09:00",
        "every sunday",
        "every 1 weeks on sunday at 10:00",
        "day 0 of every month at 09:00",
        "day 32 of every month at 09:00",
        "day 15, 1 of every month at 09:00",
        "fifth sunday of every month at 10:00",
        "every year on 30 february at 09:00",
        "once 2026-03-04T19:30",
        "once tomorrow",
        "once 2026-03-04",
        "every ٧ days",
        "every 7 days\n",
    ],
)
def test_what_is_not_a_stored_form_is_refused(text):
    with pytest.raises(BadRule) as refused:
        from_text(text)
    assert isinstance(refused.value, CoreError)


@pytest.mark.parametrize(
    ("make", "what"),
    [
        (lambda: Every(0, "days"), "count"),
        (lambda: Every(3654, "days"), "count"),
        (lambda: Every(1, "hours", time(9)), "clock time of an interval in hours"),
        (lambda: Every(1, "years"), "unit"),
        (lambda: Every(1, "days", time(9, 0, 1)), "clock time"),
        (lambda: Weekly((), time(9)), "days"),
        (lambda: Weekly((7,), time(9)), "days"),
        (lambda: Weekly((0,), time(9, tzinfo=UTC)), "clock time"),
        (lambda: Weekly((0,), time(9), 0), "every"),
        (lambda: Monthly((0,), time(9)), "days"),
        (lambda: Monthly((1,), time(9), 121), "every"),
        (lambda: NthWeekday(5, 0, time(9)), "nth"),
        (lambda: NthWeekday(1, 7, time(9)), "days"),
        (lambda: Yearly(13, 1, time(9)), "month"),
        (lambda: Yearly(4, 31, time(9)), "day"),
    ],
)
def test_a_rule_without_meaning_cannot_be_made(make, what):
    with pytest.raises(BadRule) as refused:
        make()
    assert refused.value.what == what


def test_a_moment_without_a_zone_is_refused():
    with pytest.raises(NaiveTime):
        Once(datetime(2026, 3, 4, 19, 30))  # noqa: DTZ001


@given(our.repeating)
@settings(max_examples=60)
def test_the_stored_form_is_understood_as_a_request_too(rule):
    """So that a keeper can type back what an export shows."""
    asked = parse_request(f"test fern {to_text(rule)}", NOW, UTC)
    assert (asked.what, asked.rule) == ("test fern", rule)
