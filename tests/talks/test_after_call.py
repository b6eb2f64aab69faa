"""What is asked after a call for help. Thiosulfate: 7.0 mg of the pentahydrate a mg of chlorine
and a quarter more (C, two thiosulfates a Cl2): 7 g for 200 L at 4 mg/L."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk

GONE = (
    "how do i know its gone",
    "woher weiß ich, dass es weg ist?",
    "comment savoir si c'est parti",
    "cómo sé que se fue",
    "como sei que já saiu",
    "come so che è sparito",
    "hoe weet ik dat het weg is",
    "skąd wiem że zniknęło",
    "hur vet jag att det är borta",
)
LATE = (
    "is it too late",
    "ist es zu spät",
    "est-ce trop tard",
    "es demasiado tarde",
    "é tarde demais",
    "è troppo tardi",
    "is het te laat",
    "czy jest za późno",
    "är det för sent",
)


@pytest.fixture
async def barn(talk: Talk) -> Talk:
    """A tank into which raw tap water went."""
    await talk.say("/tank new Barn 200 l fresh")
    await talk.say("kh 5 ph 7.4 temp 24")
    await talk.say("i forgot the dechlorinator")
    return talk


@pytest.mark.parametrize("line", GONE)
async def test_how_it_shows_that_chlorine_is_gone(barn: Talk, line: str) -> None:
    (reply,) = await barn.say(line)
    assert reply.facts["emergency"] == "chlorine"
    assert reply.lines[0].text.startswith("By a test of total chlorine: 0, twice")


@pytest.mark.parametrize("line", LATE)
async def test_it_is_not_too_late_while_they_breathe(barn: Talk, line: str) -> None:
    assert (await barn.text(line)).startswith("Not while they breathe: do the steps now")


@pytest.mark.parametrize("line", [GONE[0], LATE[0]])
async def test_without_a_call_nothing_is_said_of_it(talk: Talk, line: str) -> None:
    await talk.say("/tank new Barn 200 l fresh")
    await talk.say("kh 5 ph 7.4 temp 24")
    assert "emergency" not in await talk.facts(line)


async def test_each_danger_has_its_own_test(talk: Talk) -> None:
    await talk.say("/tank new Barn 200 l fresh")
    await talk.say("help ammonia")
    assert "0 on two days running" in await talk.text("is it gone")


@pytest.mark.parametrize(
    ("line", "grams"),
    [("crystals, pentahydrate", 7.0), ("kristalle", 7.0), ("cristaux", 7.0), ("anhydrous", 4.5),
     ("wasserfrei", 4.5), ("bezwodny", 4.5)],
)  # fmt: skip
async def test_the_form_that_the_keeper_has(barn: Talk, line: str, grams: float) -> None:
    await barn.say("how much thiosulfate")
    facts = await barn.facts(line)
    assert facts["grams"] == pytest.approx(grams, abs=0.05)
    assert facts["substance"].endswith("hydrate") is (grams == 7.0)


@pytest.mark.parametrize(
    "line",
    ["can i undo it with vinegar", "lemon juice?", "hilft Essig", "Zitronensaft?", "jus de citron",
     "zumo de limón", "suco de limão", "succo di limone", "citroensap", "sok z cytryny",
     "citronsaft"],
)  # fmt: skip
async def test_an_overdose_is_undone_with_no_acid(talk: Talk, line: str) -> None:
    await talk.say("/tank new Deck 200 l fresh")
    await talk.say("kh 4 ph 7 gh 6 temp 24 ammonia 0")
    await talk.say("dosed 60 g baking soda")
    (reply,) = await talk.say(line)
    assert reply.facts["refused"] == "acid"


@pytest.mark.parametrize(
    "line",
    ["i used table salt with iodine", "habe nur Jodsalz", "sel de cuisine ça va?",
     "solo tengo sal de mesa", "só tenho sal de cozinha", "ho solo sale da cucina",
     "ik heb alleen keukenzout", "mam tylko sól kuchenną", "har bara salt med jod"],
)  # fmt: skip
async def test_table_salt(talk: Talk, line: str) -> None:
    await talk.say("/tank new Deck 200 l fresh")
    text = await talk.text(line)
    assert "iodine is no danger" in text
    assert "Salmonella" not in text
    await talk.say("/tank new Mar 200 l marine")
    assert "take sea salt" in await talk.text(line)


async def test_a_wrong_powder_that_went_in_is_a_mishap(talk: Talk) -> None:
    await talk.say("/tank new Deck 200 l fresh")
    assert (await talk.facts("oops i used washing soda"))["emergency"] == "overdose"
    assert "emergency" not in await talk.facts("can i use washing soda")


async def test_one_share_is_told_for_nitrite(talk: Talk) -> None:
    """A change of up to a quarter, with the reading and where no salt may be given."""
    await talk.say("/tank new Crib 112 l fresh")
    await talk.say("added 6 corydoras")
    assert "up to a quarter" in await talk.text("nitrite 1 ph 7.2 kh 4 temp 25 ammonia 0")
    refused = await talk.text("how much salt")
    assert "up to a quarter" in refused
    assert "half" not in refused
