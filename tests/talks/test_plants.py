"""What plants bear, by the table: GH and pH a kind, KH 0–15 °dH, salinity 0–1 g/kg
(common practice, no source); never by the fish that live there."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk

ASKED = (
    "is it bad for plants",
    "is it harmful to my plants",
    "is that ok for the plants",
    "for the plants",
    "and for the plants?",
    "will it kill my plants",
    "ist das schlecht für die pflanzen",
    "und für die pflanzen",
    "est-ce mauvais pour les plantes",
    "es malo para las plantas",
    "é ruim para as plantas",
    "fa male alle piante",
    "is het slecht voor de planten",
    "czy to szkodliwe dla roślin",
    "är det dåligt för växterna",
)


@pytest.fixture
async def fern(talk: Talk) -> Talk:
    """Guppies want GH 8 and more: an answer by them would speak against GH 6."""
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("kh 4 gh 6 ph 7 temp 24 ammonia 0")
    await talk.say("added 6 guppies")
    return talk


@pytest.mark.parametrize("line", ASKED)
async def test_a_plan_is_judged_where_it_ends(fern: Talk, line: str) -> None:
    await fern.say("dose kh 6")
    (reply,) = await fern.say(line)
    told = reply.facts["plants"]
    assert told["suited"] == told["kinds"] > 5
    assert told["water"]["kh"] == 6.0
    assert told["water"]["gh"] == 6.0
    assert told["water"]["ph"] == pytest.approx(7.2, abs=0.1)
    assert "guppies" not in reply.text
    assert not reply.text.lower().startswith(("yes", "no"))


@pytest.mark.parametrize(
    ("line", "analyte", "value"),
    [
        ("is gh 20 bad for plants", "gh", 20.0),
        ("ist gh 20 schlecht für pflanzen", "gh", 20.0),
        ("is kh 18 safe for plants", "kh", 18.0),
    ],
)
async def test_a_number(fern: Talk, line: str, analyte: str, value: float) -> None:
    (reply,) = await fern.say(line)
    told = reply.facts["plants"]
    assert told["water"] == {analyte: value}
    assert told["suited"] < told["kinds"]
    assert "Not so well: " in reply.text


async def test_gh_20_is_over_what_cryptocoryne_wants(fern: Talk) -> None:
    assert "cryptocoryne wants GH 1–16 °dH" in await fern.text("is gh 20 bad for plants")


async def test_salt_of_an_amount_asked_about(fern: Talk) -> None:
    """200 g in 90 L are 2.2 g/kg, over the 1 g/kg that plants bear."""
    await fern.say("what does 200 g salt do")
    (reply,) = await fern.say("is it bad for plants")
    assert reply.facts["plants"]["suited"] == 0
    assert reply.facts["plants"]["water"]["salinity"] == pytest.approx(2.2, abs=0.05)
    assert "Salt stays" in reply.text


async def test_another_salt_is_not_the_plans(fern: Talk) -> None:
    await fern.say("dose kh 6")
    (reply,) = await fern.say("is salt bad for plants")
    assert "plants" not in reply.facts


async def test_plant_food_is_named_as_such(fern: Talk) -> None:
    await fern.say("what does 5 g potassium nitrate do")
    assert "feeds plants" in await fern.text("is it bad for plants")


async def test_what_is_in_a_product_is_not_known(fern: Talk) -> None:
    await fern.say("dosed 10 ml tonic")
    assert "I do not know what is in tonic" in await fern.text("is it bad for plants")


async def test_a_change_is_judged_where_it_ends(fern: Talk) -> None:
    await fern.say("/source tap ph 7.8 kh 18 gh 25 no3 5 temp 18 total chlorine 0")
    end = (await fern.facts("what if i change 50%"))["end"]
    told = (await fern.facts("is it bad for plants"))["plants"]
    assert told["water"]["gh"] == pytest.approx(end["gh"])
    (reply,) = await fern.say("is my tap ok for plants")
    assert reply.facts["plants"]["water"]["gh"] == 25.0
    assert not reply.text.startswith("Yes")


async def test_the_sea_has_none_of_these(talk: Talk) -> None:
    await talk.say("/tank new Reef 200 l marine")
    await talk.say("kh 8 sal 35 ph 8.2 temp 25")
    assert "not those of the sea" in await talk.text("is it bad for plants")


async def test_a_danger_and_a_refusal_come_first(fern: Talk) -> None:
    await fern.say("how much hydrochloric acid to lower ph to 6")
    assert "I gave no amount" in await fern.text("is it bad for plants")
    await fern.say("my fish are gasping")
    assert "Air now" in await fern.text("is it bad for plants")


async def test_animals_beside_them_are_judged_as_animals(fern: Talk) -> None:
    await fern.say("dose kh 6")
    assert "plants" not in await fern.facts("is it bad for the plants and the guppies")
