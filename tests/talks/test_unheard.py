"""No verdict says that all is well of what was not understood, not measured or not tested since."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk

WELL = "Change nothing"
POISONS = "unknown, and"


async def water(talk: Talk, readings: str = "kh 5 ph 7 temp 24 ammonia 0 nitrite 0") -> None:
    await talk.say("/tank new Fern 100 l fresh")
    await talk.say(readings)


@pytest.mark.parametrize(
    "text", ["zorp 0.5", "gave sum of the blueish stuff 5", "hab blaues zeug rein 5"]
)
async def test_what_was_not_understood_is_named_in_the_verdict(talk: Talk, text: str) -> None:
    await water(talk)
    await talk.say(text)
    for asked in ("is that ok?", "what should i do now", "ok?", "zu niedrig oder"):
        said = await talk.text(asked)
        assert WELL not in said
        assert f"“{text}”" in said


async def test_it_is_named_as_well_where_another_reading_was_understood_since(talk: Talk) -> None:
    await water(talk)
    await talk.say("zorp 0.5")
    await talk.say("ph is 7.8 temp 26")
    said = await talk.text("what should i do now")
    assert "“zorp 0.5”" in said
    assert WELL not in said


async def test_told_anew_it_is_settled(talk: Talk) -> None:
    await water(talk)
    await talk.say("zorp 0")
    await talk.say("ammonia 0")
    assert WELL in await talk.text("is my water ok")


async def test_it_is_settled_by_the_record_or_by_time(talk: Talk) -> None:
    await water(talk)
    await talk.say("zorp 0.5")
    await talk.wait(hours=13)
    assert WELL in await talk.text("is my water ok")


@pytest.mark.parametrize("text", ["hello", "thanks", "is that ok?", "kh 6?", "want kh under 7"])
async def test_small_talk_questions_and_wishes_are_nothing_unheard(talk: Talk, text: str) -> None:
    await water(talk)
    await talk.say(text)
    assert "did not understand" not in await talk.text("is my water ok")


@pytest.mark.parametrize(
    ("readings", "named"),
    [
        ("kh 5 ph 7 temp 24", "Ammonia and nitrite"),
        ("kh 5 ph 7 ammonia 0", "Nitrite is"),
        ("kh 5 ph 7 nitrite 0", "Ammonia is"),
    ],
)
async def test_poisons_that_were_not_measured_are_named(
    talk: Talk, readings: str, named: str
) -> None:
    await water(talk, readings)
    said = await talk.text("is my water ok")
    assert WELL not in said
    assert named in said
    assert POISONS in said


async def test_poisons_measured_long_ago_are_unknown(talk: Talk) -> None:
    await water(talk)
    await talk.wait(days=4)
    await talk.say("kh 5 ph 7")
    assert POISONS in await talk.text("is my water ok")


async def test_a_small_dose_after_the_test_is_told_with_what_it_does(talk: Talk) -> None:
    await water(talk)
    await talk.say("dosed 2 g baking soda")
    for asked in ("is that dangerous", "is my water ok", "ist das gefährlich"):
        said = await talk.text(asked)
        assert WELL not in said
        assert "No more sodium bicarbonate today" in said
        assert "KH +0.67" in said
    await talk.wait(hours=24)
    await talk.say("kh 5.5 ph 7 gh 6 ammonia 0 nitrite 0")
    assert "No more sodium" not in await talk.text("is my water ok")


async def test_a_dose_of_no_known_amount_is_not_called_harmless(talk: Talk) -> None:
    await talk.say("kh 4 ph 7 ammonia 0 nitrite 0")
    await talk.say("put in 3 tbsp baking soda")
    said = await talk.text("is that dangerous")
    assert WELL not in said
    assert "No more sodium bicarbonate today" in said


async def test_all_numbers_that_are_not_answered_are_named(talk: Talk) -> None:
    await water(talk, "ph 7.4 kh 5 temp 24")
    await talk.say("ammonia 3 ??")
    await talk.say("nitrite 2 ??")
    (reply,) = await talk.say("all good?")
    assert "“nitrite 2”" in reply.text
    assert "“ammonia 3”" in reply.text
    assert [each["id"] for each in reply.facts["supposed"]] == ["nitrite", "ammonia"]


async def test_left_out_is_only_the_number_that_was_asked_about(talk: Talk) -> None:
    await water(talk, "ph 7.4 kh 5 temp 24")
    await talk.say("ammonia 3 ??")
    await talk.say("nitrite 2 ??")
    await talk.say("leave it out")
    said = await talk.text("all good?")
    assert "“nitrite 2”" not in said
    assert "“ammonia 3”" in said
    assert "within the limits" not in said


async def test_a_number_told_anew_settles_its_own(talk: Talk) -> None:
    await water(talk, "ph 7.4 kh 5 temp 24")
    await talk.say("ammonia 3 ??")
    await talk.say("nitrite 2 ??")
    await talk.say("nitrite 0")
    said = await talk.text("all good?")
    assert "“ammonia 3”" in said
    assert "“nitrite 2”" not in said
    await talk.say("ammonia 0")
    assert WELL in await talk.text("all good?")


@pytest.mark.parametrize(
    "text",
    ["what would a wizard say", "thats a pity isnt it", "warum blubbert das so", "czy on się boi"],
)
async def test_a_question_that_was_not_understood_tells_nothing(talk: Talk, text: str) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("kh 5 ammonia 0 nitrite 0")
    await talk.say(text)
    assert "did not understand" not in await talk.text("is my water ok?")


async def test_of_what_was_asked_about_only_the_rest_stays_open(talk: Talk) -> None:
    await water(talk)
    await talk.say("gh blub 5 ammonia blub 2")
    await talk.say("gh 5 ph 7")
    said = await talk.text("is my water ok")
    assert "“ammonia blub 2”" in said
    assert "“gh" not in said
