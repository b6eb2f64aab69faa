"""Of which of several tanks a message is, that names none, or names it only afterwards."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk

REEF = "/tank new Reef 200 l marine"
PLANTED = "/tank new Planted 90 l fresh"


async def say_all(talk: Talk, *lines: str) -> None:
    for each in lines:
        await talk.say(each)


@pytest.mark.parametrize("text", ["sg 1.026", "sal 34.8", "salinity 35 ppt", "sg 1.026 temp 25"])
async def test_sea_water_goes_to_the_only_sea_and_that_is_said(talk: Talk, text: str) -> None:
    await say_all(talk, REEF, PLANTED, "planted kh 4")
    (reply,) = await talk.say(text)
    assert reply.facts["tank"] == "Reef"
    assert "Planted is fresh" in reply.text
    assert reply.buttons[0].label == "it was in Planted"
    (moved,) = await talk.press(1, reply)
    assert moved.facts["tank"] == "Planted"
    assert [each["id"] for each in moved.facts["findings"]] == ["salt_in_fresh"]


@pytest.mark.parametrize(
    ("lines", "text"),
    [
        ((REEF, "/tank new Lagoon 90 l marine", PLANTED, "planted kh 4"), "sal 35"),
        (("/tank new Fern 60 l fresh", PLANTED, "planted kh 4"), "sg 1.026"),
        ((REEF, PLANTED, "planted kh 4"), "cleaned the filter, sg 1.026"),
    ],
    ids=["two seas", "no sea", "a deed beside it"],
)
async def test_sea_water_that_may_be_of_several_is_asked_for_its_tank(
    talk: Talk, lines: tuple[str, ...], text: str
) -> None:
    await say_all(talk, *lines)
    (reply,) = await talk.say(text)
    assert "Which tank" in reply.text
    assert not {"values", "events"} & set(reply.facts)
    assert reply.buttons[-1].label == "Planted"


@pytest.mark.parametrize("text", ["sg 1.001", "salinity 3", "kh 8", "planted sg 1.026"])
async def test_what_fresh_water_has_or_is_told_by_name_stays(talk: Talk, text: str) -> None:
    await say_all(talk, REEF, PLANTED, "planted kh 4")
    (reply,) = await talk.say(text)
    assert reply.facts["tank"] == "Planted"


async def test_sea_water_in_a_fresh_tank_is_never_called_well(talk: Talk) -> None:
    await say_all(talk, PLANTED, "planted sg 1.026")
    (reply,) = await talk.say("is planted ok")
    assert [each["id"] for each in reply.facts["findings"]] == ["salt_in_fresh"]
    assert "within the limits" not in reply.text
