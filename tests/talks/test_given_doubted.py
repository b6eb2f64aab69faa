"""What is told to be in behind a plan and may be no part of it: nothing is logged on a guess.

Grams by molar mass (29.96 mg/L of sodium bicarbonate a °dH, from the formula weight 84.007).
"""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk

A_PART = 90 * 29.96e-3


@pytest.fixture
async def two(talk: Talk) -> Talk:
    """A plan in two parts: KH 2 to 4 in 90 L."""
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("kh 2 ammonia 0 ph 7")
    await talk.say("how much baking soda for kh 4")
    return talk


async def nothing_in(talk: Talk) -> bool:
    """Whether no dose is on record."""
    return "bicarbonate" not in await talk.text("what did i dose")


@pytest.mark.parametrize("text", ["its 20 g in 500 ml", "20 g per 500 ml", "i put 20 g in 500 ml"])
async def test_a_strength_is_no_deed(two: Talk, text: str) -> None:
    facts = await two.facts(text)
    assert facts["solution"]["a_litre"] == pytest.approx(40.0)
    assert facts["solution"]["millilitres"] == pytest.approx(A_PART / 40e-3, rel=2e-3)
    assert await nothing_in(two)


async def test_what_can_be_no_solution_is_asked_about(two: Talk) -> None:
    assert "How much of what" in await two.text("its 1 g in 1 l")
    assert await nothing_in(two)


@pytest.mark.parametrize("text", ["put in 2.7 g in 90 l", "2.7 g in"])
async def test_so_much_in_the_tank_is_one(two: Talk, text: str) -> None:
    (event,) = (await two.facts(text))["events"]
    assert event["grams"] == pytest.approx(2.7)


@pytest.mark.parametrize(
    ("between", "deed"),
    [
        ("would 1 tbsp do", "ok its in"),
        ("or a whole cup?", "ok did it"),
        ("1/2 tsp is that close enough", "ok thats in"),
        ("or a whole cup?", "done"),
        ("would 1 tbsp do", "both parts are in"),
    ],
)
async def test_behind_an_amount_that_was_not_understood_it_is_asked(
    two: Talk, between: str, deed: str
) -> None:
    await two.say(between)
    assert "How much of what" in await two.text(deed)
    assert await nothing_in(two)


async def test_once_a_dose_is_told_the_next_part_counts(two: Talk) -> None:
    await two.say("or a whole cup?")
    await two.say("dosed 2.7 g baking soda")
    await two.wait(hours=24)
    (event,) = (await two.facts("second part is in"))["events"]
    assert event["grams"] == pytest.approx(A_PART, rel=2e-3)


@pytest.mark.parametrize("between", ["ok", "thanks", "is that safe", "how do i dissolve it"])
async def test_what_was_understood_leaves_the_plan(two: Talk, between: str) -> None:
    await two.say(between)
    (event,) = (await two.facts("its in"))["events"]
    assert event["grams"] == pytest.approx(A_PART, rel=2e-3)


@pytest.mark.parametrize(
    ("text", "salt"),
    [
        ("used epsom instead by mistake", "magnesium sulfate"),
        ("used potassium bicarb instead", "potassium bicarbonate"),
        ("used salt instead", "sodium chloride"),
    ],
)
async def test_of_another_salt_the_grams_are_asked(two: Talk, text: str, salt: str) -> None:
    (asked,) = await two.say(text)
    assert "How many grams" in asked.text
    assert salt in asked.text
    assert "events" not in asked.facts


async def test_washing_soda_in_its_place_alarms(two: Talk) -> None:
    (alarm,) = await two.say("used washing soda instead")
    assert [each["id"] for each in alarm.facts["findings"]] == ["caustic_dosed"]
    assert [event["substance"] for event in alarm.facts["events"]] == ["sodium carbonate"]


@pytest.mark.parametrize("text", ["the bicarb is in", "soda is in", "put the salt in"])
async def test_its_own_salt_is_a_part(two: Talk, text: str) -> None:
    (event,) = (await two.facts(text))["events"]
    assert event["substance"] == "sodium bicarbonate"


@pytest.mark.parametrize("since", ["kh 4", "kh 4.5"])
async def test_once_its_goal_is_read_all_at_once_is_asked_about(two: Talk, since: str) -> None:
    await two.say(since)
    assert "How much of what" in await two.text("gave it all at once")
    assert await nothing_in(two)


async def test_short_of_its_goal_it_is_all_of_the_plan(two: Talk) -> None:
    (event,) = (await two.facts("gave it all at once"))["events"]
    assert event["grams"] == pytest.approx(2.0 * A_PART, rel=2e-3)


@pytest.mark.parametrize("text", ["i think i gave it", "ich glaub es ist drin"])
async def test_what_went_in_perhaps_is_no_deed(two: Talk, text: str) -> None:
    assert "Not logged" in await two.text(text)
    assert await nothing_in(two)


@pytest.mark.parametrize(
    ("text", "grams"), [("done with part 1", A_PART), ("the 2.7g went in at noon", 2.7)]
)
async def test_which_part_or_hour_is_no_doubt(two: Talk, text: str, grams: float) -> None:
    (event,) = (await two.facts(text))["events"]
    assert event["grams"] == pytest.approx(grams, rel=2e-3)


async def test_a_plan_not_begun_ends_elsewhere(two: Talk) -> None:
    assert (await two.facts("not more than 3.5"))["to"] == pytest.approx(3.5)


@pytest.mark.parametrize("text", ["and tomorrow?", "still dose tmrw?", "where am i now"])
async def test_a_fragment_asks_what_comes_next(two: Talk, text: str) -> None:
    assert "None of the 2 parts" in await two.text(text)
    await two.say("done")
    assert "1 of 2 parts is left" in await two.text(text)
