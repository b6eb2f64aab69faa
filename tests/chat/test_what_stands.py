"""What was put in and not tested since is still said when the tank is asked about."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk

CLEAR = "kh 4 gh 8 ph 7.2 ammonia 0 nitrite 0 temp 25"


async def told(talk: Talk, *texts: str) -> None:
    for text in texts:
        await talk.say(text)


@pytest.fixture
async def guppies(talk: Talk) -> Talk:
    await told(talk, "/tank new Fern 100 l fresh", "added 8 guppies", CLEAR)
    return talk


async def test_an_overdose_stands_until_the_water_is_tested(guppies: Talk) -> None:
    """100 g of sodium bicarbonate in 100 L are 33 °dH: 30 mg/L for one, common practice."""
    await guppies.wait(hours=1)
    assert "Too much for one day" in await guppies.text("dosed 100 g baking soda")
    await guppies.wait(hours=20)
    for asked in ("how is fern", "is my water ok"):
        assert (await guppies.text(asked)).startswith("Fern: Too much for one day")
    assert "No new animals" in await guppies.text("can i add otos")
    assert "No new animals" in await guppies.text("can i add fish")
    assert (await guppies.text("should i change water")).startswith("Fern: yes.")
    assert "Add nothing more" not in await guppies.text("kh 30 ph 8.6 ammonia 0")
    assert "Too much for one day" not in await guppies.text("how is fern")


async def test_an_untested_overdose_is_not_spoken_of_for_ever(guppies: Talk) -> None:
    await guppies.wait(hours=1)
    await guppies.say("dosed 100 g baking soda")
    await guppies.wait(days=4)
    assert "Too much" not in await guppies.text("how is fern")


async def test_a_days_step_as_scales_weigh_it_is_no_overdose(guppies: Talk) -> None:
    """2.997 g are 1 °dH in 100 L; the plan says 3 g."""
    assert "Too much" not in await guppies.text("dosed 3 g baking soda")
    await guppies.wait(days=2)
    assert "Too much" in await guppies.text("dosed 4 g baking soda")


async def test_nobody_is_added_where_animals_died_of_late(guppies: Talk) -> None:
    assert "Not now" not in await guppies.text("can i add 6 otos")
    await guppies.say("2 guppies died")
    assert (await guppies.text("can i add 6 otos")).startswith("Not now: animals died")
    await guppies.wait(days=4)
    await guppies.say(CLEAR)
    assert "animals died" not in await guppies.text("can i add 6 otos")


async def test_copper_stands_against_new_animals(guppies: Talk) -> None:
    await told(guppies, "added 10 cherry shrimp", "copper 0.1")
    assert "there is copper" in await guppies.text("can i add otos")


async def test_no_air_is_told_against_nitrite_beside_ammonia_at_a_low_ph(talk: Talk) -> None:
    """At pH 6.6 driving CO2 off frees ammonia (computed with PHREEQC, see the limits)."""
    await told(talk, "/tank new Nano 30 l fresh", "added 3 neon tetras")
    await talk.say("ammonia 2 ph 6.6 kh 4 temp 25")
    for said in ("nitrite 2", "what now", "help nitrite"):
        text = await talk.text(said)
        assert "gasp" in text, said
        assert "aerate" not in text, said


async def test_nitrite_alone_is_told_air(talk: Talk) -> None:
    await told(talk, "/tank new Nano 30 l fresh", "added 3 neon tetras", "ammonia 0 ph 6.6 kh 4")
    assert "aerate" in await talk.text("nitrite 2")
    assert "aerate" in await talk.text("what now")
