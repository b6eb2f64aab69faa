"""What amounts and media do, from the words to the words."""

from __future__ import annotations

import math
import re

import periodictable
import pytest

from bot.chat import conversation
from core.message.model import Parsed, Question
from tests.chat.harness import Talk
from tests.core.advice.tank_water import at_rest, fresh_water, own_pressure

DEGREE = 0.010 / periodictable.formula("CaO").mass
"""Moles of hardness in a litre at one °dH: 10 mg/L of CaO (grade B)."""


async def test_ten_grams_of_baking_soda_in_120_litres(talk: Talk) -> None:
    """NaHCO3 by periodictable: 10 g in 120 L are 2.78 °dH and 22.8 mg/L sodium."""
    (reply,) = await talk.say("what does 10 g baking soda do in 120 l")
    moles = 10 / periodictable.formula("NaHCO3").mass / 120
    assert reply.facts["kh"] == pytest.approx(moles / (2 * DEGREE), rel=1e-3)
    assert reply.facts["sodium_mg_l"] == pytest.approx(
        moles * periodictable.Na.mass * 1000, rel=1e-3
    )
    assert "KH +2.8" in reply.lines[0].text
    assert "at least 3 days" in reply.text
    assert "measure ammonia first" in reply.text


async def test_in_a_known_tank_ph_is_told_as_phreeqc_has_it(talk: Talk) -> None:
    await talk.say("/tank new Fern 120 l fresh")
    await talk.say("ph 7.0 kh 3.0 temp 25")
    facts = await talk.facts("what does 5 g baking soda do")
    water = fresh_water(3.0, 25.0, ph=7.0)
    pressure = own_pressure(water)
    water.add("NaHCO3", 5000 / periodictable.formula("NaHCO3").mass / 120, "mmol")
    assert facts["ph_at_once"] == pytest.approx(float(water.pH), abs=0.02)
    stood = [at_rest(water, pressure), at_rest(water, 420.0)]
    assert facts["ph_stood"] == pytest.approx(stood, abs=0.02)
    assert (facts["from"], round(facts["to"], 1)) == (pytest.approx(3), 4.4)


async def test_a_salt_of_two_forms_gets_both_each_named(talk: Talk) -> None:
    (reply,) = await talk.say("what does 10 g calcium chloride do in 100 l")
    for found, formula in zip(reply.facts["effects"], ("CaCl2", "CaCl2(H2O)2"), strict=True):
        mass = periodictable.formula(formula).mass
        assert found["gh"] == pytest.approx(10 / mass / 100 / DEGREE, rel=1e-3)
    assert "dihydrate" in reply.text


@pytest.mark.parametrize(
    ("text", "reason"),
    [
        ("what does 10 g soda ash do in 120 l", "hydrate_unknown"),
        ("what does 10 g citric acid do in 120 l", "acid"),
        ("what does 10 g baking soda do in 0.3 ml", "volume_implausible"),
        ("what does 10 g baking soda do in 3000000 l", "volume_implausible"),
        ("what does 9000 g baking soda do in 10 l", "mass_implausible"),
        ("what does 500 g gypsum do in 10 l", "insoluble"),
    ],
)
async def test_what_gets_no_number(talk: Talk, text: str, reason: str) -> None:
    (reply,) = await talk.say(text)
    if reason == "volume_implausible" and "ml" in text:
        assert "kh" not in reply.facts
        return
    assert reply.facts["refused"] == reason
    assert "°dH" not in reply.text


async def test_spoons_and_millilitres_are_no_amount(talk: Talk) -> None:
    (reply,) = await talk.say("what does 5 ml of ph down do in 90 l")
    assert reply.facts["refused"] == "substance_unknown"
    assert not re.search(r"\d ?g in 90", reply.text)


async def ask(talk: Talk, question: Question) -> dict[str, object]:
    """Ask what the parser may not yet understand."""
    original = conversation.parse
    conversation.parse = lambda _text, _context: Parsed("question", question=question)  # type: ignore[assignment]
    try:
        (reply,) = await talk.say("a question")
    finally:
        conversation.parse = original
    return {"text": reply.text, **reply.facts}


CORAL = Question("effect", substance="crushed coral")


async def test_coral_dissolves_in_soft_acid_water_until_it_is_full(talk: Talk) -> None:
    """End point by PHREEQC: aragonite at saturation, CO2 as the tank holds it; 0.03 pH, 3 % KH."""
    await talk.say("/tank new Fern 120 l fresh")
    await talk.say("ph 6.5 kh 1.0 gh 2 temp 25")
    facts = await ask(talk, CORAL)
    water = fresh_water(1.0, 25.0, 2.0, ph=6.5)
    pressure = own_pressure(water)
    water.equalize(["Aragonite", "CO2(g)"], [0.0, math.log10(pressure * 1e-6)])
    end = facts["end"]
    assert isinstance(end, dict)
    assert facts["acts"] is True
    assert end["ph"] == pytest.approx(float(water.pH), abs=0.03)
    alkalinity = water.total("Ca", "mmol") * 2 + 2 * water.total("Mg", "mmol")
    alkalinity -= water.total("Cl", "mmol")
    assert end["kh"] == pytest.approx(alkalinity / 0.356652, rel=0.03)
    assert "crushed coral will dissolve" in str(facts["text"])


async def test_coral_is_asked_about_in_words(talk: Talk) -> None:
    await talk.say("/tank new Fern 120 l fresh")
    await talk.say("ph 6.5 kh 2 gh 3 temp 25 ammonia 0")
    facts = await talk.facts("will crushed coral do anything?")
    assert facts["acts"] is True


async def test_coral_does_nothing_in_hard_alkaline_water(talk: Talk) -> None:
    """Common practice: hardly above pH 7.6 to 8; here PHREEQC has it over saturation."""
    await talk.say("/tank new Quarry 240 l fresh")
    await talk.say("ph 8.2 kh 12 gh 14 temp 25")
    facts = await ask(talk, CORAL)
    assert fresh_water(12.0, 25.0, 14.0, ph=8.2).si("Aragonite") > 0
    assert facts["acts"] is False
    assert "will do nothing" in str(facts["text"])


async def test_leaves_move_ph_at_low_kh_only(talk: Talk) -> None:
    """Common practice with the check values: 0.2 mmol/L is over one unit at KH 0.5, 0.04 at 6."""
    await talk.say("/tank new Fern 120 l fresh")
    await talk.say("ph 6.5 kh 0.5 gh 2 temp 25")
    low = await ask(talk, Question("effect", substance="leaves"))
    await talk.say("ph 7.2 kh 6 gh 6 temp 25")
    high = await ask(talk, Question("effect", substance="leaves"))
    assert float(str(low["ph_before"])) - float(str(low["ph_after"])) > 1.0
    assert float(str(high["ph_before"])) - float(str(high["ph_after"])) == pytest.approx(
        0.04, abs=0.02
    )


async def test_without_kh_coral_cannot_be_judged(talk: Talk) -> None:
    facts = await ask(talk, CORAL)
    assert facts["refused"] == "kh_unknown"


async def test_grams_a_litre_are_those_of_every_litre(talk: Talk) -> None:
    await talk.say("/tank new Hosp 40 l fresh")
    await talk.say("ph 7.6 kh 6 temp 22")
    (reply,) = await talk.say("can i add 3 g salt per litre")
    assert reply.facts["grams"] == pytest.approx(120.0)
    assert reply.facts["salinity"] == pytest.approx(3.0, abs=0.05)
    assert "Too much for one day" in reply.lines[0].text


async def test_ammonia_stands_right_behind_what_an_amount_does(talk: Talk) -> None:
    lines = (await talk.text("what does 2 g baking soda do in 120 l")).splitlines()
    assert "KH +0.56" in lines[0]
    assert "measure ammonia first" in lines[1]
