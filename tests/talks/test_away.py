"""A time without reminders, told in plain words."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk


@pytest.fixture
async def daily(talk: Talk) -> Talk:
    """A reminder a day; it is Sunday 1 March 2026."""
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("remind me to feed every day at 10:00")
    return talk


async def paused(talk: Talk, **span: float) -> bool:
    return not await talk.wait(**span)


@pytest.mark.parametrize(
    "text",
    [
        "pause reminders, im on holiday till friday",
        "pause reminders for 5 days",
        "no reminders until friday",
        "im away, back on friday",
        "keine erinnerungen bis freitag",
        "ich bin 5 tage weg",
        "je suis en vacances jusqu'à vendredi",
        "estoy fuera 5 días",
        "estou de férias até sexta",
        "sono via fino a venerdì",
        "ik ben 5 dagen weg",
        "wyjeżdżam na 5 dni",
        "jag är borta i 5 dagar",
    ],
)
async def test_reminders_rest_until_then(daily: Talk, text: str) -> None:
    assert "Reminders pause until" in await daily.text(text)
    assert await paused(daily, days=4)
    assert not await paused(daily, days=2)


@pytest.mark.parametrize(
    "text",
    [
        "im away",
        "im away 5 days, who feeds the fish",
        "turn everything off",
        "turn everything off for 2 hours",
        "im away next week",
        "going away 20 to 30 march",
        "pause reminders",
        "change 20% for 5 days",
    ],
)
async def test_nothing_rests_of_itself(daily: Talk, text: str) -> None:
    await daily.say(text)
    assert not await paused(daily, days=1)


async def test_the_end_is_asked(daily: Talk) -> None:
    assert "Until when" in await daily.text("pause reminders")
    assert "pause until" in await daily.text("friday")
    assert await paused(daily, days=4)


@pytest.mark.parametrize(
    ("text", "since", "until"),
    [
        ("im away 5 to 12 march", 5, 12),
        ("away 4 march to 8 march", 4, 8),
        ("going away thursday til monday", 5, 9),
        ("im away from thursday until next wednesday", 5, 11),
        ("im away from friday for a week", 6, 13),
        ("we're away for a week from friday", 6, 13),
        ("im away friday to wednesday", 6, 11),
        ("im away sunday to tuesday", 1, 3),
        ("pause reminders from friday to sunday", 6, 8),
        ("ich bin von donnerstag bis montag weg", 5, 9),
        ("je pars de jeudi à lundi", 5, 9),
        ("me voy del 5 al 12 de marzo", 5, 12),
        ("ik ben weg van donderdag tot maandag", 5, 9),
    ],
)
async def test_a_pause_to_come_is_kept(daily: Talk, text: str, since: int, until: int) -> None:
    assert "Reminders pause" in await daily.text(text)
    told = []
    for day in range(2, 15):
        told += [day] if await daily.wait(days=1) else []
    # The daily one is told once for all that the pause held back.
    assert told == [day for day in range(2, 15) if not since <= day < until]


async def test_the_end_of_a_pause_to_come_is_asked_from_its_beginning(daily: Talk) -> None:
    assert "Until when" in await daily.text("im away from friday")
    text = await daily.text("for a week")
    assert "6 Mar" in text
    assert "13 Mar" in text
    assert not await paused(daily, days=1)


async def test_a_pause_that_was_told_is_the_one_meant_then(daily: Talk) -> None:
    told = await daily.text("im away from friday for a week")
    assert await daily.text("mute everything then") == told
    await daily.say("holiday off")
    assert "Until when" in await daily.text("mute everything then")


async def test_two_pauses_apart_are_not_both_kept(daily: Talk) -> None:
    await daily.say("im away 5 to 12 march")
    (asked,) = await daily.say("im away 20 to 30 march")
    held = (await daily.facts("/remind"))["paused"]
    assert (held["from"][:10], held["until"][:10]) == ("2026-03-05", "2026-03-12")
    await daily.press(1, asked)
    held = (await daily.facts("/remind"))["paused"]
    assert (held["from"][:10], held["until"][:10]) == ("2026-03-20", "2026-03-30")


async def test_a_pause_told_in_one_that_lasts_makes_it_longer(daily: Talk) -> None:
    await daily.say("im away until friday")
    await daily.say("im away 5 to 12 march")
    held = (await daily.facts("/remind"))["paused"]
    assert "from" not in held
    assert held["until"][:10] == "2026-03-12"


async def test_a_reminder_set_into_a_pause_says_when_it_comes(daily: Talk) -> None:
    await daily.say("im away 5 to 12 march")
    facts = await daily.facts("remind me to test on saturday")
    assert facts["reminder"]["due"][:10] == "2026-03-07"
    assert facts["reminder"]["told"][:10] == "2026-03-12"


@pytest.mark.parametrize(
    ("text", "span"),
    [
        ("dont message me before 9", "22:00-09:00"),
        ("no reminders after 11 please", "23:00-07:00"),
        ("schreib mir nicht vor 9", "22:00-09:00"),
        ("ne m'écris pas avant 8:30", "22:00-08:30"),
    ],
)
async def test_hours_without_messages_are_asked_first(daily: Talk, text: str, span: str) -> None:
    (asked,) = await daily.say(text)
    assert span not in await daily.text("quiet hours")
    await daily.press(1, asked)
    assert f"Quiet hours: {span}" in await daily.text("quiet hours")


async def test_hours_without_messages_keep_their_other_end(daily: Talk) -> None:
    await daily.say("quiet hours 20:00-06:00")
    assert "20:00-09:00" in await daily.text("dont text me before 9")


@pytest.mark.parametrize("text", ["message me before 9", "dont message me before the water change"])
async def test_no_other_words_are_of_quiet_hours(daily: Talk, text: str) -> None:
    assert "Quiet hours" not in await daily.text(text)


async def test_what_a_night_puts_off_into_a_pause_waits_until_that_is_over(talk: Talk) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("quiet hours 22:00-07:00")
    await talk.say("im away 5 to 12 march")
    await talk.say("remind me to feed on 4 march at 23:00")
    assert await paused(talk, days=9)
    assert not await paused(talk, days=2)
