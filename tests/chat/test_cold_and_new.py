"""Care that hangs on what is known of the water: its cold, its age, and what was refused before."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk


@pytest.mark.parametrize(
    ("told", "cold"), [("temp 5", True), ("pond froze over", True), ("temp 12", False)]
)
async def test_no_food_in_cold_water(talk: Talk, told: str, *, cold: bool) -> None:
    await talk.say(told)
    (fed,) = await talk.say("can i feed my koi")
    assert fed.text.startswith("No food") is cold


async def test_a_tank_known_to_be_new_is_not_proved_before_anything_speaks_for_fish(
    talk: Talk,
) -> None:
    await talk.say("tank set up 2 days ago 125 l")
    await talk.say("ph 7 gh 6 temp 25 ammonia 0 nitrite 0")
    assert (await talk.text("can i add 10 neons")).startswith("Not proved")


async def test_what_went_in_after_bleach_was_refused_is_a_call(talk: Talk) -> None:
    await talk.say("can i put rocks back after bleach")
    (told,) = await talk.say("already put them in")
    assert told.facts["emergency"] == "bleach"


async def test_no_buffer_is_named_where_carbon_dioxide_is_what_lowers_ph(talk: Talk) -> None:
    told = await talk.text("150l planted kh 3 ph 5.9")
    assert "CO2 is about" in told
    assert "dose kh" not in told


async def test_a_salt_that_raises_none_is_said_to(talk: Talk) -> None:
    await talk.say("/tank new Fern 60 l fresh")
    for _ in range(2):
        told = await talk.text("can i use epsom salt to raise kh")
        assert "raises no KH" in told
        await talk.say("kh 2 gh 4")
