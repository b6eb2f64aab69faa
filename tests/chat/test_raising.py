"""A wish to raise KH or pH meets the gate for ammonia before any way, step or example is told."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk
from tests.core.message.test_raise_asked import BUFFER, KH, PH

MORE = [
    "raise ph to 8",
    "how much baking soda",
    "can i add soda ash",
    "should i add buffer",
    "should i add crushed coral",
    "dose kh 7",
]
POISONED = {
    "acid": "kh 0 ph 5.8 ammonia 3 temp 25",
    "ordinary": "kh 5 ph 7.8 ammonia 3 temp 25",
}


@pytest.mark.parametrize("water", POISONED.values(), ids=POISONED)
async def test_nothing_raises_it_while_there_is_ammonia(talk: Talk, water: str) -> None:
    await talk.say("/tank new Fern 120 l fresh")
    await talk.say(water)
    for text in [*PH, *KH, *BUFFER, *MORE]:
        (reply,) = await talk.say(text)
        assert "higher pH would poison the animals" in reply.lines[0].text, text
        assert reply.facts["refused"] == "ammonia", text
        assert "dose kh" not in reply.text, text
        assert "example" not in reply.text, text


async def test_without_a_volume_too_the_gate_is_first(talk: Talk) -> None:
    await talk.say("kh 5 ph 7.8 ammonia 3 temp 25")
    (reply,) = await talk.say("dose kh 7")
    assert reply.facts["refused"] == "ammonia"


async def test_a_way_down_leads_to_no_way_up(talk: Talk) -> None:
    await talk.say("/tank new Fern 120 l fresh")
    await talk.say("kh 3 ph 7.8 ammonia 3 temp 25")
    assert "dose kh" not in await talk.text("how do i lower kh")
    (reply,) = await talk.say("how do i lower ph")
    assert "nothing that raises it now" in reply.lines[0].text
    assert "dose kh" not in reply.text


@pytest.mark.parametrize("text", ["how do i raise the ph", "raise kh", "should i add baking soda"])
async def test_ammonia_that_nobody_measured_is_asked_for_first(talk: Talk, text: str) -> None:
    await talk.say("/tank new Fern 120 l fresh")
    await talk.say("kh 3 ph 7")
    (reply,) = await talk.say(text)
    assert reply.lines[0].text.startswith("Measure ammonia first")


async def test_old_ammonia_stands_in_the_way(talk: Talk) -> None:
    await talk.say("/tank new Fern 120 l fresh")
    await talk.say("kh 3 ph 7.8 ammonia 3 temp 25")
    await talk.wait(days=5)
    await talk.say("kh 3 ph 7.8 temp 25")
    (reply,) = await talk.say("how do i raise kh")
    assert reply.facts["refused"] == "ammonia_old"
    assert "Measure ammonia first" in reply.lines[0].text


async def test_without_ammonia_the_way_is_told(talk: Talk) -> None:
    await talk.say("/tank new Fern 120 l fresh")
    await talk.say("kh 3 ph 7 ammonia 0 temp 24")
    for text in KH:
        assert "KH may rise by 1 °dH a day" in await talk.text(text), text
    for text in PH:
        assert "raise KH a little" in await talk.text(text), text
    for text in BUFFER:
        assert "raises KH" in await talk.text(text), text
