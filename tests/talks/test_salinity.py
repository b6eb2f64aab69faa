"""A sea's salinity as keepers speak of it. By mass balance: of 200 L at 38 g/kg, 1 - 35/38 = 7.9 %
(15.8 L) is replaced by RO to come to 35; 4 g/kg more in 200 L is 800 g of dry salt (1 g/L a g/kg,
as the plans reckon). A day's step is 1 g/kg with any invertebrate, 2 down with fish only."""

from __future__ import annotations

import pytest

from core.message.salinity_talk import moved, salinity_talk
from tests.chat.harness import Talk

DOWN = (
    "how do i get it down to 35",
    "wie kriege ich es runter auf 35",
    "comment je la baisse à 35",
    "cómo lo bajo a 35",
    "como baixo para 35",
    "come la riduco a 35",
    "hoe krijg ik het omlaag naar 35",
    "jak obniżyć do 35",
    "hur får jag ner den till 35",
)
OUT = (
    "how much water out and ro in",
    "wie viel wasser raus und osmose rein",
    "combien d'eau retirer et mettre d'osmosée",
    "cuánta agua saco y cuánta ósmosis meto",
    "quanta água tiro e coloco de osmose",
    "quanta acqua tolgo e metto di osmosi",
    "hoeveel water eruit en osmosewater erin",
    "ile wody odlać i wlać ro",
    "hur mycket vatten ut och ro i",
)
ONE_GO = (
    "its a new tank, no animals, can i do it in one go",
    "neues becken, keine tiere, geht das auf einmal",
    "aucun animal, puis-je le faire en une fois",
    "sin animales, puedo hacerlo de una vez",
    "sem animais, posso fazer de uma vez",
    "senza animali, posso farlo in una volta",
    "geen dieren, kan ik dat in één keer",
    "bez zwierząt, czy mogę na raz",
    "inga djur, kan jag göra det på en gång",
)
STRAIGHT = (
    "can i add the salt straight in",
    "kann ich das salz direkt reinkippen",
    "je peux verser le sel directement",
    "puedo echar la sal directamente",
    "posso deitar o sal direto",
    "posso versare il sale direttamente",
    "kan ik het zout direct erin doen",
    "mogę wsypać sól bezpośrednio",
    "kan jag hälla i saltet direkt",
)
WENT = (
    "salinity went from 35 to 31, auto top off stuck",
    "salzgehalt ist von 35 auf 31 gefallen",
    "la salinité est passée de 35 à 31",
    "la salinidad bajó de 35 a 31",
    "a salinidade caiu de 35 para 31",
    "la salinità è scesa da 35 a 31",
    "zoutgehalte zakte van 35 naar 31",
    "zasolenie spadło z 35 do 31",
    "salthalten sjönk från 35 till 31",
)
OTHER = (
    "how do i get it down to 8",
    "get nitrate down to 35",
    "how much water",
    "can i add the fish straight in",
    "no animals",
    "salt is cheap",
    "1.5",
    "kh 8",
    "now 26",
    "fish went straight in",
    "salz kaufen",
    "j'ai mis du sel",
    "calciumchlorid und natron in einem eimer",
    "can i add the baking soda straight in",
)


@pytest.fixture
async def reef(talk: Talk) -> Talk:
    """A sea that stands at 38 g/kg."""
    await talk.say("/tank new Reef 200 l marine")
    await talk.say("ph 8.2 kh 8 temp 25 ammonia 0")
    await talk.say("salinity 38")
    return talk


async def _salinity(talk: Talk) -> float:
    return float((await talk.facts("history of salinity"))["values"][0]["value"])


@pytest.mark.parametrize("line", DOWN)
async def test_it_is_brought_down_with_ro_in_steps(reef: Talk, line: str) -> None:
    facts = await reef.facts(line)
    assert facts["source"] == "RO"
    assert facts["in_all"] == pytest.approx({"litres": 15.8, "share": 0.079, "days": 3}, abs=0.05)
    assert all(38.0 * step <= 1.0 for step in facts["steps"])
    assert await _salinity(reef) == 38.0


@pytest.mark.parametrize("line", OUT)
async def test_how_much_goes_out_and_in(reef: Talk, line: str) -> None:
    assert (await reef.facts(line))["in_all"]["litres"] == pytest.approx(15.8, abs=0.05)


@pytest.mark.parametrize("line", ONE_GO)
async def test_without_animals_it_is_done_at_once(reef: Talk, line: str) -> None:
    (reply,) = await reef.say(line)
    assert reply.facts["litres"] == pytest.approx(200 * (1 - 35 / 38), abs=0.01)
    assert "corals and live rock count" in reply.text
    await reef.say("salinity 31")
    assert (await reef.facts(line))["grams"] == pytest.approx(800.0, rel=0.01)


async def test_at_once_is_not_where_anything_lives(reef: Talk) -> None:
    assert "litres" not in await reef.facts("no fish yet, can i do it in one go")
    await reef.say("added 2 clownfish")
    await reef.say("salinity 38")
    facts = await reef.facts(ONE_GO[0])
    assert "litres" not in facts
    assert "grams" not in facts
    assert "in one go" in reef.last[0].text


@pytest.mark.parametrize("line", STRAIGHT)
async def test_dry_salt_never_goes_onto_animals(reef: Talk, line: str) -> None:
    assert (await reef.text(line)).startswith("No: never dry salt")


async def test_in_fresh_water_it_is_another_question(talk: Talk) -> None:
    await talk.say("/tank new Fern 100 l fresh")
    assert "onto animals" not in await talk.text("can i add the salt straight in")
    assert "Not stored" in await talk.text("now 1.0264")


@pytest.mark.parametrize("line", WENT)
async def test_where_it_went_is_a_reading(talk: Talk, line: str) -> None:
    await talk.say("/tank new Reef 200 l marine")
    await talk.say("salinity 35")
    await talk.wait(days=1)
    assert "Stop the top-off" in await talk.text(line)
    assert await _salinity(talk) == 31.0


async def test_where_it_went_from_elsewhere_is_asked(reef: Talk) -> None:
    await reef.say("salinity went from 33 to 31")
    assert await _salinity(reef) == 38.0


async def test_a_gravity_alone_is_a_reading_of_the_sea(talk: Talk) -> None:
    await talk.say("/tank new Reef 200 l marine")
    for line in ("now 1.0264", "jetzt 1.0264", "1.0264", "il réfractomètre indique 1.0264"):
        await talk.say(line)
    value = (await talk.facts("history of salinity"))["values"][0]
    assert value["canonical"] == pytest.approx(35.2, abs=0.1)


async def test_a_refractometer_tells_salinity_but_not_of_its_calibration(talk: Talk) -> None:
    await talk.say("/tank new Reef 200 l marine")
    for line in (
        "calibrated my refractometer with 35 ppt",
        "refraktometer kalibriert mit 35 ppt",
        "réfractomètre étalonné à 35 ppt",
    ):
        assert "Not stored" in await talk.text(line)
    for line in ("refractometer says 38 ppt", "refraktometer zeigt 38 ppt"):
        await talk.say(line)
        assert await _salinity(talk) == 38.0


async def test_a_gravity_for_litres_is_new_water(talk: Talk) -> None:
    await talk.say("/tank new Reef 200 l marine")
    facts = await talk.facts("sg 1.020 for 100 l")
    assert facts["volume_l"] == 100.0
    assert facts["to"]["salinity"] == pytest.approx(26.7, abs=0.1)  # at 25 °C, as SG is read
    assert "no readings" in (await talk.text("history of salinity")).casefold()


async def test_after_another_subject_it_is_not_salinity(talk: Talk) -> None:
    await talk.say("/tank new Reef 200 l marine")
    await talk.say("salinity 38 nitrate 40")
    await talk.say("nitrate 41")
    assert "in_all" not in (await talk.say("how do i get it down to 30"))[0].facts


@pytest.mark.parametrize("line", OTHER)
def test_what_says_more_is_no_talk_of_salinity(line: str) -> None:
    assert salinity_talk(line) is None
    assert moved(line) is None


async def test_how_much_goes_out_is_of_what_was_spoken_of(reef: Talk) -> None:
    await reef.say("lower salinity to 35")
    for line in ("how much do i take out", "wie viel raus", "cuánto saco", "ile wylać"):
        assert (await reef.facts(line))["in_all"]["litres"] == pytest.approx(15.8, abs=0.05)
    assert (await reef.text("can i pour dry salt in the sump")).startswith("No: never dry salt")
    await reef.say("kh 8")
    assert "in_all" not in (await reef.say("how much do i take out"))[0].facts
