"""Salts at home, and labels. By formulas: CaCl2·2H2O 147.01 with Ca 40.078, MgSO4·7H2O 246.47 with
Mg 24.305; 1 °dH is 0.17848 mmol/L (C). Labels by proportion alone."""

from __future__ import annotations

import pytest

from core.advice.label_doubt import doubt_of
from core.advice.products import Label, never
from core.message.label_rate import label_rate
from core.message.recipe_talk import cupboard
from tests.chat.harness import Talk

ONLY = (
    "no calcium chloride, only gypsum",
    "kein calciumchlorid, nur gips",
    "pas de chlorure de calcium, seulement gypse",
    "no tengo cloruro de calcio, solo yeso",
    "não tenho cloreto de cálcio, só gesso",
    "non ho cloruro di calcio, solo gesso",
    "geen calciumchloride, alleen gips",
    "nie mam chlorku wapnia, tylko gips",
    "inget kalciumklorid, bara gips",
)
MORE = (
    "wieviel bittersalz für gh 2 mehr in 100 l",
    "how much epsom for gh 2 more in 100 l",
    "how much epsom for 2 more gh in 100 l",
    "combien de sel d'epsom pour gh 2 de plus dans 100 l",
    "quanto sale di epsom per gh 2 in più in 100 l",
    "hoeveel bitterzout voor gh 2 meer in 100 l",
    "ile soli epsom na gh 2 więcej w 100 l",
    "hur mycket epsomsalt för gh 2 mer i 100 l",
)
RATES = (
    "my fert bottle says 5 ml per 50 l daily",
    "dünger flasche sagt 5 ml auf 50 l täglich",
    "mon engrais dit 5 ml pour 50 l par jour",
    "el abono dice 5 ml por 50 l al día",
    "o adubo diz 5 ml para 50 l por dia",
    "il concime dice 5 ml per 50 l al giorno",
    "mijn voeding zegt 5 ml per 50 l per dag",
    "nawóz mówi 5 ml na 50 l dziennie",
    "min näring säger 5 ml per 50 l om dagen",
)
OTHER = (
    "gypsum",
    "i have no gypsum",
    "only 5 g gypsum",
    "i have gypsum in the tank floor",
    "is gypsum the only one?",
    "no, only fish",
    "my bottle says 5 ml per 50 l raises kh 1",
    "the vet says 5 ml",
)


@pytest.fixture
async def home(talk: Talk) -> Talk:
    await talk.say("/tank new Home 100 l fresh")
    await talk.say("kh 3 gh 4 ph 7.2 temp 24 ammonia 0")
    return talk


@pytest.mark.parametrize("line", ONLY)
async def test_a_plan_with_what_is_at_home(home: Talk, line: str) -> None:
    await home.say("how do i get gh to 8")
    facts = await home.facts(line)
    assert facts["substance"] == "calcium sulfate dihydrate"
    # 4 °dH · 0.17848 mmol/L · 172.17 g/mol · 100 L
    assert facts["grams"] == pytest.approx(4 * 0.17848 * 172.17 / 10, rel=0.01)


async def test_of_several_those_count_that_serve(home: Talk) -> None:
    await home.say("dose gh 8")
    text = await home.text("i only have epsom and gypsum and baking soda")
    assert "bicarbonate" not in text.partition("pH")[0]
    assert {s["substance"] for s in home.last[0].facts["salts"]} == {
        "magnesium sulfate heptahydrate", "calcium sulfate dihydrate",
    }  # fmt: skip
    assert "cannot be raised" in await home.text("i only have baking soda and soda ash")


async def test_without_a_plan_it_is_no_wish(home: Talk) -> None:
    assert "grams" not in (await home.say("i only have epsom and gypsum"))[0].facts


async def test_what_the_salts_of_a_plan_bring(home: Talk) -> None:
    facts = await home.facts("dose gh 8")
    salts = {each["substance"]: each["grams"] for each in facts["salts"]}
    for line in ("how much mg and ca does that give", "wie viel calcium und magnesium ergibt das"):
        brings = (await home.facts(line))["brings"]
        calcium = salts["calcium chloride dihydrate"] * 40.078 / 147.01 / 100 * 1000
        magnesium = salts["magnesium sulfate heptahydrate"] * 24.305 / 246.47 / 100 * 1000
        assert brings["calcium"] == pytest.approx(calcium, rel=0.005)
        assert brings["magnesium"] == pytest.approx(magnesium, rel=0.005)


async def test_the_same_in_a_bucket_of_pure_water(home: Talk) -> None:
    await home.say("dose gh 8")
    facts = await home.facts("and for a bucket of 10 l ro?")
    assert facts["volume_l"] == 10.0
    assert facts["to"] == {"gh": 8.0, "kh": 3.0}


async def test_which_salts_are_needed(home: Talk) -> None:
    await home.say("dose gh 8")
    for line in ("what salts do i need", "welche salze brauche ich", "quels sels me faut-il"):
        assert len((await home.facts(line))["salts"]) == 2


@pytest.mark.parametrize("line", MORE)
async def test_so_much_more_is_a_rise(home: Talk, line: str) -> None:
    facts = await home.facts(line)
    assert facts["substance"] == "magnesium sulfate heptahydrate"
    # 2 °dH · 0.17848 mmol/L · 246.47 g/mol · 100 L
    assert facts["grams"] == pytest.approx(2 * 0.17848 * 246.47 / 10, rel=0.01)


async def test_gh_and_kh_of_one_label_are_judged_together(home: Talk) -> None:
    facts = await home.facts("remin salt label says 10 g in 50 l gives gh 4 and kh 2")
    assert facts["product"]["name"] == "remin salt"
    assert "sodium chloride" not in home.last[0].text
    kept = await home.facts("my mineral: 10 g in 50 l gives gh 4 and kh 2")
    assert kept["grams"] == pytest.approx(10.0)  # 2 °dH of 4 in 100 L of 50
    assert "No number" in await home.text("my brick: 100 g in 50 l gives gh 4 and kh 2")
    assert "No number" in await home.text("10 g in 50 l gives kh 2")


def test_too_little_for_one_of_them_stays_a_doubt() -> None:
    gh, kh = Label(1.0, "g", 50.0, "gh", 4.0), Label(1.0, "g", 50.0, "kh", 2.0)
    assert doubt_of([gh, kh]) is not None  # 20 mg/L cannot raise GH by 4
    assert doubt_of([Label(0.5, "g", 50.0, "iron", 0.1), Label(0.5, "g", 50.0, "gh", 0.5)]) is None


async def test_salt_that_raises_hardness_is_no_table_salt(home: Talk) -> None:
    text = await home.text("my salt: 10 g in 50 l gives gh 4")
    assert "sodium chloride" not in text
    assert not (await home.facts("products"))["products"]


async def test_a_label_told_right_before_is_dosed_by(home: Talk) -> None:
    await home.say("label: 1 ml per 20 l adds 0.5 mg/l iron")
    facts = await home.facts("how much for fe 0.1")
    assert facts["millilitres"] == pytest.approx(1.0)  # 0.1 / 0.5 · 100 / 20
    await home.say("label: 1 ml per 20 l adds 0.5 mg/l iron")
    assert "millilitres" not in await home.facts("how much for gh 8")
    await home.say("kh 3")
    assert "millilitres" not in (await home.say("how much for fe 0.1"))[0].facts


@pytest.mark.parametrize("line", RATES)
async def test_what_a_bottle_says_is_scaled(home: Talk, line: str) -> None:
    assert (await home.facts(line))["millilitres"] == pytest.approx(10.0)
    for again in ("so how much for my tank", "wie viel für mein becken"):
        assert (await home.facts(again))["millilitres"] == pytest.approx(10.0)
    assert "not checked by me" in home.last[0].text
    await home.say("kh 3")
    assert "millilitres" not in (await home.say("so how much for my tank"))[0].facts


async def test_no_rate_of_a_medicine(home: Talk) -> None:
    for name in ("formalin", "copper sulfate", "antibiotics", "bleach"):
        assert never(name) is not None
        facts = await home.facts(f"my {name} bottle says 5 ml per 50 l daily")
        assert "millilitres" not in facts


@pytest.mark.parametrize("line", OTHER)
def test_what_says_more_is_neither(line: str) -> None:
    assert cupboard(line) is None
    assert label_rate(line, litres_a_gallon=3.785) is None
