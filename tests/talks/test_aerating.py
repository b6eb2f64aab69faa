"""Extra air where there may be ammonia; snails, eggs and remedies that are asked about."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.chat.harness import talking

AIR = [
    "can i add air",
    "should i add an air pump?",
    "kann ich Luft reinmachen?",
    "puis-je ajouter de l'air ?",
    "puedo poner aire?",
    "posso pôr ar?",
    "posso mettere aria?",
    "kan ik lucht toevoegen?",
    "czy mogę dodać powietrze?",
    "kan jag ha luft?",
]


@pytest.mark.parametrize("text", AIR)
async def test_air_at_a_low_ph_waits_for_a_test_of_ammonia(tmp_path: Path, text: str) -> None:
    async with talking(tmp_path) as talk:
        await talk.say("/tank new Fern 90 l fresh")
        assert await talk.facts(text) == {"tank": "Fern", "verdict": "test"}


@pytest.mark.parametrize(
    ("told", "verdict"),
    [
        ("ammonia 1 ph 7", "no"),
        ("ammonia 1", "no"),
        ("ammonia 1 ph 7.5", "yes"),
        ("ammonia 0 ph 6.5", "yes"),
        ("ph 7.4", "test"),
        ("ph 8.2", "yes"),
    ],
)
async def test_air_frees_ammonia_under_ph_7_5(tmp_path: Path, told: str, verdict: str) -> None:
    """Driving CO2 off at pH 6.6, KH 4, 1 mg/L: 0.0023 to 0.024-0.10 mg/L NH3-N (computed)."""
    async with talking(tmp_path) as talk:
        await talk.say("/tank new Fern 90 l fresh")
        await talk.say(told)
        (reply,) = await talk.say("can i add air")
        assert reply.facts["verdict"] == verdict
        assert ("no harm" in reply.text) is told.startswith(("ammonia 0", "ph 8"))
        if verdict != "yes":
            assert "gasp" in reply.text.splitlines()[0]


@pytest.mark.parametrize(
    "text", ["is there air in the filter", "air temperature is 20", "can i add a betta"]
)
async def test_other_questions_are_not_of_air(tmp_path: Path, text: str) -> None:
    async with talking(tmp_path) as talk:
        await talk.say("/tank new Fern 90 l fresh")
        assert "check valve" not in await talk.text(text)


@pytest.mark.parametrize(
    "text",
    [
        "too many snails",
        "how do i get rid of snails",
        "Schneckenplage",
        "trop d'escargots",
        "plaga de caracoles",
        "praga de caracóis",
        "troppe lumache",
        "te veel slakken",
        "za dużo ślimaków",
        "för många sniglar",
    ],
)
async def test_snails_get_less_food_and_no_poison(tmp_path: Path, text: str) -> None:
    async with talking(tmp_path) as talk:
        await talk.say("/tank new Fern 90 l fresh")
        (reply,) = await talk.say(text)
        assert reply.facts == {"caution": "snail_plague"}
        assert "No copper" in reply.text


@pytest.mark.parametrize(
    "text",
    [
        "corys laid eggs",
        "eggs on the glass",
        "is my betta pregnant",
        "die Skalare haben abgelaicht",
        "les corydoras ont pondu",
        "los corydoras pusieron huevos",
        "as corydoras puseram ovos",
        "i corydoras hanno deposto le uova",
        "de corydoras hebben eitjes gelegd",
        "kirysek złożył ikrę",
        "pansarmalen har lagt ägg",
    ],
)
async def test_eggs_want_steady_water(tmp_path: Path, text: str) -> None:
    async with talking(tmp_path) as talk:
        await talk.say("/tank new Fern 90 l fresh")
        (reply,) = await talk.say(text)
        assert reply.facts == {"caution": "spawned"}


@pytest.mark.parametrize(
    "text",
    [
        "can i add tea tree oil",
        "darf ich Teebaumöl reinmachen?",
        "puis-je mettre de l'huile essentielle ?",
        "puedo echar aceite de árbol del té?",
        "posso pôr óleo essencial?",
        "posso mettere olio essenziale?",
        "kan ik theeboomolie toevoegen?",
        "czy mogę dodać olejek eteryczny?",
        "kan jag ha i teträdsolja?",
    ],
)
async def test_an_oil_is_a_medicine_and_refused(tmp_path: Path, text: str) -> None:
    async with talking(tmp_path) as talk:
        await talk.say("/tank new Fern 90 l fresh")
        (reply,) = await talk.say(text)
        assert reply.facts.get("refused") == "medicine"


async def test_what_nobody_knows_is_no_remedy(tmp_path: Path) -> None:
    async with talking(tmp_path) as talk:
        await talk.say("/tank new Fern 90 l fresh")
        assert "a vet who treats fish" in await talk.text("can i add wonderstuff")
