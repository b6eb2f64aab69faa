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
        ("skip feed tomorrow", {"feed": "2026-03-03T19:00"}),
        ("skip feed on friday", {}),
        ("don't need the feed one tomorrow", {"feed": "2026-03-03T19:00"}),
        ("don't need the feed one today, im away", {"feed": "2026-03-02T19:00"}),
        ("don't need the lamp one tomorrow", {}),
        ("cant do sunday, monday instead", {}),
        ("cant do the water change sunday, monday instead", {"change water": "2026-03-02T18:00"}),
        ("cant do the feed sunday, remind me tuesday instead", {}),
        ("make the feed one half an hour later", {"feed": "2026-03-01T19:30"}),
        ("make the lamp one half an hour later", {}),
        ("push the feed one an hour back", {"feed": "2026-03-01T20:00"}),
        ("move feed to 20:00, same time", {"feed": "2026-03-01T20:00"}),
        (
            "both at 8 in the evening",
            {"change water": "2026-03-01T20:00", "feed": "2026-03-01T20:00"},
        ),
        ("make the 7pm one 9pm", {"feed": "2026-03-01T21:00"}),
        ("scrap the 7pm one i'll be out, make it 21:00", {"feed": "2026-03-01T21:00"}),
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


MEANT = [
    (["remind me at 8am every day to feed", "only weekdays for the morning one"],
     {"feed": "every monday, tuesday, wednesday, thursday, friday at 08:00"}),
    (["remind me every sunday at 10 to test the tank", "what reminders do i have",
      "move the sunday one to saturday, same time"],
     {"test the tank": "every saturday at 10:00"}),
    (["remind me to clean the nano wednesdays and the big one sundays", "both at 7 in the evening"],
     {"clean the nano": "every wednesday at 19:00", "the big one": "every sunday at 19:00"}),
    (["remind me every day at 8am to feed", "remind me every day at 7pm to test kh",
      "forget the evening thing"], {"feed": "every day at 08:00"}),
    (["remind me every day at 8am to feed", "forget the evening thing"],
     {"feed": "every day at 08:00"}),
    (["remind me every day at 8pm to test ammonia", "make the ammonia one half an hour later"],
     {"test ammonia": "every day at 20:30"}),
    (["remind me every 2 days at 9 to dose 5 ml", "not 5, 2.5 ml sorry"],
     {"dose 2.5 ml": "every 2 days at 09:00"}),
    (["remind me every 2 days at 9 to dose 5 ml", "not 4, 2.5 ml sorry"],
     {"dose 5 ml": "every 2 days at 09:00"}),
    (["remind me every 2 days at 9 to dose 5 ml", "sorry 3 g"],
     {"dose 5 ml": "every 2 days at 09:00"}),
    (["remind me every day at 9 to turn the filter off", "oh and the heater too its old"],
     {"turn the filter and the heater off": "every day at 09:00"}),
    (["remind me every day at 9 to turn the filter off", "and the heater is broken too"],
     {"turn the filter off": "every day at 09:00"}),
    (["remind me every day at 9 to dose the small tank", "remind me every day at 9 to feed",
      "the small tank doesnt need it anymore"], {"feed": "every day at 09:00"}),
    (["remind me every day at 9 to feed", "the small tank doesnt need it anymore"],
     {"feed": "every day at 09:00"}),
    (["remind me saturday at 10 to change water", "and every saturday after"],
     {"change water": "every saturday at 10:00"}),
    (["remind me at 7 in the evening to feed", "make that half 5"],
     {"feed": "once 2026-03-01T19:00+00:00"}),
    (["remind me every friday at 10 to feed", "make it half 7pm"],
     {"feed": "every friday at 19:30"}),
    (["remind me every friday at 10 to feed", "half seven in the evening instead"],
     {"feed": "every friday at 19:30"}),
    (["remind me every friday at 10 to feed", "move it to ten to 9 in the evening"],
     {"feed": "every friday at 20:50"}),
    (["remind me every friday at 10 to feed", "make it dinner time"],
     {"feed": "every friday at 19:00"}),
    (["remind me to change 20% every friday", "make it 30"],
     {"change 30%": "every friday at 09:00"}),
    (["remind me to dose 5 ml every day at 9", "make it 4"], {"dose 5 ml": "every day at 09:00"}),
    (["remind me to dose 5 ml every day at 9", "make it 4", "make it 4 ml"],
     {"dose 4 ml": "every day at 09:00"}),
    (["remind me in 20 minutes to look at the heater", "make it 30"],
     {"look at the heater": "once 2026-03-01T12:30+00:00"}),
    (["remind me to feed every day at 9", "make it 30"], {"feed": "every day at 09:00"}),
    (["remind me to feed every day at 9", "make it 8"], {"feed": "every day at 08:00"}),
    (["remind me to change water on saturday", "an hour earlier", "can you do it every two weeks"],
     {"change water": "every 2 weeks at 08:00"}),
    (["remind me every saturday to change water", "every 3 weeks from the 14th"],
     {"change water": "every 3 weeks on saturday at 09:00"}),
    (["remind me to feed every day at 6pm", "not on sundays"],
     {"feed": "every monday, tuesday, wednesday, thursday, friday, saturday at 18:00"}),
    (["remind me to feed every day at 6pm", "dont remind me at weekends"],
     {"feed": "every monday, tuesday, wednesday, thursday, friday at 18:00"}),
    (["remind me every sunday at 18:00 to feed", "not on sundays"],
     {"feed": "every sunday at 18:00"}),
    (["remind me on friday at 10 to feed", "move that to a week later"],
     {"feed": "once 2026-03-13T10:00+00:00"}),
    (["cant do next sat, remind me the sunday instead"], {}),
]  # fmt: skip


@pytest.mark.parametrize(("lines", "after"), MEANT)
async def test_the_one_that_is_meant_is_changed_and_nothing_else(
    talk: Talk, lines: list[str], after: dict[str, str]
) -> None:
    for line in lines:
        await talk.say(line)
    assert await rules(talk) == after


async def test_a_later_day_is_let_go_and_taken_back(two: Talk) -> None:
    told = await two.text("don't need the feed one tomorrow")
    assert "tomorrow 19:00" in told
    assert "today 19:00" in told
    assert len((await two.facts("/remind"))["reminders"]) == 3
    await two.say("undo")
    assert await due(two) == AT_FIRST
    assert len((await two.facts("/remind"))["reminders"]) == 2


async def test_one_that_rests_until_a_day_is_found_by_its_stem(talk: Talk) -> None:
    await talk.say("remind me every monday at 9 to dose ferts")
    await talk.say("stop the fert reminder while im away til the 20th")
    assert await due(talk) == {"dose ferts": "2026-03-23T09:00"}


async def test_half_five_is_asked(talk: Talk) -> None:
    await talk.say("remind me at 7 in the evening to feed")
    (asked,) = await talk.say("make that half 5")
    assert [each.label for each in asked.buttons] == ["16:30", "17:30"]


async def test_half_seven_is_asked_before_it_is_set(talk: Talk) -> None:
    (asked,) = await talk.say("remind me every friday at half 7 to feed")
    assert await rules(talk) == {}
    await talk.press(2, asked)
    assert await rules(talk) == {"feed": "every friday at 19:30"}
    (asked,) = await talk.say("move it to half 7")
    assert [each.label for each in asked.buttons] == ["18:30", "19:30"]


@pytest.mark.parametrize("text", ["what will you remind me of", "what am i being reminded of"])
async def test_what_is_set_is_listed(two: Talk, text: str) -> None:
    held = (await two.facts(text))["reminders"]
    assert {each["what"] for each in held} == set(AT_FIRST)


@pytest.mark.parametrize(
    "text", ["and if i miss a day?", "what happens if i forget it", "und wenn ich es vergesse?"]
)
async def test_what_becomes_of_one_that_is_missed_is_told(talk: Talk, text: str) -> None:
    await talk.say("remind me to dose 5 ml every day at 13:00")
    told = await talk.text(text)
    assert "stays on your list" in told
    assert "tomorrow 13:00" in told
    assert "Never give two" in told
    assert await rules(talk) == {"dose 5 ml": "every day at 13:00"}


async def test_what_may_be_done_by_now_of_a_plan_stands_behind_the_reminders(talk: Talk) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("gh 7 kh 4 ph 6.8 temp 25 ammonia 0")
    await talk.say("raise kh to 8")
    await talk.say("remind me every saturday to clean the filter")
    first, *_rest = (await talk.text("what will you remind me of")).splitlines()
    assert "clean the filter" in first


@pytest.mark.parametrize(
    ("text", "day"),
    [
        ("im away till the 12th so start then", "12"),
        ("im on holiday until 12 march, start after that", "12"),
        ("start it on the 14th instead", "14"),
        ("start from the 20th", "20"),
        ("start the heater on the 14th", "04"),
        ("im away till the 12th so the heater can start then", "04"),
    ],
)
async def test_one_begins_on_a_day_or_when_a_time_away_is_over(
    talk: Talk, text: str, day: str
) -> None:
    await talk.say("remind me to test every 3 days")
    await talk.say(text)
    assert await due(talk) == {"test": f"2026-03-{day}T12:00"}


async def test_of_a_daily_one_the_days_away_are_let_go(talk: Talk) -> None:
    await talk.say("remind me to feed every day at 18:00")
    await talk.say("im away until friday, start after that")
    assert await due(talk) == {"feed": "2026-03-06T18:00"}
    assert await rules(talk) == {"feed": "every day at 18:00"}


async def test_so_many_times_are_offered(talk: Talk) -> None:
    (asked,) = await talk.say("remind me to feed every morning, 10 times")
    assert await rules(talk) == {}
    assert any("10 times" in each.label for each in asked.buttons)
    await talk.press(2, asked)
    held = (await talk.facts("/remind"))["reminders"]
    assert len(held) == 10
    assert {each["what"] for each in held} == {"feed"}


async def test_two_hours_of_a_day_are_two_reminders(talk: Talk) -> None:
    await talk.say("remind me to feed every day at 8am and 8pm")
    held = (await talk.facts("/remind"))["reminders"]
    assert {each["rule"] for each in held} == {"every day at 08:00", "every day at 20:00"}
    await talk.say("remind me to test every day at 8am or 9pm")
    assert len((await talk.facts("/remind"))["reminders"]) == 2
