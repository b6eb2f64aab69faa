"""Readings beside plain talk: they are on record first, and a question behind them is answered."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk


@pytest.mark.parametrize(
    ("line", "stored", "answered"),
    [
        ("nitrite 2, can i feed them", "nitrite 2 mg/L", "Not today"),
        ("ammonia 2 what do i do", "ammonia 2 mg/L", "Stop feeding. No buffer"),
        ("nitrate 40 ok so now what", "nitrate 40 mg/L", "within the limits"),
        ("no3 2 po4 2 what to dose", "nitrate 2 mg/L", "I did not understand “what to dose”"),
        ("ammonia 0.5 why", "ammonia 0.5 mg/L", "How much of the total is poisonous"),
        ("ammonia 0 nitrite 0 can i add fish", "nitrite 0 mg/L", "Not proved"),
        ("Ph 7.8 Gh 180 ppm Kh 120 ppm all good?", "pH 7.8, GH 180 ppm", "harm soonest"),
        ("ph 7.1 kh 4 ok?", "pH 7.1, KH 4", "harm soonest"),
        ("ph 6,8 kh 4 zu niedrig?", "pH 6.8, KH 4", "harm soonest"),
        ("kh 5 ph 7.2 thoughts?", "KH 5", "harm soonest"),
        ("120l nitrite 1, how much water should i change", "Now Tank: 120 L", "Tank: yes."),
    ],
)
async def test_values_are_kept_and_the_question_is_answered(
    talk: Talk, line: str, stored: str, answered: str
) -> None:
    told, *_between, last = await talk.say(line)
    assert stored in told.text
    assert answered in last.text


@pytest.mark.parametrize(
    "line",
    [
        "ph 7 kh 4 can i keep neons",
        "kh 3 what discus want",
        "kh 4 ok?",
        "is ph 7 kh 4 ok",
        "ph 7 kh 4 ok for guppies?",
    ],
)
async def test_what_may_be_supposed_is_not_kept(talk: Talk, line: str) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say(line)
    assert "KH" not in await talk.text("is my water ok")


async def test_when_the_tank_began_is_no_time_of_its_values(talk: Talk) -> None:
    values, began = await talk.say("tank set up 2 days ago. ph 7 ammonia 0 nitrite 0")
    assert values.text.startswith("Tank: pH 7")
    assert "set up" in began.text


async def test_what_was_before_leaves_nothing_open(talk: Talk) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("kh 12 now was 6")
    assert "did not understand" not in await talk.text("do i change water")


async def test_nothing_is_fed_while_a_poison_told_is_open(talk: Talk) -> None:
    await talk.say("nitrite 1 ammonia 0.5 xyz")
    assert "no food today" in await talk.text("can i feed them")


@pytest.mark.parametrize("line", ["ph 7 kh 4 all good", "nitrate 20 alright", "kh 4 normal"])
async def test_what_is_no_question_is_plain_talk(talk: Talk, line: str) -> None:
    (told,) = await talk.say(line)
    assert told.facts["values"]


async def test_what_to_add_behind_a_low_kh_is_of_the_kh(talk: Talk) -> None:
    await talk.say("my tank is 100 l")
    *_, plan = await talk.say("kh 2 what do i add")
    assert "KH 2 → 4" in plan.text
    assert "suits" in await talk.text("kh 8 what fish can i add")
