"""Wishes that name a water: the share of a source that gets there, and new water made of one."""

from __future__ import annotations

import periodictable
import pytest

from tests.chat.harness import Talk

MEQ = 0.35663
"""A German degree of carbonate hardness: 10 mg/L CaO, in meq/L. DIN 38409-6, from memory."""

NAHCO3 = periodictable.formula("NaHCO3").mass


@pytest.fixture(name="soft")
async def _soft(talk: Talk) -> Talk:
    await talk.say("/tank new Hall 180 l fresh")
    await talk.say("ph 6.9 kh 2 gh 5 no3 30 temp 25 ammonia 0 nitrite 0")
    await talk.say("tap: ph 7.8 kh 9 gh 14 no3 15 temp 24")
    return talk


@pytest.mark.parametrize(
    "text",
    [
        "how much tap to reach kh 4",
        "get kh 4 with tap",
        "raise kh to 4 with tap water",
        "dose kh 4 with tap",
        "how much water do i change to get kh 4",
        "wie viel leitungswasser für kh 4",
    ],
)
async def test_a_wish_for_a_water_is_its_share(soft: Talk, text: str) -> None:
    """By amounts: (4 - 2) / (9 - 2) of the tank."""
    facts = await soft.facts(text)
    assert facts["share"] == pytest.approx(0.29)  # 2 / 7, in whole percents and so no less


@pytest.mark.parametrize("text", ["get kh to 4", "dose kh 4"])
async def test_a_wish_that_names_no_water_is_a_dose(soft: Talk, text: str) -> None:
    assert (await soft.facts(text))["parts"]


async def test_a_water_that_nobody_measured_is_asked_for(talk: Talk) -> None:
    await talk.say("/tank new Hall 180 l fresh")
    await talk.say("ph 6.9 kh 2 gh 5 temp 25")
    assert (await talk.facts("how much tap to reach kh 4"))["refused"] == "source_unknown"


@pytest.mark.parametrize(
    "text", ["make 60 l of water with kh 12 from tap", "what do i add to 60 l tap for kh 12"]
)
async def test_new_water_is_made_of_a_source(soft: Talk, text: str) -> None:
    """Only what the tap lacks: 3 of 12 degrees in 60 L, by stoichiometry."""
    reply = await soft.facts(text)
    (salt,) = reply["salts"]
    assert salt["grams"] == pytest.approx(3 * MEQ * 60 * NAHCO3 / 1000, rel=5e-3)
    assert "Dechlorinate" in await soft.text(text)


async def test_new_water_is_not_made_of_one_that_holds_too_much(soft: Talk) -> None:
    assert (await soft.facts("prepare 40 l tap to gh 6"))["refused"] == "target_reached"


async def test_new_water_needs_what_the_source_holds(soft: Talk) -> None:
    await soft.say("/source well kh 3")
    assert "gh" in (await soft.text("prepare 40 l well water to gh 6")).casefold()


async def test_two_salts_that_are_named_share_the_hardness(soft: Talk) -> None:
    """Calcium to magnesium 3:1 by amount, as where no ratio is wished."""
    salts = (await soft.facts("how much gypsum and epsom salt for gh 8"))["salts"]
    assert {salt["substance"] for salt in salts} == {
        "calcium sulfate dihydrate",
        "magnesium sulfate heptahydrate",
    }


@pytest.mark.parametrize("text", ["how much can i change", "wie viel kann ich wechseln"])
async def test_how_much_may_be_changed_is_the_largest_safe_share(soft: Talk, text: str) -> None:
    """KH 2 to 9, by 1 a day at most: 1 part in 7."""
    facts = await soft.facts(text)
    assert facts["share"] == pytest.approx(0.14)
    assert "refused" not in facts


@pytest.mark.parametrize(
    ("text", "share"),
    [("is 40% too much", 0.4), ("change 30%?", 0.3), ("change 30% with 50/50 ro tap?", 0.3)],
)
async def test_a_share_that_is_asked_about_is_looked_at(
    soft: Talk, text: str, share: float
) -> None:
    assert (await soft.facts(text))["share"] == pytest.approx(share)


async def test_a_bare_specific_gravity_is_salinity(talk: Talk) -> None:
    """33.3 g/kg at 25 °C; salt = water · S / (1000 - S)."""
    await talk.say("/tank new Sea 200 l marine")
    (salt,) = (await talk.facts("how much salt for 40 l to 1.025"))["salts"]
    salinity = 33.34
    expected = 997 * 40 * salinity / (1000 - salinity)
    assert salt["grams"] == pytest.approx(expected, rel=1e-2)


async def test_a_salt_says_what_it_is_for_in_the_sea(talk: Talk) -> None:
    await talk.say("/tank new Sea 200 l marine")
    await talk.say("salinity 35 kh 7 ca 380 mg 1200 ph 8.1 temp 25 ammonia 0")
    assert "magnesium 1200 → 1350" in await talk.text("how much magnesium chloride to get to 1350")


@pytest.mark.parametrize(
    "text",
    [
        "how often should i change water",
        "wie oft soll ich wasser wechseln",
        "à quelle fréquence changer l'eau",
        "cada cuánto cambio el agua",
        "com que frequência troco a água",
        "ogni quanto cambio l'acqua",
        "hoe vaak moet ik water verversen",
        "jak często podmieniać wodę",
        "hur ofta ska jag byta vatten",
    ],
)
async def test_how_often_is_the_usual_routine_until_nitrate_tells(soft: Talk, text: str) -> None:
    assert "a tenth to a quarter a week" in await soft.text(text)


async def test_how_often_by_the_tanks_own_nitrate(soft: Talk) -> None:
    """Two mg/L a day under 44: a share that keeps it there, within the largest safe one."""
    for nitrate in (40, 54, 68, 82, 96):
        await soft.wait(days=7)
        await soft.say(f"nitrate {nitrate}")
    facts = await soft.facts("how often should i change water")
    assert facts["routine"]["high"] <= 44
    assert facts["routine"]["share"] <= 0.14


UNDER_20 = (
    "nitrate under 20 how often",
    "wie oft wechseln damit nitrat unter 20 bleibt",
    "tous les combien pour garder nitrate sous 20",
    "cada cuánto para tener nitrato bajo 20",
    "de quanto em quanto tempo para nitrato abaixo de 20",
    "ogni quanto per tenere i nitrati sotto 20",
    "hoe vaak om nitraat onder 20 te houden",
    "co ile dni żeby no3 było poniżej 20",
    "hur ofta för nitrat under 20",
)


@pytest.mark.parametrize("line", [*UNDER_20, "how much more to get no3 under 20"])
async def test_under_is_reached_by_changes_and_never_by_a_dose(talk: Talk, line: str) -> None:
    for each in ("/tank new Pez 100 l fresh", "no3 60 kh 4 gh 6 ph 7 temp 24 ammonia 0",
                 "/source tap no3 5 kh 4 gh 6 ph 7.4 temp 24"):  # fmt: skip
        await talk.say(each)
    facts = await talk.facts(line)
    assert facts["share"] == pytest.approx(0.73)  # (60 - 20) / (60 - 5), in whole percents
    assert "grams" not in facts


@pytest.mark.parametrize("line", UNDER_20)
async def test_how_often_is_a_routine_where_nitrate_is_under_it(talk: Talk, line: str) -> None:
    await talk.say("/tank new Pez 100 l fresh")
    await talk.say("/source tap no3 5 kh 4 gh 6 ph 7.2 temp 24 total chlorine 0")
    for nitrate in (10, 24, 38, 52, 66):  # 14 mg/L a week: less is within a kit's steps
        await talk.wait(days=7)
        await talk.say(f"no3 {nitrate} kh 4 gh 6 ph 7 temp 24 ammonia 0")
    routine = (await talk.facts(line.replace("20", "80")))["routine"]
    assert routine["per_day"] == pytest.approx(2.0, rel=0.05)
    assert routine["high"] <= 80
