"""Whether a kit is right: water of a known value, in nine languages; nothing of it is stored.

1 °dH is 10 mg/L CaO (atomic weights), 0.3567 meq/L: of sodium bicarbonate (84.007 g/mol)
29.96 mg/L, of magnesium sulfate heptahydrate (246.47 g/mol) 43.95 mg/L.
"""

from __future__ import annotations

import pytest

from core.message.kit_check import kit_asked
from tests.chat.harness import Talk

ASKED = (
    "is my kh kit right",
    "Is my KH test still accurate?",
    "how do I check my kh kit",
    "can i trust my kh drops",
    "make a kh 5 reference 1 l",
    "reference water kh 5",
    "my kh kit reads 5 is it right",
    "ist mein kh test genau",
    "wie prüfe ich meinen kh test",
    "Referenzwasser KH 5",
    "mon test kh est-il fiable",
    "comment vérifier mon test kh",
    "eau de référence kh 5 1 l",
    "mi test de kh es correcto",
    "solución de referencia kh 5",
    "o meu teste kh está certo",
    "solução de referência kh 5 1 litro",
    "il mio test kh è giusto",
    "come verifico il test del kh",
    "klopt mijn kh test",
    "ijkvloeistof kh 5 maken",
    "czy mój test kh jest dobry",
    "woda wzorcowa kh 5",
    "stämmer mitt kh test",
    "hur kontrollerar jag mitt kh test",
)


@pytest.mark.parametrize("line", ASKED)
async def test_every_wording_leads_to_the_reference_water(talk: Talk, line: str) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    (reply,) = await talk.say(line)
    made = reply.facts["reference"]
    assert made["analyte"] == "kh"
    assert made["value"] == 5.0
    assert made["grams"] / 1000 * made["millilitres"] / made["litres"] == pytest.approx(
        5 * 0.02996, rel=0.005
    )
    assert not any("KH" in button.label for button in reply.buttons)
    (seen,) = await talk.say("history of kh")
    assert "values" not in seen.facts


async def test_gh_and_another_volume(talk: Talk) -> None:
    (reply,) = await talk.say("i need a reference solution gh 10, 500 ml")
    made = reply.facts["reference"]
    assert made["grams"] / 1000 * made["millilitres"] / 0.5 == pytest.approx(
        10 * 0.04395, rel=0.005
    )


@pytest.mark.parametrize(
    ("line", "off"),
    [
        ("kit says 6 on it", 0.0),
        ("it shows 8", 3.0),
        ("der test zeigt 3", -2.0),
        ("le test affiche 5", 0.0),
        ("el test marca 7", 2.0),
        ("il test segna 5", 0.0),
        ("de test geeft 5 aan", 0.0),
        ("test pokazuje 8", 3.0),
        ("testet visar 5", 0.0),
        ("o teste mostra 5", 0.0),
    ],
)
async def test_what_the_kit_shows_of_it(talk: Talk, line: str, off: float) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("reference water kh 5")
    (reply,) = await talk.say(line)
    assert reply.facts["off"] == off
    (seen,) = await talk.say("history of kh")
    assert "values" not in seen.facts


async def test_of_the_tank_again_after_a_reading(talk: Talk) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("is my kh kit right")
    await talk.say("ph 7.2")
    replies = await talk.say("the kit shows kh 6")
    assert "off" not in replies[0].facts


async def test_what_no_kitchen_makes(talk: Talk) -> None:
    (of_ph,) = await talk.say("is my ph test accurate")
    assert "buffer solution" in of_ph.text
    (unnamed,) = await talk.say("is my test kit right")
    assert "KH or of GH" in unnamed.text


@pytest.mark.parametrize(
    "line",
    [
        "kh test 5",
        "kh test 5 ok",
        "reference value kh",
        "is kh 5 right for shrimps",
        "my kit says ammonia 2 and fish gasp is that right",
        "tested kh 4",
    ],
)
def test_no_question_of_the_kit(line: str) -> None:
    assert kit_asked(line) is None


async def test_drops_asked_about_behind_a_reading_are_of_the_tank(talk: Talk) -> None:
    await talk.say("my tank is 100 l")
    await talk.say("kh 5 drops")
    assert "kit is checked" not in await talk.text("is 5 drops ok")
    assert "kit is checked" in await talk.text("is 6 drops ok")
