"""A dose with a question behind it is on record and judged, and the question is answered."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk

SHED = ("/tank new Shed 200 l fresh", "added 8 guppies", "kh 4 gh 8 ph 7.2 temp 24 ammonia 0")


async def shed(talk: Talk) -> None:
    for line in SHED:
        await talk.say(line)
    await talk.wait(hours=1)


@pytest.mark.parametrize(
    "text",
    [
        "i put in 60 g baking soda what happens now",
        "hab 60 g Natron reingetan, was passiert",
        "j'ai mis 60 g de bicarbonate que se passe-t-il",
        "eché 60 g de bicarbonato qué pasa ahora",
        "pus 60 g de bicarbonato o que acontece",
        "ho messo 60 g di bicarbonato cosa succede",
        "60 g zuiveringszout erin gedaan wat gebeurt er nu",
        "wsypałem 60 g sody oczyszczonej co się stanie",
        "hällde i 60 g bikarbonat vad händer",
    ],
)
async def test_the_dose_is_judged_and_what_it_does_is_told(talk: Talk, text: str) -> None:
    """60 g of NaHCO3 (84.007 g/mol) in 200 L are 3.571 meq/L, 10.0 °dH."""
    await shed(talk)
    dosed, did = await talk.say(text)
    assert "Too much for one day: 60 g of sodium bicarbonate (KH +10 °dH" in dosed.lines[1].text
    assert did.facts["kh"] == pytest.approx(10.01, abs=0.02)
    assert did.facts["grams"] == 60.0
    assert "spread it over" not in did.text
    (again,) = await talk.say("is that safe")
    assert again.lines[0].text.startswith("Shed: Too much for one day")


@pytest.mark.parametrize(
    "text",
    ["put 60 g of baking soda in what do i do now", "60 g zuiveringszout erin, wat nu",
     "60 g Natron rein, was jetzt", "wsypałem 60 g sody oczyszczonej co teraz"],
)  # fmt: skip
async def test_what_now_behind_a_dose_gives_the_steps(talk: Talk, text: str) -> None:
    await shed(talk)
    dosed, steps = await talk.say(text)
    assert dosed.facts["findings"][0]["id"] == "overdose"
    assert steps.facts["emergency"] == "overdose"


@pytest.mark.parametrize("text", ["what did that do", "was hat das bewirkt", "co to zrobiło"])
async def test_what_a_dose_did_is_told_later(talk: Talk, text: str) -> None:
    await shed(talk)
    await talk.say("dosed 60 g baking soda")
    await talk.wait(hours=1)
    (reply,) = await talk.say(text)
    assert reply.facts["kh"] == pytest.approx(10.01, abs=0.02)
    assert reply.facts["findings"][0]["id"] == "overdose"
    await talk.wait(days=4)
    assert all("kh" not in each.facts for each in await talk.say(text))


async def test_of_a_thing_that_nobody_knows_nothing_is_called_well(talk: Talk) -> None:
    await shed(talk)
    dosed, which, did = await talk.say("i put in 20 g soda what happened")
    assert dosed.facts["events"][0]["substance"] == "soda"
    assert which.facts["ask"] == "soda"
    assert did.facts["refused"] == "substance_unknown"
    for text in ("is that safe", "what do i do now", "is my water ok"):
        said = await talk.text(text)
        assert "Change nothing" not in said
        assert "I do not know what is in the soda that went in" in said
    await talk.wait(hours=1)
    await talk.say("kh 4 ph 7.2 ammonia 0 nitrite 0")
    assert "Change nothing" in await talk.text("is my water ok")


async def test_what_only_might_go_in_is_not_stored(talk: Talk) -> None:
    await shed(talk)
    for text in (
        "what happens if i put in 60 g baking soda",
        "was passiert wenn ich 60 g Natron reintue",
    ):
        for reply in await talk.say(text):
            assert "events" not in reply.facts
    assert "over at least" in await talk.text("is that safe")  # so much
    assert "within the limits" in await talk.text("how is shed")


async def test_spoons_are_told_as_the_least_that_they_weigh(talk: Talk) -> None:
    await shed(talk)
    await talk.say("dosed 6 spoons of baking soda")
    assert "the least that such spoons weigh" in await talk.text("what did that do")
