"""Values asked about in a few words. The class is by USGS: very hard over 180 mg/L as
CaCO3."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk

FERN = ("/tank new Fern 90 l fresh", "kh 4 ph 7.2 gh 12 temp 26")


async def with_tank(talk: Talk) -> None:
    for line in FERN:
        await talk.say(line)


@pytest.mark.parametrize(
    "line",
    [
        "kh?", "what about my kh", "my kh though", "kh and gh ok?", "wie ist der kh",
        "et le kh ?", "¿y el kh?", "e il kh?", "en de kh?", "a kh?", "och kh?", "e o kh?",
    ],
)  # fmt: skip
async def test_it_is_told_how_they_stand(talk: Talk, line: str) -> None:
    await with_tank(talk)
    (reply,) = await talk.say(line)
    assert "KH 4 °dH" in reply.text
    assert "3.4" in reply.text


async def test_what_was_never_measured_is_said_with_its_limit(talk: Talk) -> None:
    await with_tank(talk)
    answer = await talk.text("nitrite?")
    assert "no readings of nitrite" in answer
    assert "Nitrite should be 0" in answer


async def test_a_bad_one_is_said_first(talk: Talk) -> None:
    await with_tank(talk)
    await talk.say("kh 2")
    first, second, *_rest = (await talk.text("kh?")).splitlines()
    assert "retest" in first
    assert "KH 2 is low" in second


@pytest.mark.parametrize(
    "line",
    [
        "what should gh be",
        "what gh is best",
        "wie soll gh sein",
        "quel gh idéal",
        "whats a good gh",
    ],
)
async def test_where_it_should_be_goes_first(talk: Talk, line: str) -> None:
    await with_tank(talk)
    assert (await talk.text(line)).startswith("GH under 1 °dH")


async def test_it_should_suit_the_kind_that_is_named(talk: Talk) -> None:
    await with_tank(talk)
    assert "For guppies: KH" in await talk.text("what kh is best for guppies")


@pytest.mark.parametrize(
    "line",
    [
        "is my water hard or soft", "how hard is my water", "soft or hard?",
        "wie hart ist mein wasser", "mon eau est dure ou douce", "¿mi agua es dura o blanda?",
        "is mijn water hard of zacht",
    ],
)  # fmt: skip
async def test_hardness_is_known_without_its_name(talk: Talk, line: str) -> None:
    await with_tank(talk)
    answer = await talk.text(line)
    assert answer.startswith("Fern: GH 12 °dH (very hard by USGS)")


@pytest.mark.parametrize("line", ["hello", "thanks", "the gh of my friend is 4"])
async def test_talk_is_none_of_it(talk: Talk, line: str) -> None:
    await with_tank(talk)
    for reply in await talk.say(line):
        assert "about" not in reply.facts


async def test_a_group_is_not_answered(group: Talk) -> None:
    assert await group.say("my kh though") == []
