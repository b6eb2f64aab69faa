"""In a group people talk of other things too: only what is surely of a tank is stored."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk


@pytest.fixture
async def group(talk: Talk) -> Talk:
    talk.group = True
    await talk.say("/tank new Fern 100 l fresh")
    return talk


@pytest.mark.parametrize(
    "text",
    [
        "dosed my kid 5 ml ibuprofen",
        "moved 2 meetings to friday",
        "added 2 beers to the fridge",
        "added 3 guests to the list",
        "lost my keys",
        "fed the cat",
        "dosed 5 ml blue stuff",
    ],
)
async def test_talk_is_not_stored(group: Talk, text: str) -> None:
    assert await group.say(text) == []


@pytest.mark.parametrize(
    "text",
    [
        "fed the fish",
        "added 3 guppies",
        "dosed 5 g baking soda",
        "fern: dosed 5 ml blue stuff",
        "fern: added 3 blobs",
        "cleaned the filter",
        "changed 30%",
    ],
)
async def test_what_is_of_a_tank_is_stored(group: Talk, text: str) -> None:
    (reply,) = await group.say(text)
    assert reply.facts["events"]


async def test_a_product_that_is_kept_and_a_mention_are_ours(group: Talk) -> None:
    await group.say("my tonic: 5 ml per 100 l raises gh 1", addressed=True)
    (reply,) = await group.say("dosed 5 ml of my tonic")
    assert reply.facts["events"]
    (reply,) = await group.say("added 3 blobs", addressed=True)
    assert reply.facts["events"]
