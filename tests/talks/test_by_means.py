"""A value told with what shall bring it is a wish: planned right after a plan, else asked about.

Grams by molar mass: 30.70 mg/L of gypsum and 43.95 mg/L of Epsom salt a °dH (C, from the formula
weights 172.17 and 246.47 at 0.17832 mmol/L a °dH).
"""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk

READING = "kh 3 gh 5 ph 7 25c nh3 0"
RECIPE = "how much salt for 10 l ro to gh 6 kh 3"
GYPSUM, EPSOM = 30.70e-3, 43.95e-3


async def tank(talk: Talk, *lines: str) -> None:
    for line in ("/tank new Fern 100 l fresh", READING, *lines):
        await talk.say(line)


async def unmoved(talk: Talk) -> None:
    readings = (await talk.facts("how is fern"))["readings"]
    assert (readings["kh"], readings["gh"], readings["ph"]) == (3.0, 5.0, 7.0)


@pytest.mark.parametrize(
    "line",
    [
        "gh 12 with epsom salt",
        "gh 11 with calcium",
        "gh 8 mit gips",
        "ph 6 with peat",
        "kh 5 avec du bicarbonate",
        "so for 4 dkh 9g",
    ],
)
async def test_alone_it_is_asked_about_and_no_reading_is_offered(talk: Talk, line: str) -> None:
    await tank(talk)
    (reply,) = await talk.say(line)
    assert reply.facts["doubts"][0]["reason"] == "wish"
    assert reply.buttons[0].label.startswith(("dose ", "get "))
    await unmoved(talk)


@pytest.mark.parametrize("line", ["and gh 8 with gypsum?", "gh 8 mit Gips", "gh 8 avec du gypse"])
async def test_after_a_plan_it_is_planned(talk: Talk, line: str) -> None:
    await tank(talk, "dose gh 6")
    facts = await talk.facts(line)
    assert facts["goals"] == [{"analyte": "gh", "from": 5.0, "to": 8.0}]
    assert facts["grams"] == pytest.approx(100 * 3 * GYPSUM, rel=1e-2)
    await unmoved(talk)


@pytest.mark.parametrize(
    ("line", "substance", "a_degree"),
    [
        ("and gh 6 with gypsum?", "calcium sulfate dihydrate", GYPSUM),
        ("gh 6 with epsom salt", "magnesium sulfate heptahydrate", EPSOM),
        ("gh 6 mit Bittersalz", "magnesium sulfate heptahydrate", EPSOM),
    ],
)
async def test_of_a_bucket_it_is_the_same_bucket(
    talk: Talk, line: str, substance: str, a_degree: float
) -> None:
    await tank(talk, RECIPE)
    salts = (await talk.facts(line))["salts"]
    (told,) = [each for each in salts if each["substance"] == substance]
    assert told["grams"] == pytest.approx(10 * 6 * a_degree, rel=1e-2)
    await unmoved(talk)


async def test_the_water_of_a_bucket_is_still_that(talk: Talk) -> None:
    await tank(talk, RECIPE)
    assert "GH 8" in await talk.text("and gh 8 with ro?")
    await unmoved(talk)


@pytest.mark.parametrize(
    "line",
    [
        "kh 8 next week",
        "kh 5 minimum",
        "das ist mir zu viel, mach kh 4",
        "c'est trop, fais kh 4",
        "and gh 8 with it?",
    ],
)
async def test_with_words_unknown_the_goal_is_offered_first(talk: Talk, line: str) -> None:
    await tank(talk, "dose kh 5")
    (reply,) = await talk.say(line)
    assert reply.facts["doubts"][0]["reason"] == "aim"
    assert reply.buttons[0].label.startswith("dose ")
    await unmoved(talk)


@pytest.mark.parametrize("line", ["my friends tank has kh 12", "tetras like ph 6"])
async def test_what_is_of_other_water_has_no_button_to_store_it(talk: Talk, line: str) -> None:
    await tank(talk)
    (reply,) = await talk.say(line)
    assert not reply.buttons
    await unmoved(talk)


@pytest.mark.parametrize("line", ["kh 4 with gh 6", "today kh 4 gh 6", "kh 4, gh 6 tested"])
async def test_plain_readings_are_stored(talk: Talk, line: str) -> None:
    await tank(talk)
    facts = await talk.facts(line)
    assert facts["values"][0]["analyte"] == "kh"
