"""Who eats algae: kinds that the tank does not rule out, in the words of nine languages."""

from __future__ import annotations

import pytest

from core.advice.grazers import GRAZERS
from tests.chat.harness import Talk

ASKED = [
    "which fish eat algae",
    "what eats algae?",
    "was frisst Algen",
    "quels poissons mangent les algues",
    "qué peces comen algas",
    "que peixes comem algas",
    "quali pesci mangiano le alghe",
    "welke vissen eten algen",
    "jakie ryby jedzą glony",
    "vilka fiskar äter alger",
]


@pytest.mark.parametrize("said", ASKED)
async def test_the_grazers_that_the_water_does_not_rule_out(talk: Talk, said: str) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("ph 7 kh 5 gh 8 temp 25 ammonia 0 nitrite 0")
    (reply,) = await talk.say(said)
    assert "Amano shrimp" in reply.text
    assert "less light and less food do more" in reply.text
    assert set(reply.facts["species"]) < set(GRAZERS)
    assert not {"Turbo", "Zebrasoma flavescens"} & set(reply.facts["species"])


async def test_without_a_tank_all_are_named(talk: Talk) -> None:
    assert (await talk.facts("which fish eat algae"))["species"] == list(GRAZERS)


async def test_only_those_that_are_asked_for(talk: Talk) -> None:
    facts = await talk.facts("which snails eat algae")
    assert facts["species"] == ["Neritina", "Planorbidae", "Turbo"]


async def test_poisoned_water_takes_no_newcomers(talk: Talk) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("ph 8.2 kh 5 gh 8 temp 25 ammonia 2")
    alone = await talk.text("can i keep otocinclus")
    told = await talk.text("which fish eat algae")
    assert alone.split("\n")[0] in told


@pytest.mark.parametrize(
    "said",
    ["do nerites eat algae", "which fish eat snails", "the algae eat my time", "algae", "kh 5"],
)
async def test_what_asks_for_nobody(talk: Talk, said: str) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    assert "These eat algae" not in await talk.text(said)
