"""Both, told after a plan for each of two tanks; how much of each follows from the plans."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk


async def planned(talk: Talk, goal: int) -> None:
    for line in (
        "/tank new Nemo 200 l fresh",
        "/tank new Bubbles 80 l fresh",
        "nemo kh 4 ph 7 ammonia 0",
        "bubbles kh 3 ph 7 ammonia 0",
        f"how much bicarb for kh {goal} in nemo",
        "same for bubbles",
    ):
        await talk.say(line)


@pytest.mark.parametrize("text", ["ok did both", "both done", "habe beide gegeben"])
async def test_a_part_of_each_went_in(talk: Talk, text: str) -> None:
    await planned(talk, 8)
    replies = await talk.say(text)
    doses = {each.facts["tank"]: each.facts["events"][0]["grams"] for each in replies}
    assert doses == {"Nemo": pytest.approx(6.0, abs=0.2), "Bubbles": pytest.approx(2.4, abs=0.1)}


async def test_where_both_parts_may_be_meant_it_is_asked(talk: Talk) -> None:
    await planned(talk, 5)
    (asked,) = await talk.say("ok did both")
    assert "events" not in asked.facts
    assert [each.facts["tank"] for each in await talk.press(1, asked)] == ["Nemo", "Bubbles"]
    assert "already" in (await talk.press(1, asked))[0].text.lower()


async def test_both_parts_are_of_the_newest_plan(talk: Talk) -> None:
    await planned(talk, 8)
    replies = await talk.say("did both parts")
    assert {each.facts.get("tank") for each in replies} == {"Bubbles"}
