"""Poison that was called out stays first until its own test says that it is gone, or for a day."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk

WELL = "ammonia 0 nitrite 0 ph 7.4 kh 5 gh 8 temp 25"
ASKED = ("what now", "all good?", "am i ok", "is he ok", "is my water ok", "should i change water")
CALLS = [
    ("put bleach in", "bleach", "ammonia 0 nitrite 0 ph 7.4"),
    ("ich habe bleichmittel ins becken gekippt", "bleach", "ph 7.4"),
    ("j'ai versé de la javel dans l'aquarium", "bleach", "ph 7.4"),
    ("forgot the dechlorinator, tap water went in", "chlorine", "ammonia 0 nitrite 0"),
    ("poured vinegar in", "overdose", "ammonia 0 nitrite 0"),
    ("sprayed bug spray near the tank", "contaminated", "ammonia 0 nitrite 0 ph 7.4"),
]


@pytest.fixture
async def fern(talk: Talk) -> Talk:
    await talk.say("/tank new Fern 100 l fresh")
    return talk


@pytest.mark.parametrize("waited", [0, 2])
@pytest.mark.parametrize("asked", ASKED)
@pytest.mark.parametrize(("call", "danger", "read"), CALLS)
async def test_no_other_test_settles_it(
    fern: Talk, call: str, danger: str, read: str, asked: str, waited: int
) -> None:
    (steps,) = await fern.say(call)
    assert steps.facts["emergency"] == danger
    await fern.wait(hours=waited)
    await fern.say(read)
    (reply,) = await fern.say(asked)
    assert reply.facts["emergency"] == danger
    assert "since" in reply.lines[1].text
    assert "Change nothing" not in reply.text


@pytest.mark.parametrize("asked", ["fish gasping", "koi swimming funny", "fish are dying"])
async def test_first_aid_for_its_signs_is_that_for_the_poison(fern: Talk, asked: str) -> None:
    await fern.say("put bleach in")
    await fern.say("nitrite 0.5")
    await fern.say("change 50% done")
    (*_, reply) = await fern.say(asked)
    assert reply.facts["emergency"] == "bleach"
    assert "Measured: nitrite 0.5" in reply.text


@pytest.mark.parametrize(
    ("call", "read"),
    [
        ("put bleach in", "chlorine 0"),
        ("put bleach in", "total chlorine 0"),
        ("poured vinegar in", "ph 7.4 kh 5"),
    ],
)
async def test_its_own_test_settles_it(fern: Talk, call: str, read: str) -> None:
    await fern.say(WELL)
    await fern.say(call)
    await fern.say(read)
    (reply,) = await fern.say("all good?")
    assert "emergency" not in reply.facts


async def test_chlorine_that_was_read_before_the_bleach_settles_nothing(fern: Talk) -> None:
    await fern.say(f"{WELL} chlorine 0")
    await fern.say("put bleach in")
    (reply,) = await fern.say("all good?")
    assert reply.facts["emergency"] == "bleach"


async def test_chlorine_that_is_still_read_leaves_the_bleach_standing(fern: Talk) -> None:
    await fern.say("put bleach in")
    await fern.say("chlorine 0.5")
    (reply,) = await fern.say("what now")
    assert reply.facts["emergency"] == "bleach"


@pytest.mark.parametrize(
    ("call", "days"), [("put bleach in", 7), ("forgot the dechlorinator, tap water went in", 1)]
)
async def test_days_settle_it(fern: Talk, call: str, days: int) -> None:
    await fern.say(call)
    await fern.wait(hours=24 * days - 2)
    await fern.say(WELL)
    (reply,) = await fern.say("all good?")
    assert "emergency" in reply.facts
    await fern.wait(hours=3)
    (reply,) = await fern.say("all good?")
    assert "emergency" not in reply.facts


@pytest.mark.parametrize(
    ("asked", "verdict"), [("can i add fish now", "poison"), ("can i add 5 neons", "no")]
)
async def test_nobody_moves_in_before(fern: Talk, asked: str, verdict: str) -> None:
    await fern.say("put bleach in")
    await fern.say(WELL)
    (reply,) = await fern.say(asked)
    assert reply.facts["verdict"] == verdict
    assert "bleach" in reply.text


async def test_another_tank_is_none_of_it(fern: Talk) -> None:
    await fern.say("put bleach in")
    await fern.say("/tank new Quarry 60 l fresh")
    await fern.say(WELL)
    elsewhere, reply = await fern.say("all good?")
    assert list(elsewhere.facts["dangers"]) == ["Fern"]
    assert reply.facts["tank"] == "Quarry"
    assert "emergency" not in reply.facts


@pytest.mark.parametrize(
    "text",
    [
        "nearly put bleach in",
        "almost used bleach",
        "i was going to put bleach in",
        "hätte fast bleichmittel reingekippt",
    ],
)
async def test_what_was_nearly_put_in_is_no_emergency(fern: Talk, text: str) -> None:
    await fern.say(WELL)
    (reply,) = await fern.say(text)
    assert "emergency" not in reply.facts
    assert "bleach got in the tank" in reply.text
    (reply,) = await fern.say("is my water ok")
    assert "emergency" not in reply.facts


@pytest.mark.parametrize(
    "text",
    [
        "nearly put bleach in but some got in",
        "almost a cup of bleach went in",
        "help fast put bleach in",
        "put bleach in, fish nearly dead",
        "nearly all the bleach was put in",
    ],
)
async def test_what_went_in_all_the_same_is_one(fern: Talk, text: str) -> None:
    (*_, reply) = await fern.say(text)
    assert reply.facts["emergency"] == "bleach"


BED = (
    "can i go to bed",
    "am i good to go to bed",
    "how long can i leave it",
    "can it wait till morning",
    "fish seem ok so its fine right",
    "wie lange kann ich das lassen",
    "puis-je aller me coucher",
    "puedo irme a dormir",
)


@pytest.mark.parametrize("asked", BED)
async def test_who_asks_to_sleep_hears_how_it_stands(fern: Talk, asked: str) -> None:
    await fern.say("ammonia 3 ph 7.8 temp 25")
    (reply,) = await fern.say(asked)
    assert "Ammonia is dangerous" in reply.text or "dangerous at this pH" in reply.text
    await fern.say("put bleach in")
    (reply,) = await fern.say(asked)
    assert reply.facts["emergency"] == "bleach"


@pytest.mark.parametrize(
    ("text", "danger"), [("fish look awful", "general"), ("fish panting", "gasping")]
)
async def test_what_fish_look_like_calls_for_help(fern: Talk, text: str, danger: str) -> None:
    (reply,) = await fern.say(text)
    assert reply.facts["emergency"] == danger


async def test_salt_that_fell_in_is_named_as_it_was_told(talk: Talk) -> None:
    await talk.say("/tank new r 200 l marine")
    (*_, reply) = await talk.say("salt fell in, 2 cups")
    assert reply.facts["emergency"] == "overdose"
    assert "salt fell in, 2 cups" in reply.text
    await talk.say("salinity 39")
    (reply,) = await talk.say("fish breathing heavy")
    assert reply.facts["emergency"] == "gasping"
    assert "salt fell in, 2 cups" in reply.text
    assert "alinity 39 g/kg is high" in reply.text


async def test_a_product_by_the_bottle_is_the_cause_of_what_comes_after(fern: Talk) -> None:
    (reply,) = await fern.say("put half a bottle of ph up in")
    assert reply.facts["emergency"] == "overdose"
    await fern.say("ph 9.2")
    (reply,) = await fern.say("fish are going crazy")
    assert reply.facts["emergency"] == "general"
    assert "half a bottle of ph up" in reply.text
    assert "pH 9.2 is high" in reply.text


async def test_what_went_in_of_one_tank_is_no_cause_in_another(fern: Talk) -> None:
    await fern.say("put half a bottle of ph up in")
    await fern.say("/tank new pond2 500 l pond")
    (reply,) = await fern.say("pond2 fish gasping")
    assert "ph up" not in reply.text


async def test_ill_behind_a_number_is_i_will(fern: Talk) -> None:
    (reply,) = await fern.say("if it hits nitrate 50 ill change")
    assert "emergency" not in reply.facts


@pytest.mark.parametrize(
    "told", ["found a copper coin in the tank", "im becken liegt eine kupfermünze"]
)
async def test_copper_metal_comes_out_and_is_tested(fern: Talk, told: str) -> None:
    (reply,) = await fern.say(told)
    assert reply.facts["emergency"] == "copper_metal"
    assert "Take it out of the water now" in reply.text
    assert "Test copper" in reply.text
    await fern.say("ammonia 0 nitrite 0 ph 7.4")
    (reply,) = await fern.say("all good?")
    assert reply.facts["emergency"] == "copper_metal"
    assert "copper must read 0" in reply.text
    await fern.say("copper 0")
    (reply,) = await fern.say("all good?")
    assert "emergency" not in reply.facts


@pytest.mark.parametrize(
    "asked",
    [
        "is copper safe for shrimp",
        "is copper ok for snails?",
        "ist kupfer sicher für garnelen",
        "le cuivre est-il sans danger pour les crevettes ?",
    ],
)
async def test_copper_is_not_safe_for_invertebrates(fern: Talk, asked: str) -> None:
    (reply,) = await fern.say(asked)
    assert "Copper is not safe for" in reply.text
    assert reply.facts["verdict"] == "no"


async def test_copper_for_fish_and_a_measured_one_are_other_questions(fern: Talk) -> None:
    assert "not safe for" not in await fern.text("is copper safe for guppies")
    await fern.say("copper 0")
    assert "Copper is not safe for" not in await fern.text("is copper ok for shrimp")


@pytest.mark.parametrize("text", ["no bleach went in, it was a joke", "fehlalarm", "fausse alerte"])
async def test_a_call_that_was_none_is_off_once_that_is_said_twice(fern: Talk, text: str) -> None:
    await fern.say("bleach went in the tank")
    (asked,) = await fern.say(text)
    assert asked.text.startswith("Did nothing of it get into Fern at all?")
    assert "emergency" in await fern.facts("what now")  # until it is answered
    await fern.press(1, asked)
    assert "emergency" not in await fern.facts("what now")


async def test_no_joke_takes_no_call_back(fern: Talk) -> None:
    await fern.say("bleach went in the tank")
    assert "emergency" in await fern.facts("no joke bleach went in")
