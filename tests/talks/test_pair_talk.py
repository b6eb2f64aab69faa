"""Calcium and alkalinity asked for one after the other: never at one time, in nine languages."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk

TOGETHER = (
    "can i put both in at the same time",
    "same time?",
    "kann ich beide gleichzeitig geben",
    "je peux mettre les deux en même temps",
    "puedo poner los dos a la vez",
    "posso pôr os dois ao mesmo tempo",
    "posso mettere entrambi insieme",
    "kan ik beide tegelijk geven",
    "mogę dać oba naraz",
    "kan jag ge båda samtidigt",
)

FIRST = (
    "which one do i start with",
    "womit fange ich an",
    "par lequel je commence",
    "con cuál empiezo",
    "por qual começo",
    "da quale comincio",
    "waarmee begin ik",
    "od czego zacząć",
    "vilken börjar jag med",
)


@pytest.fixture
async def reef(talk: Talk) -> Talk:
    await talk.say("/tank new Recife 250 l marine")
    await talk.say("kh 7 ca 380 mg 1200 salinity 35 g/kg temp 25.5 ph 8.1")
    await talk.say("how much to get alk to 8.5")
    await talk.say("and calcium to 420?")
    return talk


@pytest.mark.parametrize("asked", TOGETHER)
async def test_never_at_one_time(reef: Talk, asked: str) -> None:
    said = await reef.text(asked)
    assert said.startswith("No: never calcium and alkalinity at one time")
    assert "some hours later" in said


@pytest.mark.parametrize("asked", FIRST)
async def test_one_first_and_the_other_hours_later(reef: Talk, asked: str) -> None:
    said = await reef.text(asked)
    assert said.startswith("Alkalinity first")
    assert "Calcium some hours later, never at one time" in said


async def test_magnesium_goes_before_them(reef: Talk) -> None:
    await reef.say("and magnesium to 1320?")
    assert (await reef.text("which one first")).startswith("Magnesium first")


async def test_also_where_both_were_refused_for_want_of_a_reading(talk: Talk) -> None:
    await talk.say("/tank new Recife 250 l marine")
    await talk.say("quanto cálcio para chegar a 430")
    await talk.say("e a alcalinidade para 9?")
    said = await talk.text("posso pôr os dois ao mesmo tempo")
    assert said.startswith("No: never calcium and alkalinity at one time")


async def test_the_parts_of_one_plan_are_still_kept_a_day_apart(talk: Talk) -> None:
    await talk.say("/tank new Recife 250 l marine")
    await talk.say("kh 7 ca 380 mg 1200 salinity 35 g/kg temp 25.5 ph 8.1")
    await talk.say("how much to get alk to 8.5")
    assert "parts 24 h apart" in await talk.text("can i put both in at the same time")
