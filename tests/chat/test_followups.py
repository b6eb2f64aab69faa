"""A plan asked for another way. Grams by molar mass: 29.96 mg/L of sodium bicarbonate a °dH,
35.70 of potassium bicarbonate (C, from the formula weights 84.007 and 100.115)."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk

PLAN = ("/tank new Fern 90 l fresh", "kh 4 gh 6 ph 7.2 ammonia 0 temp 24", "dose kh 6")
SODIUM, POTASSIUM = 2.996e-2, 3.570e-2


async def after_plan(talk: Talk) -> None:
    for line in PLAN:
        await talk.say(line)


@pytest.mark.parametrize(
    ("line", "grams", "parts"),
    [
        ("and with potassium bicarbonate instead?", 90 * 2 * POTASSIUM, 2),
        ("i only have potassium bicarbonate", 90 * 2 * POTASSIUM, 2),
        ("make it 3 parts", 90 * 2 * SODIUM, 3),
        ("slower please", 90 * 2 * SODIUM, 4),
        ("half of that", 90 * SODIUM, 1),
        ("what about kh 5?", 90 * SODIUM, 1),
        ("and for 120 l?", 120 * 2 * SODIUM, 2),
    ],
)
async def test_one_thing_of_the_plan_is_another(
    talk: Talk, line: str, grams: float, parts: int
) -> None:
    await after_plan(talk)
    facts = await talk.facts(line)
    assert facts["grams"] == pytest.approx(grams, rel=2e-3)
    assert len(facts["parts"]) == parts


async def test_changes_add_up(talk: Talk) -> None:
    await after_plan(talk)
    await talk.say("with potassium bicarbonate")
    facts = await talk.facts("half of that")
    assert facts["substance"] == "potassium bicarbonate"
    assert facts["to"] == 5.0


async def test_fewer_parts_than_are_safe_are_refused_in_the_first_line(talk: Talk) -> None:
    await after_plan(talk)
    (reply,) = await talk.say("in 1 day")
    assert reply.text.startswith("Not in 1: 2 parts")
    assert len(reply.facts["parts"]) == 2


async def test_twice_as_much_stays_in_safe_steps(talk: Talk) -> None:
    await after_plan(talk)
    facts = await talk.facts("twice that")
    assert (facts["to"], len(facts["parts"])) == (8.0, 4)


async def test_another_tank_is_planned_from_its_own_readings(talk: Talk) -> None:
    await talk.say("/tank new Quarry 200 l fresh")
    await talk.say("kh 5 ph 7.2 ammonia 0 temp 24")
    await after_plan(talk)
    facts = await talk.facts("for quarry too")
    assert (facts["tank"], facts["from"], facts["to"]) == ("Quarry", 5.0, 6.0)
    assert facts["grams"] == pytest.approx(200 * SODIUM, rel=2e-3)


async def test_what_is_refused_stays_refused_and_can_be_asked_otherwise(talk: Talk) -> None:
    await after_plan(talk)
    assert (await talk.facts("with washing soda?"))["refused"] == "carbonate"
    assert (await talk.facts("with vinegar"))["refused"] == "acid"
    assert (await talk.facts("with baking soda"))["substance"] == "sodium bicarbonate"


async def test_a_change_and_an_effect_are_asked_again(talk: Talk) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("tap: kh 6 gh 10 ph 7.6 temp 25")
    await talk.say("kh 5 gh 8 ph 7.2 ammonia 0 temp 25")
    await talk.say("what if i change 50%")
    assert (await talk.facts("and 20%?"))["share"] == pytest.approx(0.2)
    await talk.say("what does 10 g baking soda do in 120 l")
    assert (await talk.facts("and 5 g?"))["grams"] == 5.0


async def test_a_reading_or_a_report_between_is_no_follow_up(talk: Talk) -> None:
    await after_plan(talk)
    assert (await talk.facts("and kh 4.5"))["values"][0]["value"] == 4.5
    assert "did not find" in await talk.text("in two days")


async def test_a_group_is_not_overheard(talk: Talk) -> None:
    await after_plan(talk)
    assert await talk.say("in two days", group=True, addressed=False) == []


async def test_done_right_after_a_plan_logs_its_first_part(talk: Talk) -> None:
    await after_plan(talk)
    (reply,) = await talk.say("done")
    assert reply.facts["events"][0]["grams"] == pytest.approx(90 * SODIUM, rel=2e-3)
    assert "Nothing is waiting" in await talk.text("done")
