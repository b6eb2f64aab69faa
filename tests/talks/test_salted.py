"""Salt that went in against nitrite is counted: first aid and the planner offer none on top."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk

OFFER = "how much salt for nitrite"


async def _poisoned(talk: Talk) -> None:
    await talk.say("/tank new Fern 75 l fresh")
    await talk.say("nitrite 2 ph 7.5 temp 25 kh 5")
    assert OFFER in await talk.text("now what")
    await talk.wait(minutes=10)


@pytest.mark.parametrize("asked", ["now what", "what now", "was nun", "et maintenant"])
async def test_salt_by_its_grams_is_counted(talk: Talk, asked: str) -> None:
    """30 g of NaCl in 75 L is 243 mg/L Cl (60.7 % by mass), over the 100 mg/L of a day."""
    await _poisoned(talk)
    await talk.say("put in 30 g salt")
    told = await talk.text(asked)
    assert OFFER not in told
    assert "243 mg/L chloride" in told
    assert "more than goes in on a day" in told


async def test_a_little_salt_is_counted_too(talk: Talk) -> None:
    await _poisoned(talk)
    await talk.say("put in 5 g salt")
    told = await talk.text("now what")
    assert OFFER not in told
    assert "40 mg/L chloride" in told
    assert "no more before I have said so" in told


@pytest.mark.parametrize(
    "deed",
    [
        "added salt",
        "i put in 2 tablespoons of salt",
        "2 Esslöffel Salz rein",
        "j'ai mis du sel",
        "eché sal",
        "coloquei sal",
        "ho messo il sale",
        "dodałem sól",
        "tillsatte salt",
    ],
)
async def test_salt_that_nobody_weighed_is_counted(talk: Talk, deed: str) -> None:
    await _poisoned(talk)
    await talk.say(deed)
    told = await talk.text("now what")
    assert OFFER not in told
    assert "Salt went in already: no more of it" in told
    (refused,) = await talk.say("how much salt for nitrite")
    assert refused.facts["refused"] == "salt_unweighed"


@pytest.mark.parametrize(
    "weighed",
    [
        "thats about 30 g",
        "it was 30 g",
        "30 g",
        "das waren etwa 30 g",
        "c'était environ 30 g",
        "eran unos 30 g",
        "foram uns 30 g",
        "erano circa 30 g",
        "het was 30 g",
        "to było około 30 g",
        "det var cirka 30 g",
    ],
)
async def test_its_grams_are_told_later(talk: Talk, weighed: str) -> None:
    await _poisoned(talk)
    await talk.say("i put in 2 tablespoons of salt")
    (corrected,) = await talk.say(weighed)
    assert "dosed 30 g sodium chloride" in corrected.text
    assert "243 mg/L chloride" in await talk.text("now what")


async def test_spoons_behind_the_question_of_salt_are_salt(talk: Talk) -> None:
    await _poisoned(talk)
    await talk.say("how much salt")
    (stored,) = await talk.say("i put in 2 tablespoons")
    (event,) = stored.facts["events"]
    assert (event["substance"], event["spoons"]) == ("sodium chloride", 6.0)
    assert OFFER not in await talk.text("now what")


async def test_a_thing_without_a_name_keeps_salt_from_being_offered(talk: Talk) -> None:
    await _poisoned(talk)
    assert "What was it that went in?" in await talk.text("i put in 2 tablespoons")
    told = await talk.text("now what")
    assert OFFER not in told
    assert "Put in nothing before you have told me what went in" in told
    await talk.say("dosed 1 g baking soda")
    assert OFFER in await talk.text("now what")


async def test_chloride_that_was_measured_since_settles_it(talk: Talk) -> None:
    await _poisoned(talk)
    await talk.say("added salt")
    await talk.wait(hours=2)
    await talk.say("chloride 40")
    assert OFFER in await talk.text("now what")
