"""Each of two values put in the tank that it is of, in one sentence; the words are ours."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk

SAID = "sorry the kh 6 was the shrimp one, kh 2 was the big one"


async def two(talk: Talk) -> None:
    await talk.say("/tank new big 240 l")
    await talk.say("/tank new shrimp 30 l")


@pytest.mark.parametrize("lines", [("shrimp: kh 2", "big: kh 6"), ("shrimp: kh 2\nbig: kh 6",)])
async def test_both_go_where_they_belong(talk: Talk, lines: tuple[str, ...]) -> None:
    await two(talk)
    for line in lines:
        await talk.say(line)
    moved = await talk.say(SAID)
    assert not any("went from" in reply.text for reply in moved)
    assert "KH 6 " in (await talk.say("last kh of shrimp"))[0].text
    assert "KH 2 " in (await talk.say("last kh of big"))[0].text


async def test_what_is_there_already_is_not_moved(talk: Talk) -> None:
    await two(talk)
    await talk.say("shrimp: kh 6")
    await talk.say("big: kh 2")
    await talk.say(SAID)
    assert "KH 6 " in (await talk.say("last kh of shrimp"))[0].text
    assert "KH 2 " in (await talk.say("last kh of big"))[0].text
