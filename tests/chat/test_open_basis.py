"""A dose while another number of its value waits for an answer; the words are ours, no source."""

from __future__ import annotations

from tests.chat.harness import Talk


async def test_it_says_which_number_is_open(talk: Talk) -> None:
    await talk.say("/tank new reef 200 l marine")
    await talk.say("ca 410")
    await talk.say("ca dropped to 400, is it the soda?")
    (plan,) = await talk.say("raise ca to 425 how")
    assert plan.facts["open"] == {"calcium": 400.0}
    assert "ca dropped to 400" in plan.text


async def test_with_its_answer_it_is_the_start(talk: Talk) -> None:
    await talk.say("/tank new reef 200 l marine")
    await talk.say("ca 410")
    await talk.say("ca dropped to 400, is it the soda?")
    await talk.press(1)
    (plan,) = await talk.say("raise ca to 425 how")
    assert "open" not in plan.facts
    assert plan.facts["goals"][0]["from"] == 400.0


async def test_a_number_of_another_value_is_not_said(talk: Talk) -> None:
    await talk.say("/tank new reef 200 l marine")
    await talk.say("ca 410")
    await talk.say("mg dropped to 1200, is it the soda?")
    assert "open" not in await talk.facts("raise ca to 425 how")
