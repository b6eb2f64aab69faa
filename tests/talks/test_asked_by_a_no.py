"""What is asked by a no reaches the gates; a gallon that is meant is kept; people go first."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk

GOLD = ("/tank new Fern 110 l fresh", "added 6 goldfish")


async def said(talk: Talk, *lines: str) -> None:
    for line in lines:
        await talk.say(line)


@pytest.mark.parametrize(
    "line",
    [
        "shouldnt i raise the ph quick?", "cant i just raise the ph", "couldn't I raise the ph",
        "why not raise the ph now", "why cant i just add baking soda", "shouldnt i add baking soda",
        "why not add 20 g of baking soda", "sollte ich nicht den ph erhöhen",
    ],
)  # fmt: skip
async def test_no_buffer_beside_ammonia_however_it_is_asked(talk: Talk, line: str) -> None:
    await said(talk, *GOLD, "ammonia 2 kh 2 ph 7")
    told = await talk.text(line)
    assert any(no in told for no in ("No buffer now", "Not now", "put in nothing more now"))


@pytest.mark.parametrize(
    "line", ["what if i add ph down", "can i use ph minus", "why not use ph down"]
)
async def test_no_acid_beside_ammonia(talk: Talk, line: str) -> None:
    await said(talk, *GOLD, "ammonia 4")
    assert "No dose to a pH" in await talk.text(line)


async def test_what_cannot_be_done_is_no_question(talk: Talk) -> None:
    await said(talk, *GOLD, "ammonia 2")
    assert "No buffer" not in await talk.text("i cant measure the ph")


async def test_hardly_any_food_in_a_cold_pond(talk: Talk) -> None:
    await said(talk, "/tank new Lake 3500 l pond", "temp 9")
    assert "hardly any" in await talk.text("should i feed the fish")
    assert "hardly any" in await talk.text("how much should i feed")
    await said(talk, "temp 12")
    assert "hardly any" not in await talk.text("should i feed the fish")


@pytest.mark.parametrize(
    "line",
    [
        "my kid put his hands in the tank and then in his mouth after i dosed, is it dangerous",
        "toddler had a hand in the aquarium and sucked his fingers",
        "mein kind hat die hände ins becken getan und dann in den mund",
    ],
)
async def test_a_mouth_with_tank_water_goes_first(talk: Talk, line: str) -> None:
    await said(talk, *GOLD)
    assert (await talk.facts(line))["emergency"] == "swallowed"
    assert "Tell them: “it was soda ash”" in await talk.text("it was soda ash")


async def test_hands_in_a_tank_are_no_call(talk: Talk) -> None:
    await said(talk, *GOLD)
    assert "poison" not in await talk.text("can kids put their hands in the tank")


async def test_a_gallon_is_kept_as_it_was_meant(talk: Talk) -> None:
    await said(talk, "how much baking soda for a 20 gallon")
    assert "imperial one" in await talk.text("uk gallons")
    await said(talk, "kh 2")
    assert "90.9 L" in await talk.text("dose kh 4")
    assert "imperial" in await talk.text("/settings")


async def test_a_gallon_of_a_tank_is_asked_about(talk: Talk) -> None:
    await said(talk, "tank 20 gallons")
    assert "90.9 L" in await talk.text("uk gallons")


async def test_both_dangers_are_named_and_nothing_of_reminders(talk: Talk) -> None:
    await said(talk, *GOLD, "ph 6 kh 1 ammonia 4")
    told = await talk.text("i already dumped a tablespoon of baking soda in when i saw the ph")
    assert "reminder" not in told
    now = await talk.text("what now")
    assert "Ammonia 4 mg/L" in now
    assert "sodium bicarbonate" in now


@pytest.mark.parametrize(
    ("line", "litres"),
    [
        ("tank isnt full, theres prob only 80 litres of water in it", "80"),
        ("more like 90 with the rocks and sand", "90"),
        ("sump has another 40 litres", "150"),
        ("tank is 110 but with the stones i guess 95 or so", "95"),
        ("its about 30 gallons, uk", "136"),
    ],
)
async def test_another_volume_is_asked_about(talk: Talk, line: str, litres: str) -> None:
    await said(talk, "/tank new Fern 110 l fresh")
    assert f"hold {litres} L" in await talk.text(line)


async def test_other_numbers_are_no_volume(talk: Talk) -> None:
    await said(talk, "/tank new Fern 110 l fresh")
    assert "hold" not in await talk.text("the fish eat 80 pellets with the sand")


async def test_ones_own_water_at_the_shop_and_after_rain(talk: Talk) -> None:
    await said(talk, "/tank new Fern 110 l fresh")
    assert "KH 2" in await talk.text("kh 2 this morning after all that rain")
    assert "Did you mean KH 1" in await talk.text("shop tested my water and said kh is 1")
    assert "another water's" in await talk.text("the water at the shop has kh 1")
    assert "another water's" in await talk.text("kh 0 in the rain water")
