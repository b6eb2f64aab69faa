"""Signs that keepers see; what they may mean is common practice, no source."""

from __future__ import annotations

import pytest

from bot.chat.signs import TESTED
from bot.chat.words.signs import MEANS
from core.message.signs import ORDER, seen
from tests.chat.harness import Talk

FERN = "/tank new Fern 90 l fresh"


@pytest.mark.parametrize(
    ("line", "sign"),
    [
        ("drop checker is yellow", "co2_yellow"), ("Dauertest ist blau", "co2_blue"),
        ("my snail shells are dissolving", "shells"), ("Schneckenhäuser lösen sich auf", "shells"),
        ("water is cloudy", "cloudy"), ("Wasser ist trüb", "cloudy"), ("eau trouble", "cloudy"),
        ("el agua está turbia", "cloudy"), ("l'acqua è torbida", "cloudy"),
        ("woda jest mętna", "cloudy"), ("vattnet är grumligt", "cloudy"),
        ("het water is troebel", "cloudy"), ("a água está turva", "cloudy"),
        ("water turned green", "green_water"), ("brown algae on the glass", "algae"),
        ("white film on the surface", "film"), ("tank smells bad", "smell"),
        ("foam on the surface", "foam"), ("plants melting", "plants"), ("yellow leaves", "plants"),
        ("water is yellow", "tea"), ("limescale on the glass", "crust"),
        ("plants pearling", "pearling"), ("bubbles on everything", "gassed"),
        ("fish hide all day", "hiding"), ("er versteckt sich", "hiding"),
        ("ryba kryje się", "hiding"), ("hey my betta looks sad", "listless"),
        ("mein Kampffisch sieht traurig aus", "listless"), ("il ne mange pas", "listless"),
        ("mi pez está triste", "listless"), ("meu peixe está triste", "listless"),
        ("mijn vis ziet er verdrietig uit", "listless"), ("moja ryba jest smutna", "listless"),
        ("min fisk ser ledsen ut", "listless"), ("one looks bloated", "bloated"),
        ("one of them is chasing the others", "chasing"), ("einer jagt die anderen", "chasing"),
        ("koraal trekt samen", "coral"), ("die Koralle zieht sich zusammen", "coral"),
        ("il corallo si contrae", "coral"), ("my water isnt clear", "cloudy"),
        ("how often should i feed", "feeding"), ("wie oft soll ich füttern", "feeding"),
        ("how long should the light be on", "lighting"),
        ("can i clean the filter today", "filter_care"),
        ("how do i clean the filter", "filter_care"),
        ("comment nettoyer le filtre", "filter_care"),
        ("do i need to clean the gravel", "ground_care"),
        ("tiny snails in my tank", "snails"), ("should i turn the light off at night", "lighting"),
    ],
)  # fmt: skip
async def test_a_sign_is_told_with_what_to_measure(talk: Talk, line: str, sign: str) -> None:
    await talk.say(FERN)
    assert (await talk.facts(line))["sign"] == sign


async def test_feeding_is_not_advised_while_ammonia_stands(talk: Talk) -> None:
    await talk.say(FERN)
    await talk.say("ammonia 4 ph 7.6")
    told = await talk.text("how often should i feed")
    assert "top feeding" in told
    assert "twice a day" not in told


async def test_what_was_measured_is_judged_and_not_asked_for(talk: Talk) -> None:
    await talk.say(FERN)
    await talk.say("kh 1 ph 6.4")
    answer = await talk.text("snail shells are dissolving")
    assert "KH 1 is low" in answer
    assert "Measure and send: GH." in answer


@pytest.mark.parametrize(
    "line",
    ["smells like rotten eggs", "fish gasping", "snails climbing out of the water", "fish died"],
)
async def test_a_danger_is_an_emergency_first(talk: Talk, line: str) -> None:
    await talk.say(FERN)
    assert "sign" not in await talk.facts(line)


@pytest.mark.parametrize(
    "line",
    [
        "kh 4",
        "is my water ok",
        "added 3 snails",
        "changed 20 % of the water",
        "hello",
        "what fish",
        "i am sad",
        "the light is closed",
        "im chasing ph 7",
        "plants look sad",
    ],
)
async def test_what_is_none_stays_what_it_is(talk: Talk, line: str) -> None:
    await talk.say(FERN)
    for reply in await talk.say(line):
        assert "sign" not in reply.facts


def test_every_sign_has_its_meaning_and_its_tests() -> None:
    assert set(MEANS) - {"feeding_cold"} == set(TESTED) == set(ORDER)
    texts = {"co2_green": "drop checker green", "cloudy": "water is murky", "foam": "foam on top"}
    assert {sign: seen(text) for sign, text in texts.items()} == {sign: sign for sign in texts}


async def test_what_a_coral_wants_measured_is_of_the_sea(talk: Talk) -> None:
    await talk.say("/tank new Reefy 200 l marine")
    answer = await talk.text("a coral is shrinking")
    assert "salinity" in answer
    assert "calcium" in answer
    assert "vet" in await talk.text("my betta looks sad")
