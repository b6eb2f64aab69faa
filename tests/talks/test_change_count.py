"""How many changes of a keeper's own share reach a value: what is left of the old water after n
changes of s is (1 - s)^n (C), and no step passes a limit of the day."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk

ASKED = (
    "how many changes of 30% till nitrate 20",
    "how many 30% changes to get nitrate to 20",
    "how many times 30% to get to nitrate 20",
    "if i change 30% a day how many days till nitrate is 20",
    "wie viele wechsel von 30% bis nitrat 20",
    "wie oft 30% wechseln bis nitrat 20",
    "combien de changements d'eau de 30% jusqu'à nitrate 20",
    "cuántos cambios del 30% para bajar el nitrato a 20",
    "quantas trocas de 30% até nitrato 20",
    "quanti cambi del 30% per arrivare a nitrati 20",
    "hoeveel waterwissels van 30% tot nitraat 20",
    "ile podmian po 30% do azotanów 20",
    "hur många byten på 30% till nitrat 20",
)


@pytest.fixture
async def alike(talk: Talk) -> Talk:
    """The tap differs from the tank in nitrate alone, so that its own share is safe."""
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("/source tap ph 7.2 kh 5 gh 8 no3 5 temp 24 total chlorine 0")
    await talk.say("ph 7.2 kh 5 gh 8 nitrate 60 temp 24 ammonia 0")
    return talk


@pytest.fixture
async def hard(talk: Talk) -> Talk:
    """The tap is so much harder that 30 % at once moves KH by more than 1 °dH."""
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("/source tap ph 7.6 kh 8 gh 14 no3 5 temp 20 total chlorine 0")
    await talk.say("ph 6.8 kh 3 gh 4 nitrate 60 temp 24 ammonia 0")
    return talk


@pytest.mark.parametrize("line", ASKED)
async def test_the_keepers_own_share_is_counted(alike: Talk, line: str) -> None:
    facts = await alike.facts(line)
    assert facts["steps"] == pytest.approx([0.3] * 4)
    assert facts["end"]["nitrate"] == pytest.approx(5 + 55 * 0.7**4, abs=0.01)
    assert facts["first"]["nitrate"] == pytest.approx(5 + 55 * 0.7, abs=0.01)


async def test_the_first_line_counts_them(alike: Talk) -> None:
    (reply,) = await alike.say(ASKED[0])
    assert reply.lines[0].text == "Fern: 4 changes of 30 % (27 L), one a day."


async def test_litres_of_one_change(alike: Talk) -> None:
    facts = await alike.facts("how many changes of 27 l till nitrate 20")
    assert facts["steps"] == pytest.approx([0.3] * 4)


async def test_no_rounding_adds_one(alike: Talk) -> None:
    """0.657 of the water is three changes of 30 %, though it is told as 66 %."""
    facts = await alike.facts("how many changes of 30% till nitrate 23.9")
    assert len(facts["steps"]) == 3


async def test_one_is_enough(alike: Talk) -> None:
    (reply,) = await alike.say("how many changes of 50% till nitrate 40")
    assert reply.facts["steps"] == pytest.approx([0.5])
    assert "1 change of 50 % (45 L) is enough" in reply.lines[0].text


@pytest.mark.parametrize(
    "line", ["how many changes of 30% till gh 8", "wie viele 30% wechsel bis gh 8"]
)
async def test_an_unsafe_share_is_named_and_a_safe_one_taken(hard: Talk, line: str) -> None:
    (reply,) = await hard.say(line)
    assert "not 30 % at once: KH would move too far" in reply.lines[0].text
    steps = reply.facts["steps"]
    assert max(steps) <= reply.facts["largest_safe_share"] < 0.3
    assert reply.facts["end"]["gh"] == pytest.approx(8.0, abs=0.3)
    left = 1.0
    for step in steps:
        left *= 1 - step
    assert 14 - 10 * left == pytest.approx(reply.facts["end"]["gh"], abs=0.01)


async def test_more_than_a_person_makes_is_a_routine(hard: Talk) -> None:
    (reply,) = await hard.say("how many 10% changes to get nitrate to 20")
    assert len(reply.facts["steps"]) == 13  # 0.9^13 = 0.254, under 15/55 = 0.273
    assert reply.facts["as_routine"]["share"] == pytest.approx(0.1)
    assert "Rather as a routine" in reply.lines[0].text


async def test_far_too_many_are_not_listed(alike: Talk) -> None:
    (reply,) = await alike.say("how many changes of 1% till nitrate 6")
    assert reply.facts["steps"] == []
    assert "ask for a larger one" in reply.lines[0].text


async def test_what_no_change_reaches(alike: Talk) -> None:
    assert "its own nitrate is 5" in await alike.text("how many changes of 50% till nitrate 2")
    assert "does not bring it" in await alike.text("how many changes of 50% till nitrate 70")


async def test_one_change_stays_one(alike: Talk) -> None:
    assert (await alike.facts("what if i change 30%"))["steps"] == pytest.approx([0.3])
