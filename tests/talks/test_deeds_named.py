"""Deeds that are asked about, wished for or prepared are put on no record."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk


async def tank(talk: Talk, *lines: str) -> None:
    for line in ("/tank new Fern 100 l fresh", "kh 3 gh 5 ph 7 25c nh3 0", *lines):
        await talk.say(line)


async def nothing_done(talk: Talk) -> None:
    assert "no water change on record" in await talk.text("when did i last change water")


@pytest.mark.parametrize(
    "line",
    ["water change how often", "wasserwechsel wie oft", "cambio de agua cada cuánto"],
)
async def test_how_often_is_answered(talk: Talk, line: str) -> None:
    await tank(talk)
    assert "a week" in await talk.text(line)
    await nothing_done(talk)


@pytest.mark.parametrize(
    "line",
    ["filter clean how often", "how often should i clean the filter", "wie oft filter putzen"],
)
async def test_how_often_a_filter(talk: Talk, line: str) -> None:
    await tank(talk)
    assert "never under the tap" in await talk.text(line)


@pytest.mark.parametrize(
    "line", ["water change first or salt first", "water change or salt", "wasserwechsel oder salz"]
)
async def test_a_choice_is_none_made(talk: Talk, line: str) -> None:
    await tank(talk)
    (reply,) = await talk.say(line)
    assert reply.facts["doubts"][0]["reason"] == "unsure_event"
    await nothing_done(talk)


async def test_wished_for_a_change_asks_of_which_water(talk: Talk) -> None:
    await tank(talk)
    (reply,) = await talk.say("want gh 6 kh 3 for a 40 l water change")
    assert [button.label for button in reply.buttons] == ["RO water"]
    (recipe,) = await talk.press(1)
    assert recipe.facts["volume_l"] == 40.0
    assert recipe.facts["to"] == {"kh": 3.0, "gh": 6.0}
    await nothing_done(talk)


@pytest.mark.parametrize(
    "line", ["need kh 4 for a 40 l water change", "je veux kh 4 pour un changement d'eau de 40 l"]
)
async def test_of_the_water_on_record_it_is_the_recipe(talk: Talk, line: str) -> None:
    await tank(talk, "/source tap kh 2 gh 4 ph 7")
    facts = await talk.facts(line)
    assert facts["volume_l"] == 40.0
    assert facts["salts"][0]["grams"] == pytest.approx(40 * 2 * 29.96e-3, rel=1e-2)  # C, see aims
    await nothing_done(talk)


@pytest.mark.parametrize(
    "line", ["ok mixed it, measured gh 6 kh 3", "angerührt: gh 6 kh 3", "mélangé, gh 6 kh 3"]
)
async def test_what_a_mix_has_is_none_of_the_tank(talk: Talk, line: str) -> None:
    await tank(talk, "recipe for a 10 l bucket of ro to gh 6 kh 3")
    assert "as wished" in await talk.text(line)
    readings = (await talk.facts("how is fern"))["readings"]
    assert (readings["gh"], readings["kh"]) == (5.0, 3.0)


async def test_it_may_be_the_tank_all_the_same(talk: Talk) -> None:
    await tank(talk, "recipe for a 10 l bucket of ro to gh 6 kh 3")
    (reply,) = await talk.say("mixed it, measured gh 4")
    assert "not as wished" in reply.text
    await talk.press(1)
    assert (await talk.facts("how is fern"))["readings"]["gh"] == 4.0


async def test_after_a_recipe_a_reading_of_the_tank_is_one(talk: Talk) -> None:
    await tank(talk, "recipe for a 10 l bucket of ro to gh 6 kh 3")
    assert (await talk.facts("fern gh 5 kh 4"))["values"][0]["value"] == 5.0


@pytest.mark.parametrize(
    "line",
    ["ya eche la primera parte", "did the rest", "gave the first part", "ho messo la prima parte"],
)
async def test_a_part_of_no_plan_is_asked_about(talk: Talk, line: str) -> None:
    await tank(talk)
    assert "How much of what" in await talk.text(line)


@pytest.mark.parametrize("line", ["done?", "is it done?", "done yet", "fertig?", "ya está hecho?"])
async def test_whether_it_is_done_is_no_deed(talk: Talk, line: str) -> None:
    await tank(talk, "dose kh 5")
    (reply,) = await talk.say(line)
    assert reply.facts["left"] == 2
    assert "logged" in await talk.text("done")
    (reply,) = await talk.say(line)
    assert reply.facts["left"] == 1


async def test_nor_of_a_reminder(talk: Talk) -> None:
    await tank(talk, "remind me to change water every week")
    await talk.wait(days=8)
    assert "Nothing was marked" in await talk.text("done?")
    assert "Done" in await talk.text("done")


async def test_less_food_is_a_note(talk: Talk) -> None:
    await tank(talk)
    assert "note fed less" in await talk.text("fed less")
    assert "no feeding" in await talk.text("when did i feed")


@pytest.mark.parametrize(
    "line", ["how often should i test", "wie oft messen", "à quelle fréquence tester"]
)
async def test_how_often_water_is_tested_is_told_by_its_kind(talk: Talk, line: str) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    assert "pH, KH and nitrate weekly" in await talk.text(line)
    await talk.say("/tank new Lagoon 150 l marine")
    assert "salinity and KH twice a week" in await talk.text(line)
