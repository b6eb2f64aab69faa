"""Reminders that stand, put right in few words."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk


@pytest.fixture
async def fern(talk: Talk) -> Talk:
    """Sunday 1 March 2026, noon."""
    await talk.say("/tank new Fern 90 l fresh")
    return talk


async def held(talk: Talk) -> list[tuple[str, str, str]]:
    found = (await talk.facts("/remind")).get("reminders", [])
    return [(each["what"], each["rule"], each["due"][:16]) for each in found]


async def test_another_count_of_the_same_unit(fern: Talk) -> None:
    await fern.say("remind me to test every 3 days at 10:00")
    await fern.say("not 5 days, 4")
    ((_what, before, _due),) = await held(fern)
    await fern.say("remind me to test every 3 days at 10:00")
    await fern.say("remind me to feed every 3 days at 10:00")
    await fern.say("not 3 days, 4")
    assert before == "every 3 days at 10:00"
    assert [rule for what, rule, _due in await held(fern) if what == "feed"] == [
        "every 4 days at 10:00"
    ]


@pytest.mark.parametrize(("text", "due"), [("2morrow", "2026-03-02"), ("nxt friday", "2026-03-06")])
async def test_days_as_they_are_typed(fern: Talk, text: str, due: str) -> None:
    await fern.say("remind me to feed wednesday at 10:00")
    await fern.say(text)
    assert [moment for _what, _rule, moment in await held(fern)] == [f"{due}T10:00"]


@pytest.mark.parametrize(
    ("text", "due"),
    [("snooze 30", "14:30"), ("tell me again on tuesday about the filter", "09:00")],
)
async def test_one_that_waits_is_put_off(fern: Talk, text: str, due: str) -> None:
    await fern.say("remind me to clean the filter in 1 hour")
    await fern.wait(hours=2)
    facts = await fern.facts(text)
    assert facts["reminder"]["next_due"][11:16] == due


async def test_minutes_or_hours_are_not_guessed(fern: Talk) -> None:
    await fern.say("remind me to clean the filter in 1 hour")
    await fern.wait(hours=2)
    (shown,) = await fern.say("snooze 2")
    assert "reminder" not in shown.facts


async def test_one_of_a_list_is_ended_by_its_place(fern: Talk) -> None:
    await fern.say("remind me to feed wednesday at 10:00")
    await fern.say("remind me to test friday at 10:00")
    await fern.say("any reminders left")
    await fern.say("drop the second")
    assert [what for what, _rule, _due in await held(fern)] == ["feed"]
    await fern.say("kh 4")
    await fern.say("drop the first")
    assert [what for what, _rule, _due in await held(fern)] == ["feed"]
