"""The chat's clock and units."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk


@pytest.mark.parametrize(
    ("text", "zone"),
    [
        ("/zone Europe/Lisbon", "Europe/Lisbon"),
        ("/zone europe/lisbon", "Europe/Lisbon"),
        ("/zone Lisbon", "Europe/Lisbon"),
        ("/zone new york", "America/New_York"),
        ("my time zone is Asia/Kathmandu", "Asia/Kathmandu"),
    ],
)
async def test_a_zone_by_name(talk: Talk, text: str, zone: str) -> None:
    assert zone in await talk.text(text)
    assert zone in await talk.text("/settings")


async def test_a_zone_from_the_clock_on_the_wall(talk: Talk) -> None:
    assert "17:30 now" in await talk.text("it is 17:30 here")
    assert "Asia/Kolkata" in await talk.text("/settings")


async def test_an_unknown_zone_changes_nothing_and_offers_near_ones(talk: Talk) -> None:
    text = await talk.text("/zone Europe/Lisbonne")
    assert "Europe/Lisbon" in text
    assert "UTC" in await talk.text("/settings")
    assert "nothing was changed" in await talk.text("it is 25:00 here")


async def test_units(talk: Talk) -> None:
    assert "°F" in await talk.text("/settings fahrenheit")
    assert "imperial" in await talk.text("/settings uk gallons")
    assert "90.9 L" in await talk.text("/tank new Fern 20 gal fresh")
    assert "°C" in await talk.text("/settings celsius us gallons")


@pytest.mark.parametrize("text", ["/start", "/help", "/privacy", "/settings"])
async def test_the_lines_that_always_work_are_short(talk: Talk, text: str) -> None:
    answer = await talk.text(text)
    assert 0 < len(answer.splitlines()) <= 10


async def test_help_uses_the_keepers_own_tanks(talk: Talk) -> None:
    await talk.say("/tank new Basin 90 l fresh")
    assert "basin: ph 7.2" in await talk.text("/help")


@pytest.mark.parametrize("text", ["/export", "forget me"])
async def test_a_line_that_is_not_built_says_so_and_stores_nothing(talk: Talk, text: str) -> None:
    (reply,) = await talk.say(text)
    assert "not built yet" in reply.text
    assert await talk.app.names(talk.address) == []
