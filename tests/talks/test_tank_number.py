"""Tanks told by how they look, by a number or by a name on no record; the words are ours."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk

TWO = "i have two tanks, the big one 240l and the shrimp cube 30l"


async def test_a_word_of_a_tanks_name_finds_it(talk: Talk) -> None:
    await talk.say(TWO)
    await talk.say("big one kh 2 ph 6.8 ammonia 0")
    (reply,) = await talk.say("how much bicarb for the cube to kh 3")
    assert reply.text.startswith("shrimp cube: I need the KH first")
    assert "grams" not in reply.facts
    (kept, *_more) = await talk.say("shrimp cube kh 2 ph 7 ammonia 0")
    assert kept.facts["tank"] == "shrimp cube"
    (plan,) = await talk.say("how much bicarb for the cube to kh 4")
    assert (plan.facts["tank"], plan.facts["volume_l"]) == ("shrimp cube", 30.0)


async def test_its_animals_find_it_too(talk: Talk) -> None:
    await talk.say(TWO)
    (kept,) = await talk.say("the shrimp tank has kh 2")
    assert kept.facts["tank"] == "shrimp cube"


@pytest.mark.parametrize(
    "line",
    [
        "how much soda for cube",
        "how much baking soda for the cube to kh 5",
        "how much baking soda does the cube need for kh 5",
        "raise the cube to kh 5",
        "what would 3 g of soda do in the cube",
        "how much baking soda for the quartz to kh 5",
        "how much baking soda for jupiter to kh 5",
        "how much baking soda for the kitchen to kh 5",
        "i put 3 g soda in the cube",
    ],
)
@pytest.mark.parametrize("more", [False, True])
async def test_a_name_on_no_record_is_asked_about(talk: Talk, line: str, more: bool) -> None:
    if more:
        await talk.say("/tank new Fern 200 l")
    await talk.say("/tank new Betty 60 l")
    await talk.say("betty: kh 2 ph 7 ammonia 0")
    (reply,) = await talk.say(line)
    assert reply.facts["ask"] == "tank"
    assert "grams" not in reply.facts


@pytest.mark.parametrize(
    "what",
    ["", "for betty ", "for bety ", "for the week ", "for my fish ", "for the plants ",
     "for my tetras ", "for stability ", "for teh tank ", "for the whole tank "],
)  # fmt: skip
async def test_what_is_no_name_is_of_the_tank(talk: Talk, what: str) -> None:
    await talk.say("/tank new Betty 60 l")
    await talk.say("betty: kh 2 ph 7 ammonia 0")
    (plan,) = await talk.say(f"how much baking soda {what}to kh 5")
    assert (plan.facts["tank"], plan.facts["volume_l"]) == ("Betty", 60.0)


async def test_the_only_tank_without_a_name_may_be_the_cube(talk: Talk) -> None:
    await talk.say("30l cube")
    await talk.say("kh 2 ph 7 ammonia 0")
    (plan,) = await talk.say("how much baking soda for the cube to kh 5")
    assert plan.facts["volume_l"] == 30.0


async def test_a_tank_called_by_a_number_is_told_by_it(talk: Talk) -> None:
    await talk.say("tank one 54l, tank two 180l")
    await talk.say("tank one kh 5 ph 7.5")
    (kept, *_more) = await talk.say("i added 4 g bicarb to one")
    assert kept.facts["tank"] == "tank one"
    (moved, *_more) = await talk.say("to two i mean")
    assert "tank two: dosed 4 g sodium bicarbonate" in moved.text
    (asked,) = await talk.say("how much does two still need for kh 6")
    assert asked.text.startswith("tank two: I need the KH first")
    assert "grams" not in asked.facts


async def test_a_number_that_is_an_amount_stays_one(talk: Talk) -> None:
    await talk.say("tank one 54l, tank two 180l")
    await talk.say("tank one kh 3 ph 7.5 ammonia 0")
    (plan,) = await talk.say("how much baking soda for tank one to kh 5")
    assert plan.facts["tank"] == "tank one"
    (anew,) = await talk.say("to 6 i mean")
    assert (anew.facts["tank"], anew.facts["to"]) == ("tank one", 6)


@pytest.mark.parametrize("line", ["to right i mean", "sorry, to the right", "i meant to right"])
async def test_a_dose_goes_to_the_tank_that_was_meant(talk: Talk, line: str) -> None:
    await talk.say("tank left 54l, tank right 180l")
    await talk.say("i added 4 g bicarb to left")
    (moved, *_more) = await talk.say(line)
    assert "right: dosed 4 g sodium bicarbonate" in moved.text


@pytest.mark.parametrize("line", ["and the guppies to 6", "guppies to 6", "die guppys auf 6"])
async def test_a_wish_for_animals_adds_none(talk: Talk, line: str) -> None:
    await talk.say("how much for the mollies to get to 8")
    await talk.say(line)
    assert "6" not in (await talk.say("who lives in my tank"))[0].text


@pytest.mark.parametrize("line", ["its 45 gallons btw not litres", "45 gallons i mean, not litres"])
async def test_a_unit_that_was_not_meant_plans_anew(talk: Talk, line: str) -> None:
    await talk.say("45l tank")
    await talk.say("kh 2 ph 7 ammonia 0")
    await talk.say("how much baking soda to kh 5")
    (_kept, plan) = await talk.say(line)
    assert round(plan.facts["volume_l"]) == 170


async def test_a_tank_told_before_what_is_asked_is_kept(talk: Talk) -> None:
    told = await talk.say("I have a 180 litre tank, kh is 3. how much baking soda for kh 6?")
    plan = told[-1]
    assert (plan.facts["volume_l"], plan.facts["from"], plan.facts["to"]) == (180.0, 3, 6)


async def test_its_litres_are_kept_where_buffer_is_asked_of(talk: Talk) -> None:
    await talk.say("tank is 100 litres, do i need buffer")
    assert (await talk.facts("/tank tank"))["volume_l"] == 100.0


@pytest.mark.parametrize(
    "line",
    ["my neighbour has a 100 l tank, how much soda for kh 6?", "i want a 100 l tank, is that ok?"],
)
async def test_a_tank_of_nobody_here_is_not_kept(talk: Talk, line: str) -> None:
    await talk.say(line)
    assert "100" not in (await talk.say("/tanks"))[0].text
