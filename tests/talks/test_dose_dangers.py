"""What a tired person reads first: doses asked twice, on stale readings, by the spoon, unsaid."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk

FERN = ("/tank new Fern 90 l fresh", "kh 4 gh 6 ph 7.2 temp 25 ammonia 0")
REEF = (
    "/tank new Reef 200 l marine",
    "kh 9 calcium 430 salinity 35 ph 8.2 temp 25 ammonia 0",
)


async def told(talk: Talk, *texts: str) -> None:
    for text in texts:
        await talk.say(text)


async def test_a_dose_that_was_logged_is_not_planned_again(talk: Talk) -> None:
    await told(talk, *FERN)
    (plan,) = await talk.say("dose kh 6")
    await talk.press(1, plan)
    await talk.wait(hours=2)
    (again,) = await talk.say("dose kh 6")
    assert again.lines[0].text.startswith("Fern: No second dose yet")
    assert again.facts["refused"] == "dosed_since"
    assert "grams" not in again.facts
    await talk.wait(hours=24)
    await talk.say("kh 5 ph 7.2 ammonia 0")
    assert (await talk.facts("dose kh 7"))["grams"] > 0


async def test_water_that_was_changed_is_tested_first(talk: Talk) -> None:
    await told(talk, *FERN)
    await talk.wait(hours=5)
    await told(talk, "changed 5%")
    await talk.wait(hours=1)
    (reply,) = await talk.say("dose kh 6")
    assert reply.lines[0].text.startswith("Retest first: water was changed since the KH reading")
    assert reply.facts["retest_first"] == ["kh"]
    await told(talk, "changed 30%")
    (reply,) = await talk.say("dose kh 6")
    assert reply.facts["refused"] == "diluted_since"


async def test_a_fresh_reading_does_not_open_a_second_step_of_the_day(talk: Talk) -> None:
    await told(talk, FERN[0], "kh 4 gh 8 ph 7.2 temp 24 ammonia 0", "dose kh 8", "log it")
    await talk.wait(hours=1)
    await told(talk, "kh 5 ph 7.3 ammonia 0")
    (reply,) = await talk.say("dose kh 8")
    assert reply.facts["refused"] == "moved_today"
    assert reply.facts["was"] == 4.0
    await talk.wait(hours=23)
    await told(talk, "kh 5 ph 7.3 ammonia 0")
    assert "refused" not in await talk.facts("dose kh 8")


async def test_changes_of_one_day_count_together(talk: Talk) -> None:
    await told(talk, FERN[0], "kh 3 gh 5 ph 7.0 no3 60 ammonia 0 temp 25",
               "/source tap ph 8 kh 12 gh 15 no3 10 temp 24 chlorine 0")  # fmt: skip
    assert "within the limits" in await talk.text("what if i change 11%")
    await talk.wait(hours=1)
    await told(talk, "changed 11%")
    await talk.wait(hours=1)
    assert (await talk.facts("what if i change 11%"))["refused"] == "changed_today"
    await told(talk, "kh 4 gh 6 ph 7.2 ammonia 0 temp 25")
    assert (await talk.facts("what if i change 11%"))["refused"] == "moved_today"
    await talk.wait(hours=24)
    await told(talk, "kh 4 gh 6 ph 7.2 ammonia 0 temp 25")
    assert "refused" not in await talk.facts("what if i change 11%")


async def test_an_emergency_is_said_and_stands_in_the_facts(talk: Talk) -> None:
    await told(talk, FERN[0], "kh 3 ph 7.2 temp 24 ammonia 0")
    await talk.wait(hours=48)
    await told(talk, "kh 2.5 ph 6.6 temp 24 ammonia 0")
    (reply,) = await talk.say("dose kh 4.5")
    assert "an emergency, so up to 2 °dH a day" in reply.lines[0].text
    assert reply.facts["emergency"] is True
    assert len(reply.facts["parts"]) == 1


async def test_a_reefs_daily_need_is_told_with_the_correction(talk: Talk) -> None:
    await told(talk, *REEF)
    await talk.wait(hours=48)
    await told(talk, "kh 7.5 ph 8.2 ammonia 0")
    (reply,) = await talk.say("dose alk 9")
    assert "it uses 0.75 °dH KH a day" in reply.text
    # 30 mg/L of bicarbonate a degree: common practice.
    assert reply.facts["upkeep"]["grams"] == pytest.approx(0.75 * 0.03 * 200, rel=5e-3)
    (both,) = await talk.say("dose alk 9 calcium 450")
    assert both.facts["refused"] == "one_at_a_time"
    assert "grams" not in both.facts


async def test_the_interval_of_the_kits_stands_in_the_facts_and_under_more(talk: Talk) -> None:
    await told(talk, *FERN)
    (reply,) = await talk.say("dose kh 6")
    interval = reply.facts["interval"]
    assert interval["kh"] == pytest.approx([5.05, 5.95], abs=0.05)
    assert interval["ph_stood"][0] < reply.facts["ph_stood"][0] < interval["ph_stood"][1]
    assert "by your kits' doubt" in reply.text
    assert "By your kits' steps and 5 % of the volume" in await talk.text("more")


@pytest.mark.parametrize(
    ("asked", "says"),
    [
        ("what if i change 0%", "between 1 and 100 %"),
        ("what if i change 150%", "between 1 and 100 %"),
        ("what does 3 spoons of baking soda do in 100 l", "a spoon is no weight"),
        ("how much vinegar to lower kh", "No vinegar for water with animals"),
        ("how much salt for fern", "What is the salt for?"),
        ("dose iron 0.1", "No number for iron yet"),
        ("what does 100 g baking soda do in fern", "Too much for one day with animals"),
        ("how much baking soda for 0 l from kh 3 to 6", "No plan for 0 L"),
        ("how much baking soda for 0.3 ml from kh 3 to 6", "No plan for 0.0003 L"),
        ("how much baking soda for 3,000,000 l from kh 3 to 6", "No plan for 3000000 L"),
        ("dose kh 3", "is already at 3 °dH or over"),
        ("how much gypsum for 100 l gh 3 to 45", "suits no tank"),
    ],
)
async def test_the_first_line_says_what_is_wrong_or_missing(
    talk: Talk, asked: str, says: str
) -> None:
    await told(talk, *FERN)
    (reply,) = await talk.say(asked)
    assert says in reply.lines[0].text


async def test_plant_food_waits_while_ammonia_is_a_danger(talk: Talk) -> None:
    await told(talk, FERN[0], "kh 8 ph 8 temp 27 ammonia 3 no3 5")
    (reply,) = await talk.say("dose nitrate 15 as no3")
    assert reply.facts["refused"] == "ammonia_already"
    assert "buffer" not in reply.lines[0].text


async def test_asked_whether_to_change_water_dangerous_ammonia_is_told(talk: Talk) -> None:
    await told(talk, FERN[0], "kh 8 ph 8 temp 27 ammonia 3")
    (reply,) = await talk.say("should i change water?")
    assert reply.lines[0].text.startswith("Fern: yes.")
    assert "Stop feeding" in reply.text


async def test_a_value_that_jumped_is_read_again_before_any_dose(talk: Talk) -> None:
    """KH 8 to 2 over night may be a slip of the kit; read the same twice it is so."""
    await talk.say("/tank new Fern 100 l fresh")
    await talk.say("kh 8 gh 8 ph 7.4 ammonia 0 temp 25")
    await talk.wait(hours=20)
    await talk.say("kh 2 ph 7")
    assert (await talk.facts("dose kh 4"))["refused"] == "jumped"
    assert "refused" not in await talk.facts("dose gh 9")
    await talk.wait(hours=1)
    await talk.say("kh 2")
    assert "refused" not in await talk.facts("dose kh 4")


@pytest.mark.parametrize(
    "text",
    [
        "i have no dechlorinator",
        "ich habe keinen wasseraufbereiter",
        "je n'ai pas de conditionneur",
        "no tengo anticloro",
        "não tenho condicionador",
        "non ho anticloro",
        "ik heb geen waterconditioner",
        "nie mam uzdatniacza",
        "jag har ingen vattenberedning",
    ],
)
async def test_who_has_no_dechlorinator_is_not_told_to_put_it_in(talk: Talk, text: str) -> None:
    await talk.say("/tank new Fern 120 l fresh")
    assert (await talk.text(text)).startswith("Tap water must be dechlorinated")


@pytest.mark.parametrize(
    "text",
    [
        "do i need dechlorinator",
        "i have thiosulfate, do i still need a dechlorinator",
        "is water conditioner really necessary",
        "must i dechlorinate",
        "brauche ich wasseraufbereiter",
        "ist ein aufbereiter nötig",
        "muss ich entchloren",
        "faut il un conditionneur d'eau",
        "l'anti chlore est il obligatoire",
        "hace falta acondicionador",
        "tengo que declorar",
        "é preciso condicionador",
        "tenho que usar anticloro",
        "ho bisogno del biocondizionatore",
        "bisogna declorare",
        "is een waterbereider nodig",
        "moet ik ontchloren",
        "czy uzdatniacz jest potrzebny",
        "czy muszę uzdatniać",
        "behövs vattenberedning",
        "måste jag avklorera",
    ],
)
async def test_whether_tap_water_needs_it_is_not_answered_like_a_no(talk: Talk, text: str) -> None:
    told = await talk.text(text)
    assert told.startswith("Tap water must be dechlorinated before it meets animals")
    assert "how much thiosulfate" in told


@pytest.mark.parametrize(
    "text",
    [
        "how much water conditioner do i need for 20 l",
        "wie viel wasseraufbereiter ist nötig für 10 l",
        "combien d'anti chlore faut il pour 10 l",
    ],
)
async def test_how_much_of_it_is_no_question_whether(talk: Talk, text: str) -> None:
    assert "must be dechlorinated" not in await talk.text(text)


@pytest.mark.parametrize(
    "text", ["changed 50% no dechlorinator", "ran out of conditioner so i changed 30% without"]
)
async def test_water_that_went_in_without_it_is_an_emergency(talk: Talk, text: str) -> None:
    await talk.say("/tank new Fern 120 l fresh")
    assert "No more tap water" in await talk.text(text)


async def test_hours_are_no_carbon_dioxide(talk: Talk) -> None:
    await talk.say("/tank new Fern 120 l fresh")
    assert "CO2 24" not in await talk.text("co2 on 24h ok?")


async def test_lime_without_a_wish_is_refused(talk: Talk) -> None:
    await talk.say("/tank new Pond 3000 l pond")
    assert (await talk.facts("how much lime"))["refused"] == "carbonate"


async def test_how_to_dechlorinate_is_how_much(talk: Talk) -> None:
    assert (await talk.facts("how do i dechlorinate 10 l"))["volume_l"] == 10
    assert "chlorine" in await talk.text("should i dechlorinate")


async def test_grams_in_a_tank_of_unknown_volume_are_asked_about(talk: Talk) -> None:
    await talk.say("/tank new Q fresh")
    assert "How many litres" in await talk.text("put 10kg salt in")
    await talk.say("/tank new Fern 120 l fresh")
    assert "How many litres" not in await talk.text("put 1 g baking soda in")
