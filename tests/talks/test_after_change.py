"""What a change of the last day means for what is asked after it.

Shares and moments only: what was measured before a change of a quarter or more tells of water that
is gone. Half of the water at once is the most of first aid (common practice, the limits).
"""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk


@pytest.fixture
async def fern(talk: Talk) -> Talk:
    await talk.say("/tank new Fern 200 l fresh")
    return talk


@pytest.mark.parametrize("asked", ["c'est urgent?", "what now", "was tun"])
async def test_a_change_after_the_deaths_is_not_their_cause(fern: Talk, asked: str) -> None:
    await fern.say("3 fish dead at 08:00")
    await fern.say("ph 5.5 kh 0")
    await fern.say("j'ai changé 20 litres")
    told = await fern.text(asked)
    assert "the likely cause: was it dechlorinated" not in told
    assert "pH 5.5 with KH 0: the buffer is used up and pH has crashed, the likely cause" in told


async def test_a_change_before_the_deaths_may_be_their_cause(fern: Talk) -> None:
    await fern.say("changed 20 l")
    await fern.wait(hours=1)
    assert "You changed 10 % within a day, the likely cause" in await fern.text("3 fish dead")


async def test_soft_water_on_purpose_has_not_crashed(talk: Talk) -> None:
    await talk.say("/tank new Rio 200 l blackwater")
    await talk.say("3 fish dead")
    await talk.say("ph 5.5 kh 0")
    assert "has crashed" not in await talk.text("what now")


async def test_after_most_of_the_water_no_more_is_changed_before_a_test(fern: Talk) -> None:
    await fern.say("ammonia 2 ph 8")
    await fern.say("changed 70%")
    told = await fern.text("what now")
    assert "70 % was changed within a day: no more before a new test." in told
    assert "Change a tenth" not in told
    assert "70 %" in await fern.text("should i change more water")
    await fern.wait(hours=2)
    await fern.say("ammonia 1 ph 8")
    assert "Change a tenth" in await fern.text("what now")


async def test_after_a_small_change_more_may_be_changed(fern: Talk) -> None:
    await fern.say("ammonia 2 ph 8")
    await fern.say("changed 20%")
    assert "Change a tenth" in await fern.text("what now")


@pytest.mark.parametrize("asked", ["is it safe tonight", "is my water ok", "is nitrite safe now"])
async def test_readings_before_a_big_change_do_not_tell_whether_it_is_safe(
    fern: Talk, asked: str
) -> None:
    await fern.say("nitrite 2 ph 7.5")
    await fern.say("changed 50%")
    told = await fern.text(asked)
    assert told.startswith("Fern: a new test must tell: all that was measured is from before")
    assert "take it as not safe" in told
    await fern.wait(hours=1)
    await fern.say("nitrite 0.8")
    assert "a new test must tell" not in await fern.text(asked)


async def test_a_small_change_leaves_the_readings_as_they_are(fern: Talk) -> None:
    await fern.say("nitrite 2 ph 7.5")
    await fern.say("changed 10%")
    assert "a new test must tell" not in await fern.text("is my water ok")
