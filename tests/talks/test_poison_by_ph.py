"""How ammonia's poison follows pH: Emerson, Russo, Lund & Thurston 1975, pKa = 0.09018 + 2729.92/T.

At 26 °C pKa is 9.216; of 0.5 mg/L as N 0.02 are reached where pH = pKa + log10(0.04/0.96) = 7.84.
"""

from __future__ import annotations

import math

import pytest

from bot.chat.poison_by_ph import passing
from tests.chat.harness import Talk

FERN = ("/tank new Fern 90 l fresh", "kh 4 ph 7.2 ammonia 0.5 temp 26")


@pytest.mark.parametrize(
    "line",
    [
        "is the ammonia gonna get worse as ph goes up", "what ph does ammonia get dangerous at",
        "ab welchem ph ist ammoniak gefährlich", "à quel ph l'ammoniaque est toxique",
        "wird ammoniak giftiger wenn der ph steigt?", "when is ammonia toxic at which ph",
    ],
)  # fmt: skip
async def test_it_is_told_with_the_ph_where_it_passes(talk: Talk, line: str) -> None:
    for told in FERN:
        await talk.say(told)
    (reply,) = await talk.say(line)
    assert "ten times" in reply.text
    assert reply.facts["ph"] == 7.8


async def test_without_readings_they_are_asked_for(talk: Talk) -> None:
    await talk.say(FERN[0])
    assert "Send ammonia, pH and temperature" in await talk.text("does ammonia get worse with ph?")


async def test_warmth_counts_less(talk: Talk) -> None:
    await talk.say(FERN[0])
    assert "twice as much for 10" in await talk.text("ammonia worse when warm?")


@pytest.mark.parametrize(
    "line", ["ammonia and ph are bad", "is ammonia at ph 8 dangerous", "ammonia 0.5 ph 8", "ph 8"]
)
async def test_values_and_talk_are_answered_as_such(talk: Talk, line: str) -> None:
    await talk.say(FERN[0])
    for reply in await talk.say(line):
        assert "ten times" not in reply.text


@pytest.mark.parametrize(("total", "degrees"), [(0.5, 26.0), (1.0, 20.0), (3.0, 28.0)])
def test_the_ph_is_the_one_of_the_published_constant(total: float, degrees: float) -> None:
    pka = 0.09018 + 2729.92 / (degrees + 273.15)
    share = 0.02 / total
    exact = pka + math.log10(share / (1.0 - share))
    found = passing(total, degrees, 0.0)
    assert found is not None
    assert 0.0 <= exact - found <= 0.1


def test_so_little_passes_nowhere() -> None:
    assert passing(0.01, 25.0, 0.0) is None


LOW = [
    "is it ok since ph is low",
    "ist das ok bei niedrigem pH?",
    "est-ce ok avec un ph bas",
    "è ok con ph basso",
    "is dat ok bij lage ph",
    "czy to ok przy niskim ph",
    "är det ok vid lågt ph",
]


@pytest.mark.parametrize("text", LOW)
async def test_a_low_ph_does_not_make_ammonia_well(talk: Talk, text: str) -> None:
    await talk.say("/tank new Fern 100 l fresh")
    await talk.say("ammonia 3 ph 6.4 temp 25")
    said = await talk.text(text)
    assert "must go all the same" in said
    assert "Stop feeding" in said
    assert "do not raise pH" in said


@pytest.mark.parametrize("text", ["is ph low", "is it ok since ph is low"])
async def test_without_ammonia_a_low_ph_is_another_question(talk: Talk, text: str) -> None:
    await talk.say("/tank new Fern 100 l fresh")
    await talk.say("ammonia 0 ph 6.4 temp 25")
    assert "must go all the same" not in await talk.text(text)


@pytest.mark.parametrize(
    "reading", ["ammonia .5 ph 7.8 temp 26", "ammonia .5 no2 0 ph 7.2 temp 24"]
)
async def test_little_ammonia_is_told_what_to_do_for(talk: Talk, reading: str) -> None:
    await talk.say("/tank new Fern 100 l fresh")
    said = await talk.text(reading)
    for part in ("feed little", "test daily", "change a little", "raise no pH"):
        assert part in said
    assert "Change nothing" not in await talk.text("is my water ok")


async def test_in_an_old_tank_as_well_but_not_where_nobody_lives(talk: Talk) -> None:
    await talk.say("/tank new Fern 100 l fresh")
    await talk.say("the tank is 3 years old")
    assert "feed little" in await talk.text("ammonia 0.5 nitrite 0 ph 7 temp 24")
    assert "feed little" not in await talk.text("ammonia 0.1 nitrite 0 ph 7 temp 24")
