"""After the first steps: none died since, one does not eat, much dechlorinator, what now."""

from __future__ import annotations

from datetime import timedelta

import pytest

from tests.chat.harness import Talk


async def barn(talk: Talk, *lines: str) -> None:
    for line in ("/tank new fern 90 l fresh", *lines):
        await talk.say(line)


@pytest.mark.parametrize(
    "line",
    [
        "no more dead ones today", "keine toten mehr heute", "plus de morts",
        "ya no hay muertos", "não há mais mortos", "non ci sono altri morti", "geen doden meer",
        "nie ma więcej martwych", "inga fler döda idag",
    ],
)  # fmt: skip
@pytest.mark.parametrize("before", ["fish are gasping", "2 fish died", "kh 5"])
async def test_that_none_died_is_good_to_hear_and_repeats_no_steps(
    talk: Talk, before: str, line: str
) -> None:
    await barn(talk, before)
    (told,) = await talk.say(line)
    assert "emergency" not in told.facts
    assert "Good to hear" in told.text
    assert "Test ammonia" in told.text


@pytest.mark.parametrize(
    "line", ["he's not eating", "sie fressen nicht", "no come", "äter inte", "nie je"]
)
async def test_who_does_not_eat_after_a_call_gets_no_steps_anew(talk: Talk, line: str) -> None:
    await barn(talk, "2 fish died")
    (told,) = await talk.say(line)
    assert "no food now" in told.text
    assert "Whom to ask" not in told.text


async def test_who_does_not_eat_without_a_call_is_one(talk: Talk) -> None:
    await barn(talk)
    assert (await talk.facts("he's not eating"))["emergency"] == "general"


@pytest.mark.parametrize("line", ["doubled the dechlorinator", "double dose of dechlorinator"])
async def test_twice_the_dechlorinator_is_no_overdose(talk: Talk, line: str) -> None:
    await barn(talk)
    kept, told = await talk.say(line)
    assert kept.facts["events"]
    assert "harms no fish" in told.text
    assert "emergency" not in told.facts


@pytest.mark.parametrize(
    "line", ["gave 10x dechlorinator by accident", "zehnmal wasseraufbereiter reingetan"]
)
async def test_ten_times_the_dechlorinator_takes_oxygen(talk: Talk, line: str) -> None:
    await barn(talk)
    told = (await talk.say(line))[-1]
    assert told.text.startswith("Air now")
    assert "harms no fish" not in told.text


async def test_ten_times_of_what_nobody_knows_is_never_called_harmless(talk: Talk) -> None:
    await barn(talk)
    assert "harms no fish" not in await talk.text("gave 10x clearol by accident")


async def test_a_hose_that_is_asked_about_did_not_run(talk: Talk) -> None:
    await barn(talk)
    assert "must be dechlorinated" in await talk.text("can the tap hose go straight in")
    assert (await talk.facts("tap hose went straight in"))["emergency"] == "chlorine"


@pytest.mark.parametrize("line", ["and now?", "jetzt?", "y ahora"])
@pytest.mark.parametrize("call", ["fish are gasping"])
async def test_what_now_after_a_good_test_tells_how_it_stands(
    talk: Talk, call: str, line: str
) -> None:
    await barn(talk, call, "ammonia 0")
    (told,) = await talk.say(line)
    assert "Whom to ask" not in told.text
    assert "ammonia 0 mg/L" in told.text
    assert "itrite" in told.text
    assert "If any gasps: air at once" in told.text


async def test_what_now_after_a_bad_test_gives_its_steps(talk: Talk) -> None:
    await barn(talk, "2 fish died", "ammonia 3")
    assert (await talk.facts("and now?"))["emergency"] == "ammonia"


async def test_a_test_before_the_call_settles_nothing(talk: Talk) -> None:
    await barn(talk, "ammonia 0")
    talk.clock.move_by(timedelta(hours=1))
    await talk.say("fish are gasping")
    assert (await talk.facts("and now?"))["emergency"] == "gasping"


async def test_deaths_are_no_calm_whatever_the_test_says(talk: Talk) -> None:
    await barn(talk, "2 fish died", "ammonia 0")
    assert "Animals died" in await talk.text("and now?")
