"""Right after a plan: its wish by a water change, by RO, and salt water in the place of RO."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk

BY_CHANGE = (
    "can i do it with a water change instead",
    "geht das auch mit einem wasserwechsel",
    "je peux le faire avec un changement d'eau",
    "puedo hacerlo con un cambio de agua",
    "posso fazer com uma troca de água",
    "posso farlo con un cambio d'acqua",
    "kan het ook met een waterwissel",
    "czy mogę to zrobić podmianą wody",
    "kan jag göra det med ett vattenbyte",
)

WITH_RO = (
    "how much ro water do i use",
    "wie viel osmosewasser soll ich nehmen",
    "combien d'eau osmosée j'utilise",
    "cuánta agua de ósmosis uso",
    "quanta água de osmose uso",
    "quanta acqua di osmosi devo usare",
    "hoeveel osmosewater moet ik gebruiken",
    "ile wody ro użyć",
    "hur mycket osmosvatten ska jag använda",
)

SALTED = (
    "what if i top up with salt water",
    "was wenn ich mit salzwasser auffülle",
    "et si je complète avec de l'eau salée",
    "y si relleno con agua salada",
    "e se eu completar com água salgada",
    "e se rabbocco con acqua salata",
    "wat als ik bijvul met zout water",
    "co jeśli doleję słonej wody",
    "vad händer om jag fyller på med saltvatten",
)


async def test_the_wish_of_a_dose_by_a_change(talk: Talk) -> None:
    """From KH 3 with KH 8 to 4: a fifth is new, (4 − 3) / (8 − 3)."""
    await talk.say("/tank new Fern 100 l fresh")
    await talk.say("/source tap ph 7.5, kh 8, gh 10, temp 25")
    await talk.say("kh 3 gh 6 ph 7 temp 25 ammonia 0")
    for asked in BY_CHANGE:
        await talk.say("dose kh 4")
        facts = await talk.facts(asked)
        assert facts["source"] == "tap"
        assert facts["share"] == pytest.approx(0.2, abs=0.01)


async def test_how_much_ro_is_that_of_the_plan(talk: Talk) -> None:
    await talk.say("/tank new Studio 70 l fresh")
    await talk.say("/source ro ph 6, kh 0, gh 0, no3 0, temp 24")
    await talk.say("kh 8 gh 10 ph 7.6 temp 25 ammonia 0 no3 20")
    plan = await talk.facts("how do i lower kh to 5")
    for asked in WITH_RO:
        facts = await talk.facts(asked)
        assert facts["steps"] == plan["steps"]
        assert facts["source"] == "ro"


@pytest.mark.parametrize("asked", SALTED)
async def test_salt_water_topped_up_makes_the_sea_saltier(talk: Talk, asked: str) -> None:
    await talk.say("/tank new Recife 250 l marine")
    (reply,) = await talk.say(asked)
    assert reply.lines[0].text.startswith("Salinity rises")
    assert reply.facts == {"step": 1.0}


async def test_in_fresh_water_it_is_refused(talk: Talk) -> None:
    await talk.say("/tank new Fern 100 l fresh")
    assert (await talk.text(SALTED[0])).startswith("Not in fresh water")


async def test_what_was_topped_up_is_still_put_on_record(talk: Talk) -> None:
    await talk.say("/tank new Recife 250 l marine")
    assert "topped up" in await talk.text("topped up 5 l with salt water")
    assert "Salinity rises: what" not in await talk.text("topped up with salt water")


async def test_without_a_plan_a_change_is_asked_about_as_before(talk: Talk) -> None:
    await talk.say("/tank new Fern 100 l fresh")
    await talk.say("kh 5 gh 8 ph 7.2 temp 25 ammonia 0 nitrite 0")
    assert "asks for a water change" in await talk.text("should i change water")
