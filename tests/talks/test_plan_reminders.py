"""Reminders of a plan's parts: what they are of, no sooner than it may go in, and put on record."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk


@pytest.fixture
async def planned(talk: Talk) -> Talk:
    """A plan in two parts, given at noon."""
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("kh 3 ph 7 temp 24 ammonia 0")
    assert "2 parts" in await talk.text("dose kh 5")
    return talk


@pytest.mark.parametrize(
    ("text", "part", "due"),
    [
        ("remind me tomorrow at 8", "part 1 of 2", "2026-03-02T08:00"),
        ("remind me tomorrow instead", "part 1 of 2", "2026-03-02T09:00"),
        ("remind me tomorrow for the rest", "part 2 of 2", "2026-03-02T12:00"),
        ("remind me of the second part", "part 2 of 2", "2026-03-02T12:00"),
        ("remind me for part 2", "part 2 of 2", "2026-03-02T12:00"),
        ("please remind me when the next one is due", "part 2 of 2", "2026-03-02T12:00"),
        ("morgen erinnern an die zweite", "part 2 of 2", "2026-03-02T12:00"),
        ("rappelle-moi demain pour la deuxième", "part 2 of 2", "2026-03-02T12:00"),
        ("recuérdame en 2 días el resto", "part 2 of 2", "2026-03-03T12:00"),
        ("herinner me morgen aan de rest", "part 2 of 2", "2026-03-02T12:00"),
    ],
)
async def test_what_names_nothing_is_of_the_plan(
    planned: Talk, text: str, part: str, due: str
) -> None:
    (reply,) = await planned.say(text)
    assert part in reply.facts["reminder"]["what"]
    assert reply.facts["reminder"]["due"].startswith(due)


@pytest.mark.parametrize("text", ["remind me tomorrow to feed", "remind me tomorrow for the show"])
async def test_what_names_a_task_is_not(planned: Talk, text: str) -> None:
    assert "part" not in (await planned.facts(text))["reminder"]["what"]


@pytest.mark.parametrize("text", ["remind me tomorrow instead", "remind me tomorrow for the rest"])
async def test_without_a_plan_it_is_asked(talk: Talk, text: str) -> None:
    assert "What shall I remind you of?" in await talk.text(text)
    assert not (await talk.facts("/remind"))["reminders"]


async def test_no_part_is_reminded_of_too_soon(planned: Talk) -> None:
    await planned.press(1)
    for text in ("remind me in 1 hour for the rest", "no, tonight"):
        assert "tomorrow 12:00" in await planned.text(text)


async def test_a_part_after_another_that_is_to_come(planned: Talk) -> None:
    await planned.say("remind me tomorrow at 9")
    assert "Tue 3 Mar 09:00" in await planned.text("remind me tomorrow for the second one")


async def test_a_part_that_was_done_is_put_on_record(planned: Talk) -> None:
    await planned.press(1)
    await planned.say("remind me tomorrow at 8 for the second one")
    await planned.wait(hours=24)
    assert "not on record yet" in await planned.text("did it")
    assert "logged 2.7 g" in await planned.text("yes")
    assert "retest" in await planned.text("remind me tomorrow")


async def test_a_plan_that_is_stopped(planned: Talk) -> None:
    await planned.press(1)
    await planned.say("remind me tomorrow for the rest")
    assert "Stopped after 1 of 2" in await planned.text("stop the plan")
    assert not (await planned.facts("/remind"))["reminders"]


async def test_the_steps_of_a_change(talk: Talk) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("/source tap ph 7.8 kh 12 gh 16 no3 5 temp 20")
    await talk.say("kh 3 gh 5 ph 7 temp 25 ammonia 0 no3 60")
    assert "one a day" in await talk.text("what does a 50% change do")
    first = await talk.text("remind me tomorrow at 8")
    assert "part 1 of 6: water change 11%, tomorrow 08:00" in first
    assert "part 2 of 6: water change 11%, Tue 3 Mar 08:00" in await talk.text(
        "remind me tomorrow for the rest"
    )
    await talk.wait(hours=21)
    assert "not on record yet" in await talk.text("did it")
    assert "changed 11" in await talk.text("yes")


@pytest.mark.parametrize(
    ("text", "hours"),
    [
        ("remind me each morning", ("2026-03-02T09:00", "2026-03-03T09:00")),
        ("remind me of the parts every day at 20:00", ("2026-03-01T20:00", "2026-03-02T20:00")),
        ("split it over 2 days and remind me each morning", ("2026-03-02T09", "2026-03-03T09")),
        ("spread that over 2 days, remind me every evening", ("2026-03-01T19", "2026-03-02T19")),
        ("remind me every 12 hours", ("2026-03-02T00:00", "2026-03-03T00:00")),
    ],
)
async def test_a_rhythm_is_of_all_parts(planned: Talk, text: str, hours: tuple[str, ...]) -> None:
    told = (await planned.say(text))[-1].facts["reminders"]
    assert all(each["due"].startswith(at) for each, at in zip(told, hours, strict=True))
    assert ["part 1 of 2" in told[0]["what"], "part 2 of 2" in told[1]["what"]] == [True, True]


async def test_all_parts_at_another_hour_and_all_undone(planned: Talk) -> None:
    await planned.say("remind me each morning")
    moved = await planned.text("at 7.30")
    assert moved.count("07:30") == 2
    assert len((await planned.facts("/remind"))["reminders"]) == 2
    await planned.say("undo")
    assert not (await planned.facts("/remind"))["reminders"]


async def test_only_parts_that_are_left(planned: Talk) -> None:
    await planned.press(1)
    told = (await planned.say("remind me every evening"))[-1].facts["reminders"]
    assert [each["due"][:13] for each in told] == ["2026-03-02T19"]  # no sooner than 24 h


async def test_it_is_split_before_it_is_reminded_of(planned: Talk) -> None:
    replies = await planned.say("split it over 4 days and remind me each morning")
    assert "4 parts" in replies[0].text
    assert len(replies[-1].facts["reminders"]) == 4


@pytest.mark.parametrize("text", ["remind me to feed each morning", "remind me every sunday"])
async def test_a_task_or_a_slow_rhythm_is_none_of_the_plan(planned: Talk, text: str) -> None:
    assert "part 1" not in await planned.text(text)


async def test_without_a_plan_the_split_is_no_task(talk: Talk) -> None:
    said = await talk.text("split it over 3 days and remind me each morning")
    assert "What shall I remind you of?" in said
    assert not (await talk.facts("/remind"))["reminders"]
