"""What was spoken of, judged for animals that are named: one behaviour in nine languages.

Of the table: neon tetras suit KH 0 to 8 °dH, discus 27 to 30 °C, crystal red shrimp KH 0 to 2
(common practice, no source); corydoras bear salt badly (common practice).
"""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk

NEONS = (
    "is that safe for neon tetras",
    "is it ok for neons?",
    "ist das gut für neonsalmler",
    "geht das für neonsalmler",
    "c'est bon pour les néons",
    "es seguro para los neones",
    "é seguro para neons",
    "va bene per i neon",
    "is dat veilig voor neons",
    "czy to bezpieczne dla neonów",
    "är det säkert för neontetror",
)

DISCUS = (
    "and for discus",
    "what about discus",
    "und für diskus",
    "et pour les discus",
    "y para discos",
    "e per i discus",
    "en voor discus",
    "a dla paletki",
    "och för diskus",
)


@pytest.fixture
async def fern(talk: Talk) -> Talk:
    await talk.say("/tank new Fern 200 l fresh")
    await talk.say("kh 2 gh 6 ph 6.6 temp 25 ammonia 0 no2 0 no3 10")
    await talk.say("added 6 guppies")
    return talk


@pytest.mark.parametrize("line", NEONS)
async def test_a_plan_is_judged_where_it_leads(fern: Talk, line: str) -> None:
    await fern.say("dose kh 4")
    (reply,) = await fern.say(line)
    assert reply.facts["water"]["kh"] == 4.0
    assert reply.facts["suited"] == ["neon tetra"]
    assert "Only in 2 parts" in reply.text
    assert not reply.text.lower().startswith(("yes", "no"))


@pytest.mark.parametrize("line", NEONS)
async def test_a_dose_is_judged_as_it_made_the_water(fern: Talk, line: str) -> None:
    await fern.say("put in 60 g baking soda")
    (reply,) = await fern.say(line)
    assert reply.facts["water"]["kh"] > 11.0
    assert reply.facts["suited"] == []
    assert reply.lines[0].text.startswith("Too much for one day")
    (again,) = await fern.say("ist das gut für diskus")
    assert again.facts["for"] == ["discus"]


@pytest.mark.parametrize("line", DISCUS)
async def test_another_kind_without_a_verb(fern: Talk, line: str) -> None:
    await fern.say("dose kh 4")
    (reply,) = await fern.say(line)
    assert reply.facts["for"] == ["discus"]
    assert reply.facts["suited"] == []
    assert "27–30" in reply.text


async def test_a_name_that_several_share(fern: Talk) -> None:
    await fern.say("dose kh 4")
    (reply,) = await fern.say("is dat goed voor garnalen")
    assert reply.facts["for"] == ["garnalen"]
    assert "crystal red shrimp" not in reply.facts["suited"]
    assert "cherry shrimp" in reply.facts["suited"]


async def test_an_amount_and_a_change(fern: Talk) -> None:
    await fern.say("what does 10 g baking soda do in 200 l")
    (reply,) = await fern.say("ist das gut für diskus")
    assert reply.facts["water"]["kh"] > 3.5
    assert "at least 2 days" in reply.text
    await fern.say("/source tap kh 12 gh 14 ph 7.6 temp 24 total chlorine 0")
    await fern.say("what if i change 50%")
    (changed,) = await fern.say("is that safe for neons")
    assert changed.facts["water"]["gh"] == pytest.approx(10.0, abs=0.2)
    assert "smaller changes" in changed.text


@pytest.mark.parametrize(
    "line", ["is that ok for zorblaxes", "ist das sicher für zorblaxe", "es seguro para zorblaxes"]
)
async def test_who_is_not_known_is_called_nothing(fern: Talk, line: str) -> None:
    await fern.say("dose kh 4")
    (reply,) = await fern.say(line)
    assert reply.facts["not_judged"]


@pytest.mark.parametrize("line", ["is it ok for corys", "geht das für corydoras"])
async def test_salt_that_was_asked_about(talk: Talk, line: str) -> None:
    await talk.say("/tank new Fry 75 l fresh")
    await talk.say("nitrite 2 ph 7.5 temp 25 kh 5")
    await talk.say("how much salt")
    (reply,) = await talk.say(line)
    assert reply.facts["refused"] == "salt_species"


async def test_salt_for_those_that_may_bear_it_is_asked_again(talk: Talk) -> None:
    await talk.say("/tank new Fry 75 l fresh")
    await talk.say("nitrite 2 ph 7.5 temp 25 kh 5")
    await talk.say("how much salt")
    (asked,) = await talk.say("is it ok for guppies")
    assert asked.facts["ask"] == "bears_salt"
    assert next(button.label for button in asked.buttons) == "yes, they bear salt"


async def test_with_nothing_spoken_of_it_is_whether_they_may_join(fern: Talk) -> None:
    assert "for" not in await fern.facts("is it ok for neons")
    (reply,) = await fern.say("for 60 l")
    assert "for" not in reply.facts
