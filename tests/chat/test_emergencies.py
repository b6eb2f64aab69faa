"""Calls for help: the first steps do no harm, and stand in the first line."""

from __future__ import annotations

import pytest

from bot.chat.words.poison_lines import LINES, whom_to_call
from bot.countries import country_of
from core.advice.calls import recognise
from tests.chat.harness import Talk

ZONES = {
    "Europe/Lisbon": "PT",
    "Europe/London": "GB",
    "America/Toronto": "CA",
    "America/Chicago": "US",
    "Pacific/Auckland": "NZ",
    "UTC": None,
}


@pytest.mark.parametrize(
    ("text", "danger"),
    [
        ("help ammonia", "ammonia"),
        ("ammonia spike!!", "ammonia"),
        ("help nitrite is high", "nitrite"),
        ("fish gasping", "gasping"),
        ("they are all hanging at the surface", "gasping"),
        ("ph crashed", "ph_crash"),
        ("my ph crashed overnight", "ph_crash"),
        ("forgot the dechlorinator", "chlorine"),
        ("help chlorine", "chlorine"),
        ("overdose", "overdose"),
        ("i dosed way too much", "overdose"),
        ("heater stuck on", "heater_hot"),
        ("heater broke", "heater"),
        ("heater broke, water is 12 degrees", "heater_cold"),
        ("heater failed, water at 93 f", "heater_hot"),
        ("power cut", "power"),
        ("no electricity since noon", "power"),
        ("a child drank it", "swallowed"),
        ("the dog ate the salt", "pet"),
        ("my fish are dying", "general"),
        ("the fish ate well", None),
        ("cleaned the heater", None),
        ("power head cleaned", None),
        ("kh 4", None),
    ],
)
def test_what_is_a_call_for_help(text: str, danger: str | None) -> None:
    assert recognise(text) == danger


@pytest.mark.parametrize(
    ("text", "first", "never"),
    [
        ("fish gasping", "Air now", "baking soda"),
        ("ph crashed", "no buffer before ammonia is measured", "baking soda"),
        (
            "forgot the dechlorinator",
            "Dechlorinator (thiosulfate) into the tank now",
            "vinegar now",
        ),
        ("overdose", "Stop dosing", "antidote"),
        ("heater stuck on", "Pull the heater's plug now", "ice into"),
        ("power cut", "Air is first", "feed them"),
        ("a child drank it", "Call the poison line", "make them vomit now"),
        ("kid ate copper sulfate", "Call the poison line", "formalin"),
        ("kid drank 5 ml formalin", "Call the poison line", "shrimps"),
        ("i got the kh reagent in my eye", "Rinse now under running water", "Call now, if"),
        ("child fell in the pond", "Out of the water now", "fish"),
        ("wife fainted near the tank", "Call for help now", "gasp"),
        ("breathing is hard after cleaning tank", "fresh air now", "feeding"),
        ("cut by glass bleeding a lot", "Press hard on the wound", "Change"),
        ("help nitrite", "Stop feeding", "clean the filter now"),
        ("my fish are dying", "Stop feeding, dose nothing", "medicine now"),
    ],
)
async def test_the_first_line_is_the_first_step(
    talk: Talk, text: str, first: str, never: str
) -> None:
    (reply,) = await talk.say(text)
    assert first in reply.lines[0].text
    assert never not in reply.text
    assert len(reply.lines) <= 6
    assert "emergency" in reply.facts


async def test_ammonia_at_low_ph_gets_no_air_and_no_buffer(talk: Talk) -> None:
    """Driving CO2 off at pH 6.6, KH 4, 1 mg/L: 0.0023 to 0.024-0.10 NH3-N (limits, PHREEQC)."""
    await talk.say("/tank new Fern 120 l fresh")
    await talk.say("ph 6.6 kh 4 ammonia 1 temp 25")
    (reply,) = await talk.say("help ammonia")
    assert "No buffer and no extra air while nobody gasps" in reply.lines[0].text
    assert reply.facts["nh3_n"] == pytest.approx(0.0023, rel=0.05)
    assert "If they gasp: air at once" in reply.text


async def test_ammonia_at_high_ph_gets_air_and_a_change_of_matched_water(talk: Talk) -> None:
    """Of a water that nobody knows, only what is like the tank's own: it cannot do harm."""
    await talk.say("/tank new Quarry 240 l fresh")
    await talk.say("ph 8.2 kh 12 ammonia 2 temp 25")
    (reply,) = await talk.say("help ammonia")
    assert "aerate" in reply.lines[0].text
    assert "a tenth to a quarter" in reply.lines[1].text
    assert "the tank's own pH and KH" in reply.lines[1].text
    assert "No buffer" in reply.text


async def test_the_emergency_number_is_the_keepers_own(talk: Talk) -> None:
    assert "112" not in await talk.text("a child drank it")
    await talk.say("/zone Europe/Lisbon")
    assert "112" in await talk.text("a child drank it")


async def test_people_talking_in_a_group_are_left_alone(group: Talk) -> None:
    assert await group.say("my fish are gasping") == []
    (reply,) = await group.say("my fish are gasping", addressed=True)
    assert reply.facts["emergency"] == "gasping"


async def test_a_note_is_a_note(talk: Talk) -> None:
    await talk.say("/tank new Fern 120 l fresh")
    (reply,) = await talk.say("note heater replaced, fish looked dying before")
    assert "emergency" not in reply.facts


async def test_an_alarm_leads_to_its_first_steps_within_one_message(talk: Talk) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    (alarm,) = await talk.say("ph 8.2 temp 25 ammonia 2")
    place = [button.label for button in alarm.buttons].index("what now") + 1
    (pressed,) = await talk.press(place, alarm)
    assert pressed.facts["emergency"] == "ammonia"
    assert pressed.facts["ammonia"] == 2
    assert (await talk.facts("what now"))["emergency"] == "ammonia"
    (calm,) = await talk.say("ph 7 kh 5 ammonia 0")
    assert "what now" not in [button.label for button in calm.buttons]


async def test_a_mishap_beside_a_change_keeps_the_change_and_no_dose(talk: Talk) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    kept, steps = await talk.say("changed 30% and forgot the dechlorinator")
    assert kept.facts["events"][0]["percent"] == 30
    assert steps.facts["emergency"] == "chlorine"
    (only,) = await talk.say("i put in tap water without dechlorinator")
    assert only.facts["emergency"] == "chlorine"
    async with talk.app.database.read() as uow:
        assert len(await uow.log.events(1)) == 1


@pytest.mark.parametrize("zone", ZONES)
def test_the_country_of_a_zone(zone: str) -> None:
    """Codes of ISO 3166, from memory."""
    assert country_of(zone) == ZONES[zone]


def test_whom_to_call_names_its_guess_and_an_emergency_number() -> None:
    for code, lines in LINES.items():
        told = whom_to_call(code)
        assert f"if you are in {lines.country}" in told
        assert lines.emergency in told
    assert "local emergency number" in whom_to_call(None)


async def test_a_fish_that_still_breathes_is_not_stored_as_dead(talk: Talk) -> None:
    await talk.say("/tank new Z 100 l fresh")
    (reply,) = await talk.say("i think my fish is dead but gill moves")
    assert reply.facts["emergency"] == "maybe_dead"
    assert "it lives" in reply.lines[0].text
    assert "Nothing is stored" in reply.lines[0].text
    assert "lost" not in reply.text
    assert "lost 2 guppies" in await talk.text("2 guppies died")


async def test_what_a_person_drank_is_no_dose_of_the_tank(talk: Talk) -> None:
    await talk.say("/tank new Z 100 l fresh")
    (reply,) = await talk.say("kid drank 5 ml formalin")
    assert reply.facts["emergency"] == "swallowed"
    assert "dosed" not in reply.text


@pytest.mark.parametrize(
    ("line", "analyte"),
    [
        ("nitrite 5 fish gasping", "nitrite"),
        ("fish gasping nitrite 5", "nitrite"),
        ("peces boqueando nitrito 5", "nitrite"),
        ("ph 6.2 fische schnappen luft", "ph"),
        ("poissons suffoquent nitrite 3", "nitrite"),
        ("fish gasping ammonia 2 what do i do", "ammonia"),
    ],
)
async def test_a_value_in_one_breath_with_a_call_is_kept(
    talk: Talk, line: str, analyte: str
) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    replies = await talk.say(line)
    assert replies[0].facts["emergency"] == "gasping"
    assert analyte in [v["analyte"] for r in replies for v in r.facts.get("values", ())]


@pytest.mark.parametrize(
    "line",
    [
        "tap nitrite 5 fish gasping",
        "nitrite should be 0 fish gasping",
        "nitrite 5 yesterday maybe not sure fish gasping",
        "i want nitrite 0 fish gasping",
    ],
)
async def test_a_value_that_other_words_bear_on_is_not_kept(talk: Talk, line: str) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    replies = await talk.say(line)
    assert replies[0].facts["emergency"] == "gasping"
    assert not [v for r in replies for v in r.facts.get("values", ())]


async def test_a_pet_that_peed_in_is_a_call_and_none_died(talk: Talk) -> None:
    await talk.say("/tank new fern 90 l fresh")
    replies = await talk.say("dog peed in the tank")
    assert [each.facts.get("emergency") for each in replies] == ["contaminated"]


async def test_a_heater_off_in_cold_water_is_a_call_and_the_warmth_is_kept(talk: Talk) -> None:
    await talk.say("/tank new fern 90 l fresh")
    steps, kept = await talk.say("heater off its 16 in there")
    assert steps.facts["emergency"] == "heater_cold"
    assert "temperature 16 °C" in kept.text
