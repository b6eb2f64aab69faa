"""What the sea uses up a day, and what holds it. Grams by molar mass: 29.96 mg/L of NaHCO3 a °dH
(C, from the formula weight 84.007)."""

from __future__ import annotations

from datetime import UTC, datetime

import pytest

from core.message import daily
from core.message.model import Context
from tests.chat.harness import Talk

USE = (
    "how much alk does it use a day",
    "how much alk drops a day",
    "wie viel kh verbraucht es am tag",
    "wie viel kh sinkt am tag",
    "combien de kh perd le bac par jour",
    "cuánto kh baja al día",
    "quanto kh perde por dia",
    "quanto kh cala al giorno",
    "hoeveel kh daalt het per dag",
    "ile kh spada dziennie",
    "hur mycket kh sjunker per dygn",
)
HOLD = (
    "how much soda a day to keep it",
    "how much baking soda a day to keep alk 8",
    "wie viel natron am tag um kh 8 zu halten",
    "combien de bicarbonate par jour pour maintenir kh 8",
    "cuánto bicarbonato al día para mantener kh 8",
    "quanto bicarbonato por dia para manter kh 8",
    "quanto bicarbonato al giorno per mantenere kh 8",
    "hoeveel natriumbicarbonaat per dag om kh 8 te houden",
    "ile sody oczyszczonej dziennie żeby utrzymać kh 8",
    "hur mycket bikarbonat per dag för att hålla kh 8",
)


@pytest.fixture
async def reef(talk: Talk) -> Talk:
    """KH fell by 0.4 °dH a day with nothing done between: from 8.8 to 8.0 in two days."""
    await talk.say("/tank new Reef 200 l marine")
    await talk.say("alk 8.8 sal 35 ca 430 mg 1300 ph 8.2 temp 25 ammonia 0")
    await talk.wait(days=2)
    await talk.say("alk 8.0 ca 430 ph 8.2 ammonia 0")
    return talk


@pytest.mark.parametrize("line", USE)
async def test_what_is_used_a_day_is_told_from_two_readings(reef: Talk, line: str) -> None:
    facts = await reef.facts(line)
    used = facts["uses"]["kh"] if "uses" in facts else facts["consumption"]
    assert used["per_day"] == pytest.approx(0.4)


async def test_all_that_is_used_where_nothing_is_named(reef: Talk) -> None:
    facts = await reef.facts("how much does it use a day")
    assert facts["uses"]["kh"]["per_day"] == pytest.approx(0.4)
    assert facts["uses"]["calcium"]["per_day"] == 0.0


@pytest.mark.parametrize("line", HOLD)
async def test_what_holds_it_is_a_day_of_it(reef: Talk, line: str) -> None:
    facts = await reef.facts(line)
    assert facts["consumption"]["per_day"] == pytest.approx(0.4)
    assert facts["grams"] == pytest.approx(0.4 * 200 * 29.96e-3, rel=5e-3)
    assert "upkeep" not in facts  # not the same again on top of it


@pytest.mark.parametrize("line", [HOLD[1], HOLD[2]])
async def test_under_the_wish_it_is_brought_up_first(reef: Talk, line: str) -> None:
    facts = await reef.facts(line.replace("8", "8.6"))
    assert (facts["from"], facts["to"]) == (8.0, 8.6)
    assert facts["upkeep"]["per_day"] == pytest.approx(0.4)


async def test_over_the_wish_nothing_is_dosed(reef: Talk) -> None:
    (reply,) = await reef.say("how much baking soda a day to keep alk 7")
    assert "dose nothing until it has come down to 7" in reply.text
    assert "grams" not in reply.facts


async def test_what_the_keeper_says_that_it_uses(reef: Talk) -> None:
    for line in ("it uses 0.5 dkh a day", "es verbraucht 0,5 dkh am Tag"):
        facts = await reef.facts(line)
        assert facts["grams"] == pytest.approx(0.5 * 200 * 29.96e-3, rel=5e-3)
    (reply,) = await reef.say("it uses 2 dkh a day")
    assert "more than may rise in a day" in reply.text
    assert "grams" not in reply.facts


@pytest.mark.parametrize(
    "line",
    [
        "how much soda to keep alk at 8 if it drops 0.5 a day",
        "alk dropped from 8 to 7 in 2 days how much per day",
        "kh fell from 8 to 7 in two days, how much soda per day",
        "wie viel verbraucht es am tag wenn kh in 2 tagen von 8 auf 7 fällt",
        "combien par jour si kh baisse de 8 à 7 en 2 jours",
        "cuánto gasta al día si el kh baja de 8 a 7 en 2 días",
        "hoeveel per dag als kh zakt van 8 naar 7 in 2 dagen",
        "how much a day if alk goes down from 8 to 4.5 in a week",
    ],
)
async def test_a_question_may_tell_what_is_used(reef: Talk, line: str) -> None:
    facts = await reef.facts(line)
    assert facts["consumption"]["per_day"] == pytest.approx(0.5)
    assert facts["grams"] == pytest.approx(0.5 * 200 * 29.96e-3, rel=5e-3)


async def test_without_two_readings_it_is_not_guessed(talk: Talk) -> None:
    await talk.say("/tank new Reef 200 l marine")
    await talk.say("alk 8 sal 35 ph 8.2 temp 25")
    assert "I need two readings" in await talk.text("how much does it use a day")
    assert "I need two readings" in await talk.text("how much soda a day to keep it")


async def test_ammonia_is_looked_at_as_for_any_dose(reef: Talk) -> None:
    await reef.say("ammonia 2")
    (reply,) = await reef.say("how much soda a day to keep it")
    assert "grams" not in reply.facts
    assert reply.facts["refused"] == "ammonia"


async def test_fresh_water_is_asked_as_ever(talk: Talk) -> None:
    await talk.say("/tank new Fern 100 l fresh")
    await talk.say("kh 4 gh 6 ph 7 temp 24 ammonia 0")
    assert "uses" not in await talk.facts("how much does it use a day")


@pytest.mark.parametrize(
    "line", ["how much do i feed a day", "how much is it", "kh 4 a day", "how often a day"]
)
def test_other_questions_are_none_of_it(line: str) -> None:
    assert daily.asked(line) is None


@pytest.mark.parametrize("line", ["kh 8 today", "kh fell 0.5 today", "how much 0.5 dkh a day"])
def test_readings_tell_no_use(line: str) -> None:
    assert daily.told(line, Context(now=datetime(2026, 3, 1, tzinfo=UTC), zone=UTC)) is None
