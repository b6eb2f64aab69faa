"""How much of one water is asked for a value: its share of a mix with RO, by the two KH."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk


@pytest.mark.parametrize(
    "line",
    [
        "how much tap in 100 l for kh 3",
        "how much tap water in 100 l for kh 3",
        "wie viel leitungswasser auf 100 l für kh 3",
    ],
)
async def test_it_is_a_blend_and_no_dose(talk: Talk, line: str) -> None:
    await talk.say("/tank new disc 400 l fresh")
    await talk.say("kh 1 gh 3 ph 6.5 no3 10 temp 28 nh3 0")
    await talk.say("tap kh 9 gh 12 ph 7.5 no3 8")
    (reply,) = await talk.say(line)
    assert "grams" not in reply.facts
    shares = {part["source"]: part["share"] for part in reply.facts["parts"]}
    assert shares["tap"] == pytest.approx(3 / 9)


async def test_an_unmeasured_tap_is_asked_for(talk: Talk) -> None:
    await talk.say("/tank new disc 400 l fresh")
    await talk.say("kh 1 gh 3 ph 6.5 no3 10 temp 28 nh3 0")
    (reply,) = await talk.say("how much tap in 100 l for kh 3")
    assert "grams" not in reply.facts
    assert "KH" in reply.text
    assert "tap" in reply.text


async def test_soda_is_a_dose(talk: Talk) -> None:
    await talk.say("/tank new disc 400 l fresh")
    await talk.say("kh 2 gh 3 ph 6.5 no3 10 temp 28 nh3 0")
    await talk.say("tap kh 9 gh 12 ph 7.5 no3 8")
    assert "grams" in await talk.facts("how much soda in 100 l for kh 3")
