"""A plan that was begun shall end elsewhere; said behind the next test it puts no test right."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk


@pytest.fixture
async def begun(talk: Talk) -> Talk:
    """A plan from KH 3 to 6 whose first part is in, and the test a day later."""
    for said in ("100 l", "kh 3 ammonia 0", "kh to 6", "ok first part in"):
        await talk.say(said)
    await talk.wait(days=1)
    await talk.say("kh 4")
    return talk


@pytest.mark.parametrize("text", ["wait no only to 5", "actually only 5 please", "5 reicht"])
async def test_the_rest_is_planned_to_it(begun: Talk, text: str) -> None:
    plan = await begun.facts(text)
    assert (plan["from"], plan["to"]) == (4.0, 5.0)


async def test_what_is_reached_needs_nothing(begun: Talk) -> None:
    assert "No dose" in await begun.text("4 is enough")


@pytest.mark.parametrize("text", ["no, 5", "only 7"])
async def test_a_number_that_no_wish_can_be_puts_the_test_right(begun: Talk, text: str) -> None:
    assert "Corrected: KH" in await begun.text(text)


async def test_of_a_plan_for_any_water_what_is_in_counts(talk: Talk) -> None:
    await talk.say("100 l kh 3 to 5, ammonia 0")
    await talk.say("done put it in")
    assert "1 of 2 parts is left" in await talk.text("how much more")
    await talk.say("undo")
    await talk.say("ok put all in already")
    assert "on record already" in await talk.text("am i done")
