"""What a plan takes is told again where only "how much" is asked; table salt raises no hardness."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk

FERN = "/tank new Fern 100 l fresh"


@pytest.mark.parametrize(
    "line",
    ["how much", "hoeveel", "combien", "wie viel?", "cuánto", "quanto", "ile", "hur mycket",
     "how much baking soda"],
)  # fmt: skip
async def test_the_amount_of_the_plan_is_told_again(talk: Talk, line: str) -> None:
    await talk.say(FERN)
    await talk.say("kh 3")
    (plan,) = await talk.say("dose kh 5")
    (reply,) = await talk.say(line)
    assert reply.facts["parts"] == plan.facts["parts"]
    assert "sodium bicarbonate" in reply.text
    assert "ammonia" in reply.text


async def test_salt_for_hardness_is_not_table_salt(talk: Talk) -> None:
    await talk.say(FERN)
    await talk.say("gh 4")
    await talk.say("want to raise gh to 7")
    answer = await talk.text("how much salt")
    assert "calcium chloride" in answer
    assert "raises neither GH nor KH" in answer


async def test_no_amount_is_told_where_no_plan_was_given(talk: Talk) -> None:
    await talk.say(FERN)
    await talk.say("kh 6")
    (reply,) = await talk.say("how much")
    assert "parts" not in reply.facts


async def test_another_salt_is_not_answered_with_the_plan(talk: Talk) -> None:
    await talk.say(FERN)
    await talk.say("kh 3")
    await talk.say("dose kh 5")
    (reply,) = await talk.say("how much kno3")
    assert "parts" not in reply.facts


async def test_salt_that_brings_a_sea_up_is_planned(talk: Talk) -> None:
    await talk.say("/tank new Reef 100 l marine")
    await talk.say("sal 33")
    (reply,) = await talk.say("how much salt to bring it up")
    assert [goal["to"] for goal in reply.facts["goals"]] == [35.0]
