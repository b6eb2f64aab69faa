"""The rest of a plan that is told to be in: of the part that was begun, or it is asked.

Grams by molar mass (29.96 mg/L of sodium bicarbonate a °dH, from the formula weight 84.007).
"""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk

A_PART = 90 * 29.96e-3


@pytest.fixture
async def three(talk: Talk) -> Talk:
    """A plan in three parts: KH 2 to 5 in 90 L."""
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("kh 2 gh 5 ph 7.0 temp 25 ammonia 0")
    await talk.say("dose kh 5")
    return talk


def grams(facts: dict) -> float:  # type: ignore[type-arg]
    (event,) = facts["events"]
    return float(event["grams"])


async def half_in(talk: Talk) -> None:
    (asked,) = await talk.say("put half in")
    (logged,) = await talk.press(1, asked)
    assert grams(dict(logged.facts)) == pytest.approx(A_PART / 2, rel=2e-3)


@pytest.mark.parametrize(
    "text",
    ["put the rest in", "rest is in", "hab den rest rein", "j'ai mis le reste", "dosed the rest"],
)
async def test_the_rest_is_of_the_part_that_was_begun(three: Talk, text: str) -> None:
    await half_in(three)
    assert grams(await three.facts(text)) == pytest.approx(A_PART / 2, rel=2e-3)


@pytest.mark.parametrize("text", ["put all the rest in", "the rest of all parts is in"])
async def test_all_that_is_left_only_where_it_is_said(three: Talk, text: str) -> None:
    await half_in(three)
    (reply, *_more) = await three.say(text)
    assert grams(dict(reply.facts)) == pytest.approx(A_PART * 2.5, rel=2e-3)


async def test_all_of_it_is_asked_where_a_part_was_begun(three: Talk) -> None:
    await half_in(three)
    (asked,) = await three.say("put it all in")
    assert asked.text.startswith("The rest of what?")
    assert "events" not in asked.facts
    (logged, *_more) = await three.press(2, asked)
    assert grams(dict(logged.facts)) == pytest.approx(A_PART * 2.5, rel=2e-3)


async def test_a_part_that_is_not_due_is_asked(three: Talk) -> None:
    await three.say("put it in")
    (asked,) = await three.say("put the rest in")
    assert "is due tomorrow" in asked.text
    assert "events" not in asked.facts
    await three.wait(hours=25)
    (asked,) = await three.say("put the rest in")
    assert "is due" not in asked.text
    assert "events" not in asked.facts
    (logged,) = await three.press(1, asked)
    assert grams(dict(logged.facts)) == pytest.approx(A_PART, rel=2e-3)


async def test_the_last_part_is_logged_when_it_is_due(three: Talk) -> None:
    await three.say("put it in")
    await three.wait(hours=25)
    await three.say("second part in")
    (asked,) = await three.say("rest is in")
    assert "events" not in asked.facts
    (kept,) = await three.press(2, asked)
    assert "on record once" in kept.text
    await three.wait(hours=25)
    assert grams(await three.facts("rest is in")) == pytest.approx(A_PART, rel=2e-3)
