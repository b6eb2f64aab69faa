"""`again 10%` right after a change, `put 10 more g in` right after a dose; words ours."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk


@pytest.mark.parametrize("line", ["again 10%", "encore 10%", "nochmal 10%", "otra vez 10%"])
async def test_a_change_once_more(talk: Talk, line: str) -> None:
    await talk.say("/tank new Fern 100 l fresh")
    await talk.say("changed 20%")
    assert (await talk.facts(line))["events"][0]["percent"] == 10.0


async def test_more_of_a_dose(talk: Talk) -> None:
    await talk.say("/tank new Fern 100 l fresh")
    await talk.say("dosed 1 g baking soda")
    (event,) = (await talk.say("put 1 more g in"))[0].facts["events"]
    assert (event["grams"], event["substance"]) == (1.0, "sodium bicarbonate")


@pytest.mark.parametrize("line", ["again 10%", "put 1 more g in", "again 10% tomorrow"])
async def test_of_nothing_told_before_nothing_is_stored(talk: Talk, line: str) -> None:
    await talk.say("/tank new Fern 100 l fresh")
    await talk.say("kh 4")
    assert all("events" not in reply.facts for reply in await talk.say(line))
