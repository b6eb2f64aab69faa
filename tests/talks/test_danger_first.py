"""A list of what is due begins with what is wrong; words ours."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk

NITRITE = "Nitrite 3"


async def _poisoned(talk: Talk) -> None:
    await talk.say("/tank new Puddle 90 l fresh")
    await talk.say("nitrite 3")


@pytest.mark.parametrize(
    "line",
    [
        "whats due",
        "anything due",
        "/remind",
        "what's due today",
        "what's due tomorrow",
        "nothing to do?",
        "nichts zu tun?",
        "rien à faire ?",
        "was steht an",
        "que tengo pendiente",
    ],
)
async def test_the_danger_stands_first(talk: Talk, line: str) -> None:
    await _poisoned(talk)
    (reply,) = await talk.say(line)
    assert NITRITE in reply.lines[0].text
    assert "Nothing is due" not in reply.text
    assert reply.facts["dangers"] == {"Puddle": "nitrite"}
    assert [each["id"] for each in reply.facts["findings"]] == ["nitrite"]
    (steps,) = await talk.press(1)
    assert steps.facts["emergency"] == "nitrite"


async def test_before_reminders_that_wait(talk: Talk) -> None:
    await _poisoned(talk)
    await talk.say("remind me to clean the filter in 3 days at 10:00")
    (reply,) = await talk.say("whats due")
    assert NITRITE in reply.lines[0].text
    assert reply.lines[-1].text.startswith("1. Puddle: clean the filter")
    assert "Done" in await talk.text("done 1")


async def test_of_a_tank_that_is_not_in_use(talk: Talk) -> None:
    await _poisoned(talk)
    await talk.say("/tank new Moss 60 l fresh")
    (reply,) = await talk.say("whats due")
    assert reply.lines[0].text.startswith("First Puddle:")


async def test_of_an_old_poison_that_nobody_tested_again(talk: Talk) -> None:
    await _poisoned(talk)
    await talk.wait(days=4)
    (reply,) = await talk.say("whats due")
    assert [each["id"] for each in reply.facts["findings"]] == ["not_retested"]
    assert "Nothing is due" not in reply.text


async def test_of_a_call_that_no_reading_shows(talk: Talk) -> None:
    await talk.say("/tank new Puddle 90 l fresh")
    await talk.say("i put bleach in")
    (reply,) = await talk.say("whats due")
    assert reply.lines[0].text.startswith("First Puddle:")
    (steps,) = await talk.press(1)
    assert "emergency" in steps.facts


@pytest.mark.parametrize("line", ["whats due", "nothing to do?"])
async def test_where_nothing_is_wrong_nothing_is_due(talk: Talk, line: str) -> None:
    await talk.say("/tank new Puddle 90 l fresh")
    await talk.say("ammonia 0 nitrite 0")
    (reply,) = await talk.say(line)
    assert reply.text.startswith("Nothing is due")
    assert "dangers" not in reply.facts


@pytest.mark.parametrize("line", ["whats due", "remind me to", "/tank rename"])
async def test_examples_name_a_tank_of_the_keeper(talk: Talk, line: str) -> None:
    await talk.say("/tank new Puddle 90 l fresh")
    told = await talk.text(line)
    assert "Puddle" in told
    assert "fern" not in told.casefold()
