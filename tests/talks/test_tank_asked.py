"""How a whole tank stands, asked by its name or as the thing it is."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk


@pytest.mark.parametrize(
    "line",
    [
        "how is my water", "is the pond ok", "hows the pond", "is my aquarium ok", "pond ok?",
        "is moss ok", "moss ok?", "how is moss today", "is everything ok in moss",
        "wie geht's dem teich", "wie sieht das wasser aus?", "comment va mon étang",
        "cómo está mi acuario", "como está a água", "come sta la vasca",
        "hoe gaat het met de vijver",
        "jak tam moje oczko", "hur mår dammen",
    ],
)  # fmt: skip
async def test_a_tank_is_asked_about_in_few_words(talk: Talk, line: str) -> None:
    await talk.say("/tank new Moss 400 l pond")
    await talk.say("ph 7 kh 4 ammonia 2 nitrite 0 temp 20")
    (reply,) = await talk.say(line)
    assert reply.facts["tank"] == "Moss", line
    assert "ammonia" in {each["id"] for each in reply.facts["findings"]}, line


async def test_the_tank_that_is_named_is_told(talk: Talk) -> None:
    await talk.say("/tank new Moss 90 l fresh")
    await talk.say("/tank new Stone 90 l fresh")
    await talk.say("moss: ammonia 2 ph 7.5 temp 25")
    await talk.say("stone: ammonia 0 ph 7.5 nitrite 0 temp 25")
    assert (await talk.facts("is moss ok"))["tank"] == "Moss"
    assert (await talk.facts("stone ok?"))["tank"] == "Stone"


@pytest.mark.parametrize(
    "line", ["tank is ok", "water is fine", "the pond is big", "moss is doing ok"]
)
async def test_what_is_only_told_is_no_question(talk: Talk, line: str) -> None:
    await talk.say("/tank new Moss 90 l fresh")
    await talk.say("ph 7 kh 4 ammonia 0 nitrite 0")
    assert "Measured:" not in await talk.text(line)


async def test_a_deed_is_judged_where_nothing_is_measured(talk: Talk) -> None:
    await talk.say("/tank new Moss 90 l fresh")
    await talk.say("dosed 20 g baking soda")
    (reply,) = await talk.say("is moss ok")
    assert reply.text.startswith("Moss: Too much for one day")
    assert "nothing is measured yet" in reply.text
