"""Talk of a mix of two waters. By amount (mass balance): of a tap with KH 12, GH 16 and nitrate 10,
half with RO is KH 6, GH 8, nitrate 5; KH 4 is a third of it."""

from __future__ import annotations

import pytest

from core.message.blend_talk import blend_talk
from tests.chat.harness import Talk

HALVES = (
    "mix half half what do i get",
    "half and half, what does that give",
    "what if 50 50 ro",
    "halb und halb was kommt raus",
    "moitié moitié ça donne quoi",
    "y si pongo mitad y mitad",
    "meio a meio quanto fica",
    "metà e metà cosa viene",
    "half om half wat krijg ik",
    "pół na pół co wyjdzie",
    "hälften hälften vad blir det",
)
REACH = (
    "how do i mix for kh 4",
    "wie muss ich verschneiden für kh 4",
    "comment couper pour kh 4",
    "cómo mezclo para kh 4",
    "como misturo para kh 4",
    "come miscelo per kh 4",
    "hoe meng ik voor kh 4",
    "jak zmieszać na kh 4",
    "hur blandar jag för kh 4",
)
LITRES = (
    "i need 60 litres, how many of each",
    "recipe for a 60 l bucket",
    "ich brauche 60 l, wie viel von jedem",
    "pour 60 litres, combien de chaque",
    "para 60 litros",
    "preciso de 60 litros, quanto de cada",
    "per 60 litri quanto di ciascuna",
    "voor 60 liter hoeveel van elk",
    "na 60 litrów ile każdej",
    "för 60 liter hur mycket av varje",
)
FIGURE = (
    "what gh does that give",
    "was hat das dann für ne gh",
    "quel gh ça donne",
    "qué gh me da",
    "que gh fica",
    "che gh viene",
    "welke gh geeft dat",
    "jakie gh wyjdzie",
    "vad blir gh",
)
PURE = (
    "how much rain water",
    "wie viel osmosewasser nehme ich",
    "combien d'osmosée je mets",
    "cuánta ósmosis pongo",
    "quanta osmose coloco",
    "quanta osmosi metto",
    "hoeveel osmosewater",
    "ile osmozy daję",
    "hur mycket osmosvatten",
)
OTHER = (
    "changed half with ro",
    "the tank is half empty",
    "kh 4 gh 8",
    "mix has kh 4",
    "half dose is enough",
    "how much water",
    "gh 8 for cardinals",
    "what gh is best for cardinals",
    "halb so viel futter",
    "für 60 l reicht der filter",
    "mi tanque es de 60 litros",
    "un tiers du bac est vide",
    "ho 60 litri e 4 neon",
)


@pytest.fixture
async def home(talk: Talk) -> Talk:
    """A tank that is softer than its tap."""
    await talk.say("/tank new Home 100 l fresh")
    await talk.say("kh 4 gh 8 ph 7.2 no3 40 temp 24 ammonia 0")
    await talk.say("/source tap ph 7.4 kh 12 gh 16 no3 10 temp 24")
    return talk


def _shares(facts: dict[str, object]) -> dict[str, float]:
    parts = facts["parts"]
    assert isinstance(parts, list)
    return {part["source"]: part["share"] for part in parts}


@pytest.mark.parametrize("line", HALVES)
async def test_what_two_halves_give(home: Talk, line: str) -> None:
    facts = await home.facts(line)
    assert _shares(facts) == pytest.approx({"RO": 0.5, "tap": 0.5})
    assert facts["mixed"]["kh"] == pytest.approx(6.0)
    assert facts["mixed"]["gh"] == pytest.approx(8.0)


@pytest.mark.parametrize("line", REACH)
async def test_a_mix_for_a_value_is_no_dose(home: Talk, line: str) -> None:
    facts = await home.facts(line)
    assert _shares(facts)["tap"] == pytest.approx(4 / 12)
    assert facts["mixed"]["gh"] == pytest.approx(16 / 3)


@pytest.mark.parametrize("line", LITRES)
async def test_the_litres_of_each(home: Talk, line: str) -> None:
    assert "volume_l" not in await home.facts("mix half half what do i get")
    (reply,) = await home.say(line)
    assert reply.facts["volume_l"] == 60.0
    assert "30 L" in reply.text


@pytest.mark.parametrize("line", FIGURE)
async def test_what_the_mix_holds(home: Talk, line: str) -> None:
    await home.say("mix ro and tap to kh 3")
    facts = await home.facts(line)
    assert facts["mixed"]["gh"] == pytest.approx(4.0)  # 16 · 3 / 12


@pytest.mark.parametrize("line", PURE)
async def test_pure_water_alone_matches_the_tank(home: Talk, line: str) -> None:
    facts = await home.facts(line)
    assert _shares(facts)["tap"] == pytest.approx(1 / 3)


async def test_another_ratio_is_of_the_mix_before(home: Talk) -> None:
    assert "parts" not in (await home.say("30/70"))[0].facts
    await home.say("mix half half what do i get")
    facts = await home.facts("and 30/70?")
    assert _shares(facts) == pytest.approx({"RO": 0.3, "tap": 0.7})
    assert facts["mixed"]["kh"] == pytest.approx(8.4)
    facts = await home.facts("and 1:3")
    assert _shares(facts) == pytest.approx({"RO": 0.25, "tap": 0.75})
    facts = await home.facts("how much per 5 gal bucket to match")
    assert facts["to"] == {"kh": 4}
    assert facts["volume_l"] == pytest.approx(18.93, abs=0.01)  # 5 US gal


async def test_it_is_judged_for_animals(home: Talk) -> None:
    await home.say("mix ro and tap to kh 3")
    for line in ("will that fit for cardinals", "passt das für kardinalsalmler"):
        (reply,) = await home.say(line)
        assert {v["analyte"]: round(v["value"], 1) for v in reply.facts["values"]}["gh"] == 4.0
    assert (await home.facts("for 10 l"))["volume_l"] == 10.0  # still of it


@pytest.mark.parametrize(
    "line", ["if i change 60l w that what will the tank be", "what if i change 60 l",
             "was wenn ich 60 l wechsle"],
)  # fmt: skip
async def test_a_change_right_after_is_of_the_mix_and_says_so(home: Talk, line: str) -> None:
    await home.say("mix ro and tap to kh 3")
    (reply,) = await home.say(line)
    assert {each["source"] for each in reply.facts["source_parts"]} == {"tap", "RO"}
    assert "Reckoned with 25 % tap, 75 % RO" in reply.text
    await home.say("mix ro and tap to kh 3")
    assert "source_parts" not in await home.facts("what if i change 30% with tap")


async def test_pure_water_was_said_to_be_zero(home: Talk) -> None:
    for line in ("ro is zero", "osmose ist null", "l'osmosée c'est zéro", "ósmosis es cero"):
        assert "reckoned with 0" in await home.text(line)


async def test_without_a_second_water_it_is_asked_for(talk: Talk) -> None:
    await talk.say("/tank new Home 100 l fresh")
    await talk.say("kh 4 gh 8 ph 7.2")
    for line in (HALVES[0], REACH[1]):
        assert "of which waters" in await talk.text(line)


@pytest.mark.parametrize("line", OTHER)
def test_what_says_more_is_no_talk_of_a_mix(line: str) -> None:
    assert blend_talk(line) is None


@pytest.mark.parametrize(
    "line",
    [
        "if i mix 20 l ro with 20 l tap what do i get",
        "50% ro and the rest tap?",
        "20 l osmose mit 20 l leitungswasser mischen was kommt raus",
        "50% osmosée et le reste robinet ça donne quoi",
    ],
)
async def test_shares_by_litres_and_the_rest(home: Talk, line: str) -> None:
    facts = await home.facts(line)
    assert _shares(facts) == pytest.approx({"RO": 0.5, "tap": 0.5})
    for again in ("and the gh then?", "und die gh?"):
        assert (await home.facts(again))["mixed"]["gh"] == pytest.approx(8.0)
    assert "values" in await home.facts("can i use that for cardinals")


async def test_litres_of_a_mix_come_with_what_is_to_be_done_first(home: Talk) -> None:
    await home.say("mix half half what do i get")
    assert "Dechlorinate the tap's part first" in await home.text("for 30 l")


async def test_in_a_sea_pure_water_is_not_mixed_with_tap(talk: Talk) -> None:
    await talk.say("/tank new Reef 200 l marine")
    await talk.say("kh 8 salinity 35 ph 8.2")
    await talk.say("/source tap ph 7.4 kh 12 gh 16")
    for line in ("how much ro", "mix half half what do i get", "how much per bucket to match"):
        assert all("parts" not in reply.facts for reply in await talk.say(line))
