"""`the discus one temp 29`: a tank by who lives there, never the one in use; words ours."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk


@pytest.mark.parametrize(
    "line",
    [
        "the discus one temp 29", "in the discus one temp 29", "the shrimp one: ph 7",
        "my betta one ph 7", "das mit den diskus temp 29", "celui des discus temp 29",
        "el de los discos temp 29", "quello dei discus temp 29",
    ],
)  # fmt: skip
async def test_a_tank_that_is_not_on_record_is_asked_about(talk: Talk, line: str) -> None:
    await talk.say("/tank new Fern 60 l fresh")
    replies = await talk.say(line)
    assert len(replies) == 1
    assert "values" not in replies[0].facts
    assert "stored" in replies[0].text


async def test_animals_beside_a_reading_are_asked_about_still(talk: Talk) -> None:
    await talk.say("/tank new Fern 60 l fresh")
    first, second = await talk.say("6 neons temp 25")
    assert first.facts["values"][0]["canonical"] == 25.0
    assert "6 neons" in second.text


@pytest.mark.parametrize(
    "line", ["puse aire", "ya puse aire", "ho messo aria", "j'ai mis un bulleur", "added air"]
)
async def test_air_that_went_in_is_left_on(talk: Talk, line: str) -> None:
    await talk.say("/tank new Fern 60 l fresh")
    await talk.say("fish are gasping at the surface")
    (reply,) = await talk.say(line)
    assert "Leave it on" in reply.text
    assert "events" not in reply.facts
