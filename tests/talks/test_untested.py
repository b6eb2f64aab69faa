"""What was done since the last test makes its verdict none; what counts is common practice."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk

OK = "Change nothing for it"


async def with_readings(talk: Talk, kind: str = "fresh") -> None:
    await talk.say(f"/tank new Fern 90 l {kind}")
    salt = " salinity 35" if kind == "marine" else ""
    await talk.say(f"kh 6 ph 7.4 ammonia 0 nitrite 0 temp 25 gh 8{salt}")


@pytest.mark.parametrize(
    "deed",
    ["changed 60%", "dosed 5 g epsom salt", "lost 2 neons", "added 40 guppies", "cleaned filter"],
)
@pytest.mark.parametrize("hours", [0, 50])
async def test_no_verdict_stands_on_readings_of_before(talk: Talk, deed: str, hours: int) -> None:
    await with_readings(talk)
    await talk.say(deed)
    await talk.wait(hours=hours)
    answer = await talk.text("is the water ok")
    assert OK not in answer
    assert "est again" in answer or "tested before it" in answer


async def test_a_test_of_the_same_moment_ends_it_where_it_was_told_later(talk: Talk) -> None:
    await with_readings(talk)
    await talk.say("dosed 5 g epsom salt")
    await talk.say("kh 6 ph 7.4 ammonia 0 nitrite 0 temp 25 gh 9")
    assert OK in await talk.text("is the water ok")


async def test_salt_water_for_a_top_up_moves_salinity(talk: Talk) -> None:
    await with_readings(talk, "marine")
    await talk.say("topped up with salt water")
    assert "topped up" in await talk.text("is the salinity ok")


@pytest.mark.parametrize("deed", ["changed 10%", "fed", "added 3 neons"])
async def test_small_deeds_leave_the_verdict(talk: Talk, deed: str) -> None:
    await with_readings(talk)
    await talk.say(deed)
    assert OK in await talk.text("is the water ok")


async def test_a_salt_is_told_with_what_it_moves(talk: Talk) -> None:
    await with_readings(talk)
    await talk.say("dosed 5 g epsom salt")
    answer = await talk.text("is my gh ok")
    assert OK not in answer
    assert "GH +" in answer
