"""What is said while a reminder waits for its answer."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk


async def due(talk: Talk, *tasks: str) -> Talk:
    await talk.say("/tank new Fern 90 l fresh")
    for task in tasks:
        await talk.say(f"remind me to {task} in 1 hour")
    await talk.wait(hours=2)
    return talk


async def waiting(talk: Talk) -> list[str]:
    found = (await talk.facts("/remind")).get("reminders", [])
    return [each["what"] for each in found if each["open"]]


@pytest.mark.parametrize(
    "text", ["tom did it", "Tom has done it already", "tom hat es gemacht", "tom l'a fait"]
)
async def test_who_did_it_is_said(talk: Talk, text: str) -> None:
    await due(talk, "feed")
    assert "by tom" in (await talk.text(text)).lower()
    assert await waiting(talk) == []


@pytest.mark.parametrize(
    "text",
    ["did tom feed", "nobody did it", "who did it", "forgot", "too busy today", "no time"],
)
async def test_what_tells_nothing_done_shows_it_again(talk: Talk, text: str) -> None:
    await due(talk, "feed")
    (shown,) = await talk.say(text)
    assert shown.buttons[0].label == "done"
    assert await waiting(talk) == ["feed"]
    await talk.press(1, shown)
    assert await waiting(talk) == []


@pytest.mark.parametrize("text", ["did the feeding", "did feed"])
async def test_a_task_that_is_told_done_is_no_question(talk: Talk, text: str) -> None:
    await due(talk, "feed")
    await talk.say(text)
    assert await waiting(talk) == []


@pytest.mark.parametrize("text", ["blah blah", "what a day"])
async def test_of_several_all_are_shown_again(talk: Talk, text: str) -> None:
    await due(talk, "feed", "clean the filter")
    (shown,) = await talk.say(text)
    assert [each.label for each in shown.buttons] == ["Fern: feed", "Fern: clean the filter"]
    await talk.say("done 2")
    assert await waiting(talk) == ["feed"]


async def test_it_is_not_shown_again_where_something_else_was_said_since(talk: Talk) -> None:
    await due(talk, "feed")
    await talk.say("kh 4 ph 7.2")
    assert "still waits" not in await talk.text("blah blah")


async def test_one_of_another_tank_was_done_too(talk: Talk) -> None:
    await talk.say("/tank new Reef 100 l reef")
    await due(talk, "feed fern", "clean reef")
    await talk.say("reef done too")
    assert await waiting(talk) == ["feed fern"]


@pytest.mark.parametrize(
    "text", ["give me an hour", "in a bit", "cant now later", "gib mir eine stunde"]
)
async def test_it_is_put_off_by_an_hour(talk: Talk, text: str) -> None:
    await due(talk, "feed")
    facts = await talk.facts(text)
    assert facts["reminder"]["answer"] == "later"
    assert facts["reminder"]["next_due"][:16] == "2026-03-01T15:00"


@pytest.mark.parametrize("text", ["did 10", "i did 10"])
async def test_an_amount_without_its_unit_is_asked(talk: Talk, text: str) -> None:
    await due(talk, "change water")
    (asked,) = await talk.say(text)
    assert [each.label for each in asked.buttons] == ["10 %", "10 L"]
    assert await waiting(talk) == ["change water"]
    await talk.press(1, asked)
    assert await waiting(talk) == []


async def test_an_amount_is_of_no_other_task(talk: Talk) -> None:
    await due(talk, "feed")
    await talk.say("did 10")
    assert await waiting(talk) == ["feed"]


@pytest.mark.parametrize("text", ["done 25.5", "done, its 25.5", "erledigt 25,5"])
async def test_a_number_behind_done_is_what_the_test_read(talk: Talk, text: str) -> None:
    await talk.say("/tank new Fern 100 l fresh")
    await talk.say("remind me to test temperature tomorrow")
    await talk.wait(days=1)
    (reply, *_) = await talk.say(text)
    assert [value["canonical"] for value in reply.facts["values"]] == [25.5]
    assert "Nothing is due" in await talk.text("/remind")


async def test_done_and_a_number_of_the_list_stays_that(talk: Talk) -> None:
    await talk.say("/tank new Fern 100 l fresh")
    await talk.say("remind me to test kh tomorrow")
    await talk.wait(days=1)
    assert "values" not in await talk.facts("done 1")
    await talk.say("remind me to feed tomorrow")
    await talk.wait(days=1)
    assert "values" not in await talk.facts("done 7.5")


@pytest.mark.parametrize(
    ("task", "deed"),
    [
        ("tomorrow at 8am to test ammonia", "done, ammonia 0"),
        ("every monday at 8 to test ammonia", "ammonia 0"),
        ("tomorrow at 8am to change water", "changed 20%"),
    ],
)
async def test_what_was_put_off_is_settled_by_its_deed(talk: Talk, task: str, deed: str) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say(f"remind me {task}")
    await talk.wait(hours=24)
    assert "19:00" in await talk.text("later tonight")
    assert "settles" in await talk.text(deed) or "done" in await talk.text("/remind")
    left = (await talk.facts("/remind"))["reminders"]
    assert all(not each["due"].startswith("2026-03-02") for each in left)


async def test_what_is_not_due_yet_is_not_settled(talk: Talk) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("remind me wednesday at 8 to test ammonia")
    await talk.say("ammonia 0")
    assert len((await talk.facts("/remind"))["reminders"]) == 1


@pytest.mark.parametrize(
    "text",
    ["can you remind me of stuff?", "can you set me a reminder?", "remind me about some things"],
)
async def test_of_what_is_said_behind_the_question(talk: Talk, text: str) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    assert "What shall I remind you of?" in await talk.text(text)
    made = (await talk.facts("water change sunday"))["reminder"]
    assert (made["kind"], made["due"][:10]) == ("change", "2026-03-08")


async def test_what_was_done_is_no_answer_to_it(talk: Talk) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("can you remind me of stuff?")
    assert "changed" in await talk.text("i changed water yesterday")
    await talk.say("remind me")
    assert "KH 4" in await talk.text("kh 4")
    assert not (await talk.facts("/remind"))["reminders"]


@pytest.mark.parametrize(
    "text",
    [
        "my daughter is doing it now, so skip that",
        "he already did it no need",
        "anna's doing it",
        "my wife did it",
    ],
)
async def test_what_somebody_else_does_before_it_is_due_does_not_fall_due(
    talk: Talk, text: str
) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("remind me at 20:00 tomorrow to rinse the sponge")
    assert "Done" in await talk.text(text)
    assert (await talk.facts("/remind"))["reminders"] == []


async def test_of_one_not_just_spoken_of_it_is_asked_and_none_is_settled_by_other_words(
    talk: Talk,
) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("remind me in 3 hours to rinse the sponge")
    await talk.say("ph 7.2")
    assert "Which one is done already?" in await talk.text("my wife did it")
    await talk.say("anna did it badly")
    assert len((await talk.facts("/remind"))["reminders"]) == 1
