"""An acid wished beside another thing or against a pest is refused, and what else is said stays."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk

SNAILS = [
    "salt and vinegar to kill snails", "vinegar to kill snails", "how much vinegar to kill snails",
    "want to kill snails with salt and vinegar", "does vinegar kill snails",
    "salz und essig gegen schnecken", "sal y vinagre para matar caracoles",
    "sal e vinagre para matar caracóis", "sale e aceto per uccidere le lumache",
]  # fmt: skip

OTHERS = [
    "can i pour in the rest now with some vinegar so ph stays", "vinegar to put ph down then?",
    "how much salt and vinegar for snails", "can i use salt and vinegar to lower ph",
    "i will use salt and vinegar", "salt and vinegar ok?", "vinegar for hydra",
    "how much baking soda and vinegar for 90 l", "salt and vinegar against algae",
    "can i put driftwood and vinegar in", "sel et vinaigre contre les escargots",
    "sól i ocet na ślimaki", "salt och ättika mot sniglar", "acid against snails",
    "zout en azijn om slakken te doden",
]  # fmt: skip

NONE = [
    "clean the glass with salt and vinegar", "salt and no vinegar for snails", "salt for snails",
    "amino acid for shrimps", "snails in acid water", "my snails died, i used vinegar",
    "vinegar eels for fry",
]  # fmt: skip


@pytest.mark.parametrize("told", SNAILS)
async def test_beside_the_snails_the_acid_is_refused(talk: Talk, told: str) -> None:
    await talk.say("/tank new fern 90 l fresh")
    (reply,) = await talk.say(told)
    assert reply.text.startswith("No vinegar")
    assert (reply.facts["refused"], reply.facts["caution"]) == ("acid", "snail_plague")


@pytest.mark.parametrize("told", OTHERS)
async def test_an_acid_beside_another_thing_is_refused(talk: Talk, told: str) -> None:
    await talk.say("/tank new fern 90 l fresh")
    (reply,) = await talk.say(told)
    assert reply.facts["refused"] == "acid"
    assert "separate container" in reply.text


@pytest.mark.parametrize("told", NONE)
async def test_what_wishes_no_acid_is_refused_none(talk: Talk, told: str) -> None:
    await talk.say("/tank new fern 90 l fresh")
    replies = await talk.say(told)
    assert not any(reply.facts.get("refused") == "acid" for reply in replies)


async def test_bleach_against_snails_is_refused(talk: Talk) -> None:
    await talk.say("/tank new fern 90 l fresh")
    (reply,) = await talk.say("bleach to kill snails")
    assert reply.facts["refused"] == "bleach"


@pytest.mark.parametrize(
    "asked",
    [
        "should i add acid to put it back",
        "can vinegar bring it down",
        "do i use citric acid to neutralise it",
    ],
)
async def test_no_acid_against_what_went_in(talk: Talk, asked: str) -> None:
    await talk.say("/tank new fern 90 l fresh")
    await talk.say("ph 7.9 kh 6")
    await talk.say("added 12 g baking soda")
    (reply,) = await talk.say(asked)
    assert reply.facts["refused"] == "acid"
    assert reply.text.startswith("No ")


async def test_to_put_a_bottle_back_wishes_no_acid(talk: Talk) -> None:
    await talk.say("/tank new fern 90 l fresh")
    replies = await talk.say("i put the acid bottle back")
    assert not any(reply.facts.get("refused") == "acid" for reply in replies)
