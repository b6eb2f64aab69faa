"""A reminder just set, told another time in few words: how long, a part of the day, a day less."""

from __future__ import annotations

from typing import Any

import pytest

from tests.chat.harness import Talk


@pytest.mark.parametrize(
    ("lines", "rule", "due"),
    [
        (["remind me in 3 hours to turn the filter on", "actually 2 hours"], None, "01T14:00"),
        (["remind me in 3 hours to turn the filter on", "make it 2"], None, "01T14:00"),
        (["remind me in 3 hours to turn the filter on", "at 20:30"], None, "01T20:30"),
        (["remind me to test kh every week", "make it 2 weeks"], "every 2 weeks", "15T12:00"),
        (
            ["remind me to feed mon wed fri", "cancel the wednesday one"],
            "monday, friday",
            "",
        ),
        (
            ["remind me to feed mon wed fri", "not on friday anymore"],
            "monday, wednesday",
            "",
        ),
        (
            ["remind me every day at 6pm to feed", "no only mon wed fri"],
            "monday, wednesday, fri",
            "02T18:00",
        ),
        (
            ["remind me every day at 6pm to feed", "actually only on weekends"],
            "saturday, sunday",
            "01T18:00",
        ),
        (["remind me every day at 6pm to feed", "only monday"], "monday", "02T18:00"),
        (["remind me tomorrow at 8am to feed", "actually 7"], None, "02T07:00"),
        (["remind me tomorrow at 6pm to feed", "no, 7pm"], None, "02T19:00"),
        (["remind me tomorrow at 6 to feed", "actually 7"], None, "02T07:00"),
        (["remind me tomorrow at 6 to feed", "make it 8pm"], None, "02T20:00"),
        (["remind me every day at 6pm to feed", "only 10"], "every day", "01T18:00"),
        (["remind me to feed mon wed fri", "can we do tue thu sat instead"], "tuesday, thu", ""),
    ],
)
async def test_it_is_moved(talk: Talk, lines: list[str], rule: str | None, due: str) -> None:
    """Sunday 1 March 2026, noon."""
    await talk.say("/tank new Fern 90 l fresh")
    for line in lines:
        await talk.say(line)
    (held,) = (await talk.facts("/remind"))["reminders"]
    assert (rule or "") in held["rule"].lower()
    assert due in held["due"]


async def test_the_one_of_a_part_of_the_day_is_moved(talk: Talk) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("remind me to feed every day at 8am")
    await talk.say("remind me to test kh every day at 8pm")
    await talk.say("change the morning one to 7.30")
    held: list[dict[str, Any]] = (await talk.facts("/remind"))["reminders"]
    due = {each["what"]: each["due"][11:16] for each in held}
    assert due == {"feed": "07:30", "test kh": "20:00"}


async def test_the_only_one_listed_is_deleted_and_told_when_it_is(talk: Talk) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("ok thank you. please remind me to feed every day at 8am")
    (told,) = await talk.say("what time is that")
    assert "08:00" in told.text
    await talk.say("/remind")
    await talk.say("delete it")
    assert not (await talk.facts("/remind")).get("reminders")


@pytest.mark.parametrize("text", ["1 hour", "didnt do it yet, tomorrow"])
async def test_what_is_due_is_put_off_in_few_words(talk: Talk, text: str) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("remind me today at 13:00 to change water")
    await talk.wait(hours=1)
    (told,) = await talk.say(text)
    assert told.facts["reminder"]["answer"] == "later"
