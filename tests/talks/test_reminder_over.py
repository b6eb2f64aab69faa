"""A reminder put right, settled or let go right after it was set or moved."""

from __future__ import annotations

from typing import Any

import pytest

from tests.chat.harness import Talk


@pytest.fixture
async def fern(talk: Talk) -> Talk:
    """Sunday 1 March 2026, noon."""
    await talk.say("/tank new Fern 90 l fresh")
    return talk


async def due(talk: Talk) -> dict[str, str]:
    held: list[dict[str, Any]] = (await talk.facts("/remind")).get("reminders", [])
    return {each["what"]: each["due"][:16] for each in held}


@pytest.mark.parametrize(
    ("text", "after"),
    [
        ("wait noon i mean noon tomorrow", "2026-03-02T12:00"),
        ("i mean noon tomorrow", "2026-03-02T12:00"),
        ("sorry, noon", "2026-03-02T12:00"),
        ("no 8pm i meant", "2026-03-01T20:00"),
        ("oops 9pm", "2026-03-01T21:00"),
        ("sorry it died", "2026-03-02T08:00"),
    ],
)
async def test_time_put_right(fern: Talk, text: str, after: str) -> None:
    await fern.say("remind me at 8am to feed")
    await fern.say(text)
    assert await due(fern) == {"feed": after}


@pytest.mark.parametrize(
    "text",
    [
        "done the dose already, dont remind me again",
        "did that already so skip it",
        "already did it",
        "done already no need to remind me",
        "hab ich schon gemacht, erinnere mich nicht mehr",
    ],
)
async def test_done_before_due(fern: Talk, text: str) -> None:
    """It is settled, and what went in is offered for the log."""
    await fern.say("remind me in 36 hours second bicarb dose 1 g")
    (reply,) = await fern.say(text)
    assert reply.facts["reminder"]["answer"] == "done"
    (logged,) = await fern.press(1, reply)
    assert logged.facts["events"][0]["grams"] == 1
    assert await due(fern) == {}
    assert await fern.wait(days=2) == []


async def test_too_much_with_substance_in_front(fern: Talk) -> None:
    replies = await fern.say("remind me in 36 hours second bicarb dose 30 g")
    assert "too much" in str(replies[0].lines)
    assert await due(fern) == {}


async def test_done_and_rhythm_to_end(fern: Talk) -> None:
    await fern.say("remind me every day at 7pm to clean the filter")
    _done, asked = await fern.say("already done so dont remind me again")
    assert await due(fern) == {"clean the filter": "2026-03-02T19:00"}
    await fern.press(1, asked)
    assert await due(fern) == {}


async def test_stop_behind_move(fern: Talk) -> None:
    await fern.say("remind me every day at 9 to feed")
    await fern.say("move it to 8pm")
    (asked,) = await fern.say("cancel that")
    assert await due(fern) == {"feed": "2026-03-01T20:00"}
    await fern.press(1, asked)
    assert await due(fern) == {"feed": "2026-03-02T09:00"}
    await fern.say("remind me tomorrow at 9 to wipe the glass")
    await fern.say("make it 10")
    (asked,) = await fern.say("cancel that")
    await fern.press(2, asked)
    assert await due(fern) == {"feed": "2026-03-02T09:00"}


async def test_stop_right_behind_set(fern: Talk) -> None:
    await fern.say("remind me tomorrow at 9 to feed")
    await fern.say("cancel that")
    assert await due(fern) == {}


async def test_stop_ends_kept_times(fern: Talk) -> None:
    """A time kept before a day that was let go ends with its rhythm; undo brings both back."""
    await fern.say("remind me every day at 7pm to feed")
    await fern.say("remind me today at 6pm to wipe the glass")
    await fern.say("skip the feed tomorrow")
    await fern.say("stop the feed reminder")
    assert await due(fern) == {"wipe the glass": "2026-03-01T18:00"}


async def test_stop_of_kept_taken_back(fern: Talk) -> None:
    await fern.say("remind me every day at 7pm to feed")
    await fern.say("skip tomorrow")
    await fern.say("stop it")
    assert await due(fern) == {}
    await fern.say("undo")
    held = (await fern.facts("/remind"))["reminders"]
    assert [each["due"][:10] for each in held] == ["2026-03-01", "2026-03-03"]


async def test_rhythm_starts_on_the_day_set(fern: Talk) -> None:
    await fern.say("remind me to feed tomorrow at 7pm")
    await fern.say("every 3 days")
    assert await due(fern) == {"feed": "2026-03-02T19:00"}


async def test_which_midnight(fern: Talk) -> None:
    await fern.say("remind me tomorrow to clean the filter")
    (asked,) = await fern.say("make it midnight")
    assert await due(fern) == {"clean the filter": "2026-03-02T09:00"}
    await fern.press(2, asked)
    assert await due(fern) == {"clean the filter": "2026-03-02T23:59"}
    await fern.say("remind me tonight to wipe the glass")
    await fern.say("make it midnight")
    assert (await due(fern))["wipe the glass"] == "2026-03-02T00:00"


@pytest.mark.parametrize(
    ("text", "after"),
    [
        ("the evening would be better", "2026-03-01T19:00"),
        ("could you make it the evening instead", "2026-03-01T19:00"),
        ("sundays dont work for me, make it mondays at quarter past 6 pm", "2026-03-02T18:15"),
        ("sundays dont work for me", "2026-03-08T08:00"),
        ("more light would be better", "2026-03-08T08:00"),
    ],
)
async def test_other_time_in_other_words(fern: Talk, text: str, after: str) -> None:
    await fern.say("remind me every sunday at 8am to change water")
    await fern.say(text)
    assert await due(fern) == {"change water": after}
