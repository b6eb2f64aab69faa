"""A tank called by its animals is found by them; of several just introduced it is asked which."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk

TWO = "2 tanks: 20l betta and 40l shrimps"


@pytest.mark.parametrize(
    ("text", "tank", "analyte"),
    [
        ("betta nitrite 0.1", "Betta", "nitrite"),
        ("my betta nitrite 0.1", "Betta", "nitrite"),
        ("nitrite 0.1 betta", "Betta", "nitrite"),
        ("the betta tank has kh 4", "Betta", "kh"),
        ("kh 4 in the betta tank", "Betta", "kh"),
        ("shrimp tank ph 7", "Shrimps", "ph"),
        ("shrimps ph 7", "Shrimps", "ph"),
        ("ph 7 im garnelenbecken", "Shrimps", "ph"),
        ("acuario de gambas ph 7", "Shrimps", "ph"),
        ("bac du betta ph 7", "Betta", "ph"),
    ],
)
async def test_a_reading_goes_to_the_tank_of_the_animals(
    talk: Talk, text: str, tank: str, analyte: str
) -> None:
    await talk.say(TWO)
    (reply,) = await talk.say(text)
    assert reply.facts["tank"] == tank
    assert [value["analyte"] for value in reply.facts["values"]] == [analyte]


@pytest.mark.parametrize(
    ("text", "tank"),
    [
        ("betta nitrite 0.1", "Betta"),
        ("my betta nitrite 0.1", "Betta"),
        ("nitrite 0.1 betta", "Betta"),
        ("kh 4 in the betta tank", "Betta"),
        ("shrimp tank ph 7", "Shrimps"),
        ("ph 7 im garnelenbecken", "Shrimps"),
        ("acuario de gambas ph 7", "Shrimps"),
        ("bac du betta ph 7", "Betta"),
    ],
)
async def test_it_goes_there_too_where_they_are_called_by_them(
    talk: Talk, text: str, tank: str
) -> None:
    await talk.say("2 tanks: betta 20l and shrimps 40l")
    (reply,) = await talk.say(text)
    assert reply.facts["tank"] == tank
    assert len(reply.facts["values"]) == 1


async def test_a_deed_and_a_question_too(talk: Talk) -> None:
    await talk.say(TWO)
    (reply,) = await talk.say("wc 30% betta tank")
    assert (reply.facts["tank"], reply.facts["events"][0]["percent"]) == ("Betta", 30)
    (reply,) = await talk.say("is the shrimp tank ok")
    assert reply.facts["tank"] == "Shrimps"


@pytest.mark.parametrize("text", ["nitrite 0.05", "wc 30%", "kh 4"])
async def test_after_an_introduction_of_several_a_bare_reading_is_asked_for_its_tank(
    talk: Talk, text: str
) -> None:
    await talk.say(TWO)
    (reply,) = await talk.say(text)
    assert [button.label for button in reply.buttons] == ["Betta", "Shrimps"]
    assert "values" not in reply.facts
    assert "events" not in reply.facts


@pytest.mark.parametrize("text", ["neon tank ph 7", "wc 30% in the guppy tank"])
async def test_a_tank_of_animals_that_none_has_is_asked_for(talk: Talk, text: str) -> None:
    await talk.say(TWO)
    (reply,) = await talk.say(text)
    assert reply.facts["ask"] == "tank"
    assert "values" not in reply.facts
    assert "events" not in reply.facts


async def test_where_both_have_them_it_is_asked(talk: Talk) -> None:
    await talk.say("/tank new Fern 90 l")
    await talk.say("added 6 neons")
    await talk.say("/tank new Moss 60 l")
    await talk.say("added 8 neons")
    (reply,) = await talk.say("neons nitrite 0.1")
    assert reply.facts["ask"] == "tank"


@pytest.mark.parametrize(
    "text",
    ["a betta needs ph 7", "betta ph 7?", "betta died", "can i make it a shrimp tank", "6 neons"],
)
async def test_what_is_of_the_animals_is_no_reading_of_a_tank(talk: Talk, text: str) -> None:
    await talk.say(TWO)
    replies = await talk.say(text)
    assert not any("values" in reply.facts for reply in replies)
    assert not any(reply.facts.get("ask") == "tank" and "said" in reply.facts for reply in replies)


@pytest.mark.parametrize(
    ("text", "tank"),
    [
        ("the betta is kh 8 ph 7.9", "kitchen"),
        ("the betta's kh is 8", "kitchen"),
        ("the nerites are at kh 8", "office"),
    ],
)
async def test_what_is_said_of_the_animals_is_of_their_tank(
    talk: Talk, text: str, tank: str
) -> None:
    await talk.say("tanks: kitchen 54l 1 betta, office 20l 3 nerite snails")
    await talk.say("office kh 2" if tank == "kitchen" else "kitchen kh 2")
    told = await talk.facts(text)
    assert told["tank"] == tank
    assert told["values"][0]["canonical"] == 8.0


async def test_a_guess_is_told_with_the_tank_that_it_would_be_of(talk: Talk) -> None:
    await talk.say("tanks: kitchen 54l 1 betta, office 20l 3 nerite snails")
    await talk.say("office kh 2")
    assert "office: did you mean KH 8, pH 7.9?" in await talk.text("glurb kh 8 ph 7.9")
    assert "kitchen: did you mean KH 80 ppm" in await talk.text("kitchen kh 80")


@pytest.mark.parametrize(
    "text",
    [
        "ok so the shrimp one in the kitchen, kh 3 ph 6.8",
        "the shrimp one: kh 3 ph 6.8",
        "the shrimp one is at kh 3",
        "the betta one in the study has kh 3",
    ],
)
@pytest.mark.parametrize("first", ["tank big 200 l", "i have a 200 l tank with guppies"])
async def test_one_among_others_is_asked_for_where_one_is_on_record(
    talk: Talk, first: str, text: str
) -> None:
    await talk.say(first)
    (asked,) = await talk.say(text)
    assert asked.facts["ask"] == "tank"
    assert "Measured" not in await talk.text("/tank")
    replies = await talk.press(1, asked)
    assert "3" in replies[0].text


async def test_the_only_tank_by_its_own_animals_is_not_asked_for(talk: Talk) -> None:
    await talk.say("i have a 200 l tank with guppies")
    assert (await talk.facts("the guppy tank has kh 3"))["values"][0]["value"] == 3.0
    assert (await talk.facts("the betta tank has kh 3"))["ask"] == "tank"


async def test_the_shrimp_tank_may_be_the_only_one_of_which_no_animals_are_known(
    talk: Talk,
) -> None:
    await talk.say("tank big 200 l")
    assert (await talk.facts("the shrimp tank has kh 3"))["tank"] == "big"


async def test_one_told_in_a_long_first_sentence_is_found_and_not_counted(talk: Talk) -> None:
    await talk.say(
        "got a 200 l in the living room with guppies and a 30 l shrimp cube in the kitchen"
    )
    (kept,) = await talk.say("ok so the shrimp one in the kitchen, kh 3 ph 6.8")
    assert kept.facts["tank"] == "Shrimp cube"
