"""Questions that one word sent to another topic: when, what is wrong, double, help, no animals."""

from __future__ import annotations

import pytest

from core.message.none_live import none_live
from tests.chat.harness import Talk

SECOND = (
    "when is the second one",
    "when does the next go in",
    "when do i give the 2nd",
    "wann kommt die zweite",
    "wann der zweite teil",
    "quand la deuxième",
    "cuándo la segunda",
    "quando vai a segunda",
    "quando la seconda",
    "wanneer de tweede",
    "kiedy druga",
    "när kommer den andra",
)

DONE = (
    "when is it done",
    "wann ist es fertig",
    "quand est-ce fini",
    "cuándo termina",
    "quando é pronto",
    "quando è finito",
    "wanneer is het klaar",
    "kiedy gotowe",
    "när är det klart",
)

DOUBLE = (
    "double dose ok?",
    "is a double dose safe",
    "doppelte dosis ok?",
    "double dose ça va ?",
    "dosis doble ok?",
    "dose dupla pode ser?",
    "doppia dose va bene?",
    "dubbele dosis goed?",
    "podwójna dawka dobrze?",
    "dubbel dos okej?",
)

WRONG = (
    "whats wrong",
    "what's the matter?",
    "what is wrong with my tank",
    "was ist los",
    "was stimmt nicht",
    "qu'est-ce qui ne va pas",
    "qué está mal",
    "o que há de errado",
    "cosa c'è che non va",
    "wat is er mis",
    "co jest nie tak",
    "vad är fel",
)


@pytest.fixture
async def planned(talk: Talk) -> Talk:
    await talk.say("/tank new Oak 200 l fresh")
    await talk.say("kh 2 ph 6.6 ammonia 0 temp 25 gh 6")
    await talk.say("dose kh 4")
    return talk


@pytest.mark.parametrize("line", SECOND)
async def test_when_the_second_part(planned: Talk, line: str) -> None:
    (reply,) = await planned.say(line)
    assert reply.facts["every_hours"] == 24
    assert "test_at" in reply.facts


@pytest.mark.parametrize("line", DONE)
async def test_when_it_is_through(planned: Talk, line: str) -> None:
    (reply,) = await planned.say(line)
    assert reply.text.startswith("2 parts 24 h apart")


@pytest.mark.parametrize("line", ["when did i dose last", "when was the last part"])
async def test_who_asks_when_tells_no_deed(planned: Talk, line: str) -> None:
    replies = await planned.say(line)
    assert all("logged" not in reply.text for reply in replies)


@pytest.mark.parametrize("line", DOUBLE)
async def test_double_of_a_plan(planned: Talk, line: str) -> None:
    (reply,) = await planned.say(line)
    assert "retest before each next one" in reply.text


@pytest.mark.parametrize("line", DOUBLE)
async def test_double_of_nothing(talk: Talk, line: str) -> None:
    await talk.say("/tank new Oak 200 l fresh")
    (alone,) = await talk.say(line)
    assert "emergency" not in alone.facts
    assert "of what" in alone.text
    assert "grams" not in alone.facts


@pytest.mark.parametrize("line", WRONG)
async def test_what_is_wrong(talk: Talk, line: str) -> None:
    await talk.say("/tank new Old 150 l fresh")
    await talk.say("ph 7.9 kh 6 ammonia 3 temp 27")
    (reply,) = await talk.say(line)
    assert reply.facts["emergency"] == "ammonia"


async def test_what_is_wrong_where_nothing_is(talk: Talk) -> None:
    await talk.say("/tank new Old 150 l fresh")
    await talk.say("ph 7.2 kh 6 ammonia 0 temp 25")
    (reply,) = await talk.say("whats wrong")
    assert "within the limits that I know" in reply.text


async def test_help_is_a_call_while_something_is_wrong(talk: Talk) -> None:
    await talk.say("/tank new Old 40 l fresh")
    await talk.say("kh 4 ph 7.4 ammonia 0.5 temp 25")
    await talk.say("put in 30 g baking soda")
    (reply,) = await talk.say("help")
    assert reply.facts["emergency"] == "overdose"
    (screen,) = await talk.say("/help")
    assert "emergency" not in screen.facts


@pytest.mark.parametrize(
    ("line", "heard"),
    [
        ("no animals at all", "none"),
        ("none, no snails either", "none"),
        ("there is nothing in it", "none"),
        ("nothing", "none"),
        ("it's empty", "none"),
        ("keine tiere", "none"),
        ("keine fische und keine schnecken", "none"),
        ("aucun animal", "none"),
        ("pas de poissons, pas d'escargots", "none"),
        ("ningún animal", "none"),
        ("nenhum animal", "none"),
        ("nessun animale", "none"),
        ("geen dieren", "none"),
        ("żadnych zwierząt", "none"),
        ("inga djur", "none"),
        ("no fish", "unsure"),
        ("no, no fish", "unsure"),
        ("keine fische", "unsure"),
        ("nie ma ryb", "unsure"),
        ("no, snails", "some"),
        ("no fish but snails", "some"),
        ("nur schnecken", "some"),
        ("2 snails", "some"),
        ("ph 7", None),
    ],
)
async def test_whether_anything_lives_there(talk: Talk, line: str, heard: str | None) -> None:
    """Only who surely has no animal, snails and shrimps too, gets a dose."""
    assert none_live(line) == heard
    await talk.say("/tank new Neu 60 l fresh")
    await talk.say("kh 4 ph 7.5 temp 25 ammonia 0 nitrite 0")
    await talk.say("how much ammonium chloride for 2 ppm as N")
    replies = await talk.say(line)
    assert any("grams" in reply.facts for reply in replies) == (heard == "none")
    if heard == "some":
        assert "would poison them" in replies[0].text


async def test_without_the_question_it_is_no_answer(talk: Talk) -> None:
    await talk.say("/tank new Neu 60 l fresh")
    replies = await talk.say("no animals at all")
    assert all("grams" not in reply.facts for reply in replies)
