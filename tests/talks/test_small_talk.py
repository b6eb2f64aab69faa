"""Relief and thanks while something stands in the tank: what stands, never "Good."."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk

RELIEF = (
    "cool so its ok", "everything fine then", "perfect then", "great all fine then", "ok fine",
    "good night", "dann ist alles gut", "ok donc tout va bien", "entonces todo bien",
    "perfetto allora", "top, dan is alles goed", "świetnie, czyli wszystko dobrze",
    "toppen, då är allt bra", "ok então tudo bem",
)  # fmt: skip


@pytest.mark.parametrize("line", RELIEF)
async def test_relief_is_told_what_stands(talk: Talk, line: str) -> None:
    await talk.say("/tank new fern 90 l fresh")
    await talk.say("ammonia 5")
    (told,) = await talk.say(line)
    assert "Ammonia 5 mg/L" in told.text
    assert told.facts["findings"][0]["id"] == "ammonia_without_ph"


@pytest.mark.parametrize("line", RELIEF)
async def test_relief_in_water_of_which_nothing_is_wrong_is_answered_in_kind(
    talk: Talk, line: str
) -> None:
    await talk.say("/tank new fern 90 l fresh")
    await talk.say("kh 5 ph 7 ammonia 0")
    (told,) = await talk.say(line)
    assert not told.facts.get("findings")


async def test_thanks_are_taken_and_what_stands_is_told(talk: Talk) -> None:
    await talk.say("/tank new fern 90 l fresh")
    await talk.say("temp 35")
    (told,) = await talk.say("thanks")
    assert told.text.startswith("You are welcome")
    assert "35 °C is too warm" in told.text


async def test_the_other_tank_is_not_blamed(talk: Talk) -> None:
    await talk.say("/tank new fern 90 l fresh")
    await talk.say("/tank new moss 50 l fresh")
    await talk.say("fern: temp 35")
    await talk.say("moss: kh 5 ph 7")
    (told,) = await talk.say("thanks")
    assert "35" not in told.text


@pytest.mark.parametrize("line", ["fish are gasping", "2 fish died"])
async def test_a_call_or_a_loss_stands_until_a_test_says_otherwise(talk: Talk, line: str) -> None:
    await talk.say("/tank new fern 90 l fresh")
    await talk.say(line)
    (told,) = await talk.say("ok cool")
    assert "not known to be well" in told.text
    assert len(told.text.splitlines()) <= 2


async def test_a_call_that_was_eased_is_told_as_eased(talk: Talk) -> None:
    await talk.say("/tank new fern 90 l fresh")
    await talk.say("fish are gasping")
    await talk.say("air is on")
    (told,) = await talk.say("super")
    assert "air is on" in told.text


@pytest.mark.parametrize("line", ["ph 5", "ph 5.2"])
async def test_a_very_low_ph_is_warned_of_and_never_called_well(talk: Talk, line: str) -> None:
    await talk.say("/tank new fern 90 l fresh")
    told = await talk.say(line)
    assert [each["id"] for each in told[0].facts["findings"]] == ["low_ph"]
    (judged,) = await talk.say("good right?")
    assert "within the limits" not in judged.text
