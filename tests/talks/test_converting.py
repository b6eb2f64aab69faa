"""A number in one unit asked for in another, in plain words of nine languages.

1 °fH is 10 mg/L CaCO3, 1 °dH 10 mg/L CaO (17.85 mg/L CaCO3), 1 °e a grain a gallon (14.25 mg/L
CaCO3), 1 meq/L 50.04 mg/L CaCO3 (atomic weights); a specific gravity of 1.024 at 25 °C is about
32 g/kg by the equation of state of sea water.
"""

from __future__ import annotations

import pytest

from core.message.unit_asked import unit_asked
from tests.chat.harness import Talk


@pytest.mark.parametrize(
    ("line", "unit", "answer"),
    [
        ("25 french to german degrees", "°dH", 14.0),
        ("what is 25 °fH in °dH", "°dH", 14.0),
        ("25 französische grad in deutsche", "°dH", 14.0),
        ("15 grad deutsch in französisch", "°fH", 26.8),
        ("25 degrés français en allemands", "°dH", 14.0),
        ("25 grados franceses a alemanes", "°dH", 14.0),
        ("25 graus franceses para alemães", "°dH", 14.0),
        ("25 gradi francesi in tedeschi", "°dH", 14.0),
        ("25 franse graden naar duitse", "°dH", 14.0),
        ("25 stopni francuskich na niemieckie", "°dH", 14.0),
        ("25 franska grader till tyska", "°dH", 14.0),
        ("20 english degrees to ppm", "ppm", 285.0),
        ("3 meq to kh", "°dH", 8.41),
        ("3 mval in dh", "°dH", 8.41),
        ("4 meq/l alk in german degrees", "°dH", 11.2),
        ("1.024 in ppt", "g/kg", 32.0),
        ("sg 1.024 to ppt", "g/kg", 32.0),
        ("77 f in celsius", "°C", 25.0),
    ],
)
async def test_units(talk: Talk, line: str, unit: str, answer: float) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    (reply,) = await talk.say(line)
    (told,) = reply.facts["converted"]
    assert told["unit"] == unit
    assert told["value"] == pytest.approx(answer, rel=0.01)
    (seen,) = await talk.say("history")
    assert "values" not in seen.facts


@pytest.mark.parametrize(
    "line",
    [
        "1 tsp baking soda grams",
        "1 teelöffel natron in gramm",
        "cuántos gramos es una cucharadita de bicarbonato",
        "1 cucchiaino di bicarbonato in grammi",
        "1 łyżeczka sody oczyszczonej w gramach",
    ],
)
async def test_a_spoon_is_a_span_of_grams(talk: Talk, line: str) -> None:
    (reply,) = await talk.say(line)
    least, most = reply.facts["span"]
    assert least < reply.facts["grams"] < most
    assert "no measure" in reply.text


@pytest.mark.parametrize(
    "line",
    [
        "5 g baking soda in tsp",
        "5 g natron in teelöffel",
    ],
)
async def test_grams_are_not_told_in_spoons(talk: Talk, line: str) -> None:
    (reply,) = await talk.say(line)
    assert reply.text.startswith("Not by spoon")
    assert "spoons" not in reply.facts


@pytest.mark.parametrize(
    "line",
    [
        "whats that in tsp",
        "wie viel ist das in teelöffeln",
        "combien de cuillères",
        "quantas colheres",
        "quanti cucchiaini sono",
        "hoeveel theelepels is dat",
        "ile to łyżeczek",
        "hur många teskedar är det",
    ],
)
async def test_spoons_of_nothing_spoken_of(talk: Talk, line: str) -> None:
    (reply,) = await talk.say(line)
    assert "spoon_grams" in reply.facts


@pytest.mark.parametrize(
    "line", ["kh 3 to 5", "kh 4", "gh 100 ppm", "raise kh to 8", "1.024", "temp 25 c", "3 meq kh"]
)
def test_no_conversion(line: str) -> None:
    assert unit_asked(line) is None


async def test_litres_to_a_value_are_of_a_change_and_no_conversion(talk: Talk) -> None:
    await talk.say("/tank new Fern 100 l fresh")
    await talk.say("/source tap ph 7 kh 4 gh 6 no3 5 temp 24")
    await talk.say("nitrate 100")
    asked = await talk.facts("how many litres to get to 20")
    assert asked == await talk.facts("how many litres should i change to get nitrate to 20")
    assert "cannot convert" not in await talk.text("how many litres to get to 20")


@pytest.mark.parametrize(
    ("before", "text", "told"),
    [
        ("kh 4", "whats that in ppm", "4 °dH = 71.4 ppm"),
        ("kh 80 ppm", "whats that in dkh", "80 ppm = 4.48 °dH"),
        ("kh 4 drops", "what is that in ppm", "4 °dH = 71.4 ppm"),
        ("whats kh 4 in ppm", "what is that in degrees", "71.4 ppm"),
    ],
)
async def test_that_is_what_was_told_before(talk: Talk, before: str, text: str, told: str) -> None:
    await talk.say("my tank is 100 l")
    await talk.say(before)
    assert told in await talk.text(text)


async def test_that_is_nothing_where_nothing_was_told_or_it_is_long_ago(talk: Talk) -> None:
    await talk.say("my tank is 100 l")
    assert "What shall I convert?" in await talk.text("whats that in ppm")
    await talk.say("kh 4")
    await talk.wait(days=3)
    assert "What shall I convert?" in await talk.text("whats that in ppm")
