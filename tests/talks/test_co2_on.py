"""CO2 that is turned on again while there is far too much of it is turned off again."""

from __future__ import annotations

import pytest

from core.message.co2_on import turned_on
from tests.chat.harness import Talk

ON = (
    "turned co2 back on",
    "co2 is back on",
    "turned the co2 up",
    "CO2 wieder angemacht",
    "j'ai rallumé le co2",
    "włączyłem co2",
)
OTHER = ("turned co2 off", "should i turn co2 on?", "co2 30", "is co2 on", "co2 not on")


@pytest.mark.parametrize("text", ON)
async def test_too_much_of_it_is_warned_of(talk: Talk, text: str) -> None:
    await talk.say("/tank new Fern 100 l fresh")
    await talk.say("ph 6.2 kh 5")
    (reply,) = await talk.say(text)
    assert "off again" in reply.lines[0].text
    (found,) = reply.facts["findings"]
    assert f"{found['co2_mg_l']:.0f} mg/L" in reply.text


async def test_nothing_is_warned_of_where_it_is_little(talk: Talk) -> None:
    await talk.say("/tank new Fern 100 l fresh")
    await talk.say("ph 7.4 kh 5")
    assert "off again" not in await talk.text("turned co2 back on")


@pytest.mark.parametrize("text", [*OTHER[:3], OTHER[4]])
def test_other_talk_of_it_is_none(text: str) -> None:
    assert not turned_on(text)


@pytest.mark.parametrize(
    "text",
    [
        "turned it down a bit",
        "turned down the co2",
        "habe co2 runtergedreht",
        "j'ai baissé le co2 un peu",
        "lo bajé un poco",
        "baixei um pouco o co2",
        "ho abbassato un po' la co2",
        "heb het lager gezet",
        "zmniejszyłem trochę co2",
        "jag sänkte co2 lite",
    ],
)
async def test_co2_turned_down_is_tested_again_in_an_hour(talk: Talk, text: str) -> None:
    await talk.say("/tank new Fern 100 l fresh")
    await talk.say("ph 6.2 kh 5")
    (reply,) = await talk.say(text)
    assert "pH again in an hour" in reply.text
    assert "CO2 off, and air at once" in reply.text
    assert reply.facts["findings"][0]["id"] == "much_co2"


@pytest.mark.parametrize("before", ["ph 7.2 kh 5", "ph 6.2 kh 5 temp 34"])
async def test_what_else_may_be_turned_down_is_no_co2(talk: Talk, before: str) -> None:
    await talk.say("/tank new Fern 100 l fresh")
    await talk.say(before)
    (*_, reply) = await talk.say("turned it down a bit")
    assert "pH again in an hour" not in reply.text


async def test_deadly_co2_is_said_each_time(talk: Talk) -> None:
    await talk.say("/tank new Fern 100 l fresh")
    first = await talk.text("ph 6.2 kh 5")
    assert "CO2 is about 104 mg/L" in first
    assert "CO2 is about 104 mg/L" in await talk.text("ph 6.2")
    await talk.say("ph 6.5")
    assert "CO2 is about" not in await talk.text("ph 6.6")


AGAIN = (
    "can i turn it on again",
    "can i turn co2 back on",
    "kann ich es wieder anmachen",
    "je peux rallumer le co2",
    "posso riaccendere co2",
    "mogę znowu włączyć co2",
)


@pytest.mark.parametrize("text", AGAIN)
async def test_it_may_be_on_again_by_what_was_tested_since(talk: Talk, text: str) -> None:
    await talk.say("/tank new Fern 100 l fresh")
    await talk.say("ph 6.4 kh 4")
    await talk.say("turned co2 off")
    assert "leave CO2 off" in await talk.text(text)
    await talk.wait(hours=3)
    await talk.say("ph 6.4")
    assert "Leave it off" in await talk.text(text)
    await talk.wait(hours=3)
    await talk.say("ph 7.6")
    (reply,) = await talk.say(text)
    assert reply.facts["co2_span"][1] < 30
    assert "less than before" in reply.text


@pytest.mark.parametrize("text", ["can i turn it on again", "can i turn the heater on"])
async def test_what_was_not_shut_off_is_not_spoken_of(talk: Talk, text: str) -> None:
    await talk.say("/tank new Fern 100 l fresh")
    await talk.say("ph 6.4 kh 4")
    assert "co2_mg_l" not in await talk.facts(text)
    assert "leave CO2 off" not in await talk.text(text)


STUCK = (
    "the regulator is stuck open i think",
    "the solenoid won't shut",
    "das Magnetventil schließt nicht mehr",
    "l'électrovanne reste ouverte",
)


@pytest.mark.parametrize("text", STUCK)
async def test_a_valve_that_is_stuck_open_is_closed_at_the_cylinder(talk: Talk, text: str) -> None:
    await talk.say("120 litres")
    await talk.say("fish hang near the surface, co2 is on")
    (told, *_rest) = await talk.say(text)
    assert told.facts["emergency"] == "co2_high"
    assert "close the cylinder's own valve" in told.text
    assert "then air" in told.text.casefold()
    assert "no extra air" not in told.text


@pytest.mark.parametrize(
    "text", ["can a regulator get stuck open", "solenoid is stuck shut", "heater is stuck on"]
)
async def test_other_things_that_stick_are_none(talk: Talk, text: str) -> None:
    await talk.say("120 litres")
    assert "cylinder's own valve" not in await talk.text(text)


async def test_no_more_of_it_while_they_gasp(talk: Talk) -> None:
    await talk.say("120 litres")
    asked = "should I turn the co2 up a little for the plants"
    assert "stays off" not in await talk.text(asked)
    await talk.say("fish are gasping")
    told = await talk.text(asked)
    assert "CO2 stays off today" in told
    assert "Air now" in told


async def test_who_was_told_to_gasp_is_aired_until_better(talk: Talk) -> None:
    await talk.say("120 litres")
    await talk.say("fish are gasping")
    assert "no extra air" not in await talk.text("fish are dying")
