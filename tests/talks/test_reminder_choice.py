"""What the tool asked of a reminder, answered in words; the same for another tank."""

from __future__ import annotations

from typing import Any

import pytest

from tests.chat.harness import Talk


@pytest.fixture
async def fern(talk: Talk) -> Talk:
    """Sunday 1 March 2026, noon."""
    await talk.say("/tank new Fern 90 l fresh")
    return talk


async def stand(talk: Talk) -> dict[str, tuple[str, str]]:
    """The rule and the next time of each task."""
    held: list[dict[str, Any]] = (await talk.facts("/remind"))["reminders"]
    return {each["what"]: (each["rule"], each["due"][:16]) for each in held}


MON_THU = "every monday, thursday at 09:00"


@pytest.mark.parametrize(
    ("answer", "rule"),
    [
        ("mon and thu", MON_THU),
        ("the first", MON_THU),
        ("every 3 days", "every 3 days"),
        ("the second one please", "every 3 days"),
        ("die zweite", "every 3 days"),
        ("la segunda", "every 3 days"),
        ("tues and fri", "every tuesday, friday at 09:00"),
        ("the third", None),
        ("ferts", None),
        ("thanks", None),
        ("the first or second", None),
    ],
)
async def test_which_rhythm_is_answered_in_words(fern: Talk, answer: str, rule: str | None) -> None:
    await fern.say("remind me twice a week to do ferts")
    await fern.say(answer)
    assert [told for told, _due in (await stand(fern)).values()] == ([] if rule is None else [rule])


@pytest.mark.parametrize(
    ("answer", "at"),
    [
        ("evening", "2026-03-01T21:00"),
        ("in the morning", "2026-03-02T09:00"),
        ("21:00", "2026-03-01T21:00"),
        ("morgens", None),
        ("at 9", None),
    ],
)
async def test_which_half_of_the_day_is_answered_in_words(
    fern: Talk, answer: str, at: str | None
) -> None:
    await fern.say("remind me to feed at 9")
    await fern.say(answer)
    assert [due for _rule, due in (await stand(fern)).values()] == ([] if at is None else [at])


async def test_a_reading_after_a_question_is_a_reading(fern: Talk) -> None:
    await fern.say("remind me twice a week to test")
    (value,) = (await fern.facts("kh 4"))["values"]
    assert value["analyte"] == "kh"
    assert await stand(fern) == {}


@pytest.mark.parametrize(
    ("answer", "at"),
    [
        ("make it 19:00", "2026-03-01T19:00"),
        ("make it sunday 19:00", "2026-03-01T19:00"),
        ("tomorrow i guess", "2026-03-02T09:00"),
        ("let's say tomorrow", "2026-03-02T09:00"),
        ("make it purple", None),
    ],
)
async def test_when_is_answered_among_light_words(fern: Talk, answer: str, at: str | None) -> None:
    await fern.say("remind me to clean the filter")
    await fern.say(answer)
    assert [due for _rule, due in (await stand(fern)).values()] == ([] if at is None else [at])


@pytest.mark.parametrize(
    ("asked", "answer", "rule", "due"),
    [
        ("feed every day at 18:00", "tomorrow", "every day at 18:00", "2026-03-02T18:00"),
        ("feed every 3 days", "no, tomorrow", "every 3 days", "2026-03-02T12:00"),
        ("feed every day at 18:00", "in 2 days", "every day at 18:00", "2026-03-01T18:00"),
        ("feed every sunday at 18:00", "mornings", "every sunday at 09:00", "2026-03-08T09:00"),
    ],
)
async def test_a_rhythm_is_not_lost_by_another_time(
    fern: Talk, asked: str, answer: str, rule: str, due: str
) -> None:
    await fern.say(f"remind me to {asked}")
    await fern.say(answer)
    assert await stand(fern) == {"feed": (rule, due)}


@pytest.mark.parametrize(
    "text",
    [
        "remind me to do wc",
        "remind me to check temp but not at night",
        "remind me every 4 hours to feed but not at night",
        "remind me to wc every week until may",
    ],
)
async def test_no_reminder_is_set_by_half_of_what_was_said(fern: Talk, text: str) -> None:
    await fern.say(text)
    assert await stand(fern) == {}


CHANGE = ("every sunday at 18:00", "2026-03-01T18:00")


@pytest.mark.parametrize(
    ("text", "also"),
    [
        ("same for quarry", True),
        ("and quarry too", True),
        ("same for the other tank", True),
        ("gleiches für quarry", True),
        ("lo mismo para quarry", True),
        ("same for fern", False),
        ("same for the pond", False),
        ("is it the same for quarry?", False),
    ],
)
async def test_the_same_is_set_for_another_tank(fern: Talk, text: str, also: bool) -> None:
    await fern.say("/tank new Quarry 200 l fresh")
    await fern.say("remind me to change water in fern every sunday at 18:00")
    await fern.say(text)
    more = {"Quarry: change water": CHANGE} if also else {}
    assert await stand(fern) == {"change water in fern": CHANGE, **more}


async def test_same_is_of_no_reminder_once_another_was_spoken_of(fern: Talk) -> None:
    await fern.say("/tank new Quarry 200 l fresh")
    await fern.say("remind me to change water in fern every sunday at 18:00")
    await fern.say("fern kh 4")
    await fern.say("same for quarry")
    assert await stand(fern) == {"change water in fern": CHANGE}


async def test_first_thing_is_a_time_and_not_the_first_choice(fern: Talk) -> None:
    await fern.say("remind me every sunday at 11:00 to test")
    await fern.say("half 7")
    await fern.say("first thing")
    (each,) = (await fern.facts("/remind"))["reminders"]
    assert each["rule"] == "every sunday at 09:00"
