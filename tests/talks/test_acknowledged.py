"""What only acknowledges the last answer is answered by what was spoken of; nothing is stored."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk


@pytest.mark.parametrize(
    ("text", "shown"),
    [
        ("ok done", "Go on with the steps that are left"),
        ("done", "Go on with the steps that are left"),
        ("turned it off", "Go on with the steps that are left"),
        ("its back on", "back by 1 °C an hour"),
        ("ist wieder an", "back by 1 °C an hour"),
        ("dont have any", "No dechlorinator: no tap water goes in"),
        ("havent tested anything", "Ammonia first, then nitrite and pH."),
        ("they are moving again", "It is over only by test"),
    ],
)
@pytest.mark.parametrize("has_tank", [True, False])
async def test_in_an_emergency_it_is_answered_with_the_next_step(
    talk: Talk, text: str, shown: str, has_tank: bool
) -> None:
    if has_tank:
        await talk.say("/tank new Fern 60 l fresh")
    await talk.say("the filter stopped")
    (told,) = await talk.say(text)
    assert shown in told.text
    assert told.facts["emergency"] == "filter"


@pytest.mark.parametrize(
    ("text", "shown"),
    [
        ("ok done", "nothing is stored of it"),
        ("havent tested anything", "Test ammonia and nitrite first"),
        ("dont have any", "say what you have"),
        ("no test kit", "let it be tested"),
    ],
)
async def test_where_nothing_is_wrong_it_is_asked_what_was_done(
    talk: Talk, text: str, shown: str
) -> None:
    await talk.say("/tank new Fern 60 l fresh")
    await talk.say("ph 6.4 kh 2")
    assert shown in await talk.text(text)


async def test_done_that_is_of_the_plan_before_it(talk: Talk) -> None:
    await talk.say("/tank new Fern 60 l fresh")
    await talk.say("kh 3")
    await talk.say("dose kh 5")
    assert "logged 1.8 g" in await talk.text("done that")


@pytest.mark.parametrize("text", ["do it", "ok do that", "mach das", "let's do it"])
async def test_what_was_offered_to_be_asked_is_asked(talk: Talk, text: str) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("kh 2 ph 6.5 ammonia 0 temp 25")
    assert (await talk.facts(text))["to"] == pytest.approx(4.0)
    await talk.say("never mind")
    await talk.say("should i raise kh")
    assert (await talk.facts(text))["to"] == pytest.approx(4.0)


async def test_a_question_what_was_done_is_not_agreed_to_so(talk: Talk) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("kh 2 ph 6.5 ammonia 2 temp 25")
    assert "parts" not in await talk.facts("ok do that")
    await talk.say("kh 2 or 3")
    assert "values" not in await talk.facts("do it")
