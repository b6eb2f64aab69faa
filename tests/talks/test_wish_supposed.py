"""A dose for water that is only supposed, of the value on record that is so high; and the powder
of a plan. Grams by molar mass: 29.96 mg/L of sodium bicarbonate a °dH of KH."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk


@pytest.mark.parametrize(
    "text",
    [
        "if its 8.1 and i want 9 and tank is 120 litres whats the dose",
        "say its 8.1 and i need 9 in 120 l how much",
        "wenn es 8,1 ist und ich 9 will in 120 l, wie viel",
    ],
)
async def test_it_is_of_the_value_on_record(talk: Talk, text: str) -> None:
    await talk.say("/tank new Reef 120 l marine")
    await talk.say("kh 8.1 calcium 430 magnesium 1350")
    facts = await talk.facts(text)
    assert (facts["from"], facts["to"]) == (8.1, 9)
    assert sum(facts["parts"]) == pytest.approx(120 * 0.9 * 29.96e-3, rel=2e-2)
    assert "KH 8.1" in await talk.text("what were my last readings")  # nothing was stored


async def test_two_values_that_are_so_high_are_asked_about(talk: Talk) -> None:
    await talk.say("/tank new Hall 120 l fresh")
    await talk.say("kh 8 ph 8")
    assert "9 of what" in await talk.text("if its 8 and i want 9 how much")
    assert "7 of what" in await talk.text("if its 6 and i want 7 in 120 l whats the dose")


async def test_powder_is_the_salt_of_the_plan(talk: Talk) -> None:
    await talk.say("/tank new Hall 100 l fresh")
    await talk.say("kh 2 ph 7 ammonia 0")
    assert "No number" in await talk.text("if i wanted kh 5 how much powder")  # which, it asks
    await talk.say("how much potassium bicarbonate for kh 5")
    (reply,) = await talk.say("if i wanted kh 4 how much powder")
    assert reply.facts["to"] == 4
    assert "potassium bicarbonate" in reply.text
    assert " g of potassium bicarbonate" not in await talk.text("how much powder for gh 8")
