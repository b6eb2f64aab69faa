"""A number alone is asked about as the value told last; the words are ours, no source."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk


@pytest.mark.parametrize(
    "line",
    [
        "now its 45",
        "45",
        "und heute 45",
        "today 45",
        "it's 45",
        "maintenant 45",
        "teraz 45",
        "back at 45",
    ],
)
async def test_it_is_offered_as_the_value_told_last(talk: Talk, line: str) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("no3 40")
    (reply,) = await talk.say(line)
    assert "Did you mean nitrate 45?" in reply.text
    (stored,) = await talk.press(1, reply)
    assert "nitrate 45" in stored.text


async def test_it_is_of_the_tank_that_was_told(talk: Talk) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("/tank new Quarry 240 l fresh")
    await talk.say("kh 12")
    await talk.say("/tank Fern")
    assert "Did you mean Quarry: KH 11?" in await talk.text("11")


async def test_of_two_values_none_is_guessed(talk: Talk) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("kh 4 ph 7")
    assert "Did you mean" not in await talk.text("now 5")


async def test_a_number_that_it_cannot_have_is_not_offered(talk: Talk) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("ph 7")
    assert "Did you mean" not in await talk.text("45")


@pytest.mark.parametrize("line", ["how big a change", "how big should my water change be"])
async def test_how_large_a_change_asks_for_its_share(talk: Talk, line: str) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("kh 4 gh 6 ph 7 temp 25")
    assert "I do not know the new water" in await talk.text(line)
