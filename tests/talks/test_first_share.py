"""In an emergency first aid's share comes before what is missing of the new water."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk

ASKED = [
    "how much can i change",
    "what if i change 50%",
    "wie viel kann ich wechseln",
    "combien puis-je changer",
    "cuánto puedo cambiar",
    "hoeveel kan ik verversen",
]


@pytest.mark.parametrize("asked", ASKED)
@pytest.mark.parametrize(
    "told",
    [("ammonia 2 ph 8 temp 26", "fish gasping"), ("ph 7.4 kh 4 temp 25", "fish gasping")],
    ids=["poison", "only called out"],
)
async def test_the_share_of_first_aid_comes_first(
    talk: Talk, told: tuple[str, ...], asked: str
) -> None:
    await talk.say("/tank new Fern 75 l fresh")
    for text in told:
        await talk.say(text)
    (reply,) = await talk.say(asked)
    assert reply.lines[0].text.startswith("Change a tenth to a quarter"), reply.text
    assert "I do not know the new water" in reply.text


@pytest.mark.parametrize(
    ("told", "asked"),
    [
        ("nitrite 2", "how much water to change"),
        ("ammonia 4", "how much water"),
        ("copper 0.3", "how much water"),
        ("nitrite 0.1", "cuanto agua cambiar"),
        ("nitrate 90", "how much water to change"),
    ],
)
async def test_a_poison_has_its_first_litres_without_the_tap(
    talk: Talk, told: str, asked: str
) -> None:
    await talk.say("/tank new Fern 80 l fresh")
    await talk.say(told)
    assert (await talk.facts(asked))["first_litres"] == [8.0, 20.0]


async def test_the_tap_told_next_answers_what_waited_for_it(talk: Talk) -> None:
    await talk.say("/tank new Fern 300 l fresh")
    await talk.say("ph 6.5 kh 2 ammonia 0 nitrate 30")
    await talk.say("is 50% daily ok")
    kept, told = await talk.say("my tap is ph 8 kh 9 no3 5 gh 10 temp 20")
    assert kept.facts["source"] == "tap"
    assert told.facts["largest_safe_share"] < 0.5


async def test_without_an_emergency_nothing_is_put_before_it(talk: Talk) -> None:
    await talk.say("/tank new Fern 75 l fresh")
    await talk.say("ph 7.4 kh 4 temp 25 ammonia 0")
    (reply,) = await talk.say("how much can i change")
    assert "I do not know the new water" in reply.lines[0].text


@pytest.mark.parametrize(
    "text",
    [
        "battery acid then?",
        "battery acid",
        "dann Batteriesäure?",
        "et de l'acide de batterie ?",
        "y ácido de batería?",
        "e acido per batterie?",
        "drain cleaner then",
    ],
)
async def test_battery_acid_behind_another_acid_is_never_for_any_water(
    talk: Talk, text: str
) -> None:
    await talk.say("/tank new Fern 75 l fresh")
    await talk.say("can i use muriatic acid to lower ph")
    (reply,) = await talk.say(text)
    assert reply.lines[0].text.startswith("No, never: battery acid"), reply.text
    assert "separate container" not in reply.text
