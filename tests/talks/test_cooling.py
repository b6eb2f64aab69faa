"""How water is cooled and how warm a mix gets, in nine languages.

The heat of both adds up. Ice: 333.6 kJ/kg to melt it, 4.18 kJ/(kg °C) to warm water (CRC Handbook,
from memory). 1 °C an hour and 2 °C a day: common practice, no source.
"""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.advice.warming import ice_for, mixed, new_water
from core.message.warmth import warmth_asked
from tests.chat.harness import Talk

COOL = (
    "how do i cool it",
    "how can I get the temperature down?",
    "too hot, what can i do",
    "wie kühle ich es",
    "wie bekomme ich die temperatur runter",
    "comment refroidir l'eau",
    "comment baisser la température",
    "cómo enfrío el agua",
    "cómo bajar la temperatura",
    "como arrefeço a água",
    "come raffreddo l'acqua",
    "hoe koel ik het water",
    "jak schłodzić wodę",
    "hur kyler jag vattnet",
)

ICE = (
    "can i add ice",
    "can i float frozen bottles",
    "kann ich eis reintun",
    "puis-je mettre des glaçons",
    "puedo echar hielo",
    "posso pôr gelo",
    "posso mettere ghiaccio",
    "mag ik ijsblokjes toevoegen",
    "mogę dodać lód",
    "kan jag lägga i isbitar",
)


@pytest.fixture
async def hot(talk: Talk) -> Talk:
    await talk.say("/tank new Fern 140 l fresh")
    await talk.say("temp 31 ph 7.5")
    return talk


@pytest.mark.parametrize("line", COOL + ICE)
async def test_a_warm_tank(hot: Talk, line: str) -> None:
    (reply,) = await hot.say(line)
    facts = reply.facts
    assert facts["temperature"] == 31.0
    assert (1 - facts["share"]) * 31 + facts["share"] * facts["new_water_from"] == pytest.approx(30)
    melted = facts["ice_grams"] / 1000
    assert melted * (333.6 + 4.18 * 30) == pytest.approx(140 * 4.18)
    assert not reply.text.lower().startswith(("yes", "no"))
    assert (reply.text.splitlines()[1].startswith("Loose ice")) == (line in ICE)


@pytest.mark.parametrize(
    "line",
    [
        "20 l of 15c water in 100 l at 25 what happens",
        "what happens if I mix 100 l at 25 with 20 l at 15 c?",
        "was passiert bei 20 l wasser von 15 grad in 100 l mit 25 grad",
        "20 l d'eau à 15 °C dans 100 l à 25 °C, que se passe-t-il",
        "qué pasa con 20 l de agua a 15 grados en 100 l a 25",
        "o que acontece com 20 l de água a 15 graus em 100 l a 25",
        "cosa succede con 20 l d'acqua a 15 gradi in 100 l a 25",
        "wat gebeurt er met 20 l water van 15 graden in 100 l van 25",
        "co się stanie z 20 l wody o temperaturze 15 w 100 l o 25",
        "vad händer med 20 l vatten på 15 grader i 100 l på 25",
    ],
)
async def test_two_waters(talk: Talk, line: str) -> None:
    (reply,) = await talk.say(line)
    assert reply.facts["end"] == pytest.approx((20 * 15 + 100 * 25) / 120)


async def test_one_water_into_the_tank(hot: Talk) -> None:
    (reply,) = await hot.say("what happens if i put 14 l at 20 °C in")
    assert reply.facts["end"] == pytest.approx(31 - 1.1)
    (much,) = await hot.say("what happens if i put 70 l at 20 °C in")
    assert much.text.splitlines()[1].startswith("Too much at once")
    assert much.facts["new_water_from"] == pytest.approx(31 - 2 / 0.5)


@pytest.mark.parametrize(
    "line",
    [
        "new water must be how warm for 25% change to be 29",
        "how warm must the new water be so that 25 % gives 29 °C",
        "wie warm muss das neue wasser sein damit 25% 29 grad ergeben",
        "à quelle température l'eau neuve pour 25% arriver à 29",
        "a qué temperatura el agua nueva para que 25% quede a 29",
        "a que temperatura a água nova para 25% ficar a 29 graus",
        "a che temperatura l'acqua nuova per arrivare a 29 con 25%",
        "hoe warm moet het nieuwe water zijn om met 25% op 29 te komen",
        "jaka temperatura nowej wody żeby 25% dało 29",
        "hur varmt ska nya vattnet vara för att 25% ska ge 29",
    ],
)
async def test_how_warm_the_new_water_must_be(hot: Talk, line: str) -> None:
    (reply,) = await hot.say(line)
    assert reply.facts["new_water"] == pytest.approx(23.0)
    (deed,) = await hot.say("how is fern")
    assert "29" not in deed.text


async def test_more_than_a_day_moves_is_led_to_a_step(hot: Talk) -> None:
    (reply,) = await hot.say("how warm must the new water be so a 30% change gives 26")
    assert reply.facts["to"] == 29.0


@given(tank=st.floats(10.0, 34.0), by=st.floats(-2.0, 2.0), share=st.floats(0.05, 1.0))
def test_the_new_water_gets_there(tank: float, by: float, share: float) -> None:
    new = new_water(tank, tank + by, share)
    assert mixed([(1.0 - share, tank), (share, new)]) == pytest.approx(tank + by)


@given(litres=st.floats(10.0, 500.0), warm=st.floats(22.0, 34.0))
def test_ice_takes_the_heat_of_the_water(litres: float, warm: float) -> None:
    ice = ice_for(litres, warm, 1.0)
    assert ice * 333.6 + ice * 4.18 * (warm - 1.0) == pytest.approx(litres * 4.18)


@pytest.mark.parametrize(
    "line",
    [
        "cool",
        "ok cool",
        "cool thanks",
        "changed 25% at 24 c",
        "temp 25",
        "heater stuck at 31 how do i cool it",
        "how warm is it",
        "30 l at 25 c",
    ],
)
def test_nothing_of_warmth_is_asked(line: str) -> None:
    assert warmth_asked(line) is None
