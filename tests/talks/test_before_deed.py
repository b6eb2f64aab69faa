"""What was measured before a dose: it is of before, and nothing is built on it as if it held."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk

DOSES = (
    "added 2 g of baking soda, kh was 2",
    "put in 2 g baking soda. it was kh 2 before",
    "kh was 2 so i put in 2 g baking soda",
    "habe 2 g natron rein weil kh nur 2 war",
    "mis 2 g de bicarbonate car le kh était à 2",
    "eché 2 g de bicarbonato, el kh estaba en 2",
    "coloquei 2 g de bicarbonato porque o kh estava em 2",
    "ho messo 2 g di bicarbonato perché il kh era 2",
    "2 g zuiveringszout erin gedaan omdat kh 2 was",
    "dodałem 2 g sody oczyszczonej, bo kh było 2",
    "hällde i 2 g bikarbonat eftersom kh var 2",
)


@pytest.mark.parametrize("told", DOSES)
async def test_a_value_of_before_the_dose_asks_for_no_more(talk: Talk, told: str) -> None:
    await talk.say("/tank new Fern 110 l fresh")
    said = await talk.text(told)
    assert "KH 2 was read before sodium bicarbonate went in" in said
    assert "dose kh" not in said
    asked = await talk.text("how is fern")
    assert "KH 2 was read before" in asked
    assert "dose kh" not in asked
    assert "No second dose yet" in await talk.text("dose kh 4")


async def test_a_soda_that_may_be_either_counts_as_one_that_raises(talk: Talk) -> None:
    await talk.say("/tank new Fern 110 l fresh")
    said = await talk.text("put in 2 g soda, it was at kh 2")
    assert "KH 2 was read before soda went in" in said
    assert "No second dose yet: soda went in after" in await talk.text("dose kh 4")


async def test_what_does_not_raise_it_leaves_the_value_of_use(talk: Talk) -> None:
    await talk.say("/tank new Fern 110 l fresh")
    assert "Ask: dose kh 4" in await talk.text("put in 2 g epsom salt, kh was 2")


@pytest.mark.parametrize(
    "before",
    ["it was kh 2 before", "vorher war kh 2", "avant kh 2", "antes kh 2", "innan var kh 2"],
)
async def test_it_may_be_told_right_after_the_deed(talk: Talk, before: str) -> None:
    await talk.say("/tank new Fern 110 l fresh")
    await talk.say("put in 2 g baking soda")
    await talk.wait(minutes=20)
    assert "KH 2 was read before sodium bicarbonate went in" in await talk.text(before)
    assert "No second dose yet" in await talk.text("dose kh 4")


async def test_a_value_of_now_after_the_dose_is_one_of_now(talk: Talk) -> None:
    await talk.say("/tank new Fern 110 l fresh")
    await talk.say("put in 2 g baking soda, kh was 2")
    await talk.wait(hours=24)
    assert "Ask: dose kh 4" in await talk.text("kh 2.5")


async def test_long_after_the_deed_it_is_asked_about(talk: Talk) -> None:
    await talk.say("/tank new Fern 110 l fresh")
    await talk.say("put in 2 g baking soda")
    await talk.wait(hours=5)
    assert "Did you mean KH 2?" in await talk.text("it was kh 2 before")
