"""Questions about animals that are not of keeping: the record, what a kind needs, its size."""

from __future__ import annotations

import pytest

from core.advice.asked_kinds import asked_of
from tests.chat.harness import Talk

ASKED = [
    ("how many neons do i have", "record", ["neons"]),
    ("how many fish do i have", "record", []),
    ("which tank has the betta", "record", ["betta"]),
    ("which fish are in fern", "record", []),
    ("how many male guppies do i have", "record", ["male guppies"]),
    ("do i have any snails", "record", ["snails"]),
    ("habe ich Guppys?", "record", ["guppys"]),
    ("wie viele Neons habe ich", "record", ["neons"]),
    ("wo ist mein Kampffisch", "record", ["kampffisch"]),
    ("combien de néons ai-je", "record", ["neons"]),
    ("dónde está mi betta", "record", ["betta"]),
    ("quantos neons tenho", "record", ["neons"]),
    ("dove è il mio betta", "record", ["betta"]),
    ("hoeveel neons heb ik", "record", ["neons"]),
    ("gdzie jest mój bojownik", "record", ["bojownik"]),
    ("var är min kampfisk", "record", ["kampfisk"]),
    ("what water do discus need", "needs", ["discus"]),
    ("welche Temperatur brauchen Diskus", "needs", ["diskus"]),
    ("quelle température aiment les discus", "needs", ["discus"]),
    ("qué temperatura necesitan los discos", "needs", ["discos"]),
    ("how much water does a blue tang need", "needs", ["blue tang"]),
    ("how big do plecos grow", "size", ["plecos"]),
    ("wie groß werden Skalare", "size", ["skalare"]),
    ("hur stor blir en skalar", "size", ["skalar"]),
]


@pytest.mark.parametrize(("text", "about", "kinds"), ASKED)
def test_what_is_asked(text: str, about: str, kinds: list[str]) -> None:
    asked = asked_of(text, ["Fern"])
    assert asked is not None
    assert (asked.about, [said for said, _found in asked.kinds]) == (about, kinds)


@pytest.mark.parametrize(
    "text",
    [
        "how many neons can i keep",
        "how many neons fit in fern",
        "is fern big enough for goldfish",
        "are neons and bettas compatible",
        "how big is fern",
        "where is my heater",
        "my neons need food",
        "what does kh need",
        "how much do i need",
        "neons",
    ],
)
def test_what_is_not(text: str) -> None:
    assert asked_of(text, ["Fern"]) is None


async def test_the_record_answers_by_tank(talk: Talk) -> None:
    await talk.say("/tank new Fern 120 l fresh")
    await talk.say("added 2 male and 4 female guppies")
    await talk.say("/tank new Quarry 240 l fresh")
    await talk.say("quarry: added 3 guppies")
    facts = await talk.facts("how many guppies do i have")
    assert facts["stock"] == {
        "Fern": {"male guppies": 2, "female guppies": 4},
        "Quarry": {"guppies": 3},
    }
    assert (await talk.facts("how many guppies are in quarry"))["stock"] == {
        "Quarry": {"guppies": 3}
    }
    assert await talk.text("where is my pleco") == "No pleco on record in Fern or Quarry."


async def test_what_a_kind_needs_and_how_large_it_grows(talk: Talk) -> None:
    (needs,) = await talk.say("what does a betta need")
    assert needs.lines[0].text.startswith("Betta (Betta splendens): temperature 24–29 °C")
    (size,) = await talk.say("how big does an oscar get")
    assert size.lines[0].text.startswith("Oscar can grow to about 32 cm: under 260 L")
    assert size.facts == {"species": "Astronotus ocellatus", "length": 32.0, "least_l": 256.0}
    (asked,) = await talk.say("what do angelfish need")
    (needs,) = await talk.press(1, asked)
    assert needs.facts["species"] == "Pterophyllum scalare"


async def test_whether_a_size_is_enough_is_answered_first(talk: Talk) -> None:
    assert (await talk.text("is 60 l enough for a betta")).startswith("By a lenient rule of thumb")
    assert (await talk.text("reichen 60 l für einen Oscar")).startswith("No")


async def test_a_count_anew_puts_the_record_right(talk: Talk) -> None:
    await talk.say("/tank new Fern 120 l fresh")
    await talk.say("added 10 neon tetras")
    (asked,) = await talk.say("only 8 neons left")
    assert asked.buttons[0].label == "so many in all"
    await talk.press(1, asked)
    assert (await talk.facts("/tank Fern"))["stock"] == {"neon tetras": 8}
    assert "That is what I have" in await talk.text("still 8 neons")
