"""A sea's daily use in other words. Grams by molar mass: 29.96 mg/L of NaHCO3 a °dH (C, from the
formula weight 84.007): 0.5 °dH in 200 L is 3.0 g; 40 ml of 100 g/L are 4 g, that is 0.67 °dH."""

from __future__ import annotations

import pytest

from core.message.daily_talk import daily_talk, without_undosed
from tests.chat.harness import Talk

USE = (
    "whats my consumption",
    "so whats the daily use",
    "wie ist mein verbrauch",
    "quelle est ma consommation",
    "cuál es el consumo diario",
    "qual é o consumo diário",
    "qual è il consumo giornaliero",
    "wat is het verbruik",
    "jakie jest zużycie",
    "vad är förbrukningen per dygn",
)
HOLD = (
    "so how much bicarb per day to hold it",
    "how much baking soda to hold it",
    "wie viel natron am tag um es zu halten",
    "combien de bicarbonate par jour pour le maintenir",
    "cuánto bicarbonato al día para mantenerlo",
    "quanto bicarbonato por dia para manter",
    "quanto bicarbonato al giorno per mantenerlo",
    "hoeveel natriumbicarbonaat per dag om het te houden",
    "ile sody oczyszczonej dziennie żeby utrzymać",
    "hur mycket bikarbonat per dag för att hålla det",
)
IN_ML = (
    "how many ml a day to hold it",
    "wie viele ml am tag um es zu halten",
    "combien de ml par jour pour le maintenir",
    "cuántos ml al día para mantenerlo",
    "quantos ml por dia para manter",
    "quanti ml al giorno per mantenerlo",
    "hoeveel ml per dag om het te houden",
    "ile ml dziennie żeby utrzymać",
    "hur många ml per dag för att hålla det",
)
STOCK = (
    "its 100 g baking soda in 1 l water",
    "100 g natron auf 1 l wasser",
    "100 g de bicarbonate de soude dans 1 l d'eau",
    "son 100 g de bicarbonato en 1 l de agua",
    "100 g de bicarbonato em 1 l de água",
    "100 g di bicarbonato in 1 l di acqua",
    "100 g natriumbicarbonaat in 1 l water",
    "100 g sody oczyszczonej na 1 l wody",
    "100 g bikarbonat i 1 l vatten",
)
RAISES = (
    "how much does 40 ml raise",
    "wie viel heben 40 ml",
    "40 ml ça augmente de combien",
    "cuánto sube con 40 ml",
    "quanto alzano 40 ml",
)
UNDOSED = (
    "alk 7.2 no dosing",
    "kh 7.2, nichts dosiert",
    "kh 7.2 sans dosage",
    "kh 7.2 sin dosificar",
    "kh 7.2 sem dosar",
    "kh 7.2 senza dosaggio",
    "kh 7.2 niet gedoseerd",
    "kh 7.2 bez dawkowania",
    "kh 7.2 utan dosering",
)
OTHER = (
    "dosed 40 ml",
    "alk 8",
    "keep it at 25",
    "how much to keep fish",
    "how much does 5 g raise",
    "i dont dose co2",
    "100 g food in 1 l",
    "can i put both fish together",
    "is it needed",
    "wie viel futter am tag",
    "no dosing pump",
    "je ne comprends rien",
)


@pytest.fixture
async def reef(talk: Talk) -> Talk:
    """KH fell by 0.5 °dH a day with nothing done between: from 8.8 to 7.8 in two days."""
    await talk.say("/tank new Reef 200 l marine")
    await talk.say("alk 8.8 sal 35 ca 430 mg 1300 ph 8.2 temp 25 ammonia 0")
    await talk.wait(days=2)
    await talk.say("alk 7.8 ca 430 ph 8.2 ammonia 0")
    return talk


@pytest.mark.parametrize("line", USE)
async def test_what_is_used_a_day(reef: Talk, line: str) -> None:
    assert (await reef.facts(line))["uses"]["kh"]["per_day"] == pytest.approx(0.5)


@pytest.mark.parametrize("line", HOLD)
async def test_what_holds_it(reef: Talk, line: str) -> None:
    facts = await reef.facts(line)
    assert facts["substance"] == "sodium bicarbonate"
    assert facts["grams"] == pytest.approx(0.5 * 0.02996 * 200, rel=0.005)


@pytest.mark.parametrize(("stock", "line"), list(zip(STOCK, IN_ML, strict=True)))
async def test_in_millilitres_of_a_solution_that_was_told(
    reef: Talk, stock: str, line: str
) -> None:
    assert "80 g baking soda in 1 l" in await reef.text(line)
    (reply,) = await reef.say(stock)
    assert reply.facts["solution"]["a_litre"] == 100.0
    assert "96 g dissolve" in reply.text
    facts = await reef.facts(line)
    assert facts["solution"]["millilitres"] == pytest.approx(30.0, abs=0.2)  # 3.0 g / 100 g/L


@pytest.mark.parametrize("line", RAISES)
async def test_what_so_many_millilitres_raise(reef: Talk, line: str) -> None:
    await reef.say(STOCK[0])
    facts = await reef.facts(line)
    assert facts["rise"]["kh"] == pytest.approx(4000 / 200 / 29.96, rel=0.005)
    assert "Not at once" in await reef.text("how much does 400 ml raise")


async def test_a_value_to_be_held_is_reached_first(reef: Talk) -> None:
    for line in ("how much soda to keep it at 8.5", "wie viel natron um es auf 8.5 zu halten"):
        facts = await reef.facts(line)
        assert facts["to"] == 8.5
        assert facts["upkeep"]["grams"] == pytest.approx(3.0, abs=0.02)
    await reef.say(STOCK[0])
    facts = await reef.facts("how many ml a day to stay at 8.2")
    assert facts["to"] == 8.2
    assert facts["solution"]["millilitres"] == pytest.approx(24.0, abs=0.2)  # 2.4 g
    assert (await reef.say("how many ml a day to stay at 12"))[0].facts.get("to") is None


async def test_a_plan_in_millilitres_of_another_strength(reef: Talk) -> None:
    await reef.say("how much baking soda for kh 9.4")  # 1.6 °dH in two parts
    facts = await reef.facts("as ml of a solution with 80 g per litre")
    told = facts["solution"]
    assert told["grams"] == pytest.approx(0.8 * 0.02996 * 200, rel=0.01)
    assert told["millilitres"] == pytest.approx(told["grams"] / 0.08)


async def test_no_dose_where_ammonia_is(talk: Talk) -> None:
    await talk.say("/tank new Reef 200 l marine")
    await talk.say("alk 8.8 sal 35 ph 8.2 temp 25 ammonia 2")
    await talk.wait(days=2)
    await talk.say("alk 7.8 ph 8.2 ammonia 2")
    assert "refused" in await talk.facts(HOLD[0])
    await talk.say(STOCK[0])
    assert "refused" in await talk.facts(IN_ML[0])


@pytest.mark.parametrize("line", UNDOSED)
async def test_a_reading_beside_no_dosing_is_stored(talk: Talk, line: str) -> None:
    await talk.say("/tank new Reef 200 l marine")
    await talk.say(line)
    value = (await talk.facts("history of kh"))["values"][0]
    assert value["value"] == 7.2


async def test_beside_a_dose(reef: Talk) -> None:
    for line in ("can i pour both together", "darf ich beide zusammen reinkippen"):
        assert "never in one place" in await reef.text(line)
    for line in ("is ammonia really needed for that", "ist ammoniak wirklich nötig"):
        assert (await reef.text(line)).startswith("Yes, once before it")
    for line in ("i dont dose anything yet", "ich dosiere noch nichts", "je ne dose rien"):
        assert "two readings" in await reef.text(line)


@pytest.mark.parametrize("line", OTHER)
def test_what_says_more_is_no_daily_use(line: str) -> None:
    assert daily_talk(line) is None
    assert without_undosed(line) is None


@pytest.mark.parametrize(
    "line",
    [
        "alk 7.9, dosed 40 ml both days",
        "kh 7.9, dosiert 40 ml beide tage",
        "kh 7.9, dosed 40 ml yesterday and today",
    ],
)
async def test_a_dose_in_millilitres_is_told_in_grams_and_not_logged(reef: Talk, line: str) -> None:
    kept, asked = await reef.say(line)
    assert kept.facts["values"][0]["value"] == 7.9
    assert "of what?" in asked.text
    await reef.say("its 80 g baking soda in 1 l water")
    _kept, told = await reef.say(line)
    assert told.facts["solution"]["grams"] == pytest.approx(3.2)  # 40 ml of 80 g/L
    assert "dosed 3.2 g sodium bicarbonate" in told.text
    assert "yesterday" in told.text
    (answered,) = await reef.say("dosed 3.2 g sodium bicarbonate")
    assert answered.facts["events"][0]["grams"] == pytest.approx(3.2)
