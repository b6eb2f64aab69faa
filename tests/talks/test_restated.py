"""A message of which nothing was understood, answered or asked back in plain words."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk


async def test_a_deed_in_other_words_is_stored_once_it_is_confirmed(talk: Talk) -> None:
    for line in ("/tank new Fern 90 l fresh", "/tank new Kitchen 60 l fresh", "fern: kh 3"):
        await talk.say(line)
    (asked,) = await talk.say("gave kitchen 5 g baking soda")
    assert asked.facts["tank"] == "Kitchen"
    assert "events" not in asked.facts
    (kept, *_) = await talk.press(1, asked)
    assert (kept.facts["tank"], kept.facts["events"][0]["grams"]) == ("Kitchen", 5.0)
    (again, *_) = await talk.press(1, asked)
    assert "events" not in again.facts


async def test_a_share_in_other_words_is_stored_once_it_is_confirmed(talk: Talk) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    (asked,) = await talk.say("did 50 % cold")
    assert "changed 50 %" in asked.text
    (kept, *_) = await talk.say("yes")
    assert kept.facts["events"][0]["percent"] == 50.0


async def test_a_question_in_other_words_is_answered(talk: Talk) -> None:
    await talk.say("/tank new Fern 60 l fresh")
    (told,) = await talk.say("baking soda 2 kg ok?")
    assert "Too much" in told.text


async def test_a_wish_in_other_words_is_no_reading(talk: Talk) -> None:
    await talk.say("/tank new Fern 60 l fresh")
    await talk.say("kh 3 ph 7")
    (told,) = await talk.say("kh should go to 6")
    assert told.facts["to"] == 6.0


async def test_a_greeting_before_it_is_passed_by(talk: Talk) -> None:
    (told,) = await talk.say("hi i have a 20 gallon")
    assert told.facts["volume_l"] == pytest.approx(75.7, rel=1e-3)


async def test_beside_a_plan_no_deed_is_read_into_a_share(talk: Talk) -> None:
    for line in ("/tank new Fern 60 l fresh", "kh 3 ph 7", "dose kh 5"):
        await talk.say(line)
    (told,) = await talk.say("did 50 % cold")
    assert all("changed" not in each.label for each in told.buttons)


async def test_what_should_have_been_done_was_not(talk: Talk) -> None:
    await talk.say("/tank new Fern 60 l fresh")
    for line in ("i should have changed 30%", "could have changed 30%"):
        (told,) = await talk.say(line)
        assert "events" not in told.facts
