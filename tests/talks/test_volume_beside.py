"""How much water it is, beside the first readings and without a word for the tank."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk


@pytest.mark.parametrize(
    ("text", "volume"),
    [
        ("60 l kh 2 ph 6.8 ammonia 0", 60.0),
        ("kh 2 ammonia 0, 90 l", 90.0),
        ("my 30 gal: ph 7.2 kh 2", 113.56),
        ("kh 2 in my 90 l", 90.0),
    ],
)
async def test_the_tank_gets_it_and_the_readings_are_kept(
    talk: Talk, text: str, volume: float
) -> None:
    told = await talk.text(text)
    assert "Not stored" not in told
    plan = await talk.facts("dose kh 3")
    assert plan["volume_l"] == pytest.approx(volume, abs=0.1)
    assert plan["from"] == 2.0


async def test_a_wish_beside_is_planned(talk: Talk) -> None:
    *_, plan = await talk.say("kh 3 want 5, 90 l")
    assert (plan.facts["from"], plan.facts["to"], plan.facts["volume_l"]) == (3.0, 5.0, 90.0)


async def test_a_kind_of_water_counts(talk: Talk) -> None:
    assert "marine" in await talk.text("marine 200 l sg 1.025")


@pytest.mark.parametrize("text", ["kh 4 with 5 l jug", "thinking of 90 l, kh 4", "kh 4, 200 ml"])
async def test_other_water_is_no_tank(talk: Talk, text: str) -> None:
    assert "How many litres" in await talk.text(text) + await talk.text("dose kh 5")


async def test_lengths_with_a_word_of_doubt_are_asked_about(talk: Talk) -> None:
    (asked,) = await talk.say("60x30x35 cm i think")
    assert asked.facts["net_l"] == 48.2
    assert [button.meaning for button in asked.buttons] == ["yes", "no"]


async def test_a_word_for_the_shape_of_a_tank_says_no_more(talk: Talk) -> None:
    assert (await talk.facts("tank 15 gal long"))["volume_l"] == pytest.approx(56.8, abs=0.1)


@pytest.mark.parametrize(
    ("text", "stock"),
    [
        ("80l with 10 tetras, 3 died", {"tetras": 7}),
        ("120l with 8 neons, one dead this morning", {"neons": 7}),
        ("i have 10 neons and 3 died", {"neons": 7}),
    ],
)
async def test_of_those_who_are_told_with_it_the_dead_are_taken_off(
    talk: Talk, text: str, stock: dict[str, int]
) -> None:
    await talk.say(text)
    (facts,) = [reply.facts for reply in await talk.say("who lives in tank")]
    assert list(facts["stock"].values()) == [stock]


@pytest.mark.parametrize("text", ["60l, water is yellow", "pond 3000l water is green"])
async def test_a_sight_beside_it_is_no_animal(talk: Talk, text: str) -> None:
    said = await talk.text(text)
    assert "added" not in said
    assert "water" in said.casefold()
    assert ("L, pond" in said) is text.startswith("pond")


@pytest.mark.parametrize(
    "text", ["its a 240 l", "240l total", "240l community", "240 l, no heater", "tank is 240"]
)
async def test_told_in_passing_it_is_the_volume_alone(talk: Talk, text: str) -> None:
    assert "240 L" in await talk.text(text)
    await talk.say("how much baking soda from kh 3 to 6")
    assert "How many litres" not in await talk.text("dose kh 5 from 4")


@pytest.mark.parametrize("text", ["tank is 25", "its a 20 l bucket", "a 20 l jug"])
async def test_what_may_be_else_is_no_volume(talk: Talk, text: str) -> None:
    await talk.say(text)
    assert "How many litres" in await talk.text("dose kh 5 from 4")


async def test_degrees_beside_a_tank_and_its_animals_are_its_warmth(talk: Talk) -> None:
    said = await talk.text("discus 300l 29 degrees")
    assert "temperature 29 °C; added discus" in said
    assert "Not stored" not in said


@pytest.mark.parametrize(
    ("told", "unit", "litres"),
    [("tank is 55", "gallons", 208.2), ("tank is 55 gal", "no litres", 55.0)],
)
async def test_the_unit_of_a_volume_told_next_is_asked_about(
    talk: Talk, told: str, unit: str, litres: float
) -> None:
    await talk.say(told)
    await talk.say(unit)
    (held,) = await talk.say("yes")
    assert held.facts["volume_l"] == pytest.approx(litres, rel=1e-3)


async def test_done_of_nobody_knows_what_asks_for_no_dose(talk: Talk) -> None:
    await talk.say("60 l kh 2")
    assert "dose kh" not in await talk.text("ok done")
