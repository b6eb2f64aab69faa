"""`when should i do the next change`: by reminders, readings and the usual routine; words ours."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk

LINES = [
    "when should i do the next change",
    "when is the next water change",
    "next water change?",
    "when is puddle due a wc",
    "wann ist der nächste wasserwechsel",
    "quand est le prochain changement d'eau",
    "cuándo toca el próximo cambio de agua",
    "wanneer is de volgende waterwissel",
]


async def _well(talk: Talk) -> None:
    await talk.say("/tank new Puddle 90 l fresh")
    await talk.say("nitrate 10 ph 7.2 kh 4 ammonia 0 nitrite 0")


@pytest.mark.parametrize("line", LINES)
async def test_the_usual_week_after_the_last(talk: Talk, line: str) -> None:
    await _well(talk)
    await talk.say("changed 20%")
    (reply,) = await talk.say(line)
    assert "asks for a water change now" in reply.text
    assert "the next about" in reply.text
    assert "remind me to change water in Puddle" in reply.text


@pytest.mark.parametrize("line", LINES)
async def test_a_reading_asks_for_it_now(talk: Talk, line: str) -> None:
    await _well(talk)
    await talk.say("nitrate 60")
    (reply,) = await talk.say(line)
    assert [each["id"] for each in reply.facts["findings"]] == ["nitrate"]
    assert "due now" in reply.text


async def test_a_day_after_the_one_of_today(talk: Talk) -> None:
    await _well(talk)
    await talk.say("nitrate 60")
    await talk.say("changed 20%")
    told = await talk.text(LINES[0])
    assert "due now" not in told
    assert "A day after this one" in told


async def test_by_a_test_while_there_is_poison(talk: Talk) -> None:
    await _well(talk)
    await talk.say("ammonia 2")
    await talk.say("changed 20%")
    (reply,) = await talk.say(LINES[1])
    assert reply.facts["findings"][0]["id"] == "ammonia"
    assert "Test again in an hour" in reply.text


async def test_the_reminder_for_it(talk: Talk) -> None:
    await _well(talk)
    await talk.say("remind me to change water every 7 days at 19:00")
    (reply,) = await talk.say(LINES[0])
    assert [each["what"] for each in reply.facts["reminders"]] == ["change water"]


async def test_nitrate_that_rises_tells_how_long(talk: Talk) -> None:
    await talk.say("/tank new Puddle 90 l fresh")
    for value in (10, 16, 22, 28, 34):
        await talk.say(f"nitrate {value} ammonia 0 nitrite 0")
        await talk.wait(days=3)
    await talk.say("nitrate 40 ammonia 0 nitrite 0")
    (reply,) = await talk.say(LINES[0])
    assert reply.facts["days"] == pytest.approx(2.0, abs=0.5)


async def test_old_readings_tell_nothing(talk: Talk) -> None:
    await _well(talk)
    await talk.wait(days=10)
    assert "I cannot tell" in await talk.text(LINES[0])


@pytest.mark.parametrize(
    "line",
    ["when did i last change the water", "when should i change the filter", "when can i add fish"],
)
async def test_what_asks_of_something_else(talk: Talk, line: str) -> None:
    await _well(talk)
    assert "Common practice" not in await talk.text(line)


async def test_another_tank_is_named(talk: Talk) -> None:
    await _well(talk)
    await talk.say("/tank new Moss 30 l fresh")
    assert (await talk.text("when is the next water change in puddle")).startswith("Puddle:")
