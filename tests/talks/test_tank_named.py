"""Names of tanks that mean a day, a month, a number or a salt as well."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk


@pytest.mark.parametrize(
    ("line", "name"),
    [
        ("tank Otto 240 l", "Otto"),
        ("tank Mar 200 l marine", "Mar"),
        ("tank Juni 30 l", "Juni"),
        ("tank Mer 300 l", "Mer"),
        ("tank Sol 60 l", "Sol"),
        ("Becken Sonntag 60 l", "Sonntag"),
        ("bac Août 60 l", "Août"),
        ("acuario Uno 60 l", "Uno"),
        ("akwarium Maj 60 l", "Maj"),
        ("tank Becken1 112 l", "Becken1"),
        ("tank Becken 112 l", "Becken"),
        ("tank Pecera 60 l", "Pecera"),
        ("tank otto 240 l", "otto"),
        ("tank big tank 300 l", "big tank"),
        ("tank den 60 l", "den"),
    ],
)
async def test_a_name_that_means_something_else_is_kept_as_told(
    talk: Talk, line: str, name: str
) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    facts = await talk.facts(line)
    assert facts["tank"] == name
    assert "Fern: 90 L" in await talk.text("/tank Fern")


@pytest.mark.parametrize(
    "line",
    [
        "Becken Volumen 100 l",
        "Becken Inhalt 110 l",
        "Becken Wasserwechsel 30 l",
        "tank Temp 25",
        "Tank Heute 30 l",
        "tank Osmose 20 l",
        "tank water 40 l",
        "tank lost 30 l",
        "tank changed 30 l",
        "tank Sol 60",
        "tank mit 60 l",
        "bac de 60 l",
        "tank der 60 l fasst",
    ],
)
async def test_a_deed_or_a_volume_is_no_name(talk: Talk, line: str) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say(line)
    assert [tank["tank"] for tank in (await talk.facts("/tank"))["tanks"]] == ["Fern"]


async def test_a_new_tank_without_a_name_gets_one_that_is_free(talk: Talk) -> None:
    assert (await talk.facts("new tank 90 l"))["tank"] == "Tank"
    assert (await talk.facts("new tank 60 l"))["tank"] == "Second"
    assert (await talk.facts("new tank 30 l"))["tank"] == "Second 2"
    assert (await talk.facts("new tank fern 30 l"))["tank"] == "fern"


@pytest.mark.parametrize("line", ["my shed tank is 60 l", "my den tank is 60 l", "frog tank 60 l"])
async def test_a_tank_by_another_word_does_not_overwrite_the_only_one(
    talk: Talk, line: str
) -> None:
    await talk.say("tank big 120 l")
    await talk.say(line)
    assert "big: 120 L" in await talk.text("/tank big")


@pytest.mark.parametrize(
    "line", ["my tank is 60 l", "actually the tank is 60 l", "der tank hat 60 l"]
)
async def test_the_only_tank_is_told_anew_without_its_name(talk: Talk, line: str) -> None:
    await talk.say("tank big 120 l")
    await talk.say(line)
    assert "big: 60 L" in await talk.text("/tank big")
