"""One part of what was just answered told anew, in nine languages. Grams by molar mass: 29.96 mg/L
of sodium bicarbonate a °dH of KH, 35.70 of potassium bicarbonate, 30.70 of gypsum a °dH of GH
(C, from the formula weights 84.007, 100.115, 172.17); the words are ours, no source."""

from __future__ import annotations

from typing import Any

import pytest

from tests.chat.harness import Talk

SODIUM, POTASSIUM, GYPSUM = 2.996e-2, 3.570e-2, 3.070e-2

TANK = ("/tank new Fern 90 l fresh", "kh 4 gh 6 ph 7.2 ammonia 0 temp 24")


async def after(talk: Talk, *lines: str) -> None:
    for line in (*TANK, *lines):
        await talk.say(line)


@pytest.mark.parametrize(
    "line",
    [
        "and for 60 l", "und für 60 l", "et pour 60 l", "y para 60 l", "e para 60 l", "e per 60 l",
        "en voor 60 l", "a na 60 l", "och för 60 l", "in 60 l", "mach 60 l draus",
        "et 60 litres ?", "for 60 l instead",
    ],
)  # fmt: skip
async def test_another_volume(talk: Talk, line: str) -> None:
    await after(talk, "dose kh 6")
    facts = await talk.facts(line)
    assert (facts["volume_l"], facts["to"]) == (60.0, 6.0)
    assert facts["grams"] == pytest.approx(60 * 2 * SODIUM, rel=2e-3)


@pytest.mark.parametrize(
    "line",
    [
        "not 6, 5", "nicht 6, sondern 5", "pas 6 mais 5", "no 6, sino 5", "não 6, mas 5",
        "non 6, ma 5", "niet 6 maar 5", "nie 6, tylko 5", "inte 6 utan 5", "5 instead of 6",
        "kh 5 statt 6", "to 5", "rather kh 5", "lieber kh 5", "plutôt kh 5", "mejor kh 5",
        "melhor kh 5", "meglio kh 5", "liever kh 5", "raczej kh 5", "hellre kh 5",
    ],
)  # fmt: skip
async def test_another_target(talk: Talk, line: str) -> None:
    await after(talk, "dose kh 6")
    facts = await talk.facts(line)
    assert (facts["from"], facts["to"]) == (4.0, 5.0)
    assert facts["grams"] == pytest.approx(90 * SODIUM, rel=2e-3)


@pytest.mark.parametrize("line", ["from 3", "von 3", "desde 3", "van 3", "od 3", "från 3"])
async def test_another_start(talk: Talk, line: str) -> None:
    await after(talk, "dose kh 6")
    assert (await talk.facts(line))["from"] == 3.0


@pytest.mark.parametrize(
    "line",
    [
        "without baking soda", "ohne natron", "i have no baking soda", "ich hab kein natron",
        "sans bicarbonate de soude", "sin bicarbonato de sodio", "sem bicarbonato de sódio",
        "senza bicarbonato di sodio", "zonder baksoda", "bez wodorowęglanu sodu",
        "utan natriumbikarbonat", "without sodium",
    ],
)  # fmt: skip
async def test_without_the_salt_of_the_plan(talk: Talk, line: str) -> None:
    await after(talk, "dose kh 6")
    facts = await talk.facts(line)
    assert facts["substance"] == "potassium bicarbonate"
    assert facts["grams"] == pytest.approx(90 * 2 * POTASSIUM, rel=2e-3)


async def test_without_what_is_not_in_the_plan_or_has_no_other_is_no_plan(talk: Talk) -> None:
    await after(talk, "dose kh 6")
    for line in ("without gypsum", "i have no potassium bicarbonate", "without salts"):
        (reply,) = await talk.say(line)
        assert "parts" not in reply.facts, line


async def test_a_number_instead_of_the_target_is_no_mass_that_went_in(talk: Talk) -> None:
    await after(talk, "dose kh 6")
    assert (await talk.facts("5 instead of 6"))["to"] == 5.0
    assert (await talk.facts("kh 6 statt 5"))["to"] == 6.0
    assert "logged 3 g" in await talk.text("3 g instead of 2.7")


@pytest.mark.parametrize(
    "line",
    [
        "and quarry to 8", "und quarry auf 8", "et pour quarry à 8", "for quarry to kh 8",
        "en quarry naar 8", "a quarry do 8", "och quarry till 8",
    ],
)  # fmt: skip
async def test_another_tank_with_another_target(talk: Talk, line: str) -> None:
    await talk.say("/tank new Quarry 200 l fresh")
    await talk.say("kh 6 ph 7.2 ammonia 0 temp 24")
    await after(talk, "dose kh 6")
    facts = await talk.facts(line)
    assert (facts["tank"], facts["from"], facts["to"]) == ("Quarry", 6.0, 8.0)
    assert facts["grams"] == pytest.approx(200 * 2 * SODIUM, rel=2e-3)


def _salts(facts: dict[str, Any]) -> dict[str, float]:
    return {salt["substance"]: salt["grams"] for salt in facts["salts"]}


@pytest.mark.parametrize(
    "line",
    [
        "without calcium chloride", "ohne calciumchlorid", "sans chlorure de calcium",
        "sin cloruro de calcio", "sem cloreto de cálcio", "senza cloruro di calcio",
        "zonder calciumchloride", "bez chlorku wapnia", "utan kalciumklorid", "without chloride",
    ],
)  # fmt: skip
async def test_a_bucket_without_a_salt(talk: Talk, line: str) -> None:
    """Three parts of GH in four are of calcium (CALCIUM_TO_MAGNESIUM), all of it gypsum's."""
    await talk.say("20 l ro to gh 6 kh 4")
    salts = _salts(await talk.facts(line))
    assert salts["calcium sulfate dihydrate"] == pytest.approx(20 * 4.5 * GYPSUM, rel=5e-3)
    assert salts["sodium bicarbonate"] == pytest.approx(20 * 4 * SODIUM, rel=2e-3)
    assert not any("chloride" in name for name in salts)


async def test_a_bucket_in_parts_told_anew_add_up(talk: Talk) -> None:
    await talk.say("20 l ro to gh 6 kh 4")
    assert (await talk.facts("make it 25 l"))["volume_l"] == 25.0
    assert (await talk.facts("gh 5 instead"))["to"] == {"gh": 5.0, "kh": 4.0}
    only = _salts(await talk.facts("only with epsom"))
    assert set(only) == {"magnesium sulfate heptahydrate", "sodium bicarbonate"}
    three = _salts(await talk.facts("with gypsum and epsom"))
    assert three["calcium sulfate dihydrate"] == pytest.approx(25 * 3.75 * GYPSUM, rel=5e-3)
    even = _salts(await talk.facts("ca mg 1:1"))
    assert even["calcium sulfate dihydrate"] == pytest.approx(25 * 2.5 * GYPSUM, rel=5e-3)


async def test_two_wishes_without_one_salt_keep_the_others(talk: Talk) -> None:
    await after(talk, "dose kh 6 and gh 8")
    salts = {salt["substance"] for salt in (await talk.facts("without chloride"))["salts"]}
    assert salts == {
        "sodium bicarbonate", "calcium sulfate dihydrate", "magnesium sulfate heptahydrate",
    }  # fmt: skip


@pytest.mark.parametrize(
    ("line", "told"),
    [
        ("what if 5 g", {"grams": 5.0}), ("was wenn 5 g", {"grams": 5.0}),
        ("et si 5 g", {"grams": 5.0}), ("y si 5 g", {"grams": 5.0}), ("5 g?", {"grams": 5.0}),
        ("in 200 l?", {"volume_l": 200.0}), ("and for 200 l", {"volume_l": 200.0}),
        ("and epsom", {"substance": "magnesium sulfate heptahydrate"}),
        ("und bittersalz", {"substance": "magnesium sulfate heptahydrate"}),
        ("et du sel d'epsom", {"substance": "magnesium sulfate heptahydrate"}),
        ("at kh 2 ph 6.5", {"from": 2.0, "grams": 8.0}),
        ("and 5 g of potassium bicarbonate in 60 l", {"grams": 5.0, "volume_l": 60.0}),
    ],
)  # fmt: skip
async def test_an_effect_with_one_part_anew(talk: Talk, line: str, told: dict[str, Any]) -> None:
    await talk.say("what does 8 g baking soda do in 90 l")
    facts = await talk.facts(line)
    assert {name: facts[name] for name in told} == told


@pytest.mark.parametrize(
    "line",
    [
        "and if i change another 40%", "and 40%?", "a further 40 % then", "und noch 40%?",
        "jeszcze 40%?",
    ],
)  # fmt: skip
async def test_another_share(talk: Talk, line: str) -> None:
    await after(talk, "tap: kh 4 gh 6 ph 7.2 temp 24 nitrate 5", "what if i change 10%")
    assert (await talk.facts(line))["share"] == pytest.approx(0.4)


async def test_what_was_not_understood_leaves_the_plan(talk: Talk) -> None:
    """A question of nothing, which we ask back, is not what is spoken of next."""
    await after(talk, "how much for 60 l")
    await talk.say("dose kh 6")
    await talk.say("blue skies")
    assert (await talk.facts("how much for 60 l"))["volume_l"] == 60.0
    assert (await talk.facts("how much potassium bicarbonate"))["volume_l"] == 60.0


@pytest.mark.parametrize(
    ("first", "line"),
    [
        ("what does 3 g potassium bicarbonate do", "dose kh 6 with it"),
        ("dose kh 5 with potassium bicarbonate", "how much of it for kh 6"),
        ("can i use potassium bicarbonate", "dose kh 6 with it"),
        ("dose kh 5 with potassium bicarbonate", "wie viel davon für kh 6"),
        ("what does 3 g potassium bicarbonate do", "dose kh 6 avec ça"),
        ("what does 3 g potassium bicarbonate do", "dose kh 6 damit"),
    ],
)
async def test_it_is_the_salt_just_spoken_of(talk: Talk, first: str, line: str) -> None:
    await after(talk, first)
    facts = await talk.facts(line)
    assert (facts["substance"], facts["to"]) == ("potassium bicarbonate", 6.0)


async def test_it_is_not_the_salt_of_before_a_reading_or_what_was_refused(talk: Talk) -> None:
    await after(talk, "what does 3 g potassium bicarbonate do", "kh 4")
    assert (await talk.facts("dose kh 6 with it"))["refused"] == "substance_unknown"
    await talk.say("dose kh 6 with washing soda")
    assert "grams" not in (await talk.facts("dose kh 6 with it"))


@pytest.mark.parametrize(
    "line",
    [
        "i like 60 l tanks",
        "my 60 l has fish",
        "5 fish",
        "in 1999",
        "it was 5 today",
        "kh 5??",
        "kh went from 6 to 5",
        "bis morgen um 5",
        "5 g per 60 l",
    ],
)
async def test_other_talk_is_no_part_of_the_plan(talk: Talk, line: str) -> None:
    await after(talk, "dose kh 6")
    for reply in await talk.say(line):
        assert reply.facts.get("volume_l") != 60.0
        assert reply.facts.get("to") != 5.0


async def test_a_product_for_another_volume_begins_where_the_tank_is(talk: Talk) -> None:
    """By its label 5 g in 80 L raise KH by 1 °dH: of 40 L two degrees are 5 g."""
    await after(talk, "my red mix: 5 g per 80 l raises kh by 1", "dose kh 6 with it")
    facts = await talk.facts("how much of it for 40 l")
    assert (facts["volume_l"], facts["from"], facts["to"]) == (40.0, 4.0, 6.0)
    assert facts["grams"] == pytest.approx(5.0)


@pytest.mark.parametrize("other", ["using soda ash?", "with washing soda?", "with vinegar?"])
async def test_a_refused_salt_is_no_part_of_what_is_asked_next(talk: Talk, other: str) -> None:
    await talk.say("how much baking soda for 20 gallons from kh 2 to 4")
    assert "refused" in await talk.facts(other)
    facts = await talk.facts("and for 40 gallons from 80 ppm to 120 ppm?")
    assert facts["substance"] == "sodium bicarbonate"
    assert facts["volume_l"] == pytest.approx(151.4, abs=0.1)
    assert "refused" in await talk.facts("using soda ash?")


async def test_a_salt_that_was_asked_for_at_first_stays_refused(talk: Talk) -> None:
    await talk.say("how much soda ash for 20 gallons from kh 2 to 4")
    assert (await talk.facts("and for 40 gallons?"))["refused"] == "carbonate"
