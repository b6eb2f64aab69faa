"""How much of it went in: the amount that two readings and a volume tell, and no plan."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk

BACKWARDS = (
    "how many grams of salt did i add if salinity went from 1 to 3 in 150 l",
    "how many grams did i add if salinity went from 1 to 3 in 150 l",
    "wie viel gramm salz habe ich zugegeben wenn die salinität von 1 auf 3 gestiegen ist in 150 l",
    "combien de sel ai-je mis si la salinité est passée de 1 à 3 dans 150 l",
    "cuánta sal añadí si la salinidad pasó de 1 a 3 en 150 l",
    "quanto sal coloquei se a salinidade passou de 1 para 3 em 150 l",
    "quanto sale ho messo se la salinità è passata da 1 a 3 in 150 l",
    "hoeveel gram zout heb ik toegevoegd als de saliniteit van 1 naar 3 ging in 150 l",
    "ile soli dodałem jeśli zasolenie wzrosło z 1 do 3 w 150 l",
    "hur mycket salt tillsatte jag om salthalten gick från 1 till 3 i 150 l",
)

FORWARDS = (
    "how much salt for 150 l from salinity 1 to 3",
    "how much salt for 150 l from 1 to 3",
    "wie viel salz für 150 l von salinität 1 auf 3",
    "combien de sel pour 150 l de salinité 1 à 3",
    "cuánta sal para 150 l de salinidad 1 a 3",
    "quanto sal para 150 l de salinidade 1 a 3",
    "quanto sale per 150 l da salinità 1 a 3",
    "hoeveel zout voor 150 l van saliniteit 1 naar 3",
    "ile soli na 150 l z zasolenia 1 do 3",
    "hur mycket salt för 150 l från salthalt 1 till 3",
)


@pytest.mark.parametrize("asked", BACKWARDS)
async def test_what_went_in_is_told_without_parts(talk: Talk, asked: str) -> None:
    """2 g/kg in 150 L of nearly 1 kg/L are 300 g, by hand."""
    (reply,) = await talk.say(asked)
    assert reply.facts["grams"] == pytest.approx(300, rel=0.01)
    assert "parts" not in reply.facts
    assert not reply.buttons
    assert "300 g of sea salt" in reply.lines[0].text


@pytest.mark.parametrize("asked", FORWARDS)
async def test_a_salinity_of_one_is_grams_and_no_gravity(talk: Talk, asked: str) -> None:
    facts = await talk.facts(asked)
    goal = facts["goals"][0]
    assert (goal["from"], goal["to"]) == (1.0, 3.0)
    assert facts["grams"] == pytest.approx(300, rel=0.01)


async def test_gravities_stay_gravities(talk: Talk) -> None:
    """Of 1.020 and 1.025 at 25 °C come about 26.7 and 33.3 g/kg."""
    facts = await talk.facts("how much salt for 40 l from 1.020 to 1.025")
    goal = facts["goals"][0]
    assert goal["from"] == pytest.approx(26.7, abs=0.1)
    assert goal["to"] == pytest.approx(33.3, abs=0.1)


async def test_of_a_tank_no_gate_holds_what_is_in_already(talk: Talk) -> None:
    """KH +2 °dH in 100 L is 6 g of bicarbonate: 2 × 17.85 mg/L as CaCO3 × 1.679 (by mass)."""
    await talk.say("/tank new Bay 100 l fresh")
    await talk.say("kh 5 ph 8 ammonia 2")
    asked = "if kh went from 3 to 5 how many grams of baking soda did i add"
    facts = await talk.facts(asked)
    assert facts["grams"] == pytest.approx(6.0, abs=0.05)
    assert "parts" not in facts


NITRITE = (
    "how much water do i change",
    "combien d'eau je change",
    "combien d'eau dois-je changer",
    "wie viel wasser wechsle ich",
    "cuánta agua cambio",
    "quanta água troco",
    "quanta acqua cambio",
    "hoeveel water ververs ik",
    "ile wody podmienić",
    "hur mycket vatten byter jag",
)


async def test_with_nitrite_how_much_is_no_routine_in_any_language(talk: Talk) -> None:
    await talk.say("/tank new Salon 180 l fresh")
    await talk.say("nitrite 1 ph 7.4 kh 5 temp 25 ammonia 0.5")
    first = await talk.text(NITRITE[0])
    assert first.startswith("Salon: yes. Nitrite 1 mg/L")
    for asked in NITRITE[1:]:
        assert await talk.text(asked) == first


async def test_a_jump_of_kh_within_the_minute_is_told(talk: Talk) -> None:
    await talk.say("/tank new Bay 100 l fresh")
    await talk.say("kh 3 gh 6 ph 7.0 temp 25 ammonia 0")
    said = await talk.text("ph is 8.3 kh 13")
    assert "KH went from 3 to 13 °dH" in said
    assert "KH 13 is above GH" not in said
