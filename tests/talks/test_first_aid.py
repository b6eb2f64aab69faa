"""First aid does no harm: no more change than the known water allows, by the simulation's rule."""

from __future__ import annotations

import pytest

from bot.chat.words import aid_people, cautions
from bot.chat.words import emergencies as words
from core.advice.calls import OF_PEOPLE, ORDER
from core.advice.emergencies import Help
from tests.chat.harness import Talk


async def test_first_aid_agrees_with_what_if_of_the_same_tank(talk: Talk) -> None:
    """An alkaline source frees the poison of an unbuffered pond: what-if refuses even a little."""
    await talk.say("/tank new Pond 5000 l pond")
    await talk.say("added 8 koi")
    await talk.say("ph 8.0 kh 1 temp 22 ammonia 1")
    await talk.say("/source tap ph 9 kh 12 gh 14 temp 22")
    assert "ammonia" in (await talk.facts("what if i change 30%"))["broken"]
    for said in ("help ammonia", "fish gasping"):
        (reply,) = await talk.say(said)
        assert reply.facts["largest_safe_share"] == 0
        assert "No change with tap as it is" in reply.text
        assert "the tank's own pH and KH" in reply.text


async def test_a_water_like_the_tanks_own_is_changed_by_half_at_most(talk: Talk) -> None:
    """Limits: against poison at most 50 % a time, and litres of the keeper's own tank."""
    await talk.say("/tank new Fern 80 l fresh")
    await talk.say("ph 7.6 kh 5 temp 25 nitrite 3 ammonia 0")
    await talk.say("/source tap ph 7.6 kh 5 total chlorine 0")
    (reply,) = await talk.say("help nitrite")
    assert reply.facts["largest_safe_share"] == 0.5
    assert "Change 50 % (40 L) with tap" in reply.text
    (reply,) = await talk.say("fish gasping")  # the poison is known: the same change, at once
    assert reply.facts["largest_safe_share"] == 0.5


async def test_a_long_neglected_tank_gets_a_tenth(talk: Talk) -> None:
    await talk.say("/tank new Old 120 l fresh")
    await talk.say("ph 5.8 kh 1 no3 150 ammonia 2 temp 25")
    await talk.say("/source tap ph 7.6 kh 8 total chlorine 0")
    (reply,) = await talk.say("fish gasping")
    assert reply.facts["largest_safe_share"] <= 0.1
    assert "RO" in reply.text


async def test_the_sea_asks_for_its_own_salinity(talk: Talk) -> None:
    await talk.say("/tank new Sea 200 l marine")
    await talk.say("salinity 35 ph 8.2 kh 8 temp 25 ammonia 1")
    await talk.say("/source tap ph 7.6 kh 8")
    (reply,) = await talk.say("help ammonia")
    assert "the tank's own salinity" in reply.text
    assert "largest_safe_share" not in reply.facts
    assert "hardly a poison" in await talk.text("help nitrite")


async def test_what_was_just_read_is_not_asked_for_again(talk: Talk) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("ammonia 0 temp 25 ph 7.4")
    (reply,) = await talk.say("fish gasping")
    assert "Measure nitrite and KH now" in reply.text
    await talk.say("nitrite 0 kh 5")
    assert "Measure" not in await talk.text("fish gasping")
    await talk.say("oxygen 2")
    (reply,) = await talk.say("fish gasping")
    assert "xygen" in reply.lines[1].text  # the cause that is known stands second


async def test_no_extra_air_where_ammonia_is_held_by_a_low_ph(talk: Talk) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("ammonia 2 ph 6.6 kh 3 temp 25")
    assert "no extra air" in await talk.text("help ammonia")
    (reply,) = await talk.say("help ammonia, they are gasping")
    assert reply.lines[0].text.startswith("Fern: Air now")
    assert "no extra air" not in reply.text


async def test_nitrite_beside_ammonia_at_a_low_ph_gets_no_air_unasked(talk: Talk) -> None:
    await talk.say("/tank new Fern 120 l fresh")
    (stored,) = await talk.say("ph 6.4 kh 2 temp 25 ammonia 2 nitrite 1")
    (how,) = await talk.say("help nitrite")
    assert "aerate" not in stored.text + how.text
    assert "only if they gasp" in how.lines[0].text
    await talk.say("ph 7.8")
    (how,) = await talk.say("help nitrite")
    assert how.lines[0].text == "Fern: Stop feeding, and aerate."


@pytest.mark.parametrize("call", ["fish gasping", "help my fish are dying", "my fish are sick"])
async def test_chlorine_that_was_read_is_taken_out_first(talk: Talk, call: str) -> None:
    await talk.say("/tank new Fern 120 l fresh")
    await talk.say("ph 7.4 kh 4 temp 25 chlorine 0.5")
    (how,) = await talk.say(call)
    assert how.facts["emergency"] == "chlorine"
    assert "Dechlorinator (thiosulfate) into the tank now" in how.lines[0].text
    assert not any("not dose" in line.text or "dose nothing" in line.text for line in how.lines)


async def test_a_heater_that_failed_is_told_hot_from_cold(talk: Talk) -> None:
    await talk.say("/tank new Bet 20 l fresh")
    (asked,) = await talk.say("heater broke")
    assert "Too hot or too cold?" in asked.lines[0].text
    (cold,) = await talk.press(2, asked)
    assert cold.facts["emergency"] == "heater_cold"
    assert "Warm it 1 °C an hour" in cold.lines[0].text
    assert "fan" not in cold.text
    await talk.say("temp 33")
    assert (await talk.facts("heater broke"))["emergency"] == "heater_hot"
    steps, stored = await talk.say("heater is dead, temp 15")
    assert stored.facts["values"][0]["canonical"] == 15
    assert "lost" not in stored.text
    assert steps.facts["emergency"] == "heater_cold"


async def test_a_question_that_names_a_danger_is_no_question_of_the_diary(talk: Talk) -> None:
    (reply,) = await talk.say("i got a shock when i touched the water")
    assert "Touch neither the water nor metal" in reply.lines[0].text
    await talk.say("/zone Europe/Lisbon")
    assert "112" in await talk.text("electric shock from tank")


async def test_what_now_typed_is_the_first_step_of_what_is_wrong(talk: Talk) -> None:
    (first,) = await talk.say("what now")
    assert "emergency" not in first.facts  # nobody told of any trouble
    assert "fish gasping" in first.text
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("ammonia 0.25 nitrite 0.2 ph 7.8 kh 5 temp 25")
    assert (await talk.facts("what do i do now?"))["emergency"] in {"nitrite", "ammonia"}
    await talk.say("ammonia 0 nitrite 0")
    assert "emergency" not in (await talk.facts("what now"))


async def test_an_illness_in_a_question_of_doses_is_left_to_its_refusal(talk: Talk) -> None:
    (reply,) = await talk.say("how much formalin for 100 l white spots")
    assert "emergency" not in reply.facts
    (reply,) = await talk.say("white spots on my fish what do i do")
    assert "No medicine and no salt by guess" in reply.lines[0].text
    assert "Measure ammonia" in reply.text


async def test_cautions_that_were_not_understood(talk: Talk) -> None:
    asked = {
        "is it safe to put my hand in": "Unplug",
        "can i flush a dead fish": "Not down the toilet",
        "darf ich mit leitungswasser auffüllen": "Top up what evaporates with RO",
        "cat ate fish": "vet",
        "my conditioner is empty, can i still change water": "Tap water must be dechlorinated",
        "can i seal bicarbonate and vinegar bottle to make co2": "Never seal",
        "chlorine smell from tap water today": "No water change",
        "puedo poner lejía en el acuario": "it kills gills",
        "tap no3 80 can my baby drink it": "not for people",
        "can i mix dechlorinator with vinegar to make it stronger": "never mix",
    }
    for text, first in asked.items():
        (reply,) = await talk.say(text)
        assert first in reply.text, text
        assert "events" not in reply.facts, text


@pytest.mark.parametrize(
    "text",
    [
        "is a 100% water change ok",
        "ist ein wasserwechsel von 100% ok",
        "can i do a 100% water change",
    ],
)
async def test_a_change_that_is_asked_about_was_not_done(talk: Talk, text: str) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("kh 2 ph 6.8 temp 25 ammonia 0")
    await talk.say("/source tap ph 7.6 kh 8")
    facts = await talk.facts(text)
    assert facts["share"] == 1.0
    assert facts["broken"]
    async with talk.app.database.read() as uow:
        assert await uow.log.events(1) == []


@pytest.mark.parametrize("text", ["sono morti 2 pesci", "2 fish dead", "changed 30%"])
async def test_what_is_told_is_stored(talk: Talk, text: str) -> None:
    """An Italian loss begins with "are"."""
    await talk.say("/tank new Fern 90 l fresh")
    assert "events" in await talk.facts(text)


async def test_a_doubtful_reading_is_asked_about_after_the_first_steps(talk: Talk) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    aid, asked = await talk.say("temp 34? my fish are dying")
    assert aid.facts["emergency"] == "general"
    await talk.press(1, asked)
    assert (await talk.facts("heater broke"))["emergency"] == "heater_hot"


async def test_a_loss_names_the_cause_that_is_known(talk: Talk) -> None:
    await talk.say("/tank new Koi 3000 l pond")
    (reply,) = await talk.say("lost 2 koi")
    assert "Test ammonia, nitrite, pH and temperature now" in reply.text
    await talk.say("ph 9.2 temp 24 ammonia 0.5 nitrite 0 kh 6")
    (reply,) = await talk.say("lost 2 koi")
    assert "Measured: ammonia 0.5 mg/L" in reply.lines[1].text
    assert "Test " not in reply.text
    assert "what now" in [button.label for button in reply.buttons]
    await talk.say("ph 7.4 ammonia 0")
    assert "show no cause" in await talk.text("lost 1 koi")


async def test_newcomers_of_another_water_go_out_again(talk: Talk) -> None:
    """The water stays as those need it who live in it: nobody lowers a reef for goldfish."""
    await talk.say("/tank new Lagoon 150 l marine")
    await talk.say("added 2 clownfish")
    await talk.say("salinity 35 ph 8.2 kh 8 temp 25")
    (reply,) = await talk.say("added 5 goldfish")
    assert "Take goldfish out again" in reply.lines[1].text
    assert "1 g/kg" not in reply.text
    await talk.say("/tank new Rift 240 l fresh")
    await talk.say("gh 16 kh 13 ph 8 temp 26")
    assert "out again" not in await talk.text("added 6 neon tetra")  # they are alone in it
    await talk.say("added 6 yellow lab")
    assert "Take neon tetra out again" in await talk.text("added 6 neon tetra")


async def test_chloride_of_brackish_water_counts_against_nitrite(talk: Talk) -> None:
    """4 g/kg hold about 2200 mg/L chloride: more than ten times 6.6 mg/L nitrite."""
    await talk.say("/tank new Brack 100 l brackish")
    assert "eased by chloride" in await talk.text("salinity 4 ph 8 kh 6 temp 26 nitrite 2")


async def test_of_readings_of_one_moment_the_newest_counts(talk: Talk) -> None:
    await talk.say("/tank new Rift 240 l fresh")
    await talk.say("ammonia 1 nitrite 1 ph 7.8 temp 25 kh 8")
    await talk.say("ammonia 0 nitrite 0")
    assert "stage" not in await talk.text("is it safe")


def test_every_danger_has_few_and_short_lines() -> None:
    for danger in ORDER:
        told = words.lines(Help(danger), None, "PT")
        assert 3 <= len(told) <= 6, danger
        assert all(len(line) <= 190 for line in told), told
        assert (danger in OF_PEOPLE) == (danger in aid_people.STEPS or danger == "swallowed")
    assert len(words.lines(Help("ammonia", gasping=True), "Fern", None, "known")) <= 6
    assert cautions.caution("hands")


@pytest.mark.parametrize("said", ["washed the filter in tap water", "threw away the filter sponge"])
async def test_a_filter_that_lost_its_life_is_answered_first(talk: Talk, said: str) -> None:
    reply, *stored = await talk.say(said)
    assert reply.facts["emergency"] == "filter_harmed"
    assert "ammonia and nitrite daily" in reply.text.splitlines()[0]
    assert bool(stored) == ("washed" in said)


async def test_a_filter_that_stood_is_rinsed_before_it_runs(talk: Talk) -> None:
    reply = await talk.text("filter off since yesterday")
    assert "rinse it in tank water before it runs" in reply.splitlines()[0]


@pytest.mark.parametrize(
    "said", ["can i turn off the filter at night", "kann ich den Filter nachts ausschalten"]
)
async def test_a_filter_runs_at_night(talk: Talk, said: str) -> None:
    (reply,) = await talk.say(said)
    assert reply.facts == {"caution": "filter_off"}
    assert reply.text.startswith("No")
