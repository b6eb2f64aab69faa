"""A tank told together with what is in it, in one message."""

from __future__ import annotations

import pytest

from bot.chat.model import Reply
from tests.chat.harness import Talk


def stock(replies: list[Reply]) -> dict[str, dict[str, int]]:
    (reply,) = replies
    return dict(reply.facts["stock"])


@pytest.mark.parametrize(
    ("text", "name", "volume", "animals"),
    [
        ("tank Fern 90 l, 6 guppies", "Fern", 90.0, {"guppies": 6}),
        ("tank Fern 90 l with 6 guppies and 2 corys", "Fern", 90.0, {"guppies": 6, "corys": 2}),
        ("tank Hall 180 l, 6 guppies", "Hall", 180.0, {"guppies": 6}),
        ("new tank Attic 54 l 10 neons", "Attic", 54.0, {"neons": 10}),
        ("/tank new Attic 54 l fresh, 10 neons", "Attic", 54.0, {"neons": 10}),
        ("my tank is 180 l with 6 guppies", "Tank", 180.0, {"guppies": 6}),
        ("i have a 60 l tank with 10 neons", "Tank", 60.0, {"neons": 10}),
        ("neues Becken Flur 180 l, 6 Guppys", "Flur", 180.0, {"guppys": 6}),
        ("nouvel aquarium Salon 180 litres avec 6 guppys", "Salon", 180.0, {"guppys": 6}),
        ("acuario Sala 100 l con 10 guppies", "Sala", 100.0, {"guppies": 10}),
        ("aquário Sala 100 l com 4 guppies", "Sala", 100.0, {"guppies": 4}),
        ("acquario Studio 60 l con 5 guppy", "Studio", 60.0, {"guppy": 5}),
        ("bak Zolder 60 l met 10 guppies", "Zolder", 60.0, {"guppies": 10}),
        ("akwarium Salon 112 l i 10 guppy", "Salon", 112.0, {"guppy": 10}),
        ("akvarium Hallen 180 l med 6 guppys", "Hallen", 180.0, {"guppys": 6}),
    ],
)
async def test_it_is_made_and_its_animals_are_kept(
    talk: Talk, text: str, name: str, volume: float, animals: dict[str, int]
) -> None:
    made, kept = await talk.say(text)
    assert (made.facts["tank"], made.facts["volume_l"]) == (name, volume)
    assert kept.buttons
    assert stock(await talk.say("/stock")) == {name: animals}


@pytest.mark.parametrize(
    "text",
    [
        "tank Loft 60 l, kh 4, 8 guppies",
        "tank Loft 60 l, 8 guppies, kh 4",
        "tank Loft 60 l\n8 guppies\nkh 4",
    ],
)
async def test_readings_and_animals_are_kept_in_any_order(talk: Talk, text: str) -> None:
    made, kept = await talk.say(text)
    (value,) = kept.facts["values"]
    assert (made.facts["tank"], value["analyte"]) == ("Loft", "kh")
    assert stock(await talk.say("/stock")) == {"Loft": {"guppies": 8}}


async def test_what_is_told_behind_a_new_tank_is_not_the_old_ones(talk: Talk) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("added 6 guppies")
    await talk.say("tank Hall 180 l, lost 2 guppies")
    assert stock(await talk.say("/stock"))["Fern"] == {"guppies": 6}
    await talk.say("tank Den 60 l, kh 3")
    facts = await talk.facts("dose kh 4")
    assert facts["tank"] == "Den"


@pytest.mark.parametrize(
    "text",
    [
        "my tank is 80 l, is that ok for 6 neons",
        "is a 60 l tank enough, 6 guppies?",
        "how many guppies fit a 60 l tank",
        "my 60 l tank lost 2 neons",
    ],
)
async def test_a_question_or_a_loss_adds_no_animal(talk: Talk, text: str) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("added 9 neons")
    await talk.say(text)
    assert "guppies" not in (held := stock(await talk.say("/stock"))["Fern"])
    assert held.get("neons", 0) <= 9


async def test_what_is_no_tank_keeps_nothing_behind_it(talk: Talk) -> None:
    await talk.say("/tank new Attic 54 l fresh")
    (refused,) = await talk.say("tank Fern 0 l, 6 guppies")
    assert not refused.buttons
    assert stock(await talk.say("/stock")) == {"Attic": {}}
