"""What is told beside a failed heater: the warmth goes before an older reading."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk


@pytest.mark.parametrize(
    "text",
    [
        "heater broke its 18",
        "heater died tank is cold 18",
        "heater died 18",
        "Heizung kaputt, nur noch 18",
        "chauffage en panne, 18",
        "calentador roto, está a 18",
        "aquecedor avariado, 18 agora",
        "riscaldatore rotto, ora 18",
        "verwarming kapot, nog maar 18",
        "grzałka padła jest 18",
        "doppvärmaren dog 18",
    ],
)
async def test_the_warmth_told_goes_before_an_older_reading(talk: Talk, text: str) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("temp 31")
    steps, stored = await talk.say(text)
    assert steps.facts["emergency"] == "heater_cold"
    assert steps.lines[0].text.startswith("Fern: Warm it 1 °C an hour")
    (value,) = stored.facts["values"]
    assert (value["analyte"], value["canonical"]) == ("temperature", 18.0)
    assert not stored.facts.get("events")
    assert "retest before doing anything" not in stored.text
    assert (await talk.facts("what now"))["emergency"] == "heater_cold"


async def test_the_dead_told_beside_a_failed_heater_are_counted(talk: Talk) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    steps, stored = await talk.say("heater broke, lost 18")
    assert steps.facts["emergency"] == "heater"
    (event,) = stored.facts["events"]
    assert (event["kind"], event["count"]) == ("lost", 18)


async def test_a_reading_from_before_the_failure_does_not_tell_hot_from_cold(talk: Talk) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("temp 31")
    (asked,) = await talk.say("heater broke, 18 tetras alive")
    assert asked.facts["emergency"] == "heater"
    await talk.wait(hours=4)
    (asked,) = await talk.say("heater broke")
    assert "Too hot or too cold?" in asked.text


async def test_fahrenheit_is_told_by_the_number(talk: Talk) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    steps, stored = await talk.say("heater failed, 63")
    assert steps.facts["emergency"] == "heater_cold"
    assert stored.facts["values"][0]["canonical"] == pytest.approx(17.2, abs=0.05)
