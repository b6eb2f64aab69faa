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


@pytest.mark.parametrize(("number", "rests"), [(1, True), (2, False)])
async def test_a_pause_to_come_is_asked(daily: Talk, number: int, rests: bool) -> None:
    (asked,) = await daily.say("im away 5 to 12 march")
    await daily.press(number, asked)
    await daily.press(number, asked)
    assert await paused(daily, days=2) == rests
    tasks = [each["what"] for each in (await daily.facts("/remind"))["reminders"]]
    assert tasks.count("holiday until 2026-03-12") == (0 if rests else 1)


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
