"""While too much may be in the water, or chlorine, no answer asks for more and none forgets it."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk

QUESTIONS = ("is that safe", "what now", "why is my kh low", "should i change water")


async def hall(talk: Talk, volume: int = 100) -> None:
    await talk.say(f"/tank new Hall {volume} l fresh")
    await talk.say("kh 3 gh 8 ph 7.2 temp 25 ammonia 0")


@pytest.mark.parametrize("told", ["i dumped 20 g of baking soda in it", "i put in double"])
async def test_no_dose_is_asked_for_after_an_overdose(talk: Talk, told: str) -> None:
    """Common practice, no source: nothing more goes in before the water was tested and rested."""
    await hall(talk)
    assert "dose kh" in (await talk.say("is my water ok"))[0].text
    await talk.say(told)
    for question in QUESTIONS:
        assert "dose kh" not in "".join(reply.text for reply in await talk.say(question))
    await talk.wait(hours=1)
    (read,) = await talk.say("kh 2 ph 6.9")
    assert "dose kh" not in read.text
    assert "Retest before any buffer" in (await talk.say("is my water ok"))[0].text
    await talk.wait(hours=30)
    await talk.say("kh 2 ph 6.9 ammonia 0")
    assert "dose kh" in (await talk.say("is my water ok"))[0].text


@pytest.mark.parametrize(
    ("told", "gasping"),
    [
        ("i just refilled 100 l and forgot the dechlorinator!!", "they are breathing fast"),
        ("70 liter kraanwater toegevoegd zonder ontchloren", "de vissen happen naar lucht"),
        ("Wasseraufbereiter vergessen", "die Fische schnappen nach Luft"),
    ],
)
async def test_chlorine_told_is_the_first_suspect_until_a_dechlorinator_is_in(
    talk: Talk, told: str, gasping: str
) -> None:
    await hall(talk, 200)
    await talk.wait(hours=1)
    await talk.say(told)
    for line in (gasping, "what now", "should i change water", "is that safe"):
        (reply,) = await talk.say(line)
        assert reply.facts["emergency"] == "chlorine"
        assert "Dechlorinator" in reply.lines[0].text
    await talk.say("dosed 10 ml dechlorinator")
    (reply,) = await talk.say(gasping)
    assert reply.facts["emergency"] == "gasping"


@pytest.mark.parametrize(
    ("told", "kind"),
    [
        ("i just refilled 100 l", "water_change"),
        ("topped up 50 l", "water_change"),
        ("topped up 49 l", "top_up"),
        ("topped up 100 l with salt water", "top_up"),
    ],
)
async def test_a_refill_of_much_water_is_a_change(talk: Talk, told: str, kind: str) -> None:
    """A quarter of the tank is no evaporation; common practice, no source."""
    await hall(talk, 200)
    (event,) = (await talk.facts(told))["events"]
    assert event["kind"] == kind


async def test_an_overdose_told_with_its_litres_is_judged_by_them(talk: Talk) -> None:
    """25 g of NaHCO3 (84.007 g/mol) in 110 L are 2.705 meq/L, 7.6 °dH."""
    dosed, did = await talk.say(
        "i dumped 25 grams of baking soda in my 110 litre, what did that do"
    )
    assert "Too much for one day" in dosed.text
    assert did.facts["kh"] == pytest.approx(7.58, abs=0.02)
    (read,) = await talk.say("it was at kh 2 ph 6.9")
    assert "dose kh" not in read.text
    (doubted,) = await talk.say("dosed 5 l baking soda")
    assert "dosed 5 L" not in doubted.text
