"""What would be of a value that nobody measured; the words are ours, no source."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk


@pytest.mark.parametrize(
    "line",
    [
        "would kh 2 be ok",
        "would a kh of 2 be ok",
        "would it be ok if kh was 2",
        "kann kh 2 gehen",
        "serait-ce ok kh 2",
        "sería kh 2 malo",
        "kan kh 2 goed zijn",
        "czy kh 2 byłoby ok",
        "skulle kh 2 vara ok",
    ],
)
async def test_it_is_judged_and_not_stored(talk: Talk, line: str) -> None:
    await talk.say("/tank new fern 90 l fresh")
    (reply,) = await talk.say(line)
    assert "values" not in reply.facts
    assert reply.facts["findings"]
    assert "KH 2" in reply.text
    (seen,) = await talk.say("history of kh")
    assert "values" not in seen.facts


@pytest.mark.parametrize("line", ["kh 2 ok", "kh 2, ph 7"])
async def test_a_reading_is_kept(talk: Talk, line: str) -> None:
    await talk.say("/tank new fern 90 l fresh")
    assert (await talk.facts(line))["values"]
