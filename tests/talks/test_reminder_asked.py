"""Reminders asked for in few words: at the same time, of the next test, without `me`."""

from __future__ import annotations

from typing import Any

import pytest

from tests.chat.harness import Talk


@pytest.fixture
async def fern(talk: Talk) -> Talk:
    """Sunday 1 March 2026, noon."""
    await talk.say("/tank new Fern 90 l fresh")
    return talk


@pytest.fixture
async def planned(fern: Talk) -> Talk:
    """The first of four parts is in."""
    await fern.say("gh 7 kh 2 ph 6.8 temp 25 ammonia 0")
    await fern.say("raise kh to 6")
    await fern.say("log it")
    return fern


async def held(talk: Talk) -> list[tuple[str, str]]:
    found: list[dict[str, Any]] = (await talk.facts("/remind")).get("reminders", [])
    return [(each["what"], each["due"][:16]) for each in found]


@pytest.mark.parametrize(
    "text",
    [
        "remind me tomorrow same time for the second part",
        "remind me for the second tomorrow same time",
        "erinner mich morgen um dieselbe zeit an die zweite",
        "rappelle-moi demain à la même heure pour la deuxième",
    ],
)
async def test_the_next_part_at_the_same_time(planned: Talk, text: str) -> None:
    await planned.wait(hours=2)
    await planned.say(text)
    ((what, due),) = await held(planned)
    assert "part 2 of 4" in what
    assert due == "2026-03-02T14:00"


@pytest.mark.parametrize("text", ["remind me", "remind me tomorrow for the second"])
async def test_it_is_never_sooner_than_a_day_after_the_last(planned: Talk, text: str) -> None:
    await planned.say("when next")
    await planned.say(text)
    assert [due for _what, due in await held(planned)] == ["2026-03-02T12:00"]


async def test_a_part_behind_a_time_is_no_day(planned: Talk) -> None:
    await planned.say("erinner mich morgen an die zweite")
    ((what, _due),) = await held(planned)
    assert "part 2 of 4" in what


async def test_the_time_of_the_reminder_spoken_of(fern: Talk) -> None:
    await fern.say("remind me to test nitrate friday at 20:00")
    await fern.say("tomorrow same time please")
    assert await held(fern) == [("test nitrate", "2026-03-02T20:00")]


@pytest.mark.parametrize("text", ["remind me", "ricordamelo domani alle 18", "remind me at 9pm"])
async def test_without_a_task_nothing_is_set(fern: Talk, text: str) -> None:
    assert "Nothing was set" in await fern.text(text)
    assert await held(fern) == []


@pytest.mark.parametrize(
    ("text", "what", "due"),
    [
        ("also remind to test nitrate wednesday", "test nitrate", "2026-03-04T09:00"),
        ("and remind about the salt bath at 9 tonight", "the salt bath", "2026-03-01T21:00"),
        ("ok set a reminder for friday 10%", "10%", "2026-03-06T09:00"),
        ("mach mir ne erinnerung jeden sonntag 18 uhr 30%", "30%", "2026-03-01T18:00"),
    ],
)
async def test_asked_for_in_other_words(fern: Talk, text: str, what: str, due: str) -> None:
    await fern.say("what does nitrate do")
    await fern.say(text)
    assert await held(fern) == [(what, due)]


async def test_when_is_told_in_a_whole_sentence(fern: Talk) -> None:
    await fern.say("remind me to test kh")
    await fern.say("can you remind me daily at 9pm")
    assert await held(fern) == [("test kh", "2026-03-01T21:00")]


@pytest.mark.parametrize("text", ["what is due", "what's due", "was steht an", "/remind"])
async def test_what_is_due_is_listed(planned: Talk, text: str) -> None:
    await planned.say("remind me to test nitrate friday at 20:00")
    assert "test nitrate" in await planned.text(text)
    assert len(await held(planned)) == 1


@pytest.mark.parametrize("text", ["stop iron", "stop everything", "stoppe alles"])
async def test_what_is_to_stop_is_asked(fern: Talk, text: str) -> None:
    await fern.say("remind me to dose iron every tuesday")
    await fern.say("what is kh")
    (asked,) = await fern.say(text)
    assert len(await held(fern)) == 1
    await fern.press(1, asked)
    assert await held(fern) == []


@pytest.mark.parametrize("text", ["remove the iron", "what does iron do", "no more iron left"])
async def test_other_talk_of_it_stops_nothing(fern: Talk, text: str) -> None:
    await fern.say("remind me to dose iron every tuesday")
    (answer,) = await fern.say(text)
    assert "shall I stop" not in answer.text
    assert len(await held(fern)) == 1


@pytest.mark.parametrize("text", ["what do i have set", "what did i set", "was hab ich alles"])
async def test_what_is_set_is_listed(fern: Talk, text: str) -> None:
    await fern.say("remind me to dose iron every tuesday")
    assert "dose iron" in await fern.text(text)


@pytest.mark.parametrize("text", ["hmm make that thursday", "no facciamo giovedì"])
async def test_another_day_right_after(fern: Talk, text: str) -> None:
    await fern.say("remind me to test kh tuesday")
    await fern.say(text)
    assert await held(fern) == [("test kh", "2026-03-05T09:00")]


@pytest.mark.parametrize(
    "text", ["ricordami anche stasera alle 9", "remind me also tomorrow at 9", "remind me at 9pm"]
)
async def test_a_dose_is_no_task_by_itself(talk: Talk, text: str) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("dosed 2 ml iron")
    assert "What shall I remind you of" in await talk.text(text)
    assert (await talk.facts("/remind"))["reminders"] == []


async def test_a_word_that_joins_is_no_part_of_a_task(talk: Talk) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("changed 20%")
    await talk.say("ricordami anche domani alle 9")
    (only,) = (await talk.facts("/remind"))["reminders"]
    assert "anche" not in only["what"]


@pytest.mark.parametrize(
    ("text", "what", "due"),
    [
        ("remind me monday 10 to change 20 l", "change 20 l", "2026-03-02T10:00"),
        ("remind me sat 7 to test", "test", "2026-03-07T07:00"),
        ("remind me monday 10 l change", "10 l change", "2026-03-02T09:00"),
    ],
)
async def test_a_bare_hour_between_a_day_and_the_task(
    fern: Talk, text: str, what: str, due: str
) -> None:
    await fern.say(text)
    assert await held(fern) == [(what, due)]


@pytest.mark.parametrize(
    ("answer", "due"), [("17", "2026-03-02T17:00"), ("the first", "2026-03-02T05:00")]
)
async def test_an_hour_of_either_half_of_the_day_is_asked(
    fern: Talk, answer: str, due: str
) -> None:
    await fern.say("remind me tomorrow at 5 to feed")
    assert await held(fern) == []
    await fern.say(answer)
    assert await held(fern) == [("feed", due)]


async def test_so_is_the_hour_to_which_one_is_moved(fern: Talk) -> None:
    await fern.say("remind me to feed friday at 10:00")
    (asked,) = await fern.say("make it tomorrow at 5")
    assert [due for _what, due in await held(fern)] == ["2026-03-06T10:00"]
    await fern.press(2, asked)
    assert await held(fern) == [("feed", "2026-03-02T17:00")]


async def test_so_is_the_hour_to_which_one_that_waits_is_put_off(fern: Talk) -> None:
    await fern.say("remind me to feed in 1 hour")
    await fern.wait(hours=2)
    (asked,) = await fern.say("snooze until tomorrow at 6")
    await fern.press(2, asked)
    assert [due for _what, due in await held(fern)] == ["2026-03-02T18:00"]


@pytest.mark.parametrize(
    ("text", "what", "due"),
    [
        ("hose is running in the pond remind me 15min", "hose is running in the pond", "01T12:15"),
        ("im at work, remind me 2 hours", "im at work", "01T14:00"),
        ("wake me in 20 min to stop the siphon", "stop the siphon", "01T12:20"),
        ("remember me tomorrow 8 hour test", "test", "02T08:00"),
        ("remind me at 8 oclock tomorrow to dose", "dose", "02T08:00"),
    ],
)
async def test_a_reason_in_front_and_a_bare_span(
    talk: Talk, text: str, what: str, due: str
) -> None:
    await talk.say(text)
    assert await held(talk) == [(what, f"2026-03-{due}")]


async def test_a_danger_beside_a_reminder_is_answered_first(talk: Talk) -> None:
    steps, told = await talk.say("fish are gasping, remind me in 1 hour to test ammonia")
    assert steps.facts["emergency"] == "gasping"
    assert told.facts["reminder"]["what"] == "test ammonia"


@pytest.mark.parametrize(
    ("text", "due"),
    [
        ("im away today, remind me to feed on tuesday", [("feed", "2026-03-03T09:00")]),
        (
            "visitors on sunday so remind me to clean the glass on saturday",
            [("clean the glass", "2026-03-07T09:00")],
        ),
        (
            "new fish arriving friday, remind me to test ammonia thursday",
            [("test ammonia", "2026-03-05T09:00")],
        ),
        ("don't have time today, remind me tomorrow to feed", [("feed", "2026-03-02T09:00")]),
        (
            "feed tonight, remind me to test tomorrow at 10",
            [("feed", "2026-03-01T19:00"), ("test", "2026-03-02T10:00")],
        ),
        (
            "ferts on saturday, remind me to change water on sunday",
            [("ferts", "2026-03-07T09:00"), ("change water", "2026-03-08T09:00")],
        ),
    ],
)
async def test_a_reason_with_a_time_of_its_own_is_no_task(
    fern: Talk, text: str, due: list[tuple[str, str]]
) -> None:
    await fern.say(text)
    assert await held(fern) == due


async def test_away_until_a_day_and_a_reminder_behind_it(fern: Talk) -> None:
    told = await fern.text("on holiday until friday, remind me to test on saturday")
    assert "pause until Fri 6 Mar" in told
    assert await held(fern) == [("test", "2026-03-07T09:00")]


RETESTS = [
    ("retest KH, pH and ammonia", "2026-03-02T12:00"),
    ("retest KH, pH and ammonia", "2026-03-03T12:00"),
]


@pytest.mark.parametrize(
    ("lines", "due"),
    [
        (["raise kh to 4", "remind me both days"], RETESTS),
        (["raise kh to 4", "log it", "remind me", "both days"], RETESTS),
        (["raise kh to 4", "both days"], []),
        (["raise kh to 8", "remind me both days"], []),
        (["remind me both days"], []),
    ],
)
async def test_both_days_of_a_plan_in_two_parts(
    fern: Talk, lines: list[str], due: list[tuple[str, str]]
) -> None:
    await fern.say("gh 7 kh 2 ph 6.8 temp 25 ammonia 0")
    for line in lines:
        await fern.say(line)
    assert await held(fern) == due
