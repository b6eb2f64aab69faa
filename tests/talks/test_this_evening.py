"""Values told with this evening, said at six; the words are ours, no source."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk


async def at_six(talk: Talk) -> None:
    await talk.say("/tank new fern 90 l fresh")
    await talk.wait(hours=6)


@pytest.mark.parametrize(
    "line",
    ["tested tonight: ph 7", "tonight: ph 7", "ph 7 ce soir", "heute abend getestet: ph 7"],
)
async def test_they_are_of_now(talk: Talk, line: str) -> None:
    await at_six(talk)
    (reply,) = await talk.say(line)
    assert [value["value"] for value in reply.facts["values"]] == [7.0]


async def test_a_deed_told_so_may_only_be_meant(talk: Talk) -> None:
    await at_six(talk)
    assert "events" not in await talk.facts("wc 30% tonight")
