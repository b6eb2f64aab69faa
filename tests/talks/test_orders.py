"""`kh to 6` as the whole message, in nine languages; the words are ours, no source. Grams by molar
mass: 29.96 mg/L of sodium bicarbonate a °dH of KH, 35.70 of potassium bicarbonate (C)."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk

SODIUM, POTASSIUM = 2.996e-2, 3.570e-2
TANK = ("/tank new Fern 90 l fresh", "kh 4 gh 6 ph 7.2 ammonia 0 temp 24 no3 5")


async def with_tank(talk: Talk) -> None:
    for line in TANK:
        await talk.say(line)


@pytest.mark.parametrize(
    "line",
    [
        "kh to 6", "kh auf 6", "kh bis 6", "kh jusqu'à 6", "kh hasta 6", "kh até 6", "kh fino a 6",
        "kh naar 6", "kh do 6", "kh till 6", "fern kh to 6", "kh to 6 in fern", "kh to 6 please",
        "want kh 6", "ich will kh 6", "je veux kh 6", "quiero kh 6", "quero kh 6", "voglio kh 6",
        "ik wil kh 6", "chcę kh 6", "jag vill ha kh 6", "kh 4 to 6", "kh 4 auf 6",
    ],
)  # fmt: skip
async def test_a_wish_for_what_is_known_is_planned_at_once(talk: Talk, line: str) -> None:
    await with_tank(talk)
    facts = await talk.facts(line)
    assert (facts["tank"], facts["from"], facts["to"]) == ("Fern", 4.0, 6.0)
    assert facts["grams"] == pytest.approx(90 * 2 * SODIUM, rel=2e-3)


@pytest.mark.parametrize(
    "line",
    [
        "kh to 6 with potassium bicarbonate", "kh auf 6 mit kaliumhydrogencarbonat",
        "kh à 6 avec du bicarbonate de potassium", "kh a 6 con bicarbonato de potasio",
        "kh a 6 com bicarbonato de potássio", "kh a 6 con bicarbonato di potassio",
        "kh naar 6 met kaliumbicarbonaat", "kh do 6 z wodorowęglanem potasu",
        "kh till 6 med kaliumbikarbonat", "want kh 6 with potassium bicarbonate",
        "kh 4 to 6 with potassium bicarbonate",
    ],
)  # fmt: skip
async def test_the_salt_that_is_named_is_planned_with(talk: Talk, line: str) -> None:
    await with_tank(talk)
    facts = await talk.facts(line)
    assert facts["substance"] == "potassium bicarbonate"
    assert facts["grams"] == pytest.approx(90 * 2 * POTASSIUM, rel=2e-3)


async def test_plant_food_and_two_wishes(talk: Talk) -> None:
    await with_tank(talk)
    assert (await talk.facts("no3 to 15 with kno3"))["substance"] == "potassium nitrate"
    goals = (await talk.facts("kh to 6 and gh to 8"))["goals"]
    assert {goal["analyte"]: goal["to"] for goal in goals} == {"kh": 6.0, "gh": 8.0}
    named = (await talk.facts("gh to 8 with gypsum and epsom"))["salts"]
    assert [salt["substance"] for salt in named] == [
        "calcium sulfate dihydrate", "magnesium sulfate heptahydrate",
    ]  # fmt: skip


async def test_it_can_be_asked_another_way(talk: Talk) -> None:
    await with_tank(talk)
    await talk.say("kh to 6")
    facts = await talk.facts("and for 60 l with potassium bicarbonate")
    assert (facts["volume_l"], facts["substance"]) == (60.0, "potassium bicarbonate")


@pytest.mark.parametrize("line", ["kh went to 6", "kh to 4", "calcium to 420", "kh from 4 to 6"])
async def test_what_may_be_told_or_is_unknown_is_asked(talk: Talk, line: str) -> None:
    await with_tank(talk)
    (reply,) = await talk.say(line)
    assert "parts" not in reply.facts
    assert reply.buttons


async def test_a_rise_or_a_wish_is_chosen(talk: Talk) -> None:
    await with_tank(talk)
    (reply,) = await talk.say("kh von 4 auf 6")
    assert "dose kh 6 or kh 6" in reply.text
    assert (await talk.press(1))[0].facts["to"] == 6.0


async def test_a_range_that_does_not_begin_where_it_stands_is_read(talk: Talk) -> None:
    await with_tank(talk)
    (reply,) = await talk.say("kh 5 to 6")
    assert "parts" not in reply.facts
    assert "KH 5–6" in reply.text


async def test_without_a_reading_it_is_asked(talk: Talk) -> None:
    assert "Did you mean dose kh 6?" in await talk.text("kh to 6")


async def test_too_low_a_wish_and_an_acid_get_no_dose(talk: Talk) -> None:
    await with_tank(talk)
    assert "already" in await talk.text("kh to 3")
    assert "grams" not in (await talk.facts("ph to 6 with vinegar"))
