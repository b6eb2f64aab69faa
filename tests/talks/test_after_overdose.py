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


PUT_IN = "my husband already put in 4 tablespoons of baking soda this morning"
OF_PLAN = ("all at once?", "when the next part", "can i give both parts today")


async def planned(talk: Talk) -> None:
    await talk.say("180l tank kh 3")
    assert "parts" in await talk.facts("want kh 5")


@pytest.mark.parametrize("told", ["kh 9 now", PUT_IN])
@pytest.mark.parametrize(
    "asked", ["can I just change all the water", "kann ich das ganze Wasser wechseln"]
)
async def test_all_the_water_is_a_change_and_no_part_of_a_plan(
    talk: Talk, told: str, asked: str
) -> None:
    await planned(talk)
    await talk.say(told)
    answered = await talk.text(asked)
    assert "Not all of the water at once" in answered
    assert "a tenth to a quarter" in answered
    assert "24 h apart" not in answered


@pytest.mark.parametrize("asked", OF_PLAN)
async def test_a_plan_whose_goal_is_passed_is_none_to_go_back_to(talk: Talk, asked: str) -> None:
    await planned(talk)
    await talk.say("kh 9 now")
    assert "Give nothing more" in await talk.text(asked)


@pytest.mark.parametrize("asked", OF_PLAN)
async def test_nor_is_one_whose_water_has_had_too_much(talk: Talk, asked: str) -> None:
    await planned(talk)
    await talk.say(PUT_IN)
    assert "Stop dosing" in await talk.text(asked)


async def test_a_plan_that_stands_still_tells_of_its_parts(talk: Talk) -> None:
    await planned(talk)
    assert "24 h apart" in await talk.text("all at once?")
    await talk.say("kh 4 now")
    assert "24 h" in await talk.text("when the next part")


async def test_a_test_from_before_it_was_told_does_not_settle_too_much(talk: Talk) -> None:
    await talk.say("180l tank kh 3")
    await talk.say(PUT_IN)
    for asked in ("dose kh 5", "so how much more do I add", "tonight i'll give 6 more, ok?"):
        assert "No dose after what went in" in await talk.text(asked), asked
    await talk.wait(hours=26)
    await talk.say("kh 4 ph 7.4 ammonia 0")
    assert "No dose after what went in" not in await talk.text("dose kh 5")


@pytest.mark.parametrize(
    "told", ["i poured a cup of vinegar in this morning", "i poured vinegar in, maybe a cup"]
)
async def test_no_salt_is_worked_out_on_the_day_of_an_acid(talk: Talk, told: str) -> None:
    await talk.say("70 litres ph 5.9")
    await talk.say(told)
    await talk.say("kh 1")
    await talk.say("ammonia 0")
    facts = await talk.facts("how much baking soda to get to kh 4")
    assert "grams" not in facts
    assert "parts" not in facts


@pytest.mark.parametrize(
    "asked",
    [
        "ok so still put the buffer in?", "so how much more do I add", "so what's left to give",
        "tonight i'll give 6 more, ok?", "should I do the evening dose",
    ],
)  # fmt: skip
async def test_more_is_refused_while_a_danger_is_known(talk: Talk, asked: str) -> None:
    await talk.say("180l tank kh 3")
    await talk.say("fish are gasping")
    assert "No dose while they gasp" in await talk.text(asked)


async def test_what_is_no_dose_is_not_refused_so(talk: Talk) -> None:
    await talk.say("180l tank kh 3")
    await talk.say("fish are gasping")
    assert "No dose" not in await talk.text("should i put an air stone in")


async def test_a_death_after_kh_came_up_fast_is_held_against_the_doses(talk: Talk) -> None:
    await talk.say("/tank new Fern 100 l fresh")
    await talk.say("kh 3 ph 7")
    await talk.say("added 10 g baking soda")
    await talk.wait(hours=24)
    await talk.say("added 10 g baking soda")
    await talk.wait(hours=24)
    await talk.say("kh 9 ph 8.4")
    said = await talk.text("one of the tetras died btw")
    assert "KH rose from 3 to 9 °dH within days by 20 g of sodium bicarbonate" in said


async def test_a_death_without_doses_names_none(talk: Talk) -> None:
    await talk.say("/tank new Fern 100 l fresh")
    await talk.say("kh 3 ph 7")
    await talk.wait(hours=48)
    await talk.say("kh 9 ph 8.4")
    assert "went in" not in await talk.text("one of the tetras died btw")


@pytest.mark.parametrize("when", ["yesterday", "this morning"])
async def test_too_much_told_after_the_test_gives_no_amount_before_the_next(
    talk: Talk, when: str
) -> None:
    for line in ("/tank new Fern 150 l fresh", "kh 5 ph 7", "ammonia 0"):
        await talk.say(line)
    told = await talk.text(f"I already put a tablespoon of baking soda in {when}")
    assert "Add nothing more" in told
    assert "refused" in await talk.facts("how much baking soda to kh 6")
