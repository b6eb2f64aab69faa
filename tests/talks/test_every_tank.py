"""What is told of all tanks is stored for each of them, or not at all."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk


@pytest.fixture
async def three(talk: Talk) -> Talk:
    for name in ("Fern", "Rift", "Moss"):
        await talk.say(f"/tank new {name} 100 l fresh")
    return talk


@pytest.mark.parametrize(
    "text",
    [
        "all: changed 20%",
        "changed 20% in all tanks",
        "all my tanks: changed 20%",
        "changed 20% everywhere",
        "every tank: changed 20%",
        "alle becken: 20% wasserwechsel",
        "20% wasserwechsel in allen becken",
        "changement d'eau 20% dans tous les bacs",
        "20% cambio de agua en todos los acuarios",
        "alle bakken: 20% ververst",
        "alla akvarier: bytte 20% vatten",
    ],
)
async def test_a_change_of_all_is_stored_for_each(three: Talk, text: str) -> None:
    replies = await three.say(text)
    assert [reply.facts["tank"] for reply in replies] == ["Fern", "Rift", "Moss"]
    assert all(reply.facts["events"][0]["percent"] == 20 for reply in replies)


@pytest.mark.parametrize("text", ["all tanks temp 24", "temp 24 in all tanks", "fed all tanks"])
async def test_readings_and_food_of_all(three: Talk, text: str) -> None:
    assert len(await three.say(text)) == 3
    await three.text("undo")
    assert "no readings" in await three.text("history of temp for rift")


@pytest.mark.parametrize(
    "text", ["all fish died", "added 3 guppies in all tanks", "all tanks", "both tanks: temp 24"]
)
async def test_what_is_not_of_each_tank_is_not_stored_for_each(three: Talk, text: str) -> None:
    tanks = [reply.facts.get("tank") for reply in await three.say(text)]
    assert len({tank for tank in tanks if tank}) <= 1


async def test_both_are_two_tanks(talk: Talk) -> None:
    await talk.say("/tank new Fern 100 l fresh")
    await talk.say("/tank new Rift 100 l fresh")
    assert len(await talk.say("both tanks: temp 24")) == 2


async def test_in_a_group_all_is_all_tanks_too(three: Talk) -> None:
    three.group = True
    assert len(await three.say("all: changed 20%", addressed=False)) == 3
    assert await three.say("all: dosed 5 ml ibuprofen", addressed=False) == []
