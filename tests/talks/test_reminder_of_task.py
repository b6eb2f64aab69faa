"""A word for a reminder right behind its task asks for one: none of it is told as done."""

from __future__ import annotations

import pytest

from bot.chat.model import Reply
from tests.chat.harness import Talk


def _logged(replies: list[Reply]) -> list[str]:
    return [event["kind"] for reply in replies for event in reply.facts.get("events", ())]


def _set(replies: list[Reply]) -> list[str]:
    return [reply.facts["reminder"]["what"] for reply in replies if "reminder" in reply.facts]


ASKED = [
    ("water change reminder sunday 10am", "water change"), ("wc reminder tomorrow", "wc"),
    ("30% wc reminder friday 6pm", "30% wc"), ("filter clean reminder sunday", "filter clean"),
    ("water change alarm sunday 10am", "water change"),
    ("wasserwechsel erinnerung sonntag 10 uhr", "wasserwechsel"),
    ("waterverversing herinnering zondag", "waterverversing"),
    ("podmiana przypomnienie jutro", "podmiana"), ("vattenbyte påminnelse söndag", "vattenbyte"),
    ("water change 25% weekly remind me thursdays", "water change 25%"),
    ("water change 25% weekly, remind me thursdays", "water change 25%"),
    ("wc 25% remind me thursdays", "wc 25%"),
    ("cambio d'acqua promemoria domani", "cambio d'acqua"), ("tpa lembrete amanhã", "tpa"),
]  # fmt: skip

DONE = [
    "changed 30% reminder in 7 days", "wc 30%, reminder in 7 days", "wc 30% done reminder sunday",
    "changed 30%, remind me in 7 days", "wc 30% today remind me in 7 days",
]  # fmt: skip

TO_COME = ["wc 30% tonight", "30% change tomorrow", "30% wasserwechsel morgen", "cambio 30% mañana"]


@pytest.mark.parametrize(("text", "what"), ASKED)
async def test_a_reminder_named_behind_its_task_logs_nothing(
    talk: Talk, text: str, what: str
) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    replies = await talk.say(text)
    assert (_logged(replies), _set(replies)) == ([], [what])


@pytest.mark.parametrize("text", DONE)
async def test_what_is_told_done_before_it_is_kept(talk: Talk, text: str) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    replies = await talk.say(text)
    assert _logged(replies) == ["water_change"]
    assert len(_set(replies)) == 1


@pytest.mark.parametrize("text", TO_COME)
async def test_a_change_to_come_is_none(talk: Talk, text: str) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    replies = await talk.say(text)
    assert (_logged(replies), len(_set(replies))) == ([], 1)


@pytest.mark.parametrize(
    ("text", "values", "what"),
    [
        ("kh 4, wc 30% tomorrow", ["kh"], "wc 30%"),
        ("kh 4 ph 7 and wc 30% tonight", ["kh", "ph"], "wc 30%"),
        ("kh 4, every sunday wc 30%", ["kh"], "wc 30%"),
        ("nitrat 40, morgen wasserwechsel 30%", ["nitrate"], "wasserwechsel 30%"),
        ("ph 7.2 and test again tomorrow", ["ph"], "test again"),
    ],
)
async def test_a_reading_before_what_is_to_come_is_kept_now(
    talk: Talk, text: str, values: list[str], what: str
) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    kept, made = await talk.say(text)
    assert [value["analyte"] for value in kept.facts["values"]] == values
    assert all(value.get("at") is None for value in kept.facts["values"])
    assert (_logged([kept]), _set([made])) == ([], [what])


@pytest.mark.parametrize(
    "text", ["wc 30% remind me in 7 days", "water change 30% remind me in 2 weeks"]
)
async def test_a_change_before_a_request_of_how_long_is_asked_about(talk: Talk, text: str) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    replies = await talk.say(text)
    assert (_logged(replies), len(_set(replies))) == ([], 1)
    assert "Not logged yet" in replies[-1].text
    (kept,) = await talk.say("yes")
    assert [event["percent"] for event in kept.facts["events"]] == [30.0]
    assert "30%" in await talk.text("/remind")


@pytest.mark.parametrize("text", ["wc 30% remind me sunday", "wc remind me in 3 days"])
async def test_a_change_of_a_named_day_or_without_an_amount_is_only_to_come(
    talk: Talk, text: str
) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    (made,) = await talk.say(text)
    assert "reminder" in made.facts


PLANNED = ("100 l tank, kh 2 ph 7 ammonia 0", "how much baking soda for kh 5")


@pytest.mark.parametrize(
    "text",
    [
        "done first bit, remind me tomorrow 6pm for second",
        "did the first part, remind me tomorrow 6pm for the next bit",
        "first bit is in, remind me tomorrow at 18:00 for the second",
    ],
)
async def test_a_part_told_before_a_reminder_is_logged(talk: Talk, text: str) -> None:
    for line in PLANNED:
        await talk.say(line)
    logged, made = await talk.say(text)
    assert "logged 3 g" in logged.text
    assert "part 2 of 3" in made.facts["reminder"]["what"]
    assert made.facts["reminder"]["due"].startswith("2026-03-02T18:00")


@pytest.mark.parametrize(
    ("text", "what"),
    [
        ("forget the baking soda, remind me sunday for water change 4 litres", "water change 4"),
        ("never mind, remind me tomorrow at 6pm to feed", "feed"),
        ("nah leave the soda. remind me sunday to test", "test"),
        ("ok i'll do it tomorrow, remind me at 8 to look at ph", "look at ph"),
        ("i'll be away, remind me friday to feed", "feed"),
    ],
)
async def test_what_is_let_be_or_meant_asks_nothing(talk: Talk, text: str, what: str) -> None:
    await talk.say(PLANNED[0])
    replies = await talk.say(text)
    (made,) = _set(replies)
    assert what in made
    assert "do it" not in made


async def test_both_days_that_nobody_named_are_asked(talk: Talk) -> None:
    for line in PLANNED:
        await talk.say(line)
    for text in ("ok i'll do it in 2 days, remind me both days at 8", "remind me both days at 8"):
        replies = await talk.say(text)
        assert not _set(replies)
        assert "Nothing was set" in replies[-1].text


@pytest.mark.parametrize(
    ("first", "text", "what", "due"),
    [
        ("remind me tomorow to buy soda", "and in the evening to test kh", "test kh", "02T19:00"),
        ("remind me tomorrow to test kh", "and in the morning to feed", "feed", "02T09:00"),
        ("remind me tomorrow to feed", "also at 8pm lights off", "lights off", "02T20:00"),
        ("remind me tomorrow to feed", "and tuesday 2pm to change 30%", "change 30%", "03T14:00"),
    ],
)
async def test_another_task_behind_a_reminder_is_one_more(
    talk: Talk, first: str, text: str, what: str, due: str
) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say(first)
    (made,) = await talk.say(text)
    assert made.facts["reminder"]["what"] == what
    assert due in made.facts["reminder"]["due"]
    assert len((await talk.facts("/remind"))["reminders"]) == 2


@pytest.mark.parametrize(
    "text", ["and in the evening i test ph", "and what is kh", "and tomorrow we go", "and kh 4"]
)
async def test_what_is_no_task_sets_none(talk: Talk, text: str) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("remind me tomorrow to feed")
    await talk.say(text)
    assert len((await talk.facts("/remind"))["reminders"]) == 1


@pytest.mark.parametrize(
    "text",
    [
        "todo: water change 30%",
        "sunday water change please",
        "and sunday water change",
        "water change planned for friday",
    ],
)
async def test_what_may_be_to_come_is_no_deed(talk: Talk, text: str) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    said = await talk.text(text)
    assert "may be done or only planned" in said or "not done yet" in said
    assert "undo" not in said


async def test_the_day_of_a_change_to_come_is_no_date_of_a_reading(talk: Talk) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    said = await talk.text("nitrate 10, water change on friday")
    assert said.startswith("Fern: nitrate 10 mg/L")
    assert "may be done or only planned" in said
    assert "still to come" in await talk.text("nitrate 12, water change planned for friday")
    assert "changed" in await talk.text("nitrate 12, wc yesterday")


async def test_behind_a_reminder_it_is_the_next_one(talk: Talk) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("remind me to test nitrite on friday")
    assert "I will remind you: Fern: water change" in await talk.text("and sunday water change")
