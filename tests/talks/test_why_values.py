"""Why a value is high or low. The causes are common practice, no source; that corals take 2.8 °dH
of KH with 20 mg/L of calcium is CaCO3's own ratio (40.078 g, two equivalents a mole; IUPAC)."""

from __future__ import annotations

import pytest

from core.message.why_way import way_of
from tests.chat.harness import Talk

FERN = ("/tank new Fern 90 l fresh", "ph 8.2 kh 4 ammonia 0 nitrate 80")


@pytest.mark.parametrize(
    ("line", "cause"),
    [
        ("why is ph so high", "little carbon dioxide"), ("what makes ph rise", "limestone"),
        ("why is kh dropping", "acid that filter bacteria make"),
        ("why won't kh go up", "acid that filter bacteria make"),
        ("nitrate stays at 80 why", "where all food ends"), ("why is gh high", "top up with RO"),
        ("warum ist der ph so hoch", "little carbon dioxide"),
        ("pourquoi le kh baisse", "acid that filter bacteria make"),
        ("¿por qué sube el nitrato?", "where all food ends"),
        ("perché il kh scende", "acid that filter bacteria make"),
        ("waarom daalt de kh", "acid that filter bacteria make"),
        ("dlaczego kh spada", "acid that filter bacteria make"),
        ("varför sjunker kh", "acid that filter bacteria make"),
        ("por que o kh cai", "acid that filter bacteria make"),
    ],
)  # fmt: skip
async def test_the_usual_causes_are_told(talk: Talk, line: str, cause: str) -> None:
    for told in FERN:
        await talk.say(told)
    assert cause in await talk.text(line)


async def test_what_the_record_shows_of_them_is_said(talk: Talk) -> None:
    for told in FERN:
        await talk.say(told)
    assert "0.8 mg/L of CO2 here: little" in await talk.text("why is ph so high")
    await talk.say("/source tap kh 4 nitrate 40 ph 7")
    await talk.say("/tank Fern")
    assert "Your source has nitrate 40" in await talk.text("why is nitrate high")


async def test_an_alarm_is_never_left_out(talk: Talk) -> None:
    for told in FERN:
        await talk.say(told)
    await talk.say("ammonia 2")
    assert "Ammonia is dangerous" in await talk.text("why is gh low")


async def test_they_are_known_without_a_tank_and_of_the_sea(talk: Talk) -> None:
    assert "little carbon dioxide" in await talk.text("why is ph high")
    await talk.say("/tank new Lagoon 150 l marine")
    assert "Corals" in await talk.text("why does alk drop so fast")


@pytest.mark.parametrize(
    ("text", "way"),
    [
        ("why is ph high", "high"), ("why isn't ph low", "high"), ("why won't kh rise", "low"),
        ("nitrate stays at 40 why", "high"), ("kh stays low why", "low"), ("why ph", None),
        ("warum steigt der ph nicht", "low"), ("why does ph go up and down", None),
    ],
)  # fmt: skip
def test_the_way_is_read_with_its_not(text: str, way: str | None) -> None:
    assert way_of(text) == way


@pytest.mark.parametrize("text", ["why is kh important", "pourquoi le kh c'est important"])
async def test_what_a_value_is_for(talk: Talk, text: str) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    assert "is the buffer" in await talk.text(text)


async def test_why_of_a_sign_is_what_it_means(talk: Talk) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    assert "Algae live of light" in await talk.text("algae on glass why")
