"""Values of others, of books, of long ago, and denied ones: not stored, not one press away."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk

HEARD = [
    "le voisin a 2 de nitrites", "mein nachbar hat 3 nitrit", "my neighbor has 5 nitrite",
    "my friend has 5 kh", "el vecino tiene 3 de nitritos", "o vizinho tem 2 de nitritos",
    "il vicino ha 2 di nitriti", "de buurman heeft 3 nitriet", "sąsiad ma 3 azotynów",
    "grannen har 3 nitrit", "my mate has nitrite 2", "mein bruder hat nitrit 3",
    "mijn zus heeft ammoniak 2", "grandpas tank 8.5 ph", "book says ph 7.2", "kh isnt 8",
    "ammonia 0 he says", "we used to have kh 12 back in the old house", "gh booster 2 scoops",
]  # fmt: skip


@pytest.mark.parametrize("said", HEARD)
async def test_it_is_not_stored_nor_offered(talk: Talk, said: str) -> None:
    await talk.say("/tank new Fern 100 l")
    for reply in await talk.say(said):
        assert not reply.facts.get("values")
        assert not any(button.label[-1:].isdigit() for button in reply.buttons)


@pytest.mark.parametrize(
    "said", ["kh 8", "nitrite is 2", "we have 5 kh", "2 nitrites", "my wife added 5 ml fertilizer"]
)
async def test_ones_own_is_stored(talk: Talk, said: str) -> None:
    await talk.say("/tank new Fern 100 l")
    (reply, *_rest) = await talk.say(said)
    assert reply.facts.get("values") or reply.facts.get("events")


@pytest.mark.parametrize("said", ["nitrite 2 blurb", "kh 8 wibble"])
async def test_a_word_without_weight_leaves_the_guess(talk: Talk, said: str) -> None:
    await talk.say("/tank new Fern 100 l")
    (reply,) = await talk.say(said)
    assert reply.buttons


@pytest.mark.parametrize(
    "told",
    [
        "my neighbours tank has kh 1 and her fish are dying",
        "my friend's fish are gasping",
        "die Fische meines Nachbarn schnappen nach Luft",
    ],
)
async def test_a_call_for_anothers_tank_is_answered_and_not_kept(talk: Talk, told: str) -> None:
    await talk.say("60 litres kh 3 ph 7 ammonia 0")
    (steps, *_rest) = await talk.say(told)
    assert "For their tank" in steps.text
    assert "emergency" in steps.facts
    assert "parts" in await talk.facts("how much baking soda for mine to get to kh 5")


@pytest.mark.parametrize(
    "told",
    [
        "my neighbour poured bleach in the tank",
        "my friend says my fish are gasping",
        "my daughters betta is gasping",
    ],
)
async def test_ones_own_tank_is_held_whoever_tells_of_it(talk: Talk, told: str) -> None:
    await talk.say("60 litres kh 3 ph 7 ammonia 0")
    assert "For their tank" not in await talk.text(told)
    assert "parts" not in await talk.facts("how much baking soda to get to kh 5")
