"""A change that is supposed, with what its new water measures: those numbers are that water's."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk

ASKED = (
    "if i change 30% of the water with tap water kh 6 gh 10 ph 7.5 what happens",
    "what happens if i change 30% of the water with tap water kh 6 gh 10 ph 7.5",
    "wenn ich 30% wasser mit leitungswasser kh 6 gh 10 ph 7,5 wechsle was passiert",
    "si je change 30% de l'eau avec de l'eau du robinet kh 6 gh 10 ph 7,5 que se passe-t-il",
    "si cambio 30% del agua con agua del grifo kh 6 gh 10 ph 7,5 qué pasa",
    "se eu trocar 30% da água com água da torneira kh 6 gh 10 ph 7,5 o que acontece",
    "se cambio 30% dell'acqua con acqua del rubinetto kh 6 gh 10 ph 7,5 cosa succede",
    "als ik 30% water ververs met kraanwater kh 6 gh 10 ph 7,5 wat gebeurt er",
    "jeśli podmienię 30% wody wodą z kranu kh 6 gh 10 ph 7,5 co się stanie",
    "om jag byter 30% av vattnet med kranvatten kh 6 gh 10 ph 7,5 vad händer",
)


@pytest.mark.parametrize("asked", ASKED)
async def test_its_numbers_are_the_new_waters(talk: Talk, asked: str) -> None:
    """By hand: KH 3 + 0.3 × (6 − 3) = 3.9, GH 6 + 0.3 × (10 − 6) = 7.2 °dH."""
    await talk.say("/tank new Sala 100 l fresh")
    await talk.say("kh 3 gh 6 ph 7.0 temp 25 ammonia 0")
    (reply,) = await talk.say(asked)
    assert reply.facts["share"] == pytest.approx(0.3)
    assert reply.facts["at_once"]["kh"] == pytest.approx(3.9, abs=0.01)
    assert reply.facts["at_once"]["gh"] == pytest.approx(7.2, abs=0.01)
    assert "pH 7.5, KH 6 °dH, GH 10 °dH, as you say" in "\n".join(x.text for x in reply.lines)


async def test_a_spanish_yes_before_a_comma_supposes_nothing(talk: Talk) -> None:
    await talk.say("/tank new Sala 100 l fresh")
    replies = await talk.say("si, 30%")
    assert all("share" not in reply.facts for reply in replies)
