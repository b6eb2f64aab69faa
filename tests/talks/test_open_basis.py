"""A dose while another number of its value waits for an answer; the words are ours, no source."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk


async def test_it_says_which_number_is_open(talk: Talk) -> None:
    await talk.say("/tank new reef 200 l marine")
    await talk.say("ca 410")
    await talk.say("ca dropped to 400 xyz")
    (plan,) = await talk.say("raise ca to 425 how")
    assert plan.facts["open"] == {"calcium": 400.0}
    assert "ca dropped to 400" in plan.text


async def test_with_its_answer_it_is_the_start(talk: Talk) -> None:
    await talk.say("/tank new reef 200 l marine")
    await talk.say("ca 410")
    await talk.say("ca dropped to 400 xyz")
    await talk.press(1)
    (plan,) = await talk.say("raise ca to 425 how")
    assert "open" not in plan.facts
    assert plan.facts["goals"][0]["from"] == 400.0


async def test_a_number_of_another_value_is_not_said(talk: Talk) -> None:
    await talk.say("/tank new reef 200 l marine")
    await talk.say("ca 410")
    await talk.say("mg dropped to 1200, is it the soda?")
    assert "open" not in await talk.facts("raise ca to 425 how")


@pytest.mark.parametrize("text", ["how much baking soda for kh 5", "dose kh 5", "pond: dose kh 4"])
async def test_ammonia_that_waits_for_an_answer_refuses_a_buffer(talk: Talk, text: str) -> None:
    await talk.say("/tank new pond 5678 l pond")
    await talk.say("ph 9 kh 3")
    await talk.say("bought a kit: ammonia 0.5")
    await talk.say("temp 18")
    (refusal,) = await talk.say(text)
    assert refusal.facts["refused"] == "ammonia"
    assert "ammonia 0.5" in refusal.text
    assert "grams" not in refusal.facts


async def test_once_it_is_read_anew_that_counts(talk: Talk) -> None:
    await talk.say("/tank new pond 5678 l pond")
    await talk.say("ph 9 kh 3")
    await talk.say("bought a kit: ammonia 0.5")
    await talk.say("ammonia 0")
    assert "grams" in await talk.facts("dose kh 5")
