"""What was just told of one tank is told of another; a volume on record stays."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk


async def two(talk: Talk) -> None:
    await talk.say("/tank new Kitchen 200 l fresh")
    await talk.say("/tank new Bedroom 40 l fresh")


@pytest.mark.parametrize(
    ("first", "then", "told"),
    [
        ("changed kitchen 50 l", "bedroom too 10 l", {"litres": 10}),
        ("changed kitchen 50 l", "same for bedroom but 12 l", {"litres": 12}),
        ("gewechselt kitchen 50 l", "und bedroom 10 l", {"litres": 10}),
        ("changed kitchen 25%", "bedroom same", {"percent": 25}),
        ("changed kitchen 25%", "bedroom too 30%", {"percent": 30}),
        ("kitchen: dosed 3 g baking soda", "bedroom too 1 g", {"grams": 1}),
    ],
)
async def test_the_same_deed_is_kept_of_the_other_tank(
    talk: Talk, first: str, then: str, told: dict[str, float]
) -> None:
    await two(talk)
    await talk.say(first)
    reply = (await talk.say(then))[0]
    (event,) = reply.facts["events"]
    assert reply.facts["tank"] == "Bedroom"
    assert told.items() <= event.items()
    (shown,) = await talk.say("/tank Bedroom")
    assert shown.facts["volume_l"] == 40


async def test_a_second_half_without_its_deed_is_of_the_first_one(talk: Talk) -> None:
    await two(talk)
    replies = await talk.say("changed kitchen 50l, bedroom 10l")
    told = {reply.facts["tank"]: reply.facts["events"][0]["litres"] for reply in replies}
    assert told == {"Kitchen": 50, "Bedroom": 10}


@pytest.mark.parametrize("before", ["changed kitchen 50 l", "hello"])
async def test_litres_beside_a_name_alone_are_asked_about(talk: Talk, before: str) -> None:
    await two(talk)
    await talk.say(before)
    (asked,) = await talk.say("bedroom 10 l")
    assert len(asked.buttons) == 2
    assert "events" not in asked.facts
    (shown,) = await talk.say("/tank Bedroom")
    assert shown.facts["volume_l"] == 40


async def test_another_volume_tells_the_one_before(talk: Talk) -> None:
    await two(talk)
    (reply,) = await talk.say("bedroom is 45 l")
    assert reply.facts["before_l"] == 40
    assert "40 L" in reply.text
    assert reply.buttons
