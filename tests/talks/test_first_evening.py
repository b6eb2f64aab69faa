"""The first evening and small talk. Weeks of a new filter: common practice, no source."""

from __future__ import annotations

import pytest

from core.message.first_evening import talk, told
from tests.chat.harness import Talk

SAID = {
    "tank": (
        "just bought my first aquarium 54 litres no fish yet",
        "hab mein erstes aquarium gekauft 60 l",
        "j'ai acheté mon premier aquarium 60 l", "compré mi primer acuario de 60 litros",
        "comprei meu primeiro aquário 60 l", "ho comprato il mio primo acquario 60 litri",
        "mijn eerste aquarium gekocht 60 l", "kupiłem pierwsze akwarium 60 l",
        "köpt mitt första akvarium 60 l", "tengo un acuario de 60 l sin peces",
    ),
    "another_tank": (
        "i have a big tank too with 400 l", "new reef tank 200 l", "hab noch ein becken 400 l",
        "j'ai aussi un bac de 400 l", "tengo otro acuario de 400 l", "tenho outro aquário de 400 l",
        "ho anche un acquario di 400 l", "heb nog een bak van 400 l", "mam też akwarium 400 l",
        "har ett till akvarium 400 l",
    ),
    "set_up": (
        "set up yesterday", "hab gestern eingerichtet", "j'ai monté le bac hier", "acabo de montar",
        "acabei de montar", "ho allestito ieri", "gisteren ingericht", "wczoraj założyłem akwarium",
        "startade igår",
    ),
    "filled": ("i filled it up this afternoon", "heute befüllt", "rempli ce matin"),
    "begin": (
        "ich will ein aquarium einrichten, wo fang ich an", "how do i start a fish tank",
        "je veux installer un aquarium", "quiero montar un acuario", "quero montar um aquário",
        "voglio allestire un acquario", "ik wil een aquarium beginnen", "chcę założyć akwarium",
        "jag vill starta ett akvarium",
    ),
    "how_long": (
        "how long until its ready", "wie lange muss das becken einlaufen",
        "combien de temps avant que le bac est prêt", "cuánto tiempo tiene que ciclar",
        "quanto tempo até pronto",
        "quanto deve maturare", "hoe lang moet de bak inlopen", "jak długo dojrzewa akwarium",
        "hur länge ska akvariet köras in",
    ),
    "how_far": ("how far am i", "wie weit bin ich", "où j'en suis", "cómo voy", "a che punto sono"),
    "may_buy": (
        "morgen fische kaufen?", "i want to buy some fish this weekend",
        "wie lang noch bis fische rein können", "can i get fish now",
        "puis-je acheter des poissons",
        "puedo comprar peces ya", "posso comprar peixes", "posso comprare pesci",
        "mag ik vissen kopen", "mogę kupić ryby", "kan jag köpa fiskar",
    ),
    "fishless": ("no fish in it, fishless cycle", "fishless cycling"),
    "nobody": ("no fish yet", "noch keine fische", "todavía sin peces", "bez ryb", "its empty"),
    "ammonia_dosed": ("dosed ammonia to 2 ppm", "ammoniak auf 2 ppm dosiert"),
    "bacteria": ("bacteria in a bottle, does it work", "bringen starterbakterien was"),
}  # fmt: skip
"""Meaning → ways to say it in several languages."""

NEAR = (
    "i changed 54 litres",
    "my tank is 54 l",
    "new filter 200 l",
    "i bought 54 litres of ro",
    "no fish died",
    "is the tank set up",
    "how long does a change take",
    "how far can kh fall",
    "ammonia 2 ppm",
    "dosed 2 ml ammonia",
    "i filled it up",
    "bacteria bloom after dosing",
    "new tank 200 l?",
    "set up a reminder",
)


@pytest.mark.parametrize(("meaning", "line"), [(m, line) for m in SAID for line in SAID[m]])
def test_it_is_heard(meaning: str, line: str) -> None:
    found = told(line)
    assert found is not None
    assert found.meaning == meaning


@pytest.mark.parametrize("line", NEAR)
def test_what_is_near_is_not_heard(line: str) -> None:
    assert told(line) is None


async def test_a_first_tank_is_put_on_record_with_its_litres(talk: Talk) -> None:
    facts = await talk.facts("just bought my first aquarium 54 litres no fish yet")
    assert (facts["volume_l"], facts["kind"]) == (54.0, "fresh")
    assert ", today." in await talk.text("i filled it up this afternoon")


@pytest.mark.parametrize(
    ("line", "name", "litres", "kind"),
    [
        ("i have a big tank too with 400 l", "Big", 400.0, "fresh"),
        ("new reef tank 200 l", "Reef", 200.0, "marine"),
        ("hab noch ein becken 120 l", "Second", 120.0, "fresh"),
    ],
)
async def test_another_tank_leaves_the_first_as_it_is(
    talk: Talk, line: str, name: str, litres: float, kind: str
) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    facts = await talk.facts(line)
    assert (facts["tank"], facts["volume_l"], facts["kind"]) == (name, litres, kind)
    assert "90 L" in await talk.text("/tank Fern")


async def test_the_first_day_is_heard_in_a_sentence_of_its_own(talk: Talk) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    assert "set_up" in await talk.facts("i set up my tank last sunday")
    assert "set_up" not in await talk.facts("i set up my filter last sunday")


async def test_what_was_filled_in_a_tank_in_use_is_no_first_day(talk: Talk) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("added 6 neons")
    assert "set_up" not in await talk.facts("i filled it up this afternoon")


@pytest.mark.parametrize(
    "line", ["how long until its ready", "wie lange muss das becken einlaufen"]
)
async def test_how_long_is_answered_with_how_far(talk: Talk, line: str) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    said = await talk.text(line)
    assert said.startswith("Three to eight weeks")
    assert "test ammonia and nitrite first" in said


@pytest.mark.parametrize(
    "line", ["can i get 10 tetras and 2 rams", "morgen 6 neons kaufen?", "puedo comprar 6 neones"]
)
async def test_what_may_be_bought_is_asked_as_what_may_be_added(talk: Talk, line: str) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    said = await talk.text(line)
    assert "copper" not in said
    assert "neon tetra" in said or "groups" in said


@pytest.mark.parametrize("line", ["can i get kh to 6", "can i get test strips", "can i buy salt"])
async def test_what_is_no_animal_is_not_asked_so(talk: Talk, line: str) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    assert "species" not in await talk.facts(line)


async def test_ammonia_without_animals_is_judged_for_the_filter_once_confirmed(talk: Talk) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    assert (await talk.facts("no fish in it, fishless cycle"))["ask"] == "nobody"
    alarmed = await talk.facts("ammonia 2 ph 8")
    assert "ammonia" in [f["id"] for f in alarmed["findings"]]  # asked, not answered yet
    await talk.say("fishless cycle")
    await talk.say("yes")
    facts = await talk.facts("ammonia 2 ph 8")
    assert [f["id"] for f in facts["findings"]] == ["cycling_ammonia"]
    facts = await talk.facts("ammonia 6 ph 8")
    assert "ammonia" in [f["id"] for f in facts["findings"]]  # over what a filter bears
    await talk.say("added 6 neons")
    facts = await talk.facts("ammonia 2 ph 8")
    assert "ammonia" in [f["id"] for f in facts["findings"]]


async def test_animals_on_record_keep_ammonia_judged_for_them(talk: Talk) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("added 6 neons")
    assert "ask" not in await talk.facts("no fish in it, fishless cycle")


@pytest.mark.parametrize(
    ("line", "meaning"),
    [
        ("thx", "thanks"), ("ok thx", "thanks"), ("phew, thanks", "thanks"), ("danke", "thanks"),
        ("merci beaucoup", "thanks"), ("gracias", "thanks"), ("obrigada", "thanks"),
        ("grazie mille", "thanks"), ("dank je wel", "thanks"), ("dzięki", "thanks"),
        ("tack", "thanks"), ("ups", "oops"), ("mist", "oops"), ("hi", "hello"),
        ("guten abend", "hello"),
    ],
)  # fmt: skip
async def test_small_talk_gets_a_short_answer(talk: Talk, line: str, meaning: str) -> None:
    assert talk_of(line) == meaning
    (reply,) = await talk.say(line)
    assert len(reply.lines) == 1


def talk_of(line: str) -> str | None:
    return talk(line)


@pytest.mark.parametrize("line", ["thanks, and kh?", "hi fish are dead", "ups 5 g too much"])
def test_what_says_more_is_no_small_talk(line: str) -> None:
    assert talk(line) is None


async def test_an_empty_tank_that_cycles_is_judged_for_its_filter(talk: Talk) -> None:
    await talk.say("/tank new Fern 120 l fresh")
    (asked,) = await talk.say("its empty, cycling")
    await talk.press(1, asked)
    said = await talk.text("ammonia 2 nitrite 1")
    assert "without animals" in said
    assert "stop feeding" not in said
    assert "harms fish" not in said
