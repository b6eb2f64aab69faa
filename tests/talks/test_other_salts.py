"""Another salt after a plan, or in a question alone: planned with, or what it can and cannot do."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk


@pytest.fixture
async def fern(talk: Talk) -> Talk:
    """A tank with all that plans need."""
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("gh 4 kh 3 ph 7 ammonia 0 temp 24")
    return talk


@pytest.mark.parametrize(
    "text",
    [
        "what if i only have epsom salt",
        "i only have epsom salt",
        "can i use epsom salt",
        "can i use epsom salt instead?",
        "ich hab nur Bittersalz",
        "kann ich Bittersalz nehmen",
        "und was ist wenn ich nur Bittersalz habe",
        "puis-je utiliser du sel d'epsom",
        "puedo usar sal de epsom",
        "posso usar sal amargo",
        "posso usare sale inglese",
        "kan ik bitterzout gebruiken",
        "czy mogę użyć sól epsom",
        "kan jag använda epsomsalt",
    ],
)
async def test_a_plan_is_answered_with_the_salt_that_is_there(fern: Talk, text: str) -> None:
    await fern.say("dose gh 6")
    (plan,) = await fern.say(text)
    assert plan.facts["substance"] == "magnesium sulfate heptahydrate"
    assert "this brings no calcium" in plan.text


@pytest.mark.parametrize("text", ["can i use calcium chloride", "i only have epsom salt"])
async def test_a_salt_that_raises_no_kh_is_known_and_refused(fern: Talk, text: str) -> None:
    await fern.say("dose kh 5")
    (no,) = await fern.say(text)
    assert no.facts["refused"] == "raises_none"
    assert "raises no KH" in no.text
    assert "what is in it" not in no.text
    assert " g " not in no.text


@pytest.mark.parametrize(
    ("text", "raised", "missing"),
    [
        ("can i use epsom salt", "gh", "no calcium"),
        ("kann ich Gips nehmen", "gh", "no magnesium"),
        ("i only have gypsum", "gh", "no magnesium"),
        ("can i use baking soda", "kh", None),
        ("can i use potassium nitrate", "nitrate", None),
    ],
)
async def test_without_a_plan_it_is_said_what_it_raises(
    fern: Talk, text: str, raised: str, missing: str | None
) -> None:
    (use,) = await fern.say(text)
    assert use.facts["raises"][0] == raised
    assert ("raises no KH" in use.text) == (raised != "kh")
    assert missing is None or missing in use.text
    assert "Ask: dose" in use.text


@pytest.mark.parametrize(
    "text",
    [
        "can i use plaster of paris",
        "can i use plaster of paris to raise gh",
        "i only have plaster of paris",
        "dose gh 6 with plaster of paris",
        "kann ich Stuckgips nehmen",
        "puis-je utiliser du plâtre",
        "puedo usar escayola",
        "posso usare scagliola",
        "kan ik modelgips gebruiken",
        "czy mogę użyć gips budowlany",
        "kan jag använda modellgips",
    ],
)
@pytest.mark.parametrize("planned", [True, False])
async def test_plaster_gets_no_number(fern: Talk, text: str, planned: bool) -> None:
    if planned:
        await fern.say("dose gh 6")
    (no,) = await fern.say(text)
    assert no.facts["refused"] == "plaster"
    assert "dose gh +1 with gypsum" in no.text
    assert " g " not in no.text


@pytest.mark.parametrize(
    "text",
    [
        "i only have baking powder",
        "kann ich Backpulver nehmen",
        "je n'ai que de la levure chimique",
        "solo tengo levadura química",
        "posso usar fermento em pó",
        "posso usare lievito chimico",
        "kan ik bakpoeder gebruiken",
        "czy mogę użyć proszek do pieczenia",
        "kan jag använda bakpulver",
    ],
)
async def test_baking_powder_is_no_soda(fern: Talk, text: str) -> None:
    await fern.say("dose kh 5")
    (no,) = await fern.say(text)
    assert no.facts["refused"] == "baking_powder"


async def test_what_it_tells_to_ask_is_planned(fern: Talk) -> None:
    (plan,) = await fern.say("dose gh +1 with gypsum")
    assert plan.facts["substance"] == "calcium sulfate dihydrate"
