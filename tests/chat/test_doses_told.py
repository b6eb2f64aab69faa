"""Doses told in other orders: each is on record once, with its own amount and its own thing."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("dosed 5 g epsom then another 3 g salt", [(5.0, "magnesium sulfate"), (3.0, "sodium")]),
        ("dosed epsom, 5 g then salt, 3 g", [(5.0, "magnesium sulfate"), (3.0, "sodium")]),
        ("added baking soda, 3 g", [(3.0, "sodium bicarbonate")]),
        ("natron reingetan, 3 g", [(3.0, "sodium bicarbonate")]),
    ],
)
async def test_each_thing_keeps_its_amount(
    talk: Talk, text: str, told: list[tuple[float, str]]
) -> None:
    await talk.say("/tank new Shed 100 l fresh")
    (reply, *_) = await talk.say(text)
    events = reply.facts["events"]
    assert [each["grams"] for each in events] == [grams for grams, _ in told]
    assert all(
        each["substance"].startswith(name) for each, (_, name) in zip(events, told, strict=True)
    )


async def test_spoons_behind_a_comma_are_judged(talk: Talk) -> None:
    await talk.say("/tank new Shed 100 l fresh")
    (reply,) = await talk.say("put baking soda in, 3 tablespoons")
    assert reply.facts["events"][0]["spoons"] == 9.0
    assert "Too much for one day" in reply.text


@pytest.mark.parametrize(
    "text",
    [
        "put 3 g baking soda in my wife told me",
        "put 3 g baking soda so far",
        "wife also put in 3 g baking soda i just heard",
        "put 3 g baking soda like you said",
    ],
)
async def test_words_behind_a_substance_take_it_out_of_no_sum(talk: Talk, text: str) -> None:
    await talk.say("/tank new Shed 90 l fresh")
    await talk.say("kh 2 ammonia 0 ph 7")
    (told, *_) = await talk.say(text)
    assert told.facts["events"][0]["substance"] == "sodium bicarbonate"
    (plan, *_) = await talk.say("dose kh 4")
    assert "parts" not in plan.facts
    assert "No second dose yet" in plan.text


@pytest.mark.parametrize(
    "text", ["put in 5 g so far", "put in 5 g total", "put 5 g of it in so far", "5 g put in late"]
)
async def test_an_amount_alone_is_of_the_plan_or_asked_about(talk: Talk, text: str) -> None:
    await talk.say("/tank new Shed 90 l fresh")
    await talk.say("kh 2 ammonia 0 ph 7")
    (asked, *_) = await talk.say(text)
    assert "events" not in asked.facts
    assert "What was it" in asked.text
    await talk.say("dose kh 4")
    (told, *_) = await talk.say(text)
    assert "sodium bicarbonate" in told.text
    assert "5 g" in told.text
