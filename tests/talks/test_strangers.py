"""Animals that the table does not know: kept by name, and no answer calls anything well for them.

What to compare with a keeper's book is common practice, no source.
"""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk

WATER = "ph 7.2 kh 5 gh 8 temp 24 ammonia 0 nitrite 0 nitrate 10"


@pytest.fixture
async def mixed(talk: Talk) -> Talk:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("/source tap ph 7.2 kh 5 gh 8 no3 5 temp 24 total chlorine 0")
    await talk.say("added 2 axolotl")
    await talk.say("added 3 guppies")
    await talk.say(WATER)
    return talk


async def test_it_is_kept_by_name_and_judged_by_nothing(talk: Talk) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    (reply,) = await talk.say("added 2 axolotl")
    assert "I judge no water for it" in reply.text
    assert "keeper's book" in reply.text
    await talk.say("added 1 axolotls")
    assert (await talk.facts("who lives in fern"))["stock"] == {"Fern": {"axolotl": 3}}


@pytest.mark.parametrize(
    ("before", "asked"),
    [
        ("dose kh 6", "is that ok for them"),
        ("dose kh 6", "is it dangerous for all"),
        ("dose kh 6", "is it dangerous for the axolotls"),
        ("dose kh 6", "ist das sicher für den axolotl"),
        ("dose kh 6", "ist das schlimm"),
        ("dose kh 6", "c'est dangereux pour les axolotls"),
        ("what if i change 20%", "is that ok for them"),
        ("what if i change 20%", "is that safe for the axolotl"),
        (WATER, "is my water ok"),
        (WATER, "is my water ok for all animals"),
        (WATER, "is the water ok for my axolotl"),
    ],
)
async def test_nothing_is_called_well_for_it(mixed: Talk, before: str, asked: str) -> None:
    await mixed.say(before)
    (reply,) = await mixed.say(asked)
    assert reply.facts["not_judged"] == ["axolotl"]
    assert "Not judged for axolotl" in reply.text
    assert "book" in reply.text


async def test_known_animals_are_judged_as_ever(talk: Talk) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("added 3 guppies")
    await talk.say(WATER)
    for asked in ("is my water ok", "dose kh 6", "is that ok for them"):
        (reply,) = await talk.say(asked)
        assert "not_judged" not in reply.facts


@pytest.mark.parametrize(
    ("line", "name"),
    [
        ("can i keep an axolotl with guppies", "axolotl"),
        ("kann ich einen axolotl mit guppys halten", "axolotl"),
        ("peut-on mettre un axolotl avec des guppys", "axolotl"),
        ("puedo poner un axolote con guppys", "axolote"),
        ("posso tenere un axolotl con i guppy", "axolotl"),
        ("posso colocar um axolote com guppys", "axolote"),
        ("kan ik een axolotl bij guppy's houden", "axolotl"),
        ("kan jag ha en axolotl med guppys", "axolotl"),
    ],
)
async def test_who_is_asked_about_gets_no_yes_and_no_no(talk: Talk, line: str, name: str) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say(WATER)
    (reply,) = await talk.say(line)
    assert reply.facts["not_judged"] == [name]
    assert "verdict" not in reply.facts
    assert "whether it eats gupp" in reply.text
    assert "pH 7.2" in reply.text
    assert "medicine" in reply.text


async def test_without_readings_it_says_which_to_take(talk: Talk) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    assert "Measure pH, GH, KH and temperature" in await talk.text("can i add an axolotl")


async def test_a_number_asked_about_on_record(mixed: Talk) -> None:
    (reply,) = await mixed.say("is kh 8 safe for my axolotl")
    assert "I cannot judge it for axolotl" in reply.text
    assert "medicine" not in reply.text


async def test_a_danger_is_said_before_all_else(mixed: Talk) -> None:
    await mixed.say("my fish are gasping")
    (reply,) = await mixed.say("is it dangerous for them")
    assert "Not judged" not in reply.lines[0].text


@pytest.mark.parametrize(
    "line",
    ["can i keep guppies outside", "can guppies eat peas", "kann ich guppys mit kies halten"],
)
async def test_other_words_are_no_animal(talk: Talk, line: str) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    for reply in await talk.say(line):
        assert "not_judged" not in reply.facts
