"""Reminders as a keeper meets them: made, due, answered, closed by what is done, paused."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.chat.harness import START, Talk, talking


@pytest.fixture
async def fern(talk: Talk) -> Talk:
    await talk.say("/tank new Fern 90 l fresh")
    return talk


def dues(replies: list[object]) -> list[str]:
    return [each["due"] for reply in replies for each in reply.facts["reminders"]]  # type: ignore[attr-defined]


async def test_every_7_days_is_due_for_the_first_time_in_seven_days(fern: Talk) -> None:
    text = await fern.text("remind me to test fern every 7 days at 19:00")
    assert "First: Sun 8 Mar 19:00" in text
    assert await fern.wait(days=7) == []
    (due,) = await fern.wait(hours=7)
    assert due.kind == "reminder"
    assert due.facts["reminders"][0]["due"] == "2026-03-08T19:00:00+00:00"
    assert [b.label for b in due.buttons] == [
        "done",
        "in 1 hour",
        "this evening",
        "tomorrow",
        "skip",
    ]


async def test_an_unanswered_one_is_asked_again_and_there_are_never_two(fern: Talk) -> None:
    await fern.say("remind me to test fern every 7 days at 19:00")
    arrived = await fern.wait(weeks=3, hours=8)
    assert dues(arrived) == [f"2026-03-{day:02}T19:00:00+00:00" for day in (8, 15, 22)]
    assert "1." in await fern.text("/remind")
    await fern.say("done")
    assert "Nothing is waiting" in await fern.text("done")


async def test_a_test_counts_from_when_it_was_last_done(fern: Talk) -> None:
    await fern.say("remind me to test fern every 7 days at 19:00")
    await fern.wait(days=9)
    assert "Next: Tue 17 Mar 19:00" in await fern.text("done")


async def test_a_reading_closes_a_test_and_moves_the_next_one(fern: Talk) -> None:
    await fern.say("remind me to test fern every 7 days at 19:00")
    await fern.wait(days=3)
    assert "Next: Wed 11 Mar 19:00" in await fern.text("kh 4")
    assert await fern.wait(days=6) == []


async def test_a_logged_change_closes_a_change_on_fixed_days(fern: Talk) -> None:
    await fern.say("remind me to change fern every sunday 10:00")
    (due,) = await fern.wait(days=7)
    assert due.facts["reminders"][0]["due"] == "2026-03-08T10:00:00+00:00"
    assert "Next: Sun 15 Mar 10:00" in await fern.text("changed 30%")
    assert "settled already" in (await fern.press(1, due))[0].text


async def test_a_change_an_hour_early_is_that_change(fern: Talk) -> None:
    await fern.say("remind me to change fern every sunday 10:00")
    await fern.wait(days=6, hours=21)
    assert "Next: Sun 15 Mar 10:00" in await fern.text("changed 30%")
    assert await fern.wait(hours=5) == []


async def test_a_reading_does_not_settle_a_retest_that_is_still_to_come(fern: Talk) -> None:
    await fern.say("remind me to retest fern in 2h")
    assert "settles" not in await fern.text("kh 4")
    (due,) = await fern.wait(hours=3)
    assert "settles" in await fern.text("kh 4")
    assert due.kind == "reminder"


async def test_a_test_of_kh_is_not_settled_by_another_reading(fern: Talk) -> None:
    await fern.say("remind me to test kh of fern every 7 days at 19:00")
    await fern.wait(days=1)
    assert "settles" not in await fern.text("no3 20")
    assert "settles" in await fern.text("kh 4")


async def test_buttons_pressed_twice_or_late_do_no_harm(fern: Talk) -> None:
    await fern.say("remind me to feed fern every day at 19:00")
    (first,) = await fern.wait(hours=8)
    await fern.press(1, first)
    assert "settled already" in (await fern.press(1, first))[0].text
    (second,) = await fern.wait(days=1)
    assert "settled already" in (await fern.press(5, first))[0].text
    assert "Skipped" in (await fern.press(5, second))[0].text


@pytest.mark.parametrize(
    ("button", "again"),
    [(2, "2T20:00:00"), (3, "2T20:00:00"), (4, "3T09:00:00")],
    ids=["in 1 hour", "this evening", "tomorrow"],
)  # fmt: skip
async def test_later(fern: Talk, button: int, again: str) -> None:
    await fern.say("remind me to feed fern tomorrow 19:00")
    await fern.wait(hours=31)
    await fern.press(button)
    (due,) = await fern.wait(hours=20)
    assert dues([due]) == [f"2026-03-0{again}+00:00"]


async def test_overdue_ones_are_folded_into_one_message(tmp_path: Path) -> None:
    async with talking(tmp_path) as talk:
        await talk.say("/tank new Fern 90 l fresh")
        for hour in (14, 16, 18):
            await talk.say(f"remind me to feed fern {hour - 12}th time at {hour}:00")
    late = START.replace(day=3)
    async with talking(tmp_path, start=late) as talk:
        (folded,) = await talk.wait(hours=0)
        assert len(folded.facts["reminders"]) == 3
        assert [button.meaning for button in folded.buttons] == ["", "", ""]
        (own,) = await talk.press(2, folded)
        assert own.buttons[0].label == "done"
        assert "Which one?" in await talk.text("done")
        assert "2th time" in await talk.text("done 1")
        assert "6th time" in await talk.text("done 3")
        assert "4th time" in await talk.text("done")
        assert await talk.wait(days=30) == []


async def test_a_number_is_that_of_the_latest_list(fern: Talk) -> None:
    for hour in (14, 15):
        await fern.say(f"remind me to feed fern at {hour}:00")
        await fern.say(f"remind me to look at fern at {hour}:00")
    arrived = await fern.wait(hours=4)
    assert [len(each.facts["reminders"]) for each in arrived] == [2, 2]
    assert "look at fern" in await fern.text("done 2")
    assert "Which one?" in await fern.text("done 9")


async def test_quiet_hours_hold_back_until_they_end(fern: Talk) -> None:
    await fern.say("quiet hours 22:00-07:00")
    await fern.say("remind me to feed fern at 23:00")
    (due,) = await fern.wait(hours=20)
    assert due.at is not None
    assert due.at.isoformat() == "2026-03-02T07:00:00+00:00"
    assert dues([due]) == ["2026-03-01T23:00:00+00:00"]
    await fern.say("quiet hours off")
    await fern.say("remind me to check the heater at 23:00")
    (due,) = await fern.wait(hours=20)
    assert due.at is not None
    assert due.at.hour == 23


async def test_a_holiday_ends_with_one_message(fern: Talk) -> None:
    await fern.say("remind me to feed fern every day at 19:00")
    await fern.say("remind me to test fern every 3 days at 18:00")
    await fern.say("holiday until 12 March")
    (folded,) = await fern.wait(days=11)
    assert folded.at is not None
    assert folded.at.isoformat() == "2026-03-12T00:00:00+00:00"
    assert len(folded.facts["reminders"]) == 2


async def test_daylight_saving_keeps_the_clock_time(tmp_path: Path) -> None:
    """Europe/Berlin goes to summer time on 29 March 2026 (IANA time zone database)."""
    async with talking(tmp_path, zone="Europe/Berlin") as talk:
        await talk.say("remind me to feed the fish every day at 19:00")
        arrived = await talk.wait(days=40)
        assert {reply.at.strftime("%H:%M") for reply in arrived if reply.at} == {"19:00"}
        assert len(arrived) == 40


async def test_the_first_clock_time_asks_for_the_zone(tmp_path: Path) -> None:
    async with talking(tmp_path, zone=None) as talk:
        assert "What time is it with you?" in await talk.text("remind me to feed at 19:00")
        await talk.say("remind me to test every 7 days at 19:00")
        assert "Europe/Berlin" in await talk.text("/zone Europe/Berlin")
        facts = await talk.facts("/remind")
        assert "2026-03-08T19:00:00+01:00" in [each["due"] for each in facts["reminders"]]
        assert "What time" not in await talk.text("remind me to clean at 20:00")


async def test_the_same_reminder_is_not_made_twice_and_a_new_rule_replaces_it(fern: Talk) -> None:
    await fern.say("remind me to test fern every 7 days at 19:00")
    assert "already" in await fern.text("remind me to test fern every 7 days at 19:00")
    assert "takes the place" in await fern.text("remind me to test fern every 10 days at 19:00")
    assert len((await fern.facts("/remind"))["reminders"]) == 1


async def test_stop_reminding_ends_it(fern: Talk) -> None:
    await fern.say("remind me to test fern every 7 days at 19:00")
    assert "not remind you" in await fern.text("stop reminding me to test fern")
    assert await fern.wait(days=30) == []


@pytest.mark.parametrize(
    "text",
    [
        "remind me to test fern",
        "remind me to test fern on 31 february",
        "remind me to test fern every 0 days",
        "remind me to test fern yesterday",
    ],
)
async def test_what_cannot_be_set_says_what_to_send(fern: Talk, text: str) -> None:
    answer = await fern.text(text)
    assert "Nothing was set" in answer
    assert "Send for example" in answer
    assert "Nothing is due" in await fern.text("/remind")


@pytest.mark.parametrize("answer", ["done", "skip", "later"])
async def test_undo_right_after_an_answer_opens_the_reminder_again(talk: Talk, answer: str) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("kh 5 ph 7")
    await talk.say("remind me to feed the snails every 3 days at 19:00")
    await talk.wait(days=4)
    before = (await talk.facts("/remind"))["reminders"]
    await talk.say(answer)
    assert "open again" in await talk.text("undo")
    assert (await talk.facts("/remind"))["reminders"] == before
    assert "feed the snails" in await talk.text("undo")  # set days ago: asked
    assert (await talk.facts("/remind"))["reminders"] == before
    await talk.say("done")
    assert (await talk.facts("/remind"))["reminders"] != before


@pytest.mark.parametrize(
    ("more", "rules"),
    [
        ("and also wednesday", ["every Wednesday and Sunday at 09:00"]),
        ("and wednesday too", ["every Wednesday and Sunday at 09:00"]),
        ("and every wednesday", ["every Wednesday and Sunday at 09:00"]),
        ("and wednesday at 20:00", ["every Wednesday at 20:00", "every Sunday at 09:00"]),
        ("no wednesday", ["every Wednesday at 09:00"]),
    ],
)
async def test_one_more_time_takes_the_place_of_none(
    talk: Talk, more: str, rules: list[str]
) -> None:
    await talk.say("remind me every sunday to test")
    await talk.say(more)
    listed = await talk.text("/remind")
    assert [line for line in rules if line in listed] == rules
    assert len(listed.splitlines()) == len(rules)


async def test_one_more_day_in_the_same_breath_is_of_the_same_task(talk: Talk) -> None:
    await talk.say("remind me fridays to change 20%, and mondays too")
    listed = (await talk.text("/remind")).splitlines()
    assert len(listed) == 2
    assert all("change 20%" in line for line in listed)
