"""Short whole sentences around an answer: asked again in a topic's words, or answered at once.

That evaporation leaves what is dissolved behind is plain chemistry; 1.63 g KNO3 a gram of NO3 is by
the molar masses (C); the rest is common practice, no source.
"""

from __future__ import annotations

import pytest

from core.message.how_asked import how_asked
from core.message.warmth import warmth_asked
from tests.chat.harness import Talk

REACH = (
    "how much water should i change to get to 20",
    "how much water should i change to get it to 20",
    "wie viel wasser muss ich wechseln um auf 20 zu kommen",
    "combien d'eau changer pour descendre à 20",
    "cuánta agua cambio para llegar a 20",
    "quanta água devo trocar para chegar a 20",
    "quanta acqua cambiare per arrivare a 20",
    "hoeveel water moet ik verversen om op 20 te komen",
    "ile wody podmienić żeby zejść do 20",
    "hur mycket vatten ska jag byta för att komma till 20",
)
NAMED = {
    "should i do 80% now": "share",
    "soll ich jetzt 80% machen": "share",
    "is topping off the same as a wc": "top_up",
    "ist auffüllen dasselbe wie ein wasserwechsel": "top_up",
    "did i kill the bacteria": "bacteria",
    "habe ich die bakterien getötet": "bacteria",
    "ho ucciso i batteri?": "bacteria",
    "ok to turn air off?": "air_off",
    "kann ich die luftpumpe ausschalten": "air_off",
    "puedo apagar el aireador": "air_off",
    "just add acid?": "acid",
    "einfach säure reingeben?": "acid",
    "how do i keep it there": "keep",
    "wie halte ich es da": "keep",
    "how long should i spread that": "spread",
    "do it in 4 days not 2": "in_days",
    "half a part first": "half_part",
    "how long will cycling take": "cycling",
    "wie lange dauert das einfahren": "cycling",
    "fishless cycle, how do i know when its ready": "cycled_how",
    "brand new tank set up 3 days ago, can i put fish in?": "new_tank",
    "how much conditioner for 20 l": "conditioner",
    "wie viel wasseraufbereiter für 20 l": "conditioner",
    "crushed coral ok?": "medium",
    "how much kno3 for 10 ppm": "nitrate_salt",
    "do 25% every 3 days then": "every",
    "going on holiday for 2 weeks": "away",
    "ich fahre 2 wochen in urlaub": "away",
    "whats the plan for the week": "week",
    "whats safe per hour": "pace",
    "what will my kh be": "by_now",
    "dosed 1ml ammonia yesterday": "fed_yesterday",
    "gestern 1 ml ammoniak dosiert": "fed_yesterday",
}
OTHERS = (
    "changed 80% now",
    "should i do 80% or wait",
    "how much water should i change to get 20 l out",
    "how much water is in it",
    "added acid",
    "the air is off",
    "air off",
    "in 4 days",
    "half a part is in",
    "do 25% every 3 days?",
    "can i put fish in",
    "kh will be 5",
    "what will kh be if i add 5 g",
    "dosed 1 ml ammonia yesterday?",
    "will dose 1 ml ammonia tomorrow",
    "topped up 5 l",
    "fish died, did i kill them",
    "how much soda for kh 5",
    "kh 5 ok?",
)


@pytest.mark.parametrize("text", REACH)
def test_a_change_is_wished_for_down_to_a_number(text: str) -> None:
    found = how_asked(text)
    assert found is not None
    assert (found.meaning, found.number) == ("reach", 20.0)


@pytest.mark.parametrize(("text", "meaning"), NAMED.items())
def test_short_sentences_are_told_apart(text: str, meaning: str) -> None:
    found = how_asked(text)
    assert found is not None
    assert found.meaning == meaning


@pytest.mark.parametrize("text", OTHERS)
def test_what_says_more_or_tells_is_left_to_others(text: str) -> None:
    assert how_asked(text) is None


async def _tank(talk: Talk, reading: str) -> None:
    await talk.say("tank Fern 90 l")
    await talk.say(reading)
    await talk.say("tap kh 4 gh 8 no3 5 ph 7.4 temp 24 chlorine 0")


async def test_a_change_down_to_a_number_is_planned_for_what_stands_over_it(talk: Talk) -> None:
    await _tank(talk, "kh 4 gh 8 ph 7.2 no3 60 temp 24 ammonia 0")
    planned = await talk.facts(REACH[0])
    await talk.say("nitrate 60")
    assert planned["steps"] == (await talk.facts("get nitrate under 20"))["steps"]
    both = await talk.text("how much water should i change to get to 6")
    assert both.startswith("Of what?")
    assert "lower gh to 6" in both


async def test_a_plan_is_made_slower_never_faster(talk: Talk) -> None:
    await _tank(talk, "kh 3 gh 8 ph 7.2 no3 20 temp 24 ammonia 0")
    await talk.say("kh to 5")
    assert "in 4 parts" in await talk.text("do it in 4 days not 2")
    assert "in 8 parts" in await talk.text("half a part first")


async def test_soda_for_kh_is_baking_soda_and_said_so(talk: Talk) -> None:
    await _tank(talk, "kh 3 gh 8 ph 7.2 no3 20 temp 24 ammonia 0")
    text = await talk.text("how much soda for kh 5")
    assert "2.7 g of sodium bicarbonate" in text
    assert "never washing soda" in text.split("\n")[1]
    assert "Which soda" in await talk.text("added 3 g soda")
    assert "Which soda" not in await talk.text("how much washing soda for kh 5")


async def test_what_a_deed_left_is_reckoned_not_explained(talk: Talk) -> None:
    await _tank(talk, "kh 3 gh 8 ph 7.2 no3 20 temp 24 ammonia 0")
    await talk.say("added 1 g baking soda")
    assert "about KH 3.4" in await talk.text("what will my kh be")


async def test_kno3_is_reckoned_for_the_volume(talk: Talk) -> None:
    await _tank(talk, "kh 3 gh 8 ph 7.2 no3 5 temp 24 ammonia 0")
    assert "1.5 g of potassium nitrate" in await talk.text("how much kno3 for 10 ppm")


async def test_nothing_is_paused_or_refused_unasked(talk: Talk) -> None:
    await _tank(talk, "kh 3 gh 8 ph 7.2 no3 5 temp 24 ammonia 0")
    assert "I paused nothing yet" in await talk.text("going on holiday for 2 weeks")
    assert (await talk.text("just add acid?")).startswith("No strong acid")
    assert "every 3 days" in await talk.text("do 25% every 3 days then")
    assert "Fern: test" in await talk.text("remind me to test in 12 h")


@pytest.mark.parametrize("text", ["filter bacteria died", "bakterien tot", "my cycle is dead"])
async def test_who_calls_for_help_is_helped(talk: Talk, text: str) -> None:
    await _tank(talk, "kh 3 gh 8 ph 7.2 no3 5 temp 24 ammonia 0")
    assert "Stop feeding" in await talk.text(text)


async def test_a_fast_fall_of_warmth_is_told_with_its_pace(talk: Talk) -> None:
    await _tank(talk, "temp 31")
    await talk.wait(hours=3)
    assert "1 °C an hour" in await talk.text("temp 28")


async def test_a_peak_that_was_sent_is_not_denied(talk: Talk) -> None:
    await talk.say("tank Fern 90 l")
    for line in ("ammonia 2 nitrite 0", "ammonia 1 nitrite 1", "ammonia 0 nitrite 0"):
        await talk.say(line)
        await talk.wait(hours=48)
    text = await talk.text("can i add fish")
    assert text.startswith("Not proved yet for Fern: ammonia and nitrite came and went")


async def test_zeros_alone_are_still_no_proof(talk: Talk) -> None:
    await talk.say("tank Fern 90 l")
    await talk.say("ammonia 0 nitrite 0")
    assert "never saw them come and go" in await talk.text("can i add fish")


COOL = ("how do i get temp down", "heatwave, what now", "fans on", "ice bottles ok?", "canicule")


@pytest.mark.parametrize("text", COOL)
def test_heat_is_met_with_how_to_cool(text: str) -> None:
    found = warmth_asked(text)
    assert found is not None
    assert found.asks == "cool"


@pytest.mark.parametrize("text", ["ok cool", "cool, good", "fans", "ice is out", "ok"])
def test_cool_words_alone_ask_nothing(text: str) -> None:
    assert warmth_asked(text) is None
