"""Tanks told without their names; the words are ours, no source."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk


async def with_tanks(talk: Talk) -> None:
    for line in ("/tank new Fern 90 l fresh", "/tank new Quarry 240 l fresh", "/tank Fern"):
        await talk.say(line)


@pytest.mark.parametrize(
    "line",
    [
        "the big tank has ph 7.8", "ph 7.8 in the 240", "the 240 l has ph 7.8", "big tank ph 7.8",
        "ph 7.8 in the big one", "big one ph 7.8", "other one ph 7.8", "the big one: ph 7.8",
        "the other tank ph 7.8", "das große Becken hat ph 7.8",
        "ph 7,8 im grossen becken", "le grand bac a ph 7.8", "el acuario grande tiene ph 7.8",
        "nel acquario grande ph 7.8", "no aquário grande ph 7.8", "in de grote bak ph 7.8",
        "w dużym akwarium ph 7.8", "i stora akvariet ph 7.8", "the 63 gal has ph 7.8",
    ],
)  # fmt: skip
async def test_the_larger_of_two_is_known(talk: Talk, line: str) -> None:
    await with_tanks(talk)
    assert (await talk.facts(line))["tank"] == "Quarry"


@pytest.mark.parametrize("line", ["in the nano kh 4", "small tank kh 4", "kh 4 im kleinen becken"])
async def test_so_is_the_smaller(talk: Talk, line: str) -> None:
    await with_tanks(talk)
    await talk.say("/tank Quarry")
    assert (await talk.facts(line))["tank"] == "Fern"


@pytest.mark.parametrize(
    "line", ["the reef has kh 8", "kh 8 in the marine tank", "das meerwasserbecken hat kh 8"]
)
async def test_the_only_one_with_its_water_is_known(talk: Talk, line: str) -> None:
    await with_tanks(talk)
    await talk.say("/tank new Lagoon 250 l marine")
    await talk.say("/tank Fern")
    assert (await talk.facts(line))["tank"] == "Lagoon"
    answer = await talk.text("ph 7.5 in the big tank")
    assert "Nothing is stored" in answer  # 250 L and 240: neither is the big one


@pytest.mark.parametrize(
    "line", ["a big tank has ph 7.8", "my friend's big tank has ph 7.8", "put the 240 g in"]
)
async def test_what_may_be_another_is_not(talk: Talk, line: str) -> None:
    await with_tanks(talk)
    assert "values" not in await talk.facts(line)


async def test_ammonia_that_a_buffer_would_set_free_is_said_with_low_kh(talk: Talk) -> None:
    """1 mg/L at pH 8.3 and 30 °C: 14 % un-ionised by Emerson et al. 1975, over 0.05 mg/L."""
    await with_tanks(talk)
    assert "dose kh 4" in await talk.text("ph 6 kh 1 ammonia 0.1")
    await talk.say("/tank Quarry")
    assert "no buffer before the ammonia" in await talk.text("ph 6 kh 1 ammonia 1")


@pytest.mark.parametrize(
    ("told", "first", "second"),
    [
        ("i have two tanks, a 120l planted and a 30l nano", "Big", "Small"),
        ("i have two tanks, a 30l nano and a 120l planted", "Small", "Big"),
    ],
)
async def test_their_numbers_are_the_order_told(
    talk: Talk, told: str, first: str, second: str
) -> None:
    await talk.say(told)
    assert (await talk.facts("tank 1 ph 6.9 kh 4"))["tank"] == first
    assert (await talk.facts("second tank kh 1.5"))["tank"] == second
    assert "There is no tank" in await talk.text("tank 3 kh 4")


async def test_a_number_is_none_of_tanks_that_their_keeper_named(talk: Talk) -> None:
    await with_tanks(talk)
    assert "There is no tank" in await talk.text("tank 1 kh 4")
