"""What was is never kept as what is: another hour's pH, what stood before a change."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk


async def tank(talk: Talk, *lines: str) -> None:
    for line in ("/tank new Fern 100 l fresh", "kh 5 gh 6 25c", *lines):
        await talk.say(line)


async def stands(talk: Talk, analyte: str) -> float:
    return float((await talk.facts("how is fern"))["readings"][analyte])


@pytest.mark.parametrize("line", ["ph 7.3 in the morning", "ph 7,3 am Morgen", "ph le matin 7,3"])
async def test_of_the_morning_is_no_value_of_now(talk: Talk, line: str) -> None:
    await tank(talk)
    await talk.wait(hours=7)
    await talk.say("ph 8.1 in the evening")
    await talk.say(line)
    assert await stands(talk, "ph") == 8.1


@pytest.mark.parametrize(
    "line",
    ["kh was 12", "el kh del acuario era 12", "kh war 12", "le kh était 12"],
)
async def test_was_behind_a_change_is_asked(talk: Talk, line: str) -> None:
    await tank(talk)
    await talk.wait(hours=1)
    await talk.say("changed 40%")
    await talk.wait(minutes=30)
    (reply,) = await talk.say(line)
    assert reply.facts["doubts"][0]["reason"] == "past"
    await talk.press(1)
    await talk.say("kh 6")
    assert await stands(talk, "kh") == 6.0
    assert "13:00" in reply.buttons[0].label


@pytest.mark.parametrize("line", ["tested, kh was 4", "kh was 4 after the change", "kh 4"])
async def test_measured_since_is_kept(talk: Talk, line: str) -> None:
    await tank(talk, "changed 40%")
    await talk.wait(minutes=30)
    await talk.say(line)
    assert await stands(talk, "kh") == 4.0


@pytest.mark.parametrize(
    "line",
    [
        "tank had gh 12 kh 8, what is it now",
        "ph was 7.5 before the change",
        "kh era 9 antes de cambiar",
    ],
)
async def test_with_no_change_on_record_it_is_not_kept(talk: Talk, line: str) -> None:
    await tank(talk)
    assert "earlier value" in await talk.text(line)
    assert (await stands(talk, "kh"), await stands(talk, "gh")) == (5.0, 6.0)


async def test_was_with_no_deed_is_a_reading(talk: Talk) -> None:
    await tank(talk)
    await talk.say("kh was 4.5")
    assert await stands(talk, "kh") == 4.5


async def test_ammonia_is_judged_by_the_highest_ph_of_the_day(talk: Talk) -> None:
    await tank(talk, "ph 8.4")
    await talk.wait(hours=3)
    facts = await talk.facts("ph 7.2 ammonia 1")
    found = next(each for each in facts["findings"] if each["id"] == "ammonia")
    assert (found["ph"], found["ph_now"], found["severity"]) == (8.4, 7.2, "alarm")
    assert "highest of the last day" in talk.last[0].text


async def test_a_change_since_explains_the_lower_ph(talk: Talk) -> None:
    await tank(talk, "ph 8.4")
    await talk.wait(hours=1)
    await talk.say("changed 40%")
    await talk.wait(hours=1)
    assert (await talk.facts("ph 7.2 ammonia 1"))["nh3_n"] < 0.02


async def test_after_a_day_it_is_forgotten(talk: Talk) -> None:
    await tank(talk, "ph 8.4")
    await talk.wait(hours=25)
    assert (await talk.facts("ph 7.2 ammonia 1"))["nh3_n"] < 0.02
