"""``can i add fish``, ``is it cycled``: asked in nine languages, answered by what was measured."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.chat.harness import Talk, talking

ASKED = [
    "can i add fish",
    "when can i add fish?",
    "is it cycled yet",
    "cycled?",
    "is fern cycled",
    "ist fern schon eingefahren?",
    "wann kann ich fische einsetzen",
    "quand puis-je ajouter des poissons",
    "mon bac est cyclé ?",
    "¿cuándo puedo meter peces?",
    "quando posso colocar peixes",
    "quando posso inserire i pesci",
    "wanneer mogen de vissen erin",
    "kiedy mogę wpuścić ryby",
    "när kan jag sätta i fisk",
]


@pytest.mark.parametrize("text", ASKED)
async def test_it_is_understood_and_nothing_is_promised_unmeasured(
    tmp_path: Path, text: str
) -> None:
    async with talking(tmp_path) as talk:
        await talk.say("/tank new Fern 90 l fresh")
        (reply,) = await talk.say(text)
        assert reply.facts["verdict"] == "unmeasured"
        assert "test ammonia and nitrite first" in reply.text


async def test_a_new_tank_from_the_first_day_to_the_first_animals(tmp_path: Path) -> None:
    async with talking(tmp_path) as talk:
        await talk.say("/tank new Fern 90 l fresh")
        await talk.say("fern: ammonia 0 nitrite 0")
        assert (await talk.facts("can i add fish"))["verdict"] == "unproven"
        await talk.wait(days=5)
        await talk.say("ammonia 2 nitrite 0 ph 7.4 temp 25")
        assert (await talk.facts("can i add fish"))["verdict"] == "poison"
        assert "No new animals in Fern" in await talk.text("is it cycled")
        await talk.wait(days=9)
        await talk.say("ammonia 0 nitrite 2")
        assert (await talk.facts("can i add fish"))["verdict"] == "poison"
        await talk.wait(days=7)
        await talk.say("ammonia 0 nitrite 0")
        assert (await talk.facts("can i add fish"))["verdict"] == "unproven"
        await talk.wait(days=2)
        await talk.say("ammonia 0 nitrite 0")
        assert (await talk.facts("can i add fish"))["verdict"] == "cycled"


async def test_telling_that_it_is_cycled_asks_nothing(tmp_path: Path) -> None:
    async with talking(tmp_path) as talk:
        await talk.say("/tank new Fern 90 l fresh")
        (reply,) = await talk.say("my tank is cycled")
        assert "verdict" not in reply.facts


async def test_a_yes_to_a_kind_names_the_filter_that_is_not_proved(talk: Talk) -> None:
    await talk.say("/tank new Fern 120 l fresh")
    await talk.say("ph 7 kh 4 gh 6 temp 25 ammonia 0 nitrite 0")
    lines = (await talk.text("can i keep 8 neons")).splitlines()
    assert lines[0].startswith("Yes")
    assert "filter is not proved" in lines[1]
    assert "filter" not in await talk.text("can i keep java fern")
    await talk.say("/tank new Moss 120 l fresh")
    await talk.say("moss: ph 7 kh 4 gh 6 temp 25")
    assert "test ammonia and nitrite first" in await talk.text("can i keep 8 neons in moss")


async def test_a_tank_known_to_be_new_has_no_yes_before_its_tests(talk: Talk) -> None:
    await talk.say("60l set up yesterday ph 7 kh 4")
    answer = await talk.text("can i add 10 neons")
    assert answer.startswith("Not yet")
    assert "Yes" not in answer
    assert (await talk.text("can i add fish")).startswith("Not yet")
    await talk.say("added 2 neons")
    assert "Yes" not in await talk.text("can i add 10 neons")
