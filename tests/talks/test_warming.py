"""The warmth of new water: hot and cold mixed, and how warm a change must be."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.advice.warming import coldest_safe, hot_water
from tests.chat.harness import Talk


@given(
    litres=st.floats(0.5, 500.0),
    cold=st.floats(1.0, 30.0),
    warmer=st.floats(0.5, 60.0),
    share=st.floats(0.0, 1.0),
)
def test_the_heat_of_both_adds_up(litres: float, cold: float, warmer: float, share: float) -> None:
    hot = cold + warmer
    wanted = cold + share * warmer
    needed = hot_water(litres, wanted, cold, hot)
    assert needed is not None
    assert (needed * hot + (litres - needed) * cold) / litres == pytest.approx(wanted)


@given(tank=st.floats(15.0, 32.0), share=st.floats(0.01, 1.0))
def test_the_coldest_water_cools_by_just_the_step(tank: float, share: float) -> None:
    mixed = tank * (1.0 - share) + coldest_safe(tank, share, 2.0) * share
    assert tank - mixed == pytest.approx(2.0)


@pytest.mark.parametrize(
    "text",
    [
        "how much hot water for 30 l at 25 from 12 and 55",
        "how much hot water for 30 litres to 25 c with cold 12 and hot 55",
        "how much hot water do i need for 30 l of 77 f from 53.6f and 131f",
    ],
)
async def test_how_much_hot_water(talk: Talk, text: str) -> None:
    """30 L of 25 °C from 12 and 55: 30 · 13 / 43 = 9.07 L hot, by hand."""
    (reply,) = await talk.say(text)
    assert reply.facts["hot_litres"] == pytest.approx(9.07, abs=0.01)
    assert "scalds" in reply.text


async def test_hot_water_that_cannot_be_is_said_kindly(talk: Talk) -> None:
    assert "No mix" in await talk.text("how much hot water for 30 l at 60 from 12 and 55")
    assert "Send for example" in await talk.text("how much hot water?")


async def test_a_cold_tap_is_told_how_warm_it_must_be(talk: Talk) -> None:
    await talk.say("/tank new Fern 100 l fresh")
    await talk.say("kh 5 gh 7 ph 7.2 temp 26 ammonia 0")
    await talk.say("/source tap ph 7.4 kh 5 gh 7 temp 12 total chlorine 0")
    (reply,) = await talk.say("what if i change 40%")
    assert reply.facts["new_water_from"] == pytest.approx(26 - 2 / 0.4)
    assert "Warm the new water to 21 °C" in reply.text


async def test_unmeasured_chloramine_is_told_where_it_binds(talk: Talk) -> None:
    """4 mg/L of chloramine leave 0.79 mg/L ammonia as N; at pH 8.4, 26 °C a seventh is NH3."""
    await talk.say("/tank new Quarry 240 l fresh")
    await talk.say("kh 12 gh 12 ph 8.6 temp 27 ammonia 0")
    await talk.say("/source tap ph 8.6 kh 12 gh 12 temp 27")
    (reply,) = await talk.say("what if i change 60%")
    assert 0.0 < reply.facts["largest_if_chloramine"] < 0.6
    assert "Chloramine in the tap" in reply.text
    await talk.say("/source tap total chlorine 0")
    (measured,) = await talk.say("what if i change 60%")
    assert "largest_if_chloramine" not in measured.facts
    assert "Dechlorinate" not in measured.text
    (pure,) = await talk.say("what if i change 5% with ro")
    assert "Dechlorinate" not in pure.text
