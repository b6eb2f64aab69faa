"""A tank told without its name that is none on record; the words are ours, no source."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk


async def with_moss(talk: Talk) -> None:
    await talk.say("/tank new moss 30 l fresh")
    await talk.say("moss kh 3 ph 7 nh3 0")


@pytest.mark.parametrize(
    "line",
    [
        "how much baking soda for the big tank to kh 5",
        "how much baking soda for my other tank, 200 l, to kh 5",
        "how much soda for my friend's tank to kh 5",
        "how much soda for the new one to kh 5",
        "wie viel natron fürs große auf kh 5",
        "wie viel natron fürs becken meines freundes auf kh 5",
        "combien de bicarbonate pour le grand bac pour kh 5",
        "cuánto bicarbonato para el otro acuario para kh 5",
        "ile sody dla dużego akwarium na kh 5",
        "hur mycket bikarbonat till stora akvariet till kh 5",
        "changed 30% in my other tank",
        "rack 3 how much soda for kh 5",
        "how much soda for rack 3 to kh 5",
        "put 20 g bicarb in rack 3",
        "how much soda for the left tank to kh 5",
    ],
)
async def test_which_tank_it_is_is_asked(talk: Talk, line: str) -> None:
    await with_moss(talk)
    (reply,) = await talk.say(line)
    assert reply.facts["ask"] == "tank"
    assert "grams" not in reply.facts
    assert [button.label for button in reply.buttons] == ["moss", "another tank"]


async def test_a_button_takes_it_as_of_that_tank(talk: Talk) -> None:
    await with_moss(talk)
    (asked,) = await talk.say("how much baking soda for the big tank to kh 5")
    (plan,) = await talk.press(1, asked)
    assert (plan.facts["tank"], plan.facts["volume_l"]) == ("moss", 30.0)


@pytest.mark.parametrize("line", ["the big tank holds 200 l", "my other tank is 200 l"])
async def test_its_volume_is_not_of_the_tank_in_use(talk: Talk, line: str) -> None:
    await with_moss(talk)
    await talk.say(line)
    assert (await talk.facts("/tank moss"))["volume_l"] == 30.0


async def test_nor_is_one_told_right_after_it_was_asked(talk: Talk) -> None:
    await talk.say("kleines: no3 10 kh 3 ph 7 nh3 0")
    await talk.say("wie viel natron fürs große auf kh 5")
    (reply,) = await talk.say("200 l")
    assert "/tank new" in reply.text
    assert "volume_l" not in await talk.facts("/tank Kleines")


@pytest.mark.parametrize(
    "line",
    [
        "how much soda to kh 5",
        "how much soda for my tank to kh 5",
        "how much soda for moss to kh 5",
    ],
)
async def test_the_tank_in_use_needs_no_question(talk: Talk, line: str) -> None:
    await with_moss(talk)
    assert (await talk.facts(line))["tank"] == "moss"


async def test_the_larger_of_two_is_known_for_a_dose(talk: Talk) -> None:
    await talk.say("/tank new quarry 200 l fresh")
    await with_moss(talk)
    await talk.say("quarry kh 3 ph 7 nh3 0")
    await talk.say("/tank moss")
    assert (await talk.facts("how much soda for the big one to kh 5"))["tank"] == "quarry"


@pytest.mark.parametrize(
    "line",
    [
        "my dads tank 200 l",
        "my dad's tank is 200 l kh 2",
        "my neighbours aquarium is 200 l",
        "das becken meines bruders hat 200 l",
    ],
)
async def test_nobody_elses_tank_is_the_keepers_own(talk: Talk, line: str) -> None:
    await talk.say(line)
    assert not (await talk.facts("/tank"))["tanks"]
    await talk.say("my tank is 60 l")
    await talk.say(line)
    (tank,) = (await talk.facts("/tank"))["tanks"]
    assert tank["volume_l"] == 60.0
    assert "KH" not in await talk.text("tanks")


@pytest.mark.parametrize("line", ["old tank 200 l", "my reef is 200 l", "the pond holds 3000 l"])
async def test_a_volume_of_another_tank_overwrites_none(talk: Talk, line: str) -> None:
    await talk.say("my tank is 100 l")
    assert (await talk.facts(line))["ask"] == "tank"
    (tank,) = (await talk.facts("/tank"))["tanks"]
    assert tank["volume_l"] == 100.0


async def test_the_only_tank_of_no_volume_takes_it(talk: Talk) -> None:
    await talk.say("kh 8")
    told = await talk.facts("my reef is 200 l")
    assert (told["volume_l"], told["kind"]) == (200.0, "marine")


@pytest.mark.parametrize(
    "line", ["my reef kh 8", "alk 8 in my reef", "how much soda does my reef need to kh 8"]
)
async def test_a_reef_is_no_fresh_tank(talk: Talk, line: str) -> None:
    await talk.say("my tank is 60 l")
    await talk.say("kh 4")
    assert (await talk.facts(line))["ask"] == "tank"


async def test_the_only_reef_is_told_by_its_water(talk: Talk) -> None:
    await talk.say("reef 200 l")
    said = await talk.say("alk 6.5 was 8 in my reef")
    assert [value["value"] for value in said[0].facts["values"]] == [6.5]
    assert "earlier value" in said[-1].text


async def test_a_first_tank_planned_for_as_a_reef_is_marine(talk: Talk) -> None:
    await talk.say("how much buffer does my reef need its at 7.2 dkh")
    await talk.say("200 litres")
    (plan,) = await talk.say("8.5")
    assert (plan.facts["volume_l"], plan.facts["from"]) == (200.0, 7.2)
    await talk.press(1, plan)
    (tank,) = (await talk.facts("/tank"))["tanks"]
    assert (tank["volume_l"], tank["kind"]) == (200.0, "marine")


async def test_so_is_one_made_by_the_reading_that_its_plan_needs(talk: Talk) -> None:
    await talk.say("how much soda for my reef to kh 8")
    await talk.say("200 l")
    await talk.say("kh 7")
    (tank,) = (await talk.facts("/tank"))["tanks"]
    assert (tank["volume_l"], tank["kind"]) == (200.0, "marine")


async def test_the_litres_before_a_word_for_water_are_no_article(talk: Talk) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    assert (await talk.facts("tank Mar 200 l marine"))["tank"] == "Mar"


async def test_a_place_is_no_tank_of_another_name(talk: Talk) -> None:
    await talk.say("/tank new Betty 40 l fresh")
    await talk.say("betty kh 3")
    (asked,) = await talk.say("how much baking soda for the kitchen to get to 6")
    assert asked.facts["ask"] == "tank"
    assert "Betty (40 L)" in await talk.text("how much baking soda for betty to get to 6")


async def test_a_place_may_be_where_a_tank_without_a_name_stands(talk: Talk) -> None:
    await talk.say("my tank is 100 l, kh 3")
    assert "Tank (100 L)" in await talk.text("how much baking soda for the kitchen to get to 6")
