"""What is asked of a plan's amounts, in nine languages: in cups, of a bag, per litre, in all, what
is next, dry or dissolved, when to test, and that it is left. Grams by molar mass (29.96 mg/L of
sodium bicarbonate a °dH, from the formula weight 84.007)."""

from __future__ import annotations

import pytest

from core.message.plan_asked import plan_asked
from tests.chat.harness import Talk

A_PART = 100 * 29.96e-3


@pytest.fixture
async def planned(talk: Talk) -> Talk:
    """A plan in three parts, KH 2 to 5."""
    await talk.say("/tank new Hall 100 l fresh")
    await talk.say("kh 2 ph 7 ammonia 0")
    facts = await talk.facts("how much baking soda for kh 5")
    assert facts["parts"] == pytest.approx([A_PART] * 3, rel=2e-3)
    return talk


MEANT = {
    "spoons": (
        "whats that in tsp i dont have scales; how many cups is that; is that level teaspoons?;"
        " is that heaped or level; can i use measuring spoons; wie viele tassen sind das;"
        " c'est combien en cuillères;"
        " cuántas tazas son; quantas chávenas são; quante tazze sono; hoeveel kopjes is dat;"
        " ile to szklanek; hur många koppar är det"
    ),
    "enough": (
        "i have a 1kg bag is that enough; is 500 g enough; will a 500g box do;"
        " is one bag enough; i bought 2 lbs will that be enough;"
        " ive only got 200g left is that enough;"
        " is a 500g bag of baking soda enough; ich hab 1 kg reicht das;"
        " j'ai un paquet de 500 g ça suffit; tengo 1 kg basta; tenho 500 g chega; ho 500 g basta;"
        " ik heb 1 kg is dat genoeg; mam 500 g czy wystarczy; jag har 500 g räcker det"
    ),
    "scope": (
        "is that per gallon or all of it; is that for the whole tank; is that per litre?;"
        " is that each day or altogether; so thats per litre right;"
        " is that for all 75 gallons; is that the total; ist das pro liter oder insgesamt;"
        " c'est par litre ou en tout; es por litro o en total; é por litro ou no total;"
        " è al litro o in tutto; is dat per liter of in totaal; czy to na litr czy razem;"
        " är det per liter eller totalt"
    ),
    "go_on": (
        "how much tomorrow then; how much do i put in; so how much do i put in today;"
        " how much baking soda do i put in now; wie viel morgen; combien demain; cuánto mañana;"
        " quanto amanhã; quanto domani; hoeveel morgen; ile jutro; hur mycket imorgon"
    ),
    "dry": (
        "is it in the water or dry; do i put it dry in; can i put the powder in dry;"
        " do i dissolve it or put it in dry; dry or mixed with water?;"
        " gebe ich es trocken rein?; lo echo en seco?;"
        " doe ik het droog erin?"
    ),
    "how": "do i need to dissolve it first; should it be dissolved; mix it with water first?",
    "when_next": (
        "how long before i test; how long till i retest; how soon can i test again;"
        " how many hours before i test; how soon should i check kh again; wie lange bis ich teste;"
        " combien de temps avant de tester; hoe lang voor ik test"
    ),
    "drop": (
        "nah leave it at 3; no leave it as it is; keep it at 3; nah lets leave it;"
        " forget it ill stay at 3; nein lass es bei 3"
    ),
}

UNMEANT = (
    "i put it in dry; how much did i put in; how much have i put in; kh 5 is that enough;"
    " is 20% enough; is that enough; i gave a spoon; a 1kg bag; leave the light on;"
    " how much do i put in for 60 l; how much do i feed tomorrow;"
    " i dissolved it in water; i put a spoon in?; is half a teaspoon ok;"
    " is a heaped tablespoon ok; is that for 60 l; the filter is dry;"
    " how much water do i change now; how long before i add fish; can i leave it at 3; how much"
)


@pytest.mark.parametrize(("meaning", "texts"), MEANT.items())
def test_what_is_asked_is_heard(meaning: str, texts: str) -> None:
    for text in map(str.strip, texts.split(";")):
        asked = plan_asked(text)
        assert getattr(asked, "meaning", None) == meaning, text


def test_what_says_more_is_not() -> None:
    for text in map(str.strip, UNMEANT.split(";")):
        assert plan_asked(text) is None, text


async def test_no_cup_is_an_amount(planned: Talk) -> None:
    for text in ("whats that in tsp i dont have scales", "how many cups is that"):
        (reply,) = await planned.say(text)
        assert reply.lines[0].text.startswith("Not by spoon"), text
        assert reply.facts["stock"], text


async def test_a_bag_is_held_against_the_grams_in_all(planned: Talk) -> None:
    facts = await planned.facts("i have a 1kg bag is that enough")
    assert facts["enough"]
    assert facts["needed"] == pytest.approx(3 * A_PART, rel=2e-3)
    (reply,) = await planned.say("is 5 g enough")
    assert not reply.facts["enough"]
    assert reply.text.startswith("No")
    (reply,) = await planned.say("is 9 g enough")
    assert reply.text.startswith("Yes, just")
    await planned.say("done")
    facts = await planned.facts("is 6 g enough")
    assert facts["enough"]
    assert facts["needed"] == pytest.approx(2 * A_PART, rel=2e-3)


async def test_an_amount_is_for_the_whole_tank(planned: Talk) -> None:
    for text in ("is that per gallon or all of it", "is that each day or altogether"):
        (reply,) = await planned.say(text)
        for told in ("3 g", "whole tank of 100 L", "3 parts", "9 g"):
            assert told in reply.text, text


async def test_the_next_amount_is_asked_and_nothing_logged(planned: Talk) -> None:
    for text in ("how much do i put in", "how much tomorrow then", "next bit?"):
        (reply,) = await planned.say(text)
        assert reply.text.startswith("None of the 3 parts is on record yet"), text
    await planned.say("done")
    (reply,) = await planned.say("how much tomorrow then")
    assert reply.text.startswith("2 of 3 parts are left")


async def test_dry_and_the_test(planned: Talk) -> None:
    assert (await planned.text("is it in the water or dry")).startswith("No: not dry")
    assert "24 h after a part" in await planned.text("how long before i test")


async def test_it_is_left_as_it_is(planned: Talk) -> None:
    assert (await planned.text("nah leave it at 2")).startswith("All right")
    await planned.say("how much baking soda for kh 5")
    assert (await planned.text("nah leave it at 3")).startswith("All right")
    await planned.say("how much baking soda for kh 5")
    assert "All right" not in await planned.text("keep it at 24")


async def test_once_all_is_in_no_more_is_told(planned: Talk) -> None:
    await planned.say("i put in 20 g")
    for text in ("is that for the whole tank", "is 500 g enough", "how many cups is that"):
        assert (await planned.text(text)).startswith("All 3 parts are on record"), text


async def test_a_plan_for_any_water_is_left_too(talk: Talk) -> None:
    await talk.say("how much baking soda for 120 l from kh 3 to 6")
    (reply,) = await talk.say("is that for the whole tank")
    assert "Only if total ammonia is under" in reply.text  # no amount without its condition
    assert (await talk.text("leave it at 3")).startswith("All right")


async def test_no_amount_over_the_gate_of_ammonia(planned: Talk) -> None:
    await planned.say("ammonia 2")
    for text in (
        "how much do i put in",
        "how many cups is that",
        "is that for the whole tank",
        "how much tomorrow then",
    ):
        assert " g of sodium" not in await planned.text(text), text


async def test_behind_no_plan_nothing_of_one_is_told(talk: Talk) -> None:
    await talk.say("/tank new Hall 100 l fresh")
    await talk.say("kh 2 ph 7 ammonia 0")
    for text in ("is 500 g enough", "is that for the whole tank", "how much tomorrow then"):
        assert " g of sodium" not in await talk.text(text), text
