"""A thing and the value that it shall make, without a word of asking; the words are ours."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk


@pytest.mark.parametrize(
    "line",
    [
        "natron für wohn auf kh 5", "natron auf kh 5", "soda for wohn to kh 5",
        "bicarbonate pour wohn à kh 5", "ile sody na kh 5",
    ],
)  # fmt: skip
async def test_it_is_the_question_of_a_dose(talk: Talk, line: str) -> None:
    await talk.say("/tank new wohn 90 l fresh")
    await talk.say("kh 3 ph 7 nh3 0")
    plan = await talk.facts(line)
    assert plan["substance"] == "sodium bicarbonate"
    assert (plan["tank"], plan["from"], plan["to"]) == ("wohn", 3.0, 5.0)


async def test_a_value_beside_a_thing_is_none(talk: Talk) -> None:
    await talk.say("/tank new wohn 90 l fresh")
    await talk.say("kh 3 ph 7 nh3 0")
    assert "grams" not in await talk.facts("natron kh 5")
