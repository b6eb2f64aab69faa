"""What went into a bucket or a new water is no dose of a tank, in nine languages."""

from __future__ import annotations

import pytest

from core.message.vessel import named
from tests.chat.harness import Talk

APART = [
    "i put 2 g gypsum in the bucket",
    "added 3 g baking soda to the new water",
    "dosed 3 g baking soda into the mixing bin",
    "put 5 g salt in my big bucket",
    "dosiert 2 g Gips in den Eimer",
    "j'ai mis 2 g de sel dans le seau",
    "eché 2 g de sal en el cubo",
    "coloquei 2 g de sal no balde",
    "ho messo 2 g di sale nel secchio",
    "2 g zout toegevoegd in de emmer",
    "dodałem 2 g soli do wiadra",
    "hällde 2 g salt i hinken",
]


@pytest.mark.parametrize("text", APART)
async def test_no_tank_is_dosed(talk: Talk, text: str) -> None:
    await talk.say("/tank new Fern 75 l fresh")
    await talk.say("kh 2 gh 4 ph 7 ammonia 0 temp 25")
    (reply,) = await talk.say(text)
    assert reply.lines[0].text == "That went into water apart: nothing is stored for Fern."
    assert not reply.facts.get("events")
    assert "2.2 g" in await talk.text("dose kh 4"), "the tank's plan is not blocked"


async def test_without_a_tank_none_is_made(talk: Talk) -> None:
    assert "no tank was dosed" in await talk.text("i put 2 g gypsum in the bucket")


async def test_a_part_of_a_plan_in_the_bucket_is_none_of_the_tank(talk: Talk) -> None:
    await talk.say("/tank new Fern 75 l fresh")
    await talk.say("kh 2 gh 4 ph 7 ammonia 0 temp 25")
    await talk.say("dose kh 4")
    assert "nothing is stored for Fern" in await talk.text("put 2.2 g in the bucket")


@pytest.mark.parametrize(
    "text",
    [
        "put 2 g baking soda in",
        "put 2 g baking soda in fern",
        "put 2 g baking soda from the bucket in the tank",
        "put 2 g baking soda from the bucket into fern",
    ],
)
async def test_what_went_into_the_tank_is_stored(talk: Talk, text: str) -> None:
    await talk.say("/tank new Fern 75 l fresh")
    (reply,) = await talk.say(text)
    assert reply.facts["events"]


async def test_a_tank_may_be_called_bucket(talk: Talk) -> None:
    await talk.say("/tank new Bucket 20 l fresh")
    (reply,) = await talk.say("put 1 g baking soda in the bucket")
    assert reply.facts["events"]


async def test_what_is_told_beside_is_kept(talk: Talk) -> None:
    await talk.say("/tank new Fern 75 l fresh")
    replies = await talk.say("kh 4, put 2 g gypsum in the bucket")
    assert replies[0].facts["values"][0]["analyte"] == "kh"
    assert not replies[0].facts.get("events")


@pytest.mark.parametrize(
    "text",
    [
        "spilled 5 g baking soda on the floor",
        "dropped 5 g baking soda in the sink",
        "poured 30 ml vinegar down the drain",
        "put 5 g epsom in my bath",
        "put 20 g baking soda in my cake",
        "gave 3 g salt to the soup",
        "added 5 g salt to the cucumber",
        "dosiert 5 g Salz in den Kuchen",
        "j'ai mis 5 g de sel dans la soupe",
        "eché 5 g de sal en la sopa",
        "coloquei 5 g de sal na sopa",
        "ho messo 5 g di sale nella zuppa",
        "5 g zout toegevoegd in de soep",
        "dodałem 5 g soli do zupy",
        "hällde 5 g salt i soppan",
    ],
)
async def test_what_went_to_another_place_is_no_dose(talk: Talk, text: str) -> None:
    await talk.say("/tank new Fern 75 l fresh")
    await talk.say("kh 2 gh 4 ph 7 ammonia 0 temp 25")
    (reply,) = await talk.say(text)
    assert reply.lines[0].text == "That went elsewhere: nothing is stored for Fern."
    assert not reply.facts.get("events")
    assert "2.2 g" in await talk.text("dose kh 4"), "the tank's plan is not blocked"


async def test_what_was_spilled_into_the_tank_is_stored(talk: Talk) -> None:
    await talk.say("/tank new Fern 75 l fresh")
    (reply, *_) = await talk.say("spilled 5 g baking soda in the tank")
    assert reply.facts["events"][0]["grams"] == 5.0


async def test_each_of_two_doses_goes_where_it_is_told(talk: Talk) -> None:
    await talk.say("/tank new Fern 75 l fresh")
    kept, away = await talk.say("put 5 g salt in the sink and 3 g baking soda in the tank")
    assert [each["grams"] for each in kept.facts["events"]] == [3.0]
    assert away.facts["not_stored"] == [{"kind": "dose", "substance": "sodium chloride"}]


@pytest.mark.parametrize(
    ("text", "button"),
    [
        ("put 20 g baking soda in my teapot", "dosed 20 g sodium bicarbonate"),
        ("changed 10 l in the bucket", "changed 10 l"),
        ("replaced 20 l jerrycan", "changed 20 l"),
    ],
)
async def test_where_it_may_have_gone_is_asked(talk: Talk, text: str, button: str) -> None:
    await talk.say("/tank new Fern 75 l fresh")
    (asked, *_) = await talk.say(text)
    assert "events" not in asked.facts
    assert button in [each.label for each in asked.buttons]


@pytest.mark.parametrize(
    "text",
    [
        "put 3 g baking soda in the filter",
        "put 3 g baking soda in the corner",
        "put 3 g baking soda in my wife told me",
        "put 3 g baking soda in the morning",
        "changed 20 l with ro water",
        "j'ai mis une cuillère à soupe de sel",
        "dodałem łyżeczkę do herbaty soli",
    ],
)
async def test_places_of_the_tank_and_none_are_not_asked_about(talk: Talk, text: str) -> None:
    await talk.say("/tank new Fern 75 l fresh")
    (reply, *_) = await talk.say(text)
    assert reply.facts["events"]


def test_what_is_a_vessel() -> None:
    assert named("put it in the can") == "can"
    assert named("i can put it in") is None
    assert named("changed 20% from the bucket") is None
