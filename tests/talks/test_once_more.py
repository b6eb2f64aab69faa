"""The same deed told twice in one line: both are kept, by one undo."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk


@pytest.mark.parametrize(
    ("text", "name", "amounts"),
    [
        ("changed 10l then another 10l", "litres", [10.0, 10.0]),
        ("changed 10l and then another 20 l", "litres", [10.0, 20.0]),
        ("10 l gewechselt, dann noch 10 l", "litres", [10.0, 10.0]),
        ("dosed 1 g baking soda then another 2 g", "grams", [1.0, 2.0]),
        ("changed another 20 l", "litres", [20.0]),
        ("dosed another 2 g baking soda", "grams", [2.0]),
    ],
)
async def test_both_are_kept(talk: Talk, text: str, name: str, amounts: list[float]) -> None:
    await talk.say("/tank new Fern 100 l fresh")
    facts = await talk.facts(text)
    assert [event[name] for event in facts["events"]] == amounts
    await talk.say("undo")
    assert "nothing" in (await talk.text("undo")).casefold()


@pytest.mark.parametrize(
    "told", ["what was it again", "i lost the paper", "i lost my notes, what was it again"]
)
async def test_a_plan_that_was_lost_is_said_again(talk: Talk, told: str) -> None:
    await talk.say("/tank new Fern 40 l fresh")
    await talk.say("ph 7 kh 3 ammonia 0 temp 24")
    before = await talk.facts("dose kh 5")
    assert (await talk.facts(told))["parts"] == before["parts"]
    assert not (await talk.facts("who lives in fern")).get("stock", {}).get("Fern")


async def test_a_lost_paper_is_no_death(talk: Talk) -> None:
    await talk.say("/tank new Fern 40 l fresh")
    assert "remove the dead" not in await talk.text("i lost the paper")
