"""So much went in, in the place of another amount: after a plan, and after a logged part."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk

SO_MUCH = [
    "9 g instead of 3",
    "9 instead of 3",
    "9 g rather than 3 g",
    "instead of 3 g i gave 9 g",
    "9 g statt 3 g",
    "9 statt 3",
    "9 g au lieu de 3 g",
    "9 g en vez de 3",
    "9 g em vez de 3 g",
    "9 invece di 3",
    "9 g in plaats van 3 g",
    "9 g zamiast 3 g",
    "9 i stället för 3",
    "9 g baking soda instead of 3",
]


@pytest.fixture
async def planned(talk: Talk) -> Talk:
    """A plan of 2.7 g of baking soda a part."""
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("kh 3 ph 6.8 ammonia 0 temp 24")
    await talk.say("dose kh 5")
    return talk


@pytest.mark.parametrize("text", SO_MUCH)
async def test_after_a_plan_so_much_is_put_on_record(planned: Talk, text: str) -> None:
    put_in = await planned.text(text)
    assert "9 g sodium bicarbonate" in put_in.splitlines()[0]
    assert "Too much for one day: 9 g of sodium bicarbonate (KH +3.3 °dH" in put_in


@pytest.mark.parametrize("text", [*SO_MUCH, "i put in 9 g baking soda instead of 3"])
async def test_after_a_logged_part_it_is_put_right(planned: Talk, text: str) -> None:
    await planned.say("log it")
    right = await planned.text(text)
    assert right.startswith("Corrected: Fern: dosed 9 g sodium bicarbonate (was Fern: dosed 2.7 g")
    assert "Too much for one day: 9 g" in right  # and not 11.7


async def test_less_than_what_was_logged_is_put_right_too(planned: Talk) -> None:
    await planned.say("dosed 9 g baking soda")
    right = await planned.text("3 g instead of 9")
    assert right.startswith("Corrected: Fern: dosed 3 g sodium bicarbonate")


async def test_of_several_salts_it_is_asked_which(talk: Talk) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("gh 3 kh 4 ph 6.8 ammonia 0 temp 24")
    await talk.say("dose gh 7")
    asked = await talk.text("9 g instead of 3")
    assert asked.startswith("9 g of which: calcium chloride dihydrate, magnesium sulfate")
    assert "Nothing is stored yet." in asked


@pytest.mark.parametrize("text", ["is 9 g instead of 3 ok", "9 g instead of 3?", "9 g"])
async def test_a_question_and_a_bare_amount_are_no_deed(planned: Talk, text: str) -> None:
    assert "logged" not in await planned.text(text)


async def test_a_reading_that_was_put_right_is_no_dose(planned: Talk) -> None:
    await planned.say("ph 7.2")
    assert "dosed" not in await planned.text("7.4 instead of 7.2")
