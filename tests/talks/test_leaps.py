"""pH that fell or rose by one within a day is told as what it is, not as a swing; words ours."""

from __future__ import annotations

from typing import Any

import pytest

from tests.chat.harness import Talk

TOLD = "pH fell from 7.4 to 6.2"


async def _fell(talk: Talk, first: str, then: str, **span: float) -> dict[str, Any]:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say(first)
    await talk.wait(**span)
    (reply, *_) = await talk.say(then)
    assert TOLD in reply.text
    assert "swings" not in reply.text
    return {each["id"]: each for each in reply.facts["findings"]}


@pytest.mark.parametrize("hours", [6, 10, 24, 48])
async def test_with_kh_unknown_it_is_to_be_measured(talk: Talk, hours: int) -> None:
    found = await _fell(talk, "ph 7.4", "ph 6.2", hours=hours)
    assert found["ph_fell"]["severity"] == "alarm"
    assert found["ph_fell"]["hours"] == hours
    assert "Measure KH and ammonia" in await talk.text("all good?")
    (steps,) = await talk.say("what now")
    assert steps.facts["emergency"] == "ph_crash"
    assert (await talk.text("whats due")).startswith(f"First Fern: {TOLD}")


async def test_with_little_kh_it_crashes(talk: Talk) -> None:
    found = await _fell(talk, "ph 7.4 kh 2", "ph 6.2 kh 1", days=1)
    assert (found["ph_fell"]["kh"], found["ph_fell"]["thin"]) == (1.0, "yes")


async def test_with_an_older_kh_its_carbon_dioxide_says_what_to_do(talk: Talk) -> None:
    found = await _fell(talk, "ph 7.4 kh 2", "ph 6.2", days=1)
    assert {"ph_fell", "co2_by_older_kh"} <= found.keys()


async def test_with_much_kh_the_readings_do_not_add_up(talk: Talk) -> None:
    found = await _fell(talk, "ph 7.4 kh 6", "ph 6.2 kh 6", hours=10)
    assert {"ph_fell", "contradiction"} <= found.keys()


async def test_after_co2_was_turned_on_it_is_turned_down(talk: Talk) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("ph 7.4")
    await talk.say("co2 on")
    await talk.wait(hours=10)
    (reply, *_) = await talk.say("ph 6.2")
    (fell,) = (each for each in reply.facts["findings"] if each["id"] == "ph_fell")
    assert fell["severity"] == "warn"
    assert "CO2" in reply.text
    await talk.wait(hours=14)
    assert "pH rose" not in await talk.text("ph 7.3")  # it goes off at night


async def test_a_rise_asks_for_ammonia(talk: Talk) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("ph 7.4")
    await talk.wait(hours=10)
    told = await talk.text("ph 8.6")
    assert "pH rose from 7.4 to 8.6" in told
    assert "Test ammonia" in told


@pytest.mark.parametrize(("first", "then"), [("7.4", "6.8"), ("7.4", "8.0")])
async def test_what_a_day_may_do_is_no_leap(talk: Talk, first: str, then: str) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say(f"ph {first}")
    await talk.wait(hours=10)
    assert "between two hours of the day" in await talk.text(f"ph {then}")
