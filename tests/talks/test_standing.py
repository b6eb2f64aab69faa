"""How a tank stands and where it is going, from its own record."""

from __future__ import annotations

import pytest

from bot.chat.words.glossary import explained
from core.analytes import ANALYTES
from tests.chat.harness import Talk


async def test_a_tank_without_readings_is_not_judged(talk: Talk) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    assert "nothing is measured yet" in await talk.text("is my water ok?")


async def test_the_worst_finding_comes_first_with_the_readings_and_what_is_due(talk: Talk) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("kh 4 ph 7 temp 24 nitrite 2")
    await talk.say("remind me to test fern every 3 days at 19:00")
    (reply,) = await talk.say("how's fern doing")
    assert reply.lines[0].text.startswith("Fern: Nitrite")
    assert reply.facts["findings"][0]["id"] == "nitrite"
    assert reply.facts["readings"] == {"kh": 4, "ph": 7, "temperature": 24, "nitrite": 2}
    assert reply.lines[-1].text.startswith("Due next: test")
    assert "Measured: pH 7" in reply.text


async def test_old_readings_are_no_ground_for_all_is_well(talk: Talk) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("kh 5 ph 7 temp 24 ammonia 0 nitrite 0")
    assert "Change nothing" in await talk.text("is my water ok?")
    await talk.wait(days=9)
    told = await talk.text("is my water ok?")
    assert "I cannot tell" in told
    assert "KH 5 °dH (9 days ago)" in told


async def test_a_change_is_advised_where_a_reading_asks_for_it(talk: Talk) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("kh 5 ph 7 no3 20 temp 24")
    await talk.say("changed 30% 4 days ago")
    told = await talk.text("should i do a water change?")
    assert "nothing that was measured asks for a water change" in told
    assert "4 days ago" in told
    await talk.say("no3 80")
    assert (await talk.text("do i need a water change")).startswith("Fern: yes. Nitrate 80")


async def test_when_a_limit_is_met_is_told_by_the_trend(talk: Talk) -> None:
    """A straight rise of 2 mg/L a day from 10: 40 is met 15 days after the first, by hand."""
    await talk.say("/tank new Fern 90 l fresh")
    for day in range(0, 12, 2):
        await talk.say(f"no3 {10 + 2 * day}")
        await talk.wait(days=2)
    facts = await talk.facts("how many days until nitrate is 40")
    assert facts["per_day"] == pytest.approx(2.0)
    assert facts["days"] == pytest.approx(3.0, abs=0.01)  # the last reading is two days old
    assert "I cannot tell" in await talk.text("when will nitrate reach 5")


async def test_several_doubts_are_taken_with_one_yes(talk: Talk) -> None:
    await talk.say("/tank new Tang 400 l fresh")
    (asked,) = await talk.say("tanganyika ph 8.9 kh 16 gh 11 temp 26 no3 30")
    (reply,) = await talk.say("yes")
    told = {value["analyte"]: value["value"] for value in reply.facts["values"]}
    assert told == {"ph": 8.9, "kh": 16, "gh": 11, "temperature": 26, "nitrate": 30}
    assert "already" in (await talk.press(2, asked))[0].text


async def test_a_tie_offers_both_meanings_and_yes_means_neither(talk: Talk) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    (asked,) = await talk.say("cl 0.5")
    assert [button.label for button in asked.buttons[:2]] == ["chlorine 0.5", "chloride 0.5"]
    assert "chlor" not in (await talk.text("yes")).casefold()
    (reply,) = await talk.say("chloride 0.5")
    assert reply.facts["values"][0]["analyte"] == "chloride"


async def test_two_days_for_two_values_are_one_choice(talk: Talk) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    (asked,) = await talk.say("3/4 kh 5 gh 6")
    assert len(asked.buttons) == 4
    (reply,) = await talk.say(asked.buttons[1].label)
    assert len(reply.facts["values"]) == 2


async def test_a_routine_keeps_a_value_within_the_step_limits(talk: Talk) -> None:
    """Two a day and tap with 5: a share s every d days peaks at 5 + 2 d / s, by hand."""
    await talk.say("/tank new Quarry 240 l fresh")
    await talk.say("ph 8.2 kh 14 gh 16 temp 26")
    await talk.say("/source tap ph 8 kh 12 gh 14 no3 5 temp 24")
    for day in range(0, 12, 2):
        await talk.say(f"no3 {5 + 2 * day}")
        await talk.wait(days=2)
    await talk.say("ph 8.2 kh 14 gh 16 temp 26")
    routine = (await talk.facts("what routine keeps nitrate under 40"))["routine"]
    assert routine["high"] == pytest.approx(40)
    assert routine["share"] == pytest.approx(2 * routine["every_days"] / 35)
    assert routine["share"] <= (await talk.facts("what if i change 99%"))["largest_safe_share"]


async def test_what_a_thing_is_has_an_answer_for_each_analyte(talk: Talk) -> None:
    assert "buffer" in await talk.text("what is kh")
    for row in ANALYTES.values():
        told = explained(row.id)
        assert len(told) == 2
        assert all(told)


async def test_what_was_not_detected_is_named_so(talk: Talk) -> None:
    await talk.say("/tank new fern 90 l fresh")
    await talk.say("ammonia nd nitrite 0")
    (told,) = await talk.say("all good?")
    assert "ammonia not detected" in told.text
    assert "under 0" not in told.text


@pytest.mark.parametrize("line", ["is everything ok", "all good?", "is my water ok", "alles gut?"])
async def test_a_danger_in_another_tank_is_said_before_the_one_in_use(
    talk: Talk, line: str
) -> None:
    await talk.say("/tank new fry 30 l fresh")
    await talk.say("/tank new salt 200 l reef")
    await talk.say("fry ammonia 2 ph 8 temp 26")
    await talk.say("salt ammonia 0 nitrite 0 salinity 35 kh 8 ph 8.1 temp 25")
    first, *others = await talk.say(line)
    assert first.facts["dangers"] == {"fry": "ammonia"}
    assert "fry: Ammonia is dangerous" in first.lines[0].text
    assert any(reply.facts.get("tank") == "salt" for reply in others)


async def test_a_tank_that_is_named_is_answered_alone(talk: Talk) -> None:
    await talk.say("/tank new fry 30 l fresh")
    await talk.say("/tank new salt 200 l reef")
    await talk.say("fry ammonia 2 ph 8 temp 26")
    await talk.say("salt ammonia 0 nitrite 0 salinity 35 kh 8 ph 8.1 temp 25")
    (told,) = await talk.say("is salt ok")
    assert told.facts["tank"] == "salt"
