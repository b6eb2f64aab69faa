"""How much is changed while there is ammonia: it is named, with a small share, limit or no limit.

First aid's shares are common practice, no source; what a known source bears is the planner's.
"""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk

HOW_MUCH = [
    "how much water should i change",
    "how much water do i change",
    "should i change water now",
    "do i need to change water",
    "wie viel wasser soll ich wechseln",
    "combien d'eau dois je changer",
    "cuanta agua cambio",
    "quanta água troco",
    "quanta acqua cambio",
    "hoeveel water moet ik verversen",
    "ile wody podmienić",
    "hur mycket vatten ska jag byta",
]
WATERS = {
    "acid": "ph 6.6 kh 2 ammonia 1 temp 25",
    "no buffer": "ph 6 kh 0 ammonia 1 temp 25",
    "trace": "ph 7 kh 5 ammonia 0.25 temp 25",
    "no ph": "kh 5 ammonia 0.25 temp 25",
}


@pytest.mark.parametrize("water", WATERS.values(), ids=WATERS)
async def test_ammonia_under_its_limit_still_asks_for_a_little(talk: Talk, water: str) -> None:
    await talk.say("/tank new Fern 120 l fresh")
    await talk.say("added 6 neon tetras")
    await talk.say(water)
    for text in HOW_MUCH:
        told = await talk.text(text)
        assert "mmonia" in told.splitlines()[0], text
        assert "top feeding" in told, text
        assert "quarter" in told, text
        assert "asks for a water change" not in told, text
        assert "filter's food" not in told, text


async def test_right_after_a_refusal_for_it_the_change_is_told(talk: Talk) -> None:
    await talk.say("/tank new Fern 120 l fresh")
    await talk.say(WATERS["acid"])
    assert (await talk.facts("dose kh 7"))["refused"] == "ammonia"
    told = await talk.text("how much water should i change")
    assert told.startswith("Fern: ammonia 1 mg/L: stop feeding")
    assert "filter's food" in told  # no animal is on record


async def test_a_known_source_is_bound_by_the_planner(talk: Talk) -> None:
    """A source that would lift pH is given no more than a plan of its share allows."""
    await talk.say("/tank new Fern 120 l fresh")
    await talk.say(WATERS["acid"])
    await talk.say("/source tap ph 7.6 kh 8 gh 10 temp 25 chlorine 0")
    (reply,) = await talk.say("how much water should i change")
    assert "ammonia 1 mg/L" in reply.lines[0].text
    most = reply.facts["largest_safe_share"]
    assert 0.05 <= most <= 0.25
    planned = await talk.facts("what if i change 50%")
    assert most <= planned["largest_safe_share"] + 1e-9
    assert "small changes, a day apart, raise it" not in reply.text


async def test_an_unknown_source_is_asked_for_after_the_share(talk: Talk) -> None:
    await talk.say("/tank new Fern 120 l fresh")
    await talk.say(WATERS["acid"])
    (reply,) = await talk.say("how much can i change")
    assert "ammonia 1 mg/L" in reply.lines[0].text
    assert "tenth to a quarter" in reply.lines[1].text
    assert "/source" in reply.text


async def test_old_ammonia_is_measured_first(talk: Talk) -> None:
    await talk.say("/tank new Fern 120 l fresh")
    await talk.say(WATERS["acid"])
    await talk.wait(days=5)
    await talk.say("kh 5 ph 7")
    told = await talk.text("how much water should i change")
    assert told.startswith("Fern: Measure ammonia first")
    assert "tenth" in told


@pytest.mark.parametrize("water", ["ph 7 kh 5 ammonia 0 temp 25", "ph 7 kh 5 temp 25"])
async def test_without_ammonia_the_routine_stands(talk: Talk, water: str) -> None:
    await talk.say("/tank new Fern 120 l fresh")
    await talk.say(water)
    await talk.wait(days=4)
    await talk.say("ph 7 kh 5")
    assert "asks for a water change now" in await talk.text("how much water should i change")
