"""``is that worse``, ``was that enough``: short questions of what was told last."""

from __future__ import annotations

from datetime import timedelta
from typing import Any

import pytest

from tests.chat.harness import Talk


async def tank(talk: Talk, *told: str) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    for text in told:
        await talk.say(text)


async def facts(talk: Talk, text: str) -> dict[str, Any]:
    return dict((await talk.say(text))[0].facts)


@pytest.mark.parametrize(
    "text",
    [
        "is that worse",
        "is that better",
        "is it better?",
        "va meglio?",
        "ist das schlimmer",
        "gorzej?",
    ],
)
async def test_poison_that_rose_is_worse_however_it_is_asked(talk: Talk, text: str) -> None:
    await tank(talk, "ammonia 0.25", "ammonia 0.5")
    said = await talk.text(text)
    assert said.startswith("Worse: ammonia went up from 0.25 to 0.5")
    assert "should be 0" in said


async def test_poison_that_fell_is_better_and_still_judged(talk: Talk) -> None:
    await tank(talk, "nitrite 1", "nitrite 0.5")
    said = await talk.text("is that worse")
    assert said.startswith("Better: nitrite went down from 1 to 0.5")
    assert "itrite 0.5" in said.partition("\n")[2]


async def test_what_may_go_either_way_is_only_told(talk: Talk) -> None:
    await tank(talk, "kh 4", "kh 5")
    told = await talk.say("is that better")
    assert told[0].facts["compared"] == {"kh": [4.0, 5.0]}
    assert "etter" not in told[0].lines[0].text


async def test_a_first_value_is_judged_alone(talk: Talk) -> None:
    await tank(talk, "no3 80")
    plainly = await talk.text("is that ok?")
    assert "over 44" in plainly
    assert await talk.text("is that better") == plainly


async def test_after_a_call_for_help_worse_is_a_call(talk: Talk) -> None:
    await tank(talk, "ammonia 0.25", "fish are gasping", "ammonia 0.5")
    assert "emergency" in await facts(talk, "is that worse")


@pytest.mark.parametrize("text", ["no3 is worse", "he is worse", "better", "it got worse again"])
async def test_what_is_told_is_not_compared(talk: Talk, text: str) -> None:
    await tank(talk, "no3 10", "no3 20")
    assert "compared" not in await facts(talk, text)


@pytest.mark.parametrize("text", ["are we there yet", "was that enough", "war das genug"])
async def test_a_goal_is_held_against_the_last_value(talk: Talk, text: str) -> None:
    await tank(talk, "no3 60", "how much to change to get no3 to 20", "changed 50%")
    talk.clock.move_by(timedelta(hours=1))
    await talk.say("no3 30")
    told = await facts(talk, text)
    assert (told["to"], told["values"], told["reached"]) == (20.0, {"nitrate": 30.0}, False)
    await talk.say("no3 20")
    assert (await facts(talk, text))["reached"] is True


async def test_enough_of_a_dose_is_no_list_of_animals(talk: Talk) -> None:
    await tank(talk, "kh 3 ph 7 ammonia 0", "raise kh to 4 with baking soda", "done")
    talk.clock.move_by(timedelta(hours=25))
    await talk.say("kh 3.5")
    told = await facts(talk, "was that enough")
    assert (told["to"], told["reached"]) == (4.0, False)
    await talk.say("kh 4")
    assert (await facts(talk, "was that enough"))["reached"] is True


async def test_salinity_that_rose_comes_back_by_a_change(talk: Talk) -> None:
    await talk.say("/tank new Reef 200 l sea")
    await talk.say("sg 1.025")
    await talk.say("sg 1.027")
    assert "36 → 33.3 g/kg" in await talk.text("how do i get it back")


@pytest.mark.parametrize("text", ["whats a good number", "was ist ein guter wert", "jaka norma?"])
async def test_a_good_number_is_of_the_value_just_told(talk: Talk, text: str) -> None:
    await tank(talk, "no3 80")
    heard = "over 44" in await talk.text(text)
    assert heard is (text != "jaka norma?")


@pytest.mark.parametrize(
    "text", ["c'est normal que ça descende ?", "why does it rise so slowly", "warum fällt das"]
)
async def test_what_eats_kh_is_told(talk: Talk, text: str) -> None:
    await tank(talk, "kh 4")
    assert "used up by the acid" in await talk.text(text)


@pytest.mark.parametrize("text", ["do another?", "another tomorrow?", "noch einen?", "un altro?"])
async def test_one_more_change_is_judged_by_nitrate(talk: Talk, text: str) -> None:
    await tank(talk, "no3 80", "changed 40%")
    assert "change again" in await talk.text(text)


async def test_shares_of_two_days_are_asked_of_the_waters(talk: Talk) -> None:
    await tank(talk, "ph 7.5 kh 5 gh 6 temp 24 no3 80 ammonia 0")
    await talk.say("tap no3 5 ph 7.5 kh 5 gh 6 temp 24")
    shared = await facts(talk, "do 40% today 40% tomorrow?")
    assert shared == await facts(talk, "is 40% a day ok?")
    assert "largest_safe_share" in shared


@pytest.mark.parametrize(
    "text", ["in 2 parts", "in two parts", "in 2 teilen", "half today half tomorrow?"]
)
async def test_fewer_parts_that_are_wished_put_nothing_on_record(talk: Talk, text: str) -> None:
    await tank(talk, "kh 2 ph 7 ammonia 0", "raise kh to 6 with baking soda")
    said = await talk.text(text)
    assert "logged" not in said
    assert said.startswith(("Not in 2", "No: give the 4 parts"))


async def test_the_open_question_goes_on_once_the_source_is_known(talk: Talk) -> None:
    await tank(talk, "no3 80 kh 5 ph 7.4 temp 25", "how big a change")
    await talk.say("tap is no3 10 ph 7.5 kh 5")
    assert "largest_safe_share" in await facts(talk, "ok so how much")


async def test_a_substance_in_the_question_is_the_one_of_the_plan(talk: Talk) -> None:
    await tank(talk, "kh 2", "ph 7", "ile sody do kh 6", "amoniak 0")
    assert (await facts(talk, "a teraz ile sody"))["to"] == 6.0


@pytest.mark.parametrize("text", ["so how much", "do another?", "was that enough", "every day?"])
async def test_of_nothing_told_nothing_is_answered(talk: Talk, text: str) -> None:
    await tank(talk)
    assert not set(await facts(talk, text)) & {"reached", "compared", "largest_safe_share"}


@pytest.mark.parametrize(
    "text", ["how much salt is in there now", "am i at 1 g/l", "wie viel salz ist jetzt drin"]
)
async def test_salt_that_is_in_is_told_less_what_changes_took(talk: Talk, text: str) -> None:
    await tank(talk, "dosed 45 g salt")
    assert (await facts(talk, text))["salt"]["g_l"] == pytest.approx(0.5, abs=0.01)
    talk.clock.move_by(timedelta(hours=1))
    await talk.say("changed 50%")
    assert (await facts(talk, text))["salt"]["g_l"] == pytest.approx(0.25, abs=0.01)


async def test_salt_that_nobody_weighed_is_not_told(talk: Talk) -> None:
    await tank(talk, "put in some salt")
    assert "salt" not in await facts(talk, "how much salt is in there now")


@pytest.mark.parametrize(
    ("lines", "asked", "shown"),
    [
        (["ph 6.4 kh 2"], "how much tho", "KH 2 → 4"),
        (["ph 6.4 kh 2"], "how much?", "KH 2 → 4"),
        (["added 6 neon tetras", "ph 6.4 kh 2"], "so what should i do", "dose none for it"),
        (["added 6 neon tetras", "ph 6.4 kh 2"], "how much tho", "dose none for it"),
        (["nitrite 1", "changed 30%"], "again now or wait", "test first"),
        (["kh 3", "dosed 1.8 g baking soda"], "again now or wait", "No more now"),
        (["kh 3", "dose kh 6", "done"], "gimme the next one", "2 of 3 parts are left"),
        (["kh 3", "dose kh 6", "done"], "and next week?", "2 of 3 parts are left"),
        (["nitrite 1"], "tomorrow again?", "Change a tenth to a quarter"),
    ],
)
async def test_a_fragment_is_of_what_was_spoken_of_last(
    talk: Talk, lines: list[str], asked: str, shown: str
) -> None:
    await talk.say("/tank new Fern 60 l fresh")
    for line in lines:
        await talk.say(line)
    assert shown in await talk.text(asked)


async def test_next_behind_the_test_of_a_plan_is_its_next_part(talk: Talk) -> None:
    await talk.say("/tank new Fern 60 l fresh")
    for line in ("kh 3", "dose kh 6", "what if i put it all today", "done first one"):
        await talk.say(line)
    await talk.wait(days=1)
    kept, told = await talk.say("kh 4 now. next?")
    assert kept.facts["values"][0]["canonical"] == 4.0
    assert len(told.facts["parts"]) == 2


@pytest.mark.parametrize(
    ("asked", "shown"),
    [
        ("what do i buy", "in all. From a grocer's baking shelf"),
        ("whats the recipe", "in all. From a grocer's baking shelf"),
        ("which first", "None of the 3 parts is on record yet. The first: 1.8 g"),
        ("day 2 amount", "1.8 g of sodium bicarbonate (baking soda) each time"),
    ],
)
async def test_a_fragment_is_of_the_plan_and_of_one_that_waits(
    talk: Talk, asked: str, shown: str
) -> None:
    await talk.say("/tank new Fern 60 l fresh")
    await talk.say("kh 3")
    await talk.say("dose kh 6")
    told = await talk.text(asked)
    assert shown in told


@pytest.mark.parametrize("asked", ["how long will that take", "how fast", "what do i buy"])
async def test_a_plan_that_waits_for_the_litres_says_so_again(talk: Talk, asked: str) -> None:
    await talk.say("kh 8")
    await talk.say("dose kh 14")
    assert "How many litres" in await talk.text(asked)
