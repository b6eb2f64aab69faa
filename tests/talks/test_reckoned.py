"""What a tank should have by now, by mass balance: 30 % of new water with nitrate 10 in one with 40
leaves 31, with KH 8 in KH 4 it is 5.2; 3 g of NaHCO3 in 200 L are 15 mg/L, 0.5 °dH (29.96 mg/L a
°dH, C)."""

from __future__ import annotations

import pytest

from core.message.now_asked import now_asked
from tests.chat.harness import Talk

ROUGHLY = (
    "what do i have now roughly",
    "was habe ich jetzt ungefähr",
    "j'ai quoi maintenant environ",
    "qué tengo ahora más o menos",
    "o que tenho agora mais ou menos",
    "cosa ho adesso più o meno",
    "wat heb ik nu ongeveer",
    "co mam teraz mniej więcej",
    "vad har jag nu ungefär",
)
KH_NOW = (
    "what should kh be now",
    "kh jetzt?",
    "was müsste kh jetzt sein",
    "le kh doit etre a combien maintenant",
    "cuánto debería ser kh ahora",
    "quanto deve estar o kh agora",
    "quanto dovrebbe essere kh adesso",
    "hoeveel zou kh nu moeten zijn",
    "ile powinno być kh teraz",
    "vad borde kh vara nu",
)
RISE = (
    "how much did that raise it",
    "wie viel hat das erhöht",
    "combien ça a augmenté",
    "cuánto subió eso",
    "quanto subiu isso",
    "quanto è salito",
    "hoeveel is het gestegen",
    "ile to podniosło",
    "hur mycket höjde det",
)
COMES_TO = (
    "wanted to change 20 l with ro what do i get",
    "wollte 20 liter mit osmose wechseln was kommt raus",
    "je veux changer 20 l avec osmosée ça donne quoi",
    "si cambio 20 l con ósmosis qué me queda",
    "queria trocar 20 l com osmose quanto fica",
    "voglio cambiare 20 l con osmosi cosa viene",
    "wil 20 l wisselen met osmosewater wat krijg ik",
    "chcę podmienić 20 l z osmozy co wyjdzie",
    "vill byta 20 l med osmosvatten vad blir det",
)
OTHER = (
    "kh now 4",
    "what should kh be",
    "now what",
    "what should i do now",
    "how much did it cost",
    "i changed 20 l with ro",
    "how much food now",
    "jetzt 4",
    "was jetzt",
    "et maintenant",
    "kh ahora 5",
    "it went up",
)


@pytest.fixture
async def home(talk: Talk) -> Talk:
    await talk.say("/tank new Home 100 l fresh")
    await talk.say("kh 4 gh 8 ph 7.2 no3 40 temp 24 ammonia 0")
    await talk.say("/source tap ph 7.4 kh 8 gh 12 no3 10 temp 24")
    return talk


@pytest.mark.parametrize("line", ROUGHLY)
async def test_all_of_it_after_a_change(home: Talk, line: str) -> None:
    assert "reckoned" not in await home.facts(line)  # nothing was done yet
    await home.wait(hours=1)
    await home.say("changed 30%")
    (reply,) = await home.say(line)
    assert reply.facts["reckoned"] == pytest.approx({"kh": 5.2, "gh": 9.2, "nitrate": 31.0})
    assert "not measured" in reply.text
    assert "test to know" in reply.text


@pytest.mark.parametrize("line", KH_NOW)
async def test_one_value_after_two_changes(home: Talk, line: str) -> None:
    await home.wait(hours=1)
    await home.say("changed 30%")
    await home.wait(hours=1)
    await home.say("changed 10% with ro")
    (reply,) = await home.say(line)
    assert reply.facts["reckoned"]["kh"] == pytest.approx(5.2 * 0.9)
    assert "not measured" in reply.text


async def test_what_is_not_known_is_not_reckoned(home: Talk) -> None:
    await home.wait(hours=1)
    await home.say("changed 30%")
    for line in ("what should ph be now roughly", "what should ammonia be now roughly"):
        (reply,) = await home.say(line)
        assert "reckoned" not in reply.facts
        assert "Only a test" in reply.text
    await home.say("dosed 5 ml mystery liquid")
    assert "reckoned" not in (await home.say("what should kh be now roughly"))[0].facts
    await home.wait(hours=1)
    await home.say("kh 5")
    assert (await home.facts("kh jetzt?"))["readings"] == {"kh": 5.0}


async def test_a_water_without_the_value_is_not_reckoned(home: Talk) -> None:
    await home.say("phosphate 1")
    await home.wait(hours=1)
    await home.say("changed 30%")
    assert "reckoned" not in await home.facts("what should phosphate be now roughly")


@pytest.mark.parametrize("line", RISE)
async def test_what_the_last_dose_raised(talk: Talk, line: str) -> None:
    await talk.say("/tank new Reef 200 l marine")
    await talk.say("kh 8 ph 8.2 ammonia 0 salinity 35 temp 25")
    await talk.wait(hours=1)
    await talk.say("dosed 3 g baking soda")
    assert (await talk.facts(line))["kh"] == pytest.approx(0.5, abs=0.01)
    assert (await talk.facts("kh jetzt?"))["reckoned"]["kh"] == pytest.approx(8.5, abs=0.01)


@pytest.mark.parametrize("line", COMES_TO)
async def test_what_a_wished_change_comes_to(home: Talk, line: str) -> None:
    facts = await home.facts(line)
    assert facts["source"] == "RO"
    assert facts["litres"] == pytest.approx(20.0)


@pytest.mark.parametrize("line", OTHER)
def test_what_says_more_asks_nothing(line: str) -> None:
    assert now_asked(line) is None
