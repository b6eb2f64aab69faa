"""Rules in words: read as a whole, and understood when they are typed back."""

import doctest
from datetime import UTC, datetime, time
from zoneinfo import ZoneInfo

import pytest
from hypothesis import given, settings

from bot.chat.words import rules
from bot.chat.words.rules import describe
from core.schedule import Every, Weekly, from_text, parse_request
from tests.core.schedule import strategies as our

BERLIN = ZoneInfo("Europe/Berlin")
NOW = datetime(2026, 3, 4, 12, tzinfo=UTC)


def test_the_example_holds():
    assert doctest.testmod(rules).failed == 0


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("once 2026-03-04T19:30+01:00", "on Wednesday 4 March 2026 at 19:30"),
        ("every 1 hour", "every hour"),
        ("every 7 days at 19:00", "every 7 days at 19:00"),
        ("every 12 months", "every year"),
        ("every 24 months", "every 2 years"),
        ("every sunday at 10:00", "every Sunday at 10:00"),
        ("every day at 09:00", "every day at 09:00"),
        ("every monday, thursday at 18:30", "every Monday and Thursday at 18:30"),
        ("every 2 weeks on sunday at 10:00", "every 2 weeks on Sunday at 10:00"),
        ("day 1 of every month at 09:00", "on the 1st of every month at 09:00"),
        ("day 2, 23 of every 3 months at 09:00", "on the 2nd and 23rd of every 3 months at 09:00"),
        (
            "day 29 of every month at 09:00",
            "on the 29th of every month at 09:00 (in shorter months on the last day)",
        ),
        ("last friday of every month at 10:00", "on the last Friday of every month at 10:00"),
        ("every year on 4 may at 09:00", "every year on 4 May at 09:00"),
        (
            "every year on 29 february at 09:00",
            "every year on 29 February at 09:00 (in common years on the 28th)",
        ),
    ],
)
def test_words_for_people(text, words):
    assert describe(from_text(text)) == words


def test_weekdays_have_a_word():
    rule = Weekly((0, 1, 2, 3, 4), time(18, 30))
    assert describe(rule) == "every weekday (Monday to Friday) at 18:30"


def test_a_moment_is_told_in_the_zone():
    rule = from_text("once 2026-03-04T23:30+00:00")
    assert describe(rule, BERLIN) == "on Thursday 5 March 2026 at 00:30"


@given(our.repeating)
@settings(max_examples=60)
def test_the_wording_is_understood_as_a_request_too(rule):
    """What the tool says, less its remark in brackets, can be said to it."""
    asked = parse_request(f"test fern {describe(rule).split(' (in')[0]}", NOW, UTC)
    expected = Every(rule.count, rule.unit) if rule == Every(1, "days") else rule
    assert asked.what == "test fern"
    assert asked.rule in (expected, _daily(rule))


def _daily(rule):
    """Every 1 day at nine is worded 'every day at nine', which keeps to the clock."""
    is_daily = isinstance(rule, Every) and (rule.count, rule.unit) == (1, "days") and rule.at
    return Weekly((0, 1, 2, 3, 4, 5, 6), rule.at) if is_daily else rule
