"""A part of a plan is not told again while it is open how much water its tank holds."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk

AMOUNT = " g of sodium bicarbonate"
UNHEARD = "oh wait its only 15 gal of water really, gravel takes up some"


@pytest.fixture
async def plan(talk: Talk) -> Talk:
    """A plan for 45 L in three parts, and other talk behind it."""
    await talk.say("/tank new Fern 45 l fresh")
    await talk.say("kh 2 ph 7 ammonia 0")
    assert len((await talk.facts("kh to 5"))["parts"]) == 3
    await talk.say("is my ph ok")
    return talk


ASKED_AGAIN = [
    "so how much", "how much then", "the first part?", "how do i dissolve it", "what is left",
    "how do i weigh it", "so how much now",
]  # fmt: skip


@pytest.mark.parametrize("text", ASKED_AGAIN)
async def test_a_volume_asked_about_comes_before_the_part(plan: Talk, text: str) -> None:
    (asked,) = await plan.say("theres only 35 l in it")
    assert [button.meaning for button in asked.buttons] == ["yes", "no"]
    (again,) = await plan.say(text)
    assert AMOUNT not in again.text
    assert "35 L" in again.text
    assert "45 L" in again.text
    assert [button.meaning for button in again.buttons] == ["yes", "no"]


async def test_once_answered_the_lesser_amount_or_the_same_is_told(plan: Talk) -> None:
    await plan.say("theres only 35 l in it")
    await plan.say("so how much")
    await plan.say("no")
    assert f"1.3{AMOUNT}" in await plan.text("the first part?")


@pytest.mark.parametrize("text", ASKED_AGAIN)
async def test_what_may_be_a_volume_is_named_before_the_part(talk: Talk, text: str) -> None:
    await talk.say("/tank new Fern 20 gal fresh")
    await talk.say("kh 2 ph 7 ammonia 0")
    await talk.say("kh to 5")
    await talk.say(UNHEARD)
    (again,) = await talk.say(text)
    assert AMOUNT not in again.text
    assert "I did not understand “oh wait its only 15 gal" in again.text
    await talk.press(1)
    assert f"2.3{AMOUNT}" in await talk.text("the first part?")


async def test_a_deed_behind_it_is_asked_about_and_not_lost(talk: Talk) -> None:
    await talk.say("/tank new Fern 20 gal fresh")
    await talk.say("kh 2 ph 7 ammonia 0")
    await talk.say("kh to 5")
    await talk.say(UNHEARD)
    await talk.say("so how much then")
    assert "How much of what went in?" in await talk.text("its in")


async def test_a_plan_for_another_volume_than_the_tank_holds_tells_no_part(plan: Talk) -> None:
    await plan.say("tank Fern 35 l")
    (again,) = await plan.say("how do i dissolve it")
    if AMOUNT in again.text:
        assert f"1{AMOUNT}" in again.text
    else:
        assert "That plan was for 45 L, Fern holds 35 L by now" in again.text


async def test_the_volume_on_record_told_with_its_tank_is_no_other(talk: Talk) -> None:
    await talk.say("45l tank")
    await talk.say("kh 2 ph 7 ammonia 0")
    (planned,) = await talk.say("kh to 5")
    assert planned.facts["volume_l"] == 45.0
