"""What is told to be in behind a plan and may be no part of it: nothing is logged on a guess.

Grams by molar mass (29.96 mg/L of sodium bicarbonate a °dH, from the formula weight 84.007).
"""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk

A_PART = 90 * 29.96e-3


@pytest.fixture
async def two(talk: Talk) -> Talk:
    """A plan in two parts: KH 2 to 4 in 90 L."""
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("kh 2 ammonia 0 ph 7")
    await talk.say("how much baking soda for kh 4")
    return talk


async def nothing_in(talk: Talk) -> bool:
    """Whether no dose is on record."""
    return "bicarbonate" not in await talk.text("what did i dose")


@pytest.mark.parametrize("text", ["its 20 g in 500 ml", "20 g per 500 ml", "i put 20 g in 500 ml"])
async def test_a_strength_is_no_deed(two: Talk, text: str) -> None:
    facts = await two.facts(text)
    assert facts["solution"]["a_litre"] == pytest.approx(40.0)
    assert facts["solution"]["millilitres"] == pytest.approx(A_PART / 40e-3, rel=2e-3)
    assert await nothing_in(two)


async def test_what_can_be_no_solution_is_asked_about(two: Talk) -> None:
    assert "How much of what" in await two.text("its 1 g in 1 l")
    assert await nothing_in(two)


@pytest.mark.parametrize("text", ["put in 2.7 g in 90 l", "2.7 g in"])
async def test_so_much_in_the_tank_is_one(two: Talk, text: str) -> None:
    (event,) = (await two.facts(text))["events"]
    assert event["grams"] == pytest.approx(2.7)
