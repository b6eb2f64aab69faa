"""What is put right first: poison, then KH before GH, in the sea salinity and magnesium before KH
and calcium; common practice, no source."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk


@pytest.mark.parametrize(
    "line",
    [
        "what should i raise first", "in which order do i dose all this", "which do i fix first",
        "que corriger d'abord ?", "was soll ich zuerst erhöhen", "¿qué debo subir primero?",
        "cosa devo alzare prima", "que devo subir primeiro", "wat moet ik eerst verhogen",
        "co najpierw podnieść", "vad ska jag höja först",
    ],
)  # fmt: skip
async def test_the_order_is_told_with_what_is_off(talk: Talk, line: str) -> None:
    await talk.say("/tank new Lagoon 150 l marine")
    await talk.say("kh 6 ca 340 mg 1100 salinity 35")
    answer = await talk.text(line)
    assert answer.startswith("Lagoon: ")
    assert "then salinity, then magnesium, then KH and calcium" in answer
    assert "KH 6 is low" in answer


async def test_poison_stands_before_all(talk: Talk) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("kh 2 gh 3 ph 8.2 ammonia 1 temp 25")
    answer = await talk.text("what do i correct first")
    assert answer.startswith("Fern: Ammonia is dangerous")


@pytest.mark.parametrize(
    "line", ["do i test first", "do i dechlorinate first", "first dose is in", "dose kh 6 first"]
)
async def test_another_first_is_none_of_it(talk: Talk, line: str) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    for reply in await talk.say(line):
        assert "One at a time" not in reply.text
