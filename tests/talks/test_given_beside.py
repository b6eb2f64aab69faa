"""A part of a plan told beside values or by its bare number; one more part, and half of one."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk

A_PART = 90 * 29.96e-3


@pytest.fixture
async def two(talk: Talk) -> Talk:
    """A plan in two parts: KH 3 to 5 in 90 L."""
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("kh 3 gh 5 ph 7.0 temp 25 ammonia 0")
    await talk.say("dose kh 5")
    return talk


def grams(facts: dict) -> float:  # type: ignore[type-arg]
    (event,) = facts["events"]
    return float(event["grams"])


@pytest.mark.parametrize(
    ("text", "parts"),
    [("gave the 2.7", 1), ("put 5,4 in", 2), ("gave the 2.7 n again bc i forgot", 2)],
)
async def test_a_bare_number_of_the_plan_is_of_it(two: Talk, text: str, parts: int) -> None:
    assert grams(await two.facts(text)) == pytest.approx(A_PART * parts, rel=2e-2)


async def test_another_number_is_none_of_the_plan(two: Talk) -> None:
    assert "events" not in await two.facts("gave 3")


async def test_a_number_alone_is_how_much_where_that_is_asked(two: Talk) -> None:
    assert "Half of what?" in await two.text("actually i only gave half of it")
    assert grams(await two.facts("1.5")) == 1.5


@pytest.mark.parametrize("text", ["then the second too", "n again bc i forgot"])
async def test_one_more_is_one_more(two: Talk, text: str) -> None:
    await two.say("first part in")
    (logged,) = await two.say(text)
    assert grams(dict(logged.facts)) == pytest.approx(A_PART, rel=2e-3)
    assert "Too much for one day: 5.4 g" in logged.text


@pytest.mark.parametrize("text", ["kh 3.5 ok given", "kh 3.5, second part in", "gave it, kh 3.5"])
async def test_a_value_and_a_part_are_both_kept(two: Talk, text: str) -> None:
    await two.say("first part in")
    await two.wait(days=1)
    told = {}
    for reply in await two.say(text):
        told |= {name: reply.facts[name] for name in ("values", "events") if reply.facts.get(name)}
    assert [value["canonical"] for value in told["values"]] == [3.5]
    assert grams(told) == pytest.approx(A_PART, rel=2e-3)


async def test_no_part_is_read_into_a_value(two: Talk) -> None:
    assert "events" not in await two.facts("kh 3.5 no part given")


async def test_what_went_in_is_asked_on_where_the_plan_is_left(two: Talk) -> None:
    await two.say("i gave half")
    (left,) = await two.say("forget the plan")
    assert "is not on record yet" in left.text
    (logged,) = await two.press(1, left)
    assert grams(dict(logged.facts)) == pytest.approx(A_PART / 2, rel=2e-2)


@pytest.mark.parametrize("text", ["changed 20% and gave it", "first part in, changed 20%"])
async def test_a_change_and_a_part_are_both_kept(two: Talk, text: str) -> None:
    kept = [event for reply in await two.say(text) for event in reply.facts.get("events", ())]
    assert {event["kind"] for event in kept} == {"water_change", "dose"}


@pytest.mark.parametrize(
    "text", ["ok got the soda now. added 4 grams", "i have the baking soda now and put in 4g"]
)
async def test_so_much_behind_a_thing_at_hand_is_of_it(two: Talk, text: str) -> None:
    facts = await two.facts(text)
    assert grams(facts) == 4.0
    assert facts["events"][0]["substance"] == "sodium bicarbonate"


async def test_a_soda_at_hand_without_a_plan_is_asked_about(talk: Talk) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    told = await talk.text("got the soda. added 4 grams")
    assert "Which soda was it?" in told


@pytest.mark.parametrize("text", ["got the soda. will add 4 g", "got 500 g of soda"])
async def test_what_is_only_at_hand_is_no_dose(two: Talk, text: str) -> None:
    for reply in await two.say(text):
        assert "events" not in reply.facts
