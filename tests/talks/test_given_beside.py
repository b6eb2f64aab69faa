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


async def _plan(talk: Talk) -> None:
    await talk.say("/tank new Fern 120 l fresh")
    await talk.say("ph 6.8 kh 2")
    await talk.say("how much baking soda for kh 5")


@pytest.mark.parametrize(
    ("line", "kh"),
    [
        ("kh only went to 3 its been 2 min. how much more to 6", 3.0),
        ("kh only went to 3.5 its been 10 min. how much more", 3.5),
        ("kh 3 after 5 minutes", 3.0), ("kh has only come up to 2.5, how much more", 2.5),
    ],
)  # fmt: skip
async def test_a_test_minutes_after_a_dose_is_kept_and_gives_no_amount(
    talk: Talk, line: str, kh: float
) -> None:
    await _plan(talk)
    replies = await talk.say(line)
    assert replies[0].facts["values"][0]["value"] == kh
    assert "Add nothing more now" in replies[-1].text or "min" not in line
    assert (await talk.say("how much more to 6"))[0].facts["refused"] == "told_first"


async def test_behind_a_dose_on_record_it_is_only_too_early(talk: Talk) -> None:
    await _plan(talk)
    await talk.say("done")
    replies = await talk.say("kh only went to 2.5 its been 10 min. how much more")
    assert "10 min after a dose is too early" in replies[-1].text
    assert "said" not in replies[-1].facts
    assert "grams" not in (await talk.say("how much more to 6"))[0].facts


@pytest.mark.parametrize(
    "line", ["kh was 2 2 hours ago", "kh 2, been 20 min since the water change"]
)
async def test_a_time_of_another_thing_tells_of_no_dose(talk: Talk, line: str) -> None:
    await _plan(talk)
    assert all("said" not in each.facts for each in await talk.say(line))


async def test_a_deed_before_a_reminder_and_one_of_two_are_kept(talk: Talk) -> None:
    await _plan(talk)
    replies = await talk.say("done. she did too at the same time oops")
    assert replies[0].facts["events"][0]["grams"] == pytest.approx(3.6, abs=0.05)
    assert replies[-1].facts["said"] == "she did too at the same time oops"


async def test_half_is_asked_about_beside_its_reminder(talk: Talk) -> None:
    await _plan(talk)
    replies = await talk.say("put half in will do other half at 6 tmrw morning remind me")
    assert "06:00" in replies[0].text
    assert "put half in" not in replies[0].text
    assert any("grams" in each.text or " g" in each.text for each in replies[1:])
    assert (await talk.say("how much more"))[0].facts["refused"] == "told_first"


async def test_a_test_behind_a_part_is_no_wish(talk: Talk) -> None:
    await _plan(talk)
    done, read = await talk.say("did the first dose this morning, kh tested 3 just now")
    assert done.facts["events"][0]["grams"] == pytest.approx(3.6, abs=0.05)
    assert read.facts["values"][0]["value"] == 3
