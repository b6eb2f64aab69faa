"""The values of a kit in two letters each; the words are ours, no source."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk


@pytest.mark.parametrize("line", ["am 0 ni 0.1 na 40", "am 0, ni 0.1, na 40, ph 7"])
async def test_nitrite_and_nitrate_are_asked_about_and_no_sodium_is_kept(
    talk: Talk, line: str
) -> None:
    await talk.say("/tank new fern 90 l fresh")
    replies = await talk.say(line)
    kept = {value["analyte"] for each in replies for value in each.facts.get("values", ())}
    assert "ammonia" in kept
    assert not kept & {"sodium", "nitrite", "nitrate"}
    taken = await talk.press(1)
    told = {v["analyte"]: v["value"] for each in taken for v in each.facts.get("values", ())}
    assert told == {"nitrite": 0.1, "nitrate": 40.0}


async def test_sodium_alone_stays_what_it_is(talk: Talk) -> None:
    await talk.say("/tank new fern 90 l fresh")
    assert (await talk.facts("Na 40"))["values"][0]["analyte"] == "sodium"
