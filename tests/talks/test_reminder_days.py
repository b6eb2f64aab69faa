"""A reminder that stands on some days: skipped, at rest, moved once, done at an earlier time."""

from __future__ import annotations

from typing import Any

import pytest

from tests.chat.harness import Talk

CHANGE = "2026-03-01T18:00"
FEED = "2026-03-01T19:00"
AT_FIRST = {"change water": CHANGE, "feed": FEED}


@pytest.fixture
async def two(talk: Talk) -> Talk:
    """Sunday 1 March 2026, noon: a change and a feed that stand; the change was spoken of last."""
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("remind me to feed every day at 19:00")
    await talk.say("remind me to change water every sunday at 18:00")
    return talk


async def due(talk: Talk) -> dict[str, str]:
    held: list[dict[str, Any]] = (await talk.facts("/remind"))["reminders"]
    return {each["what"]: each["due"][:16] for each in held}


async def rules(talk: Talk) -> dict[str, str]:
    held: list[dict[str, Any]] = (await talk.facts("/remind"))["reminders"]
    return {each["what"]: each["rule"].partition(" · ")[0] for each in held}


async def logged(talk: Talk) -> bool:
    return "changed" in await talk.text("when did i last change water")


@pytest.mark.parametrize(
    ("text", "after"),
    [
        ("skip the water change", {"change water": "2026-03-08T18:00"}),
        ("skip the 30% water change this sunday", {"change water": "2026-03-08T18:00"}),
        ("skip feed today", {"feed": "2026-03-02T19:00"}),
        ("no feed today", {"feed": "2026-03-02T19:00"}),
        ("heute kein wasserwechsel", {"change water": "2026-03-08T18:00"}),
        ("not this week", {"change water": "2026-03-08T18:00"}),
        ("diese woche nicht", {"change water": "2026-03-08T18:00"}),
        ("esta semana no", {"change water": "2026-03-08T18:00"}),
        ("skip feed tomorrow", {}),
        ("skip the water change on tuesday", {}),
        ("pause the feed one for 2 weeks", {"feed": "2026-03-15T19:00"}),
        ("pause it for 2 weeks", {"change water": "2026-03-15T18:00"}),
        ("pausa 2 semanas", {"change water": "2026-03-15T18:00"}),
        ("pause the feed one until friday", {"feed": "2026-03-06T19:00"}),
        ("pause the feed one for 3 hours", {}),
        ("push it by a day", {"change water": "2026-03-02T18:00"}),
        ("delay the water change by 2 days", {"change water": "2026-03-03T18:00"}),
        ("move it to saturday just this week", {"change water": "2026-03-07T18:00"}),
        ("feed at 20:00 instead", {"feed": "2026-03-01T20:00"}),
        ("change feed to 20:00", {"feed": "2026-03-01T20:00"}),
        ("change it to 20:00", {"change water": "2026-03-01T20:00"}),
        ("move feed to wednesday", {}),
        ("move feed to wednesday just once", {}),
        ("can it be 9 instead", {}),
        ("water change on monday instead", {}),
        ("wc monday instead of sunday", {}),
        ("change water change to saturday", {}),
        ("wasserwechsel auf montag", {}),
        ("did it yesterday already", {"change water": "2026-03-08T18:00"}),
        ("gestern schon gemacht", {"change water": "2026-03-08T18:00"}),
        ("did feed yesterday", {}),
        ("no fish died today", {}),
        ("did i change the water", {}),
        ("did we feed", {}),
        ("change kh to 6", {}),
    ],
)
async def test_only_what_was_said_is_moved_and_nothing_logged(
    two: Talk, text: str, after: dict[str, str]
) -> None:
    await two.say(text)
    assert await due(two) == {**AT_FIRST, **after}
    assert not await logged(two)


@pytest.mark.parametrize(
    "text",
    [
        "skip the water change today",
        "moved the wc",
        "wasserwechsel auf montag verschieben",
        "déplace le changement d'eau à lundi",
    ],
)
async def test_a_change_that_is_let_go_is_not_logged_without_a_reminder(
    talk: Talk, text: str
) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say(text)
    assert not await logged(talk)


async def test_a_change_moved_or_done_is_asked_and_either_is_a_press(two: Talk) -> None:
    (asked,) = await two.say("water change on monday instead")
    await two.press(1, asked)
    assert (await due(two))["change water"] == "2026-03-02T18:00"
    assert not await logged(two)
    await two.press(2, asked)
    assert await logged(two)


async def test_a_weekday_for_good_may_be_for_once(two: Talk) -> None:
    (moved,) = await two.say("push it to monday")
    await two.press(1, moved)
    await two.press(1, moved)
    assert (await due(two))["change water"] == "2026-03-02T18:00"
    await two.wait(days=1, hours=6.5)
    await two.say("did the water change")
    assert (await due(two))["change water"] == "2026-03-08T18:00"


async def test_days_are_let_go_only_when_pressed(two: Talk) -> None:
    (asked,) = await two.say("move feed to wednesday")
    await two.press(1, asked)
    assert (await due(two))["feed"] == "2026-03-04T19:00"
    assert (await rules(two))["feed"] == "every day at 19:00"


async def test_what_rests_is_taken_back(two: Talk) -> None:
    await two.say("pause the feed one for 2 weeks")
    await two.say("undo")
    assert await due(two) == AT_FIRST


async def test_which_waits_is_asked(two: Talk) -> None:
    await two.wait(hours=9)
    (asked,) = await two.say("did it yesterday")
    before = await due(two)
    assert before == AT_FIRST
    await two.press(1, asked)
    assert len(asked.buttons) == 2
    assert await due(two) != before


async def test_what_waits_is_settled_by_what_was_done_the_day_before(two: Talk) -> None:
    await two.wait(hours=6.5)
    await two.say("changed 30% yesterday at 20:00")
    assert (await due(two))["change water"] == "2026-03-08T18:00"


async def test_a_time_asked_for_moves_the_one_that_was_named(two: Talk) -> None:
    await two.say("postpone feed")
    await two.say("in 9 hours")
    assert await due(two) == {**AT_FIRST, "feed": "2026-03-01T21:00"}
