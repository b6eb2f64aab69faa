"""What a keeper will do once a value comes so far: a plan, of which nothing is stored."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk


@pytest.fixture
async def fern(talk: Talk) -> Talk:
    await talk.say("/tank new Fern 100 l fresh")
    return talk


@pytest.mark.parametrize(
    "text",
    [
        "if it hits nitrate 50 ill change",
        "if nitrate hits 50 i'll do a change",
        "once nitrate is 50 we will change 30%",
        "wenn nitrat 50 ist wechsle ich wasser",
        "si le nitrate arrive à 50 je change l'eau",
        "si el nitrato llega a 50 cambio agua",
        "se o nitrato chegar a 50 vou trocar a água",
        "se il nitrato arriva a 50 cambierò acqua",
        "als nitraat 50 is ververs ik water",
        "jeśli azotany będą 50 podmienię wodę",
        "om nitrat blir 50 byter jag vatten",
    ],
)
async def test_a_plan_of_the_own_is_no_dose_and_no_reading(fern: Talk, text: str) -> None:
    (reply,) = await fern.say(text)
    assert "as a plan: nothing is stored" in reply.text
    assert not any("dose" in button for button in reply.buttons)
    assert "nothing is measured yet" in await fern.text("all good?")


@pytest.mark.parametrize("text", ["nitrate 50", "nitrate 50, i'll change tomorrow if i can"])
async def test_what_was_measured_is_no_plan(fern: Talk, text: str) -> None:
    (*_, reply) = await fern.say(text)
    assert "as a plan" not in reply.text
