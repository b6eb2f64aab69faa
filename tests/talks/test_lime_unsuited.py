"""Lime is judged by the tank: its animals, a KH next to nothing, its ammonia.

Ranges are those of the table of animals; the rest is common practice, no source.
"""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk

DISCUS = ("/tank new Amber 300 l fresh", "added 6 discus", "ph 5.5 kh 0 temp 28")
BARE = ("/tank new Amber 300 l fresh", "ph 5.8 kh 0 temp 25 ammonia 0")
LIME = ["crushed coral", "aragonite", "limestone", "shells"]
ASKED = [
    "can i use crushed coral",
    "should i add crushed coral",
    "will crushed coral raise kh",
    "kann ich korallenbruch nehmen",
    "est ce que je peux utiliser du corail concassé",
    "puedo usar coral triturado",
    "posso usar coral triturado",
    "posso usare corallo frantumato",
    "kan ik gebroken koraal gebruiken",
    "kan jag använda krossad korall",
    "darf ich korallensplitt nehmen",
    "kan ik koraalgruis gebruiken",
    "darf korallenbruch rein",
    "puis je mettre du corail concassé",
    "puedo echar coral triturado",
    "posso colocar coral moído",
    "posso mettere corallo frantumato",
    "mag ik koraalgruis toevoegen",
    "czy mogę dodać grys koralowy",
    "får jag lägga i korallkross",
    "czy mogę użyć kruszonego koralu",
]


async def told(talk: Talk, *texts: str) -> None:
    for text in texts:
        await talk.say(text)


@pytest.mark.parametrize("lime", LIME)
@pytest.mark.parametrize("ammonia", ["", "ammonia 0"])
async def test_it_is_not_for_soft_water_animals(talk: Talk, lime: str, ammonia: str) -> None:
    await told(talk, *DISCUS, *([ammonia] if ammonia else []))
    (reply,) = await talk.say(f"can i use {lime}")
    assert reply.lines[0].text.startswith(f"Amber: I do not recommend {lime} here. Discus suit")
    assert reply.facts["refused"] == "lime_unsuited"
    assert "handful" not in reply.text
    assert "dose kh" not in reply.text


@pytest.mark.parametrize("text", ASKED)
async def test_it_is_not_for_a_kh_of_nothing(talk: Talk, text: str) -> None:
    await told(talk, *BARE)
    (reply,) = await talk.say(text)
    assert (
        "I do not recommend crushed coral here. With KH 0 nothing holds pH" in reply.lines[0].text
    )
    assert reply.facts["end"]["ph"] > reply.facts["before"]["ph"] + 0.3
    assert "handful" not in reply.text


async def test_water_kept_soft_by_a_little_kh_is_left_too(talk: Talk) -> None:
    await told(talk, "/tank new Amber 300 l fresh", "added 6 discus")
    await told(talk, "ph 6.4 kh 2 temp 28 ammonia 0")
    assert "I do not recommend" in await talk.text("can i use crushed coral")


async def test_ammonia_that_the_end_bears_is_named(talk: Talk) -> None:
    await told(talk, *DISCUS, "ammonia 0.2")
    (reply,) = await talk.say("can i use crushed coral")
    assert "Ammonia 0.2 mg/L comes first" in reply.text
    await talk.say("ammonia 3")
    (reply,) = await talk.say("can i use crushed coral")
    assert reply.facts["refused"] == "ammonia"


async def test_what_went_in_is_taken_out_again(talk: Talk) -> None:
    await told(talk, *DISCUS)
    text = await talk.text("added crushed coral")
    assert "Better take crushed coral out again. Discus suit pH up to" in text
    assert "when KH is where you want it" not in text


@pytest.mark.parametrize("asked", ["how do i put it in", "how long does it take", "is that safe"])
async def test_what_is_asked_next_is_not_of_putting_it_in(talk: Talk, asked: str) -> None:
    await told(talk, *DISCUS, "can i use crushed coral")
    text = await talk.text(asked)
    assert "in a net" not in text
    assert "Days to weeks" not in text


async def test_hard_water_animals_with_some_kh_may_have_it(talk: Talk) -> None:
    await told(talk, "/tank new Amber 300 l fresh", "added 6 guppies")
    await told(talk, "ph 6.8 kh 2 temp 25 ammonia 0")
    (reply,) = await talk.say("can i use crushed coral")
    assert reply.facts["acts"] is True
    assert reply.text.startswith("Amber: crushed coral will dissolve here")


async def test_water_without_a_tank_has_no_animals(talk: Talk) -> None:
    told = await talk.text("will crushed coral dissolve in 20 l with kh 0.5 ph 6.5")
    assert "recommend" not in told
