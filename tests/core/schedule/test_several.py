"""Several jobs in one breath: none of the days that are said is lost, and one job stays one."""

from __future__ import annotations

from datetime import UTC, datetime

import pytest

from core.schedule import Problem, bare_second, parse_several

NOW = datetime(2026, 3, 2, 18, tzinfo=UTC)
"""A Monday."""


def jobs(text: str) -> list[tuple[str, str]]:
    found = parse_several(text, NOW, UTC)
    assert not isinstance(found, Problem)
    return [(job.what, f"{job.first:%a %H:%M}") for _said, job in found]


@pytest.mark.parametrize(
    "text",
    [
        "saturday {} and sunday {}",
        "{} saturday and {} sunday",
        "{} on saturday, {} on sunday",
        "saturday {}; sunday {}",
        "samstag {} und sonntag {}",
        "samedi {} et dimanche {}",
        "sábado {} y domingo {}",
        "sábado {} e domingo {}",
        "sabato {} e domenica {}",
        "zaterdag {} en zondag {}",
        "sobota {} i niedziela {}",
        "lördag {} och söndag {}",
    ],
)
def test_two_jobs_keep_their_days(text: str) -> None:
    assert jobs(text.format("flora", "flush")) == [("flora", "Sat 09:00"), ("flush", "Sun 09:00")]


@pytest.mark.parametrize(
    ("text", "told"),
    [
        (
            "saturday ferts and plants and sunday water",
            [("ferts and plants", "Sat 09:00"), ("water", "Sun 09:00")],
        ),
        (
            "test mon and thu and change water fri",
            [("test", "Thu 09:00"), ("change water", "Fri 09:00")],
        ),
        (
            "mon test, wed feed and fri change",
            [("test", "Mon 09:00"), ("feed", "Wed 09:00"), ("change", "Fri 09:00")],
        ),
        ("feed tomorrow at 8 and again at 8pm", [("feed", "Tue 08:00"), ("feed", "Tue 20:00")]),
        (
            "um 8 füttern und um 20 licht an",
            [("füttern", "Tue 08:00"), ("licht an", "Mon 20:00")],
        ),
        (
            "friday test kh and 6 days later change water",
            [("test kh", "Fri 09:00"), ("change water", "Thu 09:00")],
        ),
    ],
)
def test_what_a_job_leaves_out_is_of_the_first(text: str, told: list[tuple[str, str]]) -> None:
    assert jobs(text) == told


def test_a_rhythm_in_front_is_of_all_days() -> None:
    rules = parse_several("every sunday water change and wednesday ferts", NOW, UTC)
    assert not isinstance(rules, Problem)
    assert [said for said, _job in rules] == [
        "every sunday water change",
        "ferts every wednesday at 09:00",
    ]


@pytest.mark.parametrize(
    "text",
    [
        "feed on saturday and sunday",
        "test kh and gh on friday",
        "every day at 8 and 20 feed",
        "on saturday, 7 march, to test kh",
        "feed saturday morning and evening",
        "clean filter friday, and check the heater",
        "saturday feed the fish and the cat",
        "dose 2,5 ml friday",
        "tomorrow again and again",
    ],
)
def test_one_job_is_one(text: str) -> None:
    assert parse_several(text, NOW, UTC) == []


def test_one_that_cannot_be_set_is_told() -> None:
    found = parse_several("test saturday and change water 31 february", NOW, UTC)
    assert isinstance(found, Problem)
    assert (found.reason, found.text) == ("impossible", "31 february")


def test_a_number_that_may_be_an_hour() -> None:
    assert bare_second("tomorrow at 8 feed and 20 lights") is not None
    for text in ("tomorrow at 8 feed and 2 g soda", "tomorrow feed and 20 lights", "feed and 20 x"):
        assert bare_second(text) is None
