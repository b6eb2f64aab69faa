"""A change that is refused: the water of the changes proposed in its place."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk


async def hard_tap(talk: Talk) -> None:
    await talk.say("/tank new Fern 100 l fresh")
    await talk.say("/source tap ph 7.6 kh 14 gh 20 no3 5 temp 25")
    await talk.say("ph 6.8 kh 3 gh 4 no3 80 temp 25 ammonia 0")


async def test_the_water_told_is_that_of_the_changes_proposed(talk: Talk) -> None:
    await hard_tap(talk)
    (reply,) = await talk.say("what if i change 40%")
    steps, first, end = (reply.facts[key] for key in ("steps", "first", "end"))
    # By amounts alone: 3 + (14 - 3) · share after the first, as far as the whole at the end.
    assert first["kh"] == pytest.approx(3 + 11 * steps[0], abs=1e-6)
    whole = 1.0 - (1.0 - steps[0]) ** len(steps)
    assert 0.4 <= whole <= 0.4 + 0.01 * len(steps)
    assert end["kh"] == pytest.approx(3 + 11 * whole, abs=1e-6)
    assert end["nitrate"] == pytest.approx(80 - 75 * whole, abs=1e-6)
    assert "After the first, at once:" in reply.text
    assert "40 % at once:" not in reply.text.split("\n", 1)[1]
    assert "40 % at once: pH" in await talk.text("more")


async def test_more_changes_than_a_person_makes_are_a_routine(talk: Talk) -> None:
    await hard_tap(talk)
    (reply,) = await talk.say("what if i change 95%")
    assert len(reply.facts["steps"]) > 12
    assert reply.facts["as_routine"]["every_days"] == 3
    assert reply.facts["thinned"]["count"] <= 12
    first = reply.text.splitlines()[0]
    assert "not 95 % at once" in first
    assert "every 3 days" in first
    assert "one a day" not in first
