"""Whether a plan is needed at all: where only a wish asks for it, a steady tank is left alone."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk

ASKED = [
    "do i need to", "do i have to", "is it really necessary?", "what happens if i dont",
    "what if i do nothing", "can i just leave it", "muss das sein?", "was wenn ich es lasse",
    "et si je ne fais rien ?", "hace falta?", "e se eu não fizer nada?", "serve davvero?",
    "moet dat echt?", "czy to konieczne?", "behövs det verkligen?",
]  # fmt: skip


@pytest.mark.parametrize("line", ASKED)
async def test_what_a_low_value_asks_for_is_needed(talk: Talk, line: str) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("kh 3 ph 7.2 ammonia 0 nitrite 0 temp 24")
    await talk.say("dose kh 5")
    (reply,) = await talk.say(line)
    assert reply.text.startswith("It is needed"), line
    assert [each["id"] for each in reply.facts["findings"]] == ["low_kh"], line
    await talk.say("done")
    assert "logged 2.7 g" in talk.last[0].text


@pytest.mark.parametrize("line", ASKED)
async def test_what_only_a_wish_asks_for_is_not(talk: Talk, line: str) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("kh 5 ph 7.2 ammonia 0 nitrite 0 temp 24")
    await talk.say("dose kh 7")
    told = await talk.text(line)
    assert told.startswith("It is not needed"), line
    assert "unknown" not in told, line


async def test_what_was_never_measured_is_no_reason_to_call_it_well(talk: Talk) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("kh 5 ph 7.2 temp 24")
    await talk.say("dose kh 7")
    assert "Ammonia and nitrite are unknown" in await talk.text("do i need to")


async def test_of_a_change_it_goes_by_what_the_change_is_for(talk: Talk) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("ph 7.2 kh 8 gh 10 no3 80 temp 24 ammonia 0")
    await talk.say("/source tap ph 7.6 kh 8 gh 10 no3 5 temp 23")
    await talk.say("get nitrate under 40")
    (reply,) = await talk.say("do i have to")
    assert [each["id"] for each in reply.facts["findings"]] == ["nitrate"]


async def test_without_a_plan_nothing_is_meant(talk: Talk) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("kh 3")
    assert "needed" not in await talk.text("do i need to")
