"""A mix of waters that was just told: its litres and a change with it. By amount: of a tap with GH
14 and RO, GH 5 is 5/14 tap."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk


@pytest.fixture
async def mixed(talk: Talk) -> Talk:
    """Two waters mixed to GH 5, for a tank of 200 L."""
    await talk.say("/tank new Disc 200 l fresh")
    await talk.say("kh 6 gh 10 ph 7.4 temp 25 no3 30 ammonia 0")
    await talk.say("/source tap ph 7.5 kh 8 gh 14 no3 20 temp 25 chlorine 0 total chlorine 0")
    facts = await talk.facts("how much ro and tap for gh 5")
    assert facts["parts"][0] == {"source": "tap", "share": pytest.approx(5 / 14)}
    return talk


@pytest.mark.parametrize("line", ["50 l", "in 50 l", "and for 50 l", "für 50 l", "pour 50 l"])
async def test_the_litres_of_each(mixed: Talk, line: str) -> None:
    (reply,) = await mixed.say(line)
    assert reply.facts["volume_l"] == 50.0
    assert "17.9 L tap" in reply.text


@pytest.mark.parametrize(
    "line",
    [
        "can i change 20% with that",
        "what if i change 20% with this mix",
        "was wenn ich 20% damit wechsle",
    ],
)
async def test_a_change_with_it_is_of_that_mix(mixed: Talk, line: str) -> None:
    facts = await mixed.facts(line)
    assert facts["share"] == pytest.approx(0.2)
    assert {each["source"] for each in facts["source_parts"]} == {"tap", "RO"}
    assert facts["at_once"]["gh"] == pytest.approx(0.8 * 10 + 0.2 * 5, abs=0.02)


async def test_after_something_else_it_is_the_tap(mixed: Talk) -> None:
    await mixed.say("gh 10")
    facts = await mixed.facts("what if i change 20% with that")
    assert facts["at_once"]["gh"] == pytest.approx(0.8 * 10 + 0.2 * 14, abs=0.02)
