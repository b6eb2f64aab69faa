"""The buffer question, from the words to the words."""

from __future__ import annotations

import re

import pytest

from tests.chat.harness import Talk


@pytest.fixture
async def fern(talk: Talk) -> Talk:
    await talk.say("/tank new Fern 120 l fresh")
    return talk


def grams_in(text: str) -> list[str]:
    return re.findall(r"\d[\d.,]* ?g\b", text)


async def test_a_dose_without_any_set_up(talk: Talk) -> None:
    """30 mg/L of sodium bicarbonate for 1 °dH, 3.6 g in 120 L: common practice, no source."""
    (reply,) = await talk.say("how much baking soda for 120 l from kh 3 to 6")
    facts = reply.facts
    assert facts["parts"] == pytest.approx([3.6] * 3, rel=2e-3)
    assert facts["grams"] == pytest.approx(10.8, rel=2e-3)
    assert (facts["from"], facts["to"], facts["every_hours"]) == (3, 6, 24)
    assert facts["sodium_mg_l"] == pytest.approx(24.6, rel=1e-2)
    assert "mmonia" in reply.text
    assert [button.label for button in reply.buttons] == [
        "log it",
        "remind me to retest in 24 h",
        "more",
    ]


async def test_the_caution_stands_before_the_grams(talk: Talk) -> None:
    text = await talk.text("how much baking soda for 120 l from kh 3 to 6")
    caution = text.index("not veterinary advice")
    assert caution < text.index(grams_in(text)[0])
    assert "spoon" in text


async def test_ammonia_stands_before_the_grams(fern: Talk) -> None:
    nowhere = await fern.text("how much baking soda for 120 l from kh 3 to 6")
    await fern.say("kh 4 ph 7 temp 24 ammonia 0.25")
    for text in (nowhere, await fern.text("dose kh 6")):
        lines = text.splitlines()
        grams = next(place for place, line in enumerate(lines) if "weighed" in line)
        assert any("mmonia" in line for line in lines[:grams])


async def test_buffer_and_calcium_are_never_dissolved_in_one_jug(fern: Talk) -> None:
    await fern.say("kh 4 gh 6 ph 7.2 temp 25 ammonia 0")
    apart = "Dissolve each salt apart"
    assert apart in (await fern.text("dose kh 6 gh 9")).splitlines()[1]
    assert apart not in await fern.text("dose gh 9")
    assert apart not in await fern.text("dose kh 6")


async def test_a_known_tank_names_its_condition_first(fern: Talk) -> None:
    await fern.say("kh 4 temp 25")
    (reply,) = await fern.say("dose kh 6")
    below = reply.facts["only_if_ammonia_below"]
    assert reply.lines[0].text.startswith("Only if total ammonia is under")
    assert f"{below:g}" in reply.lines[0].text
    assert reply.facts["tank"] == "Fern"


async def test_a_rise_is_counted_from_the_last_reading(fern: Talk) -> None:
    await fern.say("kh 4 ammonia 0 temp 25")
    facts = await fern.facts("kh +2")
    assert (facts["from"], facts["to"]) == (4, 6)
    assert "only_if_ammonia_below" not in facts


async def test_with_ammonia_there_are_no_grams_and_what_to_do_first(fern: Talk) -> None:
    await fern.say("kh 4 ammonia 1 ph 7 temp 25")
    (reply,) = await fern.say("dose kh 6")
    assert reply.facts["refused"] == "ammonia"
    assert not {"grams", "parts"} & set(reply.facts)
    assert grams_in(reply.text) == []
    assert "No buffer" in reply.lines[0].text
    assert "stop feeding" in reply.text
    assert [button.label for button in reply.buttons] == []


async def test_an_old_reading_says_retest_first_and_still_shows_the_sum(fern: Talk) -> None:
    await fern.say("kh 4")
    await fern.wait(days=4)
    (reply,) = await fern.say("dose kh 6")
    first = reply.lines[0].text  # what total ammonia it bears comes before everything
    assert first.startswith("Only if total ammonia is under")
    assert "Retest first" in first
    assert "4 days old" in first
    assert grams_in(reply.text)
    assert "mmonia" in reply.text


async def test_a_wish_within_the_kits_resolution_says_so(fern: Talk) -> None:
    await fern.say("kh 4 ammonia 0 temp 25")
    assert "within what your kit can tell apart" in await fern.text("kh +1")


async def test_the_volume_is_asked_for_when_it_is_needed_and_the_dose_follows(talk: Talk) -> None:
    await talk.say("kh 4 ammonia 0 temp 25")
    assert "How many litres" in await talk.text("dose kh 6")
    replies = await talk.say("120 l")
    assert replies[-1].facts["volume_l"] == 120
    assert replies[-1].facts["grams"] == pytest.approx(7.2, rel=2e-3)


async def test_log_it_stores_the_first_part_once(fern: Talk) -> None:
    await fern.say("kh 4 ammonia 0 temp 25")
    (reply,) = await fern.say("dose kh 6")
    (logged,) = await fern.press(1, reply)
    assert logged.facts["events"][0]["grams"] == pytest.approx(3.6, rel=2e-3)
    assert "settled already" in (await fern.press(1, reply))[0].text
    async with fern.app.database.read() as uow:
        assert len(await uow.log.events(1)) == 1


async def test_every_button_can_be_typed_out(fern: Talk) -> None:
    await fern.say("kh 4 ammonia 0 temp 25")
    await fern.say("dose kh 6")
    assert "logged" in await fern.text("Log it")
    await fern.say("remind me to look at the heater in 1h")
    await fern.wait(hours=1)
    assert "again" in await fern.text("in 1 hour")


async def test_the_retest_arrives_a_day_later_once(fern: Talk) -> None:
    await fern.say("kh 4 ammonia 0 temp 25")
    (reply,) = await fern.say("dose kh 6")
    await fern.press(2, reply)
    assert "settled already" in (await fern.press(2, reply))[0].text
    (due,) = await fern.wait(hours=30)
    assert due.facts["reminders"][0]["tank"] == "Fern"
    assert due.at is not None
    assert due.at.isoformat() == "2026-03-02T12:00:00+00:00"


async def test_potassium_where_it_is_asked_for(talk: Talk) -> None:
    facts = await talk.facts("how much potassium bicarbonate for 100 l from kh 4 to 5")
    assert facts["potassium_mg_l"] == pytest.approx(13.9, rel=1e-2)
    assert "sodium_mg_l" not in facts


@pytest.mark.parametrize(
    ("text", "reason"),
    [
        ("how much baking soda for 120 l from kh 6 to 3", "target_reached"),
        ("how much baking soda for 3000000 l from kh 3 to 6", "volume_implausible"),
        ("how much baking soda for 0 l from kh 3 to 6", "volume_implausible"),
        ("how much baking soda for 0.3 ml from kh 3 to 6", "volume_implausible"),
        ("how much soda ash for 120 l from kh 3 to 6", "carbonate"),
    ],
)
async def test_what_is_refused_shows_no_amount(talk: Talk, text: str, reason: str) -> None:
    (reply,) = await talk.say(text)
    assert reply.facts["refused"] == reason
    assert grams_in(reply.text) == []


async def test_contradicting_readings_get_no_dose(fern: Talk) -> None:
    await fern.say("kh 4 ph 6 ammonia 0 temp 25")
    facts = await fern.facts("dose kh 6")
    assert facts["refused"] == "contradiction"


async def test_the_ph_of_a_plan_in_parts_is_told_of_its_last_part(fern: Talk) -> None:
    await fern.say("kh 3 ph 7.2 temp 24 ammonia 0")
    several = await fern.say("dose kh 6")
    assert len(several[0].facts["parts"]) > 1
    assert "After the last part: pH about" in several[0].text
    single = await fern.say("dose kh 4")
    assert len(single[0].facts["parts"]) == 1
    assert "pH about" in single[0].text
    assert "After the last part" not in single[0].text
