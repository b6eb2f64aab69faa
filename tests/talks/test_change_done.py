"""A change that was made against the limits is not stored without a word; limits of limits.md."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk

ACID = ("/source tap kh 8 ph 7.8 gh 10", "kh 0 ph 5.8 ammonia 0 temp 25 gh 3")
POISON = ("/source tap kh 8 ph 7.8 gh 10", "kh 1 ph 6.5 ammonia 3 temp 25 gh 8")


async def _tank(talk: Talk, *told: str) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    for text in told:
        await talk.say(text)
    await talk.wait(hours=1)


@pytest.mark.parametrize(
    "text",
    [
        "changed 10%",
        "changed 10% with tap",
        "changed 9 l",
        "10% gewechselt",
        "changé 10%",
        "cambié 10%",
        "troquei 10%",
        "cambiato 10%",
        "10% ververst",
        "podmieniłem 10%",
        "bytte 10%",
    ],
)
async def test_a_change_that_may_kill_is_followed_by_what_to_watch_and_do(
    talk: Talk, text: str
) -> None:
    await _tank(talk, *ACID)
    (reply,) = await talk.say(text)
    assert reply.facts["events"]
    lines = [line.text for line in reply.lines]
    assert "10 % was too much for Fern" in lines[1]
    assert "pH may have jumped by" in lines[1]
    assert "If they gasp: air" in lines[2]
    assert "Test pH, KH and ammonia now" in lines[3]


async def test_the_very_change_that_was_refused(talk: Talk) -> None:
    await _tank(talk, *ACID)
    assert "not 10 % at once" in await talk.text("what if i change 10%")
    assert "was too much for Fern" in await talk.text("changed 10%")


async def test_ammonia_that_a_change_sets_free(talk: Talk) -> None:
    await _tank(talk, *POISON)
    told = await talk.text("changed 50% with tap")
    assert "it may have set poisonous ammonia free" in told
    assert "air" in told.split("If they gasp:")[1]


async def test_more_than_a_step_is_said_without_alarm(talk: Talk) -> None:
    await _tank(talk, "/source tap kh 7 ph 7.4 gh 8", "kh 4 ph 7.2 ammonia 0 temp 25 gh 8")
    told = await talk.text("changed 50%")
    assert "50 % was too much at once for Fern" in told
    assert "kill" not in told


@pytest.mark.parametrize(
    "text",
    [
        "changed 20%",
        "changed 50%, ph 7.3 kh 4",
        "changed 50% 3 days ago",
        "changed water",
        "changed 50% with well",
    ],
)
async def test_nothing_is_said_of_a_change_within_the_limits_or_of_unknown_water(
    talk: Talk, text: str
) -> None:
    await _tank(talk, "/source tap kh 4.5 ph 7.3 gh 8", "kh 4 ph 7.2 ammonia 0 temp 25")
    assert "was too much" not in await talk.text(text)


async def test_without_readings_nothing_is_said(talk: Talk) -> None:
    await _tank(talk, "/source tap kh 8 ph 7.8")
    assert "was too much" not in await talk.text("changed 50%")
