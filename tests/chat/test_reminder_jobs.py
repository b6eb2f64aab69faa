"""Several jobs asked for in one message: each is a reminder with its own time."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk


@pytest.fixture
async def fern(talk: Talk) -> Talk:
    await talk.say("/tank new Fern 90 l fresh")
    return talk


async def listed(talk: Talk) -> list[tuple[str, str]]:
    held = (await talk.facts("/remind"))["reminders"]
    return [(each["what"], each["rule"]) for each in held]


@pytest.mark.parametrize(
    ("text", "whats"),
    [
        ("remind me saturday ferts and sunday water", ["ferts", "water"]),
        ("erinner mich samstag düngen und sonntag wasser", ["düngen", "wasser"]),
        ("rappelle moi samedi engrais et dimanche eau", ["engrais", "eau"]),
        ("every sunday water change 30% and every wednesday ferts", ["ferts", "water change 30%"]),
    ],
)
async def test_each_job_has_its_day(fern: Talk, text: str, whats: list[str]) -> None:
    told = [each.facts["reminder"]["what"] for each in await fern.say(text)]
    assert sorted(told) == sorted(whats)
    held = await listed(fern)
    assert sorted(what for what, _rule in held) == sorted(whats)
    assert len({rule for _what, rule in held}) == 2


async def test_the_same_task_twice_a_day_stays_two_when_one_is_moved(fern: Talk) -> None:
    await fern.say("remind me to feed every day at 8:00 and again at 20:00")
    await fern.say("no, 21:00")
    assert sorted(await listed(fern)) == [
        ("feed", "every day at 08:00"),
        ("feed", "every day at 21:00"),
    ]


async def test_none_is_set_where_one_cannot_be(fern: Talk) -> None:
    await fern.say("remind me to test saturday and change water 31 february")
    await fern.say("remind me to test friday and dose 900 g baking soda sunday")
    assert await listed(fern) == []


@pytest.mark.parametrize(
    ("number", "whats"),
    [(1, ["feed", "lights"]), (2, ["feed and 20 lights"])],
)
async def test_a_number_that_may_be_an_hour_is_asked(
    fern: Talk, number: int, whats: list[str]
) -> None:
    (asked,) = await fern.say("remind me tomorrow at 8 feed and 20 lights")
    assert await listed(fern) == []
    await fern.press(number, asked)
    assert [what for what, _rule in await listed(fern)] == whats
