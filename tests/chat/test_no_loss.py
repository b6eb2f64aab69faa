"""Losses that are none of the own animals now are on no record."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk


@pytest.mark.parametrize(
    "text",
    [
        "dog peed in the tank",
        "my phone died in the tank room",
        "ex lost 3 fish in hers",
        "last year i lost 10 neons",
        "letztes jahr 3 guppys verloren",
    ],
)
async def test_no_animal_of_the_tank_is_lost(talk: Talk, text: str) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    replies = await talk.say(text)
    assert all("events" not in reply.facts for reply in replies)


@pytest.mark.parametrize("text", ["lost 3 neons", "lost 3 neons i bought last year", "dog en neon"])
async def test_an_own_animal_is(talk: Talk, text: str) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    (reply, *_) = await talk.say(text)
    assert reply.facts["events"][0]["kind"] == "lost"
