"""A value right after a plan is its new goal, or is asked about; it is never stored unasked.

Grams by molar mass: 29.96 mg/L of sodium bicarbonate a °dH (C, from the formula weight 84.007).
"""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk

READING = "kh 3 gh 8 ph 7 25c nh3 0"
RECIPE = "how much salt for 20 l ro to gh 6 kh 3"


async def tank(talk: Talk, *lines: str) -> None:
    for line in ("/tank new Fern 100 l fresh", READING, *lines):
        await talk.say(line)


async def stored(talk: Talk, analyte: str) -> float:
    """What stands on record of an analyte."""
    facts = await talk.facts("how is fern")
    return float(facts["readings"][analyte])


@pytest.mark.parametrize(
    "line",
    [
        "and gh to 10",
        "und gh auf 10",
        "et gh à 10",
        "y gh a 10",
        "e gh a 10",
        "e il gh a 10",
        "en gh naar 10",
        "a gh na 10",
        "och gh till 10",
        "maybe gh 10",
        "want gh 10",
    ],
)
async def test_another_goal_is_planned_for(talk: Talk, line: str) -> None:
    await tank(talk, "dose kh 5")
    facts = await talk.facts(line)
    assert facts["goals"] == [{"analyte": "gh", "from": 8.0, "to": 10.0}]
    assert await stored(talk, "gh") == 8.0


@pytest.mark.parametrize(
    "line",
    [
        "at kh 4",
        "up to kh 4",
        "vielleicht kh 4",
        "con kh 4",
        "kh 4 instead",
        "lieber kh 4",
        "kh 4 liever",
    ],
)
async def test_another_goal_of_the_same_is_planned_for(talk: Talk, line: str) -> None:
    await tank(talk, "dose kh 5")
    facts = await talk.facts(line)
    assert facts["grams"] == pytest.approx(100 * 2.996e-2, rel=2e-3)
    assert await stored(talk, "kh") == 3.0


@pytest.mark.parametrize(
    "line",
    ["and kh 4", "und kh 4", "kh à 4", "kh at 4", "y kh 4", "nur kh 4", "kh 4 dann", "bara kh 4"],
)
async def test_what_may_be_measured_as_well_is_asked_about(talk: Talk, line: str) -> None:
    await tank(talk, "dose kh 5")
    (reply,) = await talk.say(line)
    assert reply.facts["doubts"][0]["reason"] == "aim"
    assert [button.label for button in reply.buttons][:2] == ["dose kh 4", "kh 4"]
    assert await stored(talk, "kh") == 3.0


async def test_the_answer_to_it_is_stored_or_planned_for(talk: Talk) -> None:
    await tank(talk, "dose kh 5")
    (asked,) = await talk.say("and kh 4")
    (plan,) = await talk.press(1, asked)
    assert plan.facts["to"] == 4.0
    await talk.press(2, asked)
    assert await stored(talk, "kh") == 4.0


@pytest.mark.parametrize(
    ("line", "to"),
    [
        ("and with kh 2", {"gh": 6.0, "kh": 2.0}),
        ("avec kh 2", {"gh": 6.0, "kh": 2.0}),
        ("con kh 2 y gh 7", {"gh": 7.0, "kh": 2.0}),
        ("mit gh 8", {"gh": 8.0, "kh": 3.0}),
    ],
)
async def test_a_recipe_gets_its_new_goals(talk: Talk, line: str, to: dict[str, float]) -> None:
    await tank(talk, RECIPE)
    facts = await talk.facts(line)
    assert (facts["to"], facts["volume_l"]) == (to, 20.0)
    assert await stored(talk, "kh") == 3.0


async def test_new_water_may_be_wished_for_without_a_word_of_making(talk: Talk) -> None:
    await tank(talk)
    refused = await talk.facts("want 20 l ro at gh 6 kh 0")
    assert "salts" not in refused
    facts = await talk.facts("and with kh 2")
    assert facts["to"] == {"gh": 6.0, "kh": 2.0}
    assert await stored(talk, "kh") == 3.0


async def test_behind_a_change_it_is_asked_about(talk: Talk) -> None:
    await tank(talk, "what if i change 50%")
    (reply,) = await talk.say("and with kh 2")
    assert reply.facts["doubts"][0]["reason"] == "aim"
    assert await stored(talk, "kh") == 3.0


async def test_a_plain_reading_behind_a_plan_is_stored(talk: Talk) -> None:
    await tank(talk, "dose kh 5")
    await talk.say("kh 4")
    assert await stored(talk, "kh") == 4.0
    await talk.say("and gh 9")  # told with it
    assert await stored(talk, "gh") == 9.0


async def test_without_a_plan_it_is_a_reading(talk: Talk) -> None:
    await tank(talk, "et gh à 9")
    assert await stored(talk, "gh") == 9.0


async def test_hours_later_it_is_a_reading(talk: Talk) -> None:
    await tank(talk, "dose kh 5")
    await talk.wait(hours=5)
    await talk.say("and kh 4")
    assert await stored(talk, "kh") == 4.0


@pytest.mark.parametrize("text", ["kh 5 for fern", "kh 5 für fern", "kh 5 pour fern"])
async def test_for_a_tank_right_after_its_plan_is_asked_about(talk: Talk, text: str) -> None:
    await talk.say("/tank new Fern 60 l fresh")
    assert (await talk.text(text)).startswith("Fern: KH 5")  # without a plan it was measured
    await talk.say("undo")
    await talk.say("kh 3")
    await talk.say("dose kh 4")
    assert "may be wished for or measured" in await talk.text(text)
