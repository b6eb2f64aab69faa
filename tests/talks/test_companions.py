"""What goes with a kind, kinds that ask for more than good water, a list without a full name."""

from __future__ import annotations

from pathlib import Path

import pytest

from core.advice.keeping import companions
from core.advice.livestock import species, together
from core.tank import Stock, Tank
from tests.chat.harness import talking


@pytest.mark.parametrize(
    "text",
    [
        "what goes with a betta",
        "what can i keep with a betta?",
        "tankmates for a betta",
        "was passt zu einem Kampffisch",
        "quels poissons avec un betta",
    ],
)
async def test_who_goes_with_a_betta_is_told(tmp_path: Path, text: str) -> None:
    async with talking(tmp_path) as talk:
        await talk.say("/tank new Fern 90 l fresh")
        facts = await talk.facts(text)
        assert facts["species"] == "Betta splendens"
        assert facts["companions"]


@pytest.mark.parametrize("name", ["betta", "neon tetra", "seahorse", "clownfish", "guppy"])
def test_nothing_speaks_against_a_companion(name: str) -> None:
    asked = species(name)
    tank = Tank("Fern", "marine" if asked.water == "marine" else "fresh", volume_l=120.0)
    found = companions(asked, tank)
    assert found
    for row in found:
        assert together([asked, row]) == []
        assert not any((row.fights, row.hunts, row.eats, row.picks))
        assert row.water == asked.water


def test_a_companion_suits_who_lives_there_already() -> None:
    shrimps = Tank("Fern", volume_l=120.0, stock=(Stock("cherry shrimp", 10),))
    names = {row.scientific for row in companions(species("neon tetra"), shrimps)}
    assert names < {row.scientific for row in companions(species("neon tetra"), Tank("Fern"))}
    assert "Neocaridina davidi" not in names


@pytest.mark.parametrize(
    ("text", "demand"),
    [
        ("can i keep a seahorse", "live food"),
        ("can i keep a mandarin", "half a year"),
        ("can i keep a bubble tip anemone", "strong light"),
    ],
)
async def test_what_a_kind_asks_of_its_keeper_is_no_flat_yes(
    tmp_path: Path, text: str, demand: str
) -> None:
    async with talking(tmp_path) as talk:
        await talk.say("/tank new Reef 300 l marine")
        await talk.say("salinity 35 ph 8.2 temp 25 kh 8 ammonia 0 nitrite 0")
        (reply,) = await talk.say(text)
        assert reply.facts["verdict"] == "care"
        assert reply.text.startswith("Only for the experienced")
        assert demand in reply.text


async def test_company_is_judged_although_nobody_should_come_now(tmp_path: Path) -> None:
    async with talking(tmp_path) as talk:
        await talk.say("/tank new Fern 120 l fresh")
        await talk.say("2 neons died")
        text = await talk.text("can i keep angelfish with neons")
        assert text.index("can swallow") < text.index("Not now")
        assert (await talk.text("can i keep neons")).startswith("Not now")


@pytest.mark.parametrize(
    ("text", "animals"),
    [
        ("5 shrimp", {"shrimp": 5}),
        ("now 40 shrimp", {"shrimp": 40}),
        ("drei Schnecken", {"schnecken": 3}),
        ("6 gamberetti", {"gamberetti": 6}),
        ("4 slakken", {"slakken": 4}),
        ("10 räkor", {"rakor": 10}),
        ("5 krewetek", {"krewetek": 5}),
        (
            "20 neons 6 corys and a bristlenose live there",
            {"neons": 20, "corys": 6, "bristlenose": 1},
        ),
    ],
)
async def test_a_list_may_name_what_several_kinds_are_called(
    tmp_path: Path, text: str, animals: dict[str, int]
) -> None:
    async with talking(tmp_path) as talk:
        await talk.say("/tank new Quarry 90 l fresh")
        assert (await talk.facts(text))["animals"] == animals


@pytest.mark.parametrize("text", ["5 black", "3 dwarf", "12 gold"])
async def test_a_part_of_names_is_no_animal(tmp_path: Path, text: str) -> None:
    async with talking(tmp_path) as talk:
        await talk.say("/tank new Quarry 90 l fresh")
        assert "live in" not in await talk.text(text)


async def test_a_plant_whose_name_ends_like_a_tanks_is_the_plant(tmp_path: Path) -> None:
    async with talking(tmp_path) as talk:
        await talk.say("/tank new Quarry 90 l fresh")
        await talk.say("/tank new Fern 60 l fresh")
        facts = await talk.facts("quarry: added java fern")
        assert facts["tank"] == "Quarry"
        assert facts["events"][0]["substance"] == "java fern"


async def test_a_shared_name_is_the_kind_on_record(tmp_path: Path) -> None:
    async with talking(tmp_path) as talk:
        await talk.say("/tank new Quarry 90 l fresh")
        await talk.say("added 10 cherry shrimp")
        await talk.say("ph 7.2 gh 8 temp 24 ammonia 0 nitrite 0")
        text = await talk.text("are otos ok with shrimp")
        assert "can be several" not in text
        assert "cannot judge" not in text


@pytest.mark.parametrize(
    "text",
    [
        "is my tank overstocked",
        "is fern overstocked?",
        "ist mein Becken überbesetzt?",
        "trop de poissons ?",
        "demasiados peces?",
        "peixes demais?",
        "troppi pesci?",
        "te veel vissen?",
        "za dużo ryb?",
        "för många fiskar?",
    ],
)
@pytest.mark.parametrize(
    ("animals", "start"), [("added 6 neons", "Not by"), ("added 8 oscars", "Yes, by")]
)
async def test_too_many_fish_by_what_they_need_once_grown(
    tmp_path: Path, text: str, animals: str, start: str
) -> None:
    async with talking(tmp_path) as talk:
        await talk.say("/tank new Fern 90 l fresh")
        await talk.say(animals)
        (reply,) = await talk.say(text)
        assert reply.text.startswith(start)
        assert (reply.facts["least_l"] > reply.facts["volume_l"]) is start.startswith("Yes")


async def test_too_many_of_whom_is_asked(tmp_path: Path) -> None:
    async with talking(tmp_path) as talk:
        await talk.say("/tank new Fern 90 l fresh")
        assert "who lives in Fern" in await talk.text("is it overstocked")


async def test_a_part_of_a_name_is_the_kind_on_record(tmp_path: Path) -> None:
    async with talking(tmp_path) as talk:
        await talk.say("/tank new Quarry 90 l fresh")
        assert "live in" not in await talk.text("25 cherries now")
        await talk.say("added 20 cherry shrimp")
        (reply,) = await talk.say("25 cherries now")
        await talk.press(1, reply)
        assert (await talk.facts("who lives here"))["stock"] == {"Quarry": {"cherry shrimp": 25}}
        assert "several kinds" not in await talk.text("gave 25 cherries to a friend")


@pytest.mark.parametrize(
    "text",
    ["is a mandarin hard to keep", "are seahorses easy?", "sind Seepferdchen schwer zu halten?"],
)
async def test_how_hard_a_kind_is_to_keep_is_what_it_demands(tmp_path: Path, text: str) -> None:
    async with talking(tmp_path) as talk:
        await talk.say("/tank new Reef 300 l marine")
        assert "small live food" in await talk.text(text)


@pytest.mark.parametrize("text", ["is 26 fine for shrimp", "are 5 neons ok"])
async def test_a_question_is_no_list(tmp_path: Path, text: str) -> None:
    async with talking(tmp_path) as talk:
        await talk.say("/tank new Quarry 90 l fresh")
        assert "Do these live" not in await talk.text(text)
