"""A value that leaves its place within minutes: it is doubted, and poison does not wait for it."""

from __future__ import annotations

from tests.chat.harness import Talk


async def test_a_ph_that_jumps_within_the_minute_is_doubted(talk: Talk) -> None:
    await talk.say("/tank new Fern 110 l fresh")
    await talk.say("ph 6.5 kh 2")
    said = await talk.text("ph 8.5 kh 2")
    assert "pH went from 6.5 to 8.5 with nothing logged in between: retest" in said
    assert "look at KH" not in said
    facts = await talk.facts("dose kh 4")
    assert facts["refused"] == "jumped"
    assert "grams" not in facts


async def test_the_same_again_is_believed(talk: Talk) -> None:
    await talk.say("/tank new Fern 110 l fresh")
    await talk.say("ph 6.5 kh 2 ammonia 0 temp 25")
    await talk.say("ph 8.5")
    await talk.wait(minutes=5)
    assert "went from" not in await talk.text("ph 8.5")
    assert "grams" in await talk.facts("dose kh 3")


async def test_a_slow_move_is_the_day_s_swing(talk: Talk) -> None:
    await talk.say("/tank new Fern 110 l fresh")
    await talk.say("ph 7.0")
    await talk.wait(hours=7)
    assert "nothing logged in between" not in await talk.text("ph 7.8")


async def test_the_water_of_an_ammonia_alarm_has_the_kh_that_is_read_again(talk: Talk) -> None:
    await talk.say("/tank new Fern 110 l fresh")
    await talk.say("kh 2 ph 8.2 ammonia 0")
    said = await talk.text("kh 8 ph 8.2 ammonia 3")
    assert "change up to a quarter (dechlorinated, same KH)" in said
    assert "retest before doing anything" not in said
    assert "retest it first. The new water should have what it then reads; no dose by it" in said


async def test_another_jump_beside_it_does_not_hold_it_up(talk: Talk) -> None:
    await talk.say("/tank new Fern 110 l fresh")
    await talk.say("ph 6.5 ammonia 0")
    said = await talk.text("ph 8.2 ammonia 3")
    assert "pH went from 6.5 to 8.2" in said
    assert "what is urgent does not wait for it" in said
