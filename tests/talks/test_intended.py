"""What is meant to go in, by its share of a bag or by weight: judged before it is in."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk


@pytest.fixture
async def pond(talk: Talk) -> Talk:
    await talk.say("/tank new Quarry 3500 l pond")
    await talk.say("kh 2")
    return talk


@pytest.mark.parametrize(
    "text",
    [
        "ive got a 1kg bag so i'll put half in tonight",
        "i'll put half a kilo of bicarb in tonight",
        "is it ok to put 500 g of baking soda in",
        "can i put half of the 1 kg bag of baking soda in?",
        "i'll put 500 g baking soda in",
    ],
)
async def test_far_too_much_is_told_no(pond: Talk, text: str) -> None:
    said = await pond.text(text)
    assert "Too much for one day with animals" in said
    assert "500 g" in said
    assert "dosed" not in await pond.text("what did i do")


async def test_the_other_half_is_of_the_bag_told_before(pond: Talk) -> None:
    await pond.say("ive got a 1kg bag so i'll put half in tonight")
    await pond.say("kh 3.5 today")
    said = await pond.text("is it ok to put the other half in")
    assert "No, not so much at once." in said
    assert "500 g" in said
    assert "within the limits" not in said


async def test_of_a_plan_it_is_held_against_its_part(pond: Talk) -> None:
    await pond.say("how much bicarb to kh 6")
    for text in ("ive got a 1kg bag so i'll put half in tonight", "is it ok to put 500 g in"):
        assert "Not more than 105 g" in await pond.text(text)


@pytest.mark.parametrize(
    "text",
    [
        "is it ok to put the other half in",
        "i'll put the fish in tonight",
        "i'll put half the fish in",
    ],
)
async def test_what_tells_no_amount_is_not_judged(pond: Talk, text: str) -> None:
    assert "not so much at once" not in await pond.text(text)


async def test_a_small_amount_is_left_to_who_is_asked_else(pond: Talk) -> None:
    assert "No, not so much" not in await pond.text("can i put 50 g of baking soda in?")


async def test_that_it_is_in_is_of_what_was_judged(pond: Talk) -> None:
    await pond.say("ive got a 1kg bag of baking soda so i'll put half in tonight")
    (asked,) = await pond.say("its in")
    assert asked.facts["grams"] == 500.0
    assert "logged 500 g sodium bicarbonate" in await pond.text("yes")
