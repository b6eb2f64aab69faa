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
    await talk.say("nothing went in")
    await talk.say("dose kh 4")
    (told, *_) = await talk.say(text)
    assert "sodium bicarbonate" in told.text
    assert "5 g" in told.text


@pytest.mark.parametrize(
    ("text", "spoons"),
    [("added half a cup of salt", 24.0), ("added a quarter cup of salt", 12.0)],
)
async def test_a_part_of_a_cup_is_a_measure(talk: Talk, text: str, spoons: float) -> None:
    await talk.say("/tank new Shed 90 l fresh")
    (reply, *_) = await talk.say(text)
    (event,) = reply.facts["events"]
    assert event["spoons"] == spoons
    assert "percent" not in event
    assert f"{spoons:g} teaspoons" in reply.text


async def test_half_of_a_thing_is_asked_about(talk: Talk) -> None:
    await talk.say("/tank new Shed 90 l fresh")
    (reply, *_) = await talk.say("added half the salt")
    assert "events" not in reply.facts
    await talk.say("nothing went in")
    await talk.say("kh 2 ammonia 0 ph 7")
    await talk.say("dose kh 4")
    assert "Half of what?" in await talk.text("added half the baking soda")


@pytest.mark.parametrize(
    "text",
    [
        "need to put 3 g in",
        "have to put in 3 g",
        "must put in 3 g",
        "muss 3 g reintun",
        "il faut mettre 3 g",
        "tengo que echar 3 g",
        "preciso colocar 3 g",
        "devo mettere 3 g",
        "moet 3 g toevoegen",
        "muszę dodać 3 g",
        "måste tillsätta 3 g",
    ],
)
async def test_what_is_to_be_put_in_is_not_put_in(talk: Talk, text: str) -> None:
    await talk.say("/tank new Shed 90 l fresh")
    await talk.say("kh 2 ammonia 0 ph 7")
    await talk.say("dose kh 4")
    await talk.say(text)
    assert "no dose on record" in await talk.text("what did i dose")


@pytest.mark.parametrize(
    "text",
    [
        "need to change 20 l",
        "have to change 30 l",
        "time to change 20 l",
        "should change 20 l",
        "supposed to change 20 l",
        "muss 20 l wechseln",
        "il faut changer 20 l",
        "hay que cambiar 20 l",
        "preciso trocar 20 l",
        "devo cambiare 20 l",
        "moet 20 l verversen",
        "muszę podmienić 20 l",
        "måste byta 20 l",
    ],
)
async def test_what_is_to_be_changed_is_not_changed(talk: Talk, text: str) -> None:
    await talk.say("/tank new Shed 90 l fresh")
    replies = await talk.say(text)
    assert all("events" not in reply.facts for reply in replies)


async def test_what_had_to_be_changed_was(talk: Talk) -> None:
    await talk.say("/tank new Shed 90 l fresh")
    (reply, *_) = await talk.say("had to change 20 l")
    assert reply.facts["events"][0]["litres"] == 20.0


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("dosed kh buffer twice by accident", "No second dose yet"),
        ("dosed 5 ml buffer", "No second dose yet"),
        ("i gave the kh buffer twice", "is not on record"),
        ("used the alkalinity booster", "is not on record"),
    ],
)
async def test_a_product_that_is_named_for_kh_keeps_a_second_dose_back(
    talk: Talk, text: str, said: str
) -> None:
    await talk.say("/tank new Shed 90 l fresh")
    await talk.say("kh 2 ammonia 0 ph 7")
    await talk.say(text)
    (plan, *_) = await talk.say("dose kh 4")
    assert "parts" not in plan.facts
    assert said in plan.text
