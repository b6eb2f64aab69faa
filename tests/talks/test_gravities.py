"""A bare number about 1: a specific gravity or as many grams, by the tank, else asked."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk


async def test_in_the_sea_two_decimals_are_a_gravity(talk: Talk) -> None:
    """1.020 at 25 °C is about 26.7 g/kg; a gram in the sea is no reading."""
    await talk.say("/tank new Reef 200 l marine")
    await talk.say("/tank new Fern 110 l fresh")
    said = await talk.text("reef salinity 1.02")
    assert said.startswith("Reef: SG 1.02 = salinity 26.7 g/kg")
    assert (await talk.text("salinity 1,02")).startswith("Reef: SG 1.02")


@pytest.mark.parametrize("kind", ["fresh", "marine", "brackish"])
async def test_one_decimal_is_asked_about(talk: Talk, kind: str) -> None:
    await talk.say(f"/tank new Fern 110 l {kind}")
    (asked,) = await talk.say("salinity 1.0")
    assert [button.label for button in asked.buttons][:2] == [
        "salinity 1.000 SG",
        "salinity 1 g/kg",
    ]
    (stored,) = await talk.press(2, asked)
    assert stored.facts["values"][0]["canonical"] == 1.0


async def test_in_fresh_water_two_decimals_are_asked_about(talk: Talk) -> None:
    await talk.say("/tank new Fern 110 l fresh")
    (asked,) = await talk.say("salinity 1.02")
    assert "could be two units" in asked.text
    (stored,) = await talk.press(2, asked)
    assert stored.facts["values"][0]["canonical"] == 1.02
