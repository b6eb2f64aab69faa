"""A reading that is asked about after too much went in: what went in is judged beside it.

That an untested overdose is spoken of until pH, KH, GH or what it moves is read, is common
practice, no source.
"""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk

SAFE = (
    "is nitrite 0 safe",
    "is nitrite 0 ok",
    "ist nitrit 0 in ordnung",
)
SODA = "dosed 60 g baking soda"
GROW = "dosed 1000 ml Grow"


@pytest.fixture
async def fern(talk: Talk) -> Talk:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("kh 4 ph 7.2 ammonia 0 temp 25")
    await talk.say("Grow: 5 ml per 100 l raises nitrate 2")
    await talk.wait(hours=1)
    return talk


@pytest.mark.parametrize("asked", SAFE)
@pytest.mark.parametrize(
    ("deed", "known_as", "told"),
    [
        (SODA, "overdose", "60 g of sodium bicarbonate"),
        (GROW, "Grow", "1000 ml of Grow"),
        ("dosed 100 ml tonic", "tonic", "I do not know what is in the tonic"),
        ("i put 10 times too much fertilizer in", "overdose", "Too much went in"),
    ],
)
async def test_what_went_in_is_said_before_a_good_reading(
    fern: Talk, deed: str, known_as: str, told: str, asked: str
) -> None:
    await fern.say(deed)
    (reply,) = await fern.say(asked)
    assert known_as in reply.facts["still_in"]
    assert told in reply.lines[0].text


@pytest.mark.parametrize("deed", [SODA, GROW])
async def test_a_bad_reading_comes_first_and_the_deed_behind(fern: Talk, deed: str) -> None:
    await fern.say(deed)
    (reply,) = await fern.say("is nitrite 0.5 safe")
    assert reply.text.startswith("That is not safe. Nitrite 0.5")
    assert "Too much for one day" in reply.text


async def test_the_water_is_not_called_well_after_too_much_of_a_product(fern: Talk) -> None:
    await fern.say(GROW)
    (reply,) = await fern.say("is my water ok")
    assert reply.text.startswith("Fern: Too much for one day: 1000 ml of Grow")
    assert "Change nothing" not in reply.text


@pytest.mark.parametrize("test", ["ph 7.2 kh 4 gh 6 ammonia 0", "nitrate 20"])
async def test_a_test_after_it_settles_a_product(fern: Talk, test: str) -> None:
    await fern.say(GROW)
    await fern.wait(hours=2)
    await fern.say(test)
    for asked in ("is my water ok", SAFE[0]):
        assert "1000 ml of Grow" not in await fern.text(asked)


async def test_a_days_dose_is_not_spoken_of(fern: Talk) -> None:
    await fern.say("dosed 4 ml Grow")
    (reply,) = await fern.say(SAFE[0])
    assert "still_in" not in reply.facts
    assert reply.text.startswith("No limit that I know")


async def test_nothing_went_in(fern: Talk) -> None:
    (reply,) = await fern.say(SAFE[0])
    assert "still_in" not in reply.facts


async def test_a_reading_that_is_asked_about_is_kept_and_what_went_in_is_named(fern: Talk) -> None:
    await fern.say(SODA)
    kept, judged = await fern.say("nitrite 0 is that safe")
    assert [each["analyte"] for each in kept.facts["values"]] == ["nitrite"]
    assert "60 g of sodium bicarbonate" in judged.text
