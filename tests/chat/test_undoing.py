"""A plain undo is of the line before it; what is older is taken back by a button only."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk


@pytest.fixture
async def fern(talk: Talk) -> Talk:
    await talk.say("/tank new Fern 90 l fresh")
    return talk


async def tasks(talk: Talk) -> list[str]:
    return [each["what"] for each in (await talk.facts("/remind")).get("reminders", [])]


@pytest.mark.parametrize(
    "line",
    ["how do i raise kh", "blub", "asdf qwer zxcv", "was ist kh", "dose kh 30", "thanks"],
)
async def test_after_a_line_of_which_nothing_was_kept_it_is_asked(fern: Talk, line: str) -> None:
    await fern.say("kh 5")
    await fern.say(line)
    (asked,) = await fern.say("undo")
    assert "Taken back" not in asked.text
    assert "KH 5" in asked.text
    assert [each.label for each in asked.buttons] == ["undo"]
    (taken,) = await fern.press(1, asked)
    assert "Taken back" in taken.text


@pytest.mark.parametrize("line", ["kh 5", "changed 20%", "added 3 guppies", "kh 5, how much to 6"])
async def test_right_after_a_line_that_was_kept_it_is_taken_back(fern: Talk, line: str) -> None:
    await fern.say("ph 7")
    await fern.say(line)
    assert "Taken back" in await fern.text("undo")
    assert "Taken back" in await fern.text("undo")  # and the line before that


async def test_a_reminder_is_ended_only_right_after_it_was_set(fern: Talk) -> None:
    await fern.say("remind me to test kh every tuesday")
    await fern.say("how do i raise kh")
    (asked,) = await fern.say("undo")
    assert await tasks(fern) == ["test kh"]
    await fern.press(1, asked)
    assert await tasks(fern) == []


async def test_what_is_days_old_is_asked(fern: Talk) -> None:
    await fern.say("kh 5")
    await fern.wait(days=6)
    assert "Taken back" not in await fern.text("undo")
    assert "Taken back" in await fern.text("undo")


async def test_a_look_at_the_record_is_no_line_between(fern: Talk) -> None:
    await fern.say("kh 5")
    await fern.say("/tank fern")
    assert "Taken back" in await fern.text("undo")


async def test_a_name_is_given_back(fern: Talk) -> None:
    await fern.say("remind me to dose iron every tuesday")
    await fern.say("rename iron to fe")
    assert await tasks(fern) == ["fe"]
    await fern.say("undo")
    assert await tasks(fern) == ["dose iron"]
