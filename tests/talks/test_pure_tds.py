"""TDS of pure water: common practice, no source."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk


@pytest.fixture
async def fern(talk: Talk) -> Talk:
    await talk.say("/tank new Fern 90 l fresh")
    return talk


@pytest.mark.parametrize(
    ("line", "first"),
    [
        ("my rodi tds 15 is that bad", "Too much: behind a resin"),
        ("rodi tds 12 ok?", "Too much: behind a resin"),
        ("osmosewasser tds 12 ok?", "TDS 12 is usual for plain RO"),
        ("l'eau osmosée tds 12 c'est bon?", "TDS 12 is usual for plain RO"),
        ("agua de osmosis tds 12 está bien?", "TDS 12 is usual for plain RO"),
        ("ro tds 80 ok?", "Too much for RO"),
        ("rodi tds 1 ok?", "TDS 1 is as pure as it should be"),
    ],
)
async def test_pure_water_is_judged_as_such(fern: Talk, line: str, first: str) -> None:
    assert (await fern.text(line)).startswith(first)


@pytest.mark.parametrize(
    "line", ["is tds 300 bad", "tds 300", "rodi and tap tds 120", "changed 20% with ro tds 5"]
)
async def test_other_water_is_not(fern: Talk, line: str) -> None:
    assert "resin" not in await fern.text(line)


async def test_a_high_ph_of_the_sea_is_warned_of(talk: Talk) -> None:
    await talk.say("/tank new Lagoon 150 l marine")
    assert "stop lime, soda" in await talk.text("ph 8.7 after kalk")
    assert "pH 8.7 is high" in await talk.text("is that bad")
    assert "Not now: pH 8.7 is high already" in await talk.text("can i dose kalkwasser")


async def test_lime_in_the_sea_is_answered_for_the_sea(talk: Talk) -> None:
    await talk.say("/tank new Lagoon 150 l marine")
    await talk.say("kh 7 ph 8.1")
    assert "dripped in at night" in await talk.text("can i dose kalkwasser")
    await talk.say("/tank new Fern 90 l fresh")
    assert "Not in a tank with animals" in await talk.text("can i dose kalkwasser")
