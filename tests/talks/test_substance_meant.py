"""`i meant bicarb` right after a dose: the same grams, of what was meant."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk


@pytest.mark.parametrize(
    "said",
    [
        "i meant bicarb", "meant bicarb", "bicarb i mean", "no, baking soda", "ich meinte natron",
        "nein, natron", "non, bicarbonate", "no, bicarbonato", "nee, zuiveringszout",
        "nie, soda oczyszczona", "nej, bikarbonat",
    ],
)  # fmt: skip
async def test_it_is_that_substance(talk: Talk, said: str) -> None:
    """25 g of sodium bicarbonate in 110 L are about 7.6 °dH, by hand: 25 / 84.01 / 110 x 2804."""
    await talk.say("/tank new Fern 110 l fresh")
    await talk.say("put in 25 g soda")
    (reply,) = await talk.say(said)
    (event,) = reply.facts["events"]
    assert (event["substance"], event["grams"]) == ("sodium bicarbonate", 25.0)
    assert reply.facts["findings"][0]["kh"] == pytest.approx(7.6, abs=0.05)


@pytest.mark.parametrize("said", ["baking soda", "baking soda?", "no baking soda"])
async def test_a_bare_name_puts_nothing_right(talk: Talk, said: str) -> None:
    await talk.say("/tank new Fern 110 l fresh")
    await talk.say("put in 25 g gypsum")
    assert "Corrected" not in await talk.text(said)


async def test_after_a_reading_it_is_no_correction(talk: Talk) -> None:
    await talk.say("/tank new Fern 110 l fresh")
    await talk.say("kh 4")
    assert "Corrected" not in await talk.text("i meant bicarb")
