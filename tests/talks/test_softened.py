"""Softened tap water: told as that wherever it is planned in, and never what a tank goes back to.

High KH with hardly any GH is water of a softener, full of sodium; common practice, no source.
"""

from __future__ import annotations

import pytest

from core.advice.tapped import looks_softened
from tests.chat.harness import Talk

CAVE = ("/tank new Cave 60 l fresh", "kh 4 gh 6 ph 7 temp 25 ammonia 0")
SOFTENED = "/source tap kh 14 gh 1 ph 7.8"
SAID = "tap is probably softened (KH 14, GH 1 °dH)"


@pytest.mark.parametrize(
    ("kh", "gh", "is_it"), [(14, 1, True), (5, 2.9, True), (4.9, 1, False), (14, 3, False)]
)
def test_what_looks_softened(kh: float, gh: float, *, is_it: bool) -> None:
    assert looks_softened(kh, gh) is is_it


async def test_it_is_said_when_the_source_is_told_and_shown(talk: Talk) -> None:
    await talk.say(CAVE[0])
    assert SAID in await talk.text(SOFTENED)
    assert SAID in await talk.text("/source tap")
    assert SAID not in await talk.text("/source tap no3 10")  # once is enough
    assert "softened" not in await talk.text("/source well kh 14 gh 16")


@pytest.mark.parametrize(
    "line",
    ["what if i change 50%", "how much can i change", "mix 20 l of ro and tap to kh 6",
     "60 l of tap to kh 14 gh 6", "is my tap ok for neons"],
)  # fmt: skip
async def test_it_is_planned_in_with_the_warning_on_the_first_screen(talk: Talk, line: str) -> None:
    for each in (*CAVE, SOFTENED):
        await talk.say(each)
    (reply,) = await talk.say(line)
    assert any(SAID in told.text for told in reply.lines)


async def test_the_warning_of_a_change_has_its_numbers_in_facts(talk: Talk) -> None:
    for each in (*CAVE, SOFTENED):
        await talk.say(each)
    facts = await talk.facts("what if i change 5%")
    assert facts["source_softened"] == {"kh": 14, "gh": 1}
    await talk.say("/source tap kh 5 gh 8")
    assert "source_softened" not in await talk.facts("what if i change 5%")


async def test_no_reading_is_told_to_go_back_to_it(talk: Talk) -> None:
    await talk.say(CAVE[0])
    await talk.say("/source tap kh 14 gh 16 ph 7.8")
    assert "your source's 14" in await talk.text(CAVE[1])
    await talk.say(SOFTENED)
    assert "your source" not in await talk.text(CAVE[1])
    await talk.wait(days=4)  # a fall within three days would be retested first
    low = await talk.text("kh 2")
    assert "dose kh 4" in low
    assert "source" not in low
