"""What is asked to be put in and is no animal: what harms is refused, the unknown not vouched for.

The words are ours, by the pattern; that none of it goes in is of the cautions.
"""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk


@pytest.fixture
async def small(talk: Talk) -> Talk:
    await talk.say("/tank new Fern 40 l fresh")
    await talk.say("added 6 cherry shrimp")
    return talk


@pytest.mark.parametrize(
    ("asked", "reason"),
    [
        ("can i put hydrogen peroxide in with the shrimp", "harmful"),
        ("how much hydrogen peroxide for algae", "harmful"),
        ("is peroxide safe for shrimp", "harmful"),
        ("can i put dish soap in", "harmful"),
        ("can i put lemon juice in the tank", "acid"),
        ("can i put bleach in with the shrimp", "bleach"),
        ("can i put vodka in with the shrimp", "substance_unknown"),
        ("can i put purple stuff in my tank", "substance_unknown"),
        ("is coffee safe for shrimp", "substance_unknown"),
    ],
)
async def test_a_thing_is_no_animal_and_gets_a_plain_no(
    small: Talk, asked: str, reason: str
) -> None:
    (reply,) = await small.say(asked)
    assert reply.facts["refused"] == reason
    assert reply.text.startswith("No")
    assert "no animal or plant" not in reply.text
    assert "grams" not in reply.facts


@pytest.mark.parametrize(
    "asked", ["can i put zebra loaches in with the shrimp", "can i put oil catfish in"]
)
async def test_what_may_be_an_animal_stays_one_and_is_vouched_for_by_nothing(
    small: Talk, asked: str
) -> None:
    (reply,) = await small.say(asked)
    assert "I know no animal or plant called" in reply.text
    assert "none of it on my word" in reply.text
    assert "refused" not in reply.facts


async def test_known_animals_are_judged_as_ever(small: Talk) -> None:
    assert "species" in await small.facts("can i put neon tetras in with the shrimp")


@pytest.mark.parametrize("asked", ["thats a lot can i put it all in", "can i put it all in"])
async def test_all_of_it_without_a_plan_is_no_animal(small: Talk, asked: str) -> None:
    (reply,) = await small.say(asked)
    assert reply.facts == {"refused": "no_plan"}
    assert "no plan of mine" in reply.text


async def test_all_of_it_beside_a_plan_is_of_the_plan(small: Talk) -> None:
    await small.say("ph 7 kh 3 ammonia 0 temp 24")
    await small.say("dose kh 5")
    assert "24 h apart" in await small.text("thats a lot can i put it all in")


async def test_animals_that_are_to_come_are_meant_by_them(small: Talk) -> None:
    assert "verdict" in await small.facts("can i put them all in")


async def test_a_plan_may_be_left_halfway(small: Talk) -> None:
    await small.say("ph 7 kh 3 ammonia 0 temp 24")
    await small.say("dose kh 5")
    told = await small.text("what if i stop halfway")
    assert told == await small.text("can i stop")
