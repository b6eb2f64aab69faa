"""`no, 40` right behind a question about a value: the number meant, as after a stored reading."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk


@pytest.mark.parametrize(
    ("told", "said", "analyte", "value"),
    [
        ("ph 72", "no, 7.4", "ph", 7.4),
        ("ph 72", "nein, 7,4", "ph", 7.4),
        ("ph 72", "non, 7,4", "ph", 7.4),
        ("ph 72", "7.4 i mean", "ph", 7.4),
        ("kh 54", "no, 4", "kh", 4.0),
        ("nitrate 10 or 20", "sorry, 40", "nitrate", 40.0),
        ("salinity 1.02", "no, 2", "salinity", 2.0),
    ],
)
async def test_the_doubted_value_is_stored_with_the_number_meant(
    talk: Talk, told: str, said: str, analyte: str, value: float
) -> None:
    await talk.say("/tank new Fern 110 l fresh")
    (asked,) = await talk.say(told)
    assert "Not stored" in asked.text
    (stored,) = await talk.say(said)
    (kept,) = stored.facts["values"]
    assert (kept["analyte"], kept["canonical"]) == (analyte, value)
    (late,) = await talk.press(1, asked)
    assert "values" not in late.facts


async def test_what_is_still_doubtful_with_it_is_asked_again(talk: Talk) -> None:
    await talk.say("/tank new Fern 110 l fresh")
    await talk.say("cl 40")
    (asked,) = await talk.say("no, 4")
    assert [button.label for button in asked.buttons][:2] == ["chlorine 4", "chloride 4"]


async def test_a_bare_no_leaves_it_out(talk: Talk) -> None:
    await talk.say("/tank new Fern 110 l fresh")
    await talk.say("temp 400")
    assert await talk.text("no") == "Left out."


@pytest.mark.parametrize("said", ["make that 0.5", "no, 0.5"])
async def test_the_day_of_a_misspelt_word_stays_with_the_number(talk: Talk, said: str) -> None:
    await talk.say("/tank new Fern 110 l fresh")
    (asked,) = await talk.say("yestrday 8pm amonia 0.25")
    assert "yesterday 20:00" in asked.text
    await talk.say(said)
    assert "yesterday 20:00: ammonia 0.5" in await talk.text("history ammonia")


async def test_the_button_keeps_the_day_as_well(talk: Talk) -> None:
    await talk.say("/tank new Fern 110 l fresh")
    (asked,) = await talk.say("yesterdy 8pm kh 5")
    await talk.press(1, asked)
    assert "yesterday 20:00: KH 5" in await talk.text("history kh")


async def test_a_misspelt_name_beside_it_keeps_the_day_too(talk: Talk) -> None:
    await talk.say("/tank new Fern 110 l fresh")
    (asked,) = await talk.say("yestreday nitrtae 30")
    await talk.press(1, asked)
    assert "yesterday 12:00: nitrate 30" in await talk.text("history nitrate")


async def test_a_word_that_is_no_slip_of_a_time_gives_none(talk: Talk) -> None:
    await talk.say("/tank new Fern 110 l fresh")
    (asked,) = await talk.say("elephantine nott kh 5")
    assert ":" not in asked.buttons[0].label
