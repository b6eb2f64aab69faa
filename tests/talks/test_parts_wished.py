"""In how many parts a dose is wished in the question itself; a part is at most 1 °dH a day (the
limits)."""

from __future__ import annotations

import pytest

from core.message.part_words import parts_in
from tests.chat.harness import Talk


@pytest.mark.parametrize(
    ("line", "parts"),
    [
        ("dose kh 4 in 3 days", 3),
        ("dose kh 4 over 4 days", 4),
        ("dose kh 4 in 5 portions", 5),
        ("raise kh to 4 in 3 steps", 3),
        ("wie viel Natron für kh 4 in drei Teilen", 3),
        ("combien de bicarbonate pour kh 4 en 3 jours", 3),
        ("dose kh 4 in 1 part", 2),
    ],
)
async def test_parts_are_no_value(talk: Talk, line: str, parts: int) -> None:
    await talk.say("/tank new Tall 180 l fresh")
    await talk.say("kh 2 gh 5 ph 6.6 temp 25 ammonia 0")
    facts = await talk.facts(line)
    assert (facts["from"], facts["to"]) == (2.0, 4.0)
    assert len(facts["parts"]) == parts


@pytest.mark.parametrize("line", ["dose kh 4", "kh 4 in 2 tanks", "dose kh 4 in 2000 days", ""])
def test_no_parts(line: str) -> None:
    assert parts_in(line) is None
