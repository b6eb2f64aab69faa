"""A reminder that stands, in other words: its next time let go, another name, done in part."""

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
async def two(fern: Talk) -> Talk:
    """A change and a feed that stand; the feed was spoken of last."""
    await fern.say("remind me to change water every sunday at 18:00")
    await fern.say("remind me to feed every day at 19:00")
    return fern


async def due(talk: Talk) -> dict[str, str]:
    held: list[dict[str, Any]] = (await talk.facts("/remind"))["reminders"]
    return {each["what"]: each["due"][:16] for each in held}


AT_FIRST = {"change water": "2026-03-01T18:00", "feed": "2026-03-01T19:00"}


@pytest.mark.parametrize(
    ("text", "after"),
    [
        ("skip the next one", {"feed": "2026-03-02T19:00"}),
        ("skip the next water one", {"change water": "2026-03-08T18:00"}),
        ("überspring die nächste erinnerung wasser", {}),
        ("the feed one an hour later", {"feed": "2026-03-01T20:00"}),
        ("move feed to 21:00", {"feed": "2026-03-01T21:00"}),
        ("move feed to 9", {}),
        ("pause it", {}),
        ("done with both", {}),
        ("done but only 10", {}),
        ("no didnt do it", {}),
        ("skip the dead one", {}),
        ("make it 8", {}),
    ],
)
async def test_one_time_is_let_go_or_moved(two: Talk, text: str, after: dict[str, str]) -> None:
    await two.say(text)
    assert await due(two) == {**AT_FIRST, **after}


async def test_which_one_is_skipped_is_asked(two: Talk) -> None:
    await two.say("kh 4")
    (asked,) = await two.say("skip the next one")
    assert await due(two) == AT_FIRST
    await two.press(1, asked)
    await two.press(1, asked)
    assert await due(two) == {**AT_FIRST, "change water": "2026-03-08T18:00"}
    await two.say("skip the water one")
    assert (await due(two))["change water"] == "2026-03-15T18:00"


async def test_an_hour_of_either_half_is_asked(two: Talk) -> None:
    (asked,) = await two.say("make it 8")
    await two.press(2, asked)
    assert (await due(two))["feed"] == "2026-03-01T20:00"


async def test_it_is_skipped_or_ended_where_it_is_to_rest(two: Talk) -> None:
    (asked,) = await two.say("pause it")
    await two.press(1, asked)
    assert await due(two) == {**AT_FIRST, "feed": "2026-03-02T19:00"}


async def test_what_is_next_is_told_where_nothing_is_due(two: Talk) -> None:
    await two.say("kh 4")
    assert "reminders" in await two.facts("snooze 2h")
    assert await due(two) == AT_FIRST


async def test_all_that_wait_are_done(two: Talk) -> None:
    await two.wait(hours=8)
    await two.say("done with both")
    assert await due(two) == {"change water": "2026-03-08T18:00", "feed": "2026-03-02T19:00"}


@pytest.mark.parametrize("text", ["did it already", "hab ich schon gemacht", "già fatto"])
async def test_the_one_just_spoken_of_is_done_and_taken_back(two: Talk, text: str) -> None:
    facts = await two.facts(text)
    assert facts["reminder"]["next_due"][:16] == "2026-03-02T19:00"
    await two.say("no didnt do it")
    assert await due(two) == AT_FIRST


async def test_none_is_done_that_was_not_spoken_of(two: Talk) -> None:
    await two.say("kh 4")
    await two.say("did it already")
    assert await due(two) == AT_FIRST


async def test_less_of_a_change_is_logged_as_it_was(fern: Talk) -> None:
    await fern.say("remind me to change water 30% every sunday at 18:00")
    await fern.wait(hours=7)
    (asked,) = await fern.say("done but only 10")
    assert len(asked.buttons) == 2
    await fern.press(1, asked)
    facts = await fern.facts("when did i last change water")
    assert [event["percent"] for event in facts["events"]] == [10]
    assert await due(fern) == {"change water 30%": "2026-03-08T18:00"}


async def test_less_of_a_change_with_its_unit(fern: Talk) -> None:
    await fern.say("remind me to change water 30% every sunday at 18:00")
    await fern.wait(hours=7)
    await fern.say("erledigt, aber nur 9 l")
    facts = await fern.facts("when did i last change water")
    assert [event["litres"] for event in facts["events"]] == [9]


@pytest.mark.parametrize(
    ("text", "names"),
    [
        ("call it Gravel vac instead", {"change water", "Gravel vac"}),
        ("rename water change to big change", {"big change", "feed"}),
        ("nenn es Mulm absaugen", {"change water", "Mulm absaugen"}),
        ("rename fern to moss", {"change water", "feed"}),
        ("dont remind me about water anymore", {"feed"}),
        ("erinnere mich nicht mehr an water", {"feed"}),
        ("dont remind me about ammonia", {"change water", "feed"}),
    ],
)
async def test_another_name_and_no_more(two: Talk, text: str, names: set[str]) -> None:
    await two.say(text)
    assert set(await due(two)) == names


async def test_a_push_is_never_to_the_day_that_it_is_due(fern: Talk) -> None:
    await fern.say("remind me to change water on saturday")
    await fern.say("push it to next weekend")
    assert await due(fern) == {"change water": "2026-03-14T09:00"}


async def test_one_that_was_ended_is_paused_instead(talk: Talk) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("remind me to clean the filter every 4 weeks starting next saturday")
    await talk.say("stop the filter one")
    assert "Taken back" in await talk.text("i meant pause it")
    assert "rests until then" in await talk.text("until april")
    (left,) = (await talk.facts("/remind"))["reminders"]
    assert left["due"].startswith("2026-04-04")


@pytest.mark.parametrize("text", ["turn it off for a week", "pause it for a week"])
async def test_one_is_turned_off_for_so_long(talk: Talk, text: str) -> None:
    await talk.say("remind me to turn off the co2 every night at 9")
    assert "rests until then" in await talk.text(text)
    assert "Taken back" in await talk.text("undo")


async def test_turned_off_without_so_long_is_asked(talk: Talk) -> None:
    await talk.say("remind me to turn off the co2 every night at 9")
    assert "for good?" in await talk.text("turn it off")
    assert len((await talk.facts("/remind"))["reminders"]) == 1


@pytest.mark.parametrize(
    ("text", "what"),
    [
        ("and root tabs every 3 months", "root tabs"),
        ("also dose iron weekly", "dose iron"),
        ("and do the glass every sunday", "do the glass"),
    ],
)
async def test_a_second_task_with_its_own_rhythm(talk: Talk, text: str, what: str) -> None:
    await talk.say("remind me to test kh every week")
    assert (await talk.facts(text))["reminder"]["what"] == what
    await talk.say(f"cancel the {what.split()[-1]}")
    left = (await talk.facts("/remind"))["reminders"]
    assert [each["what"] for each in left] == ["test kh"]


@pytest.mark.parametrize("text", ["and thanks", "and how are the neons every month?", "and kh 4"])
async def test_other_words_behind_a_reminder_are_no_task(talk: Talk, text: str) -> None:
    await talk.say("remind me to test kh every week")
    await talk.say(text)
    assert len((await talk.facts("/remind"))["reminders"]) == 1


@pytest.mark.parametrize(
    "text", ["what have i got set", "how many reminders do i have", "whats on this week"]
)
async def test_what_is_set_is_listed(talk: Talk, text: str) -> None:
    await talk.say("remind me to change water every sunday at 10")
    assert "1. change water" in await talk.text(text)


async def test_an_amount_beside_a_plan_is_the_keepers(talk: Talk) -> None:
    await talk.say("/tank new Fern 100 l fresh")
    await talk.say("kh 14 ammonia 0 ph 8")
    await talk.say("get kh down to 6")
    made = (await talk.facts("remind me to do another 25 on wednesday"))["reminder"]
    assert made["what"] == "do another 25"
    rest = (await talk.facts("remind me tomorrow for the rest"))["reminder"]
    assert "part 2" in rest["what"]
