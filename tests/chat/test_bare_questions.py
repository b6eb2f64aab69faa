"""Questions of a word or two: a substance, a use, table salt, how animals get used to water."""

from __future__ import annotations

import pytest

from core.message.alone import substance_asked
from core.message.homecoming import gets_used
from tests.chat.harness import Talk


@pytest.mark.parametrize(
    "line",
    ["peat?", "what about peat", "torf?", "was ist mit torf", "tourbe ?", "turba?", "turfa?",
     "torba?", "turf?", "torv?", "and peat?"],
)  # fmt: skip
async def test_a_substance_alone_is_asked_what_it_does(talk: Talk, line: str) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("kh 12 ph 8 gh 16 temp 25")
    (reply,) = await talk.say(line)
    assert "peat can do little" in reply.text


async def test_an_acid_alone_is_refused(talk: Talk) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    (reply,) = await talk.say("what about hydrochloric acid")
    assert "refused" in reply.facts
    assert "grams" not in reply.facts


@pytest.mark.parametrize("line", ["peat", "i put peat in?", "kh 4?", "peat and soda?"])
def test_no_substance_alone(line: str) -> None:
    assert substance_asked(line) is None


@pytest.mark.parametrize(
    "line",
    ["calcium use", "calcium consumption", "verbrauch calcium",
     "consommation de calcium", "consumo de calcio", "consumo de cálcio", "consumo di calcio",
     "verbruik calcium"],
)  # fmt: skip
async def test_a_use_that_is_named_alone(talk: Talk, line: str) -> None:
    await talk.say("/tank new Nano 80 l reef")
    await talk.say("alk 7.8 dkh ca 410 mg 1300 sal 35 temp 25 ph 8.1")
    (reply,) = await talk.say(line)
    assert "I need two readings" in reply.text


@pytest.mark.parametrize(
    "line",
    ["can i use table salt", "using table salt ok", "kann ich kochsalz nehmen",
     "et le sel de table", "puedo usar sal de mesa", "posso usar sal de cozinha",
     "posso usare sale da cucina", "mag ik keukenzout gebruiken",
     "czy mogę użyć soli kuchennej", "kan jag använda bordssalt"],
)  # fmt: skip
async def test_no_table_salt_for_salt_water(talk: Talk, line: str) -> None:
    await talk.say("/tank new Brack 100 l brackish")
    await talk.say("sal 8 ph 8 kh 8 temp 25")
    (reply,) = await talk.say(line)
    assert "take sea salt" in reply.text


async def test_table_salt_after_the_question_of_salt(talk: Talk) -> None:
    await talk.say("/tank new Fry 75 l fresh")
    await talk.say("nitrite 2 ph 7.5 temp 25 kh 5")
    await talk.say("how much salt")
    assert "Its iodine is no danger" in await talk.text("table salt with iodine?")


@pytest.mark.parametrize(
    "line",
    ["how do i acclimate", "how to drip acclimate", "wie gewöhne ich fische ein",
     "comment acclimater", "cómo aclimato", "como aclimatar", "come acclimatare",
     "hoe acclimatiseren", "jak aklimatyzować", "hur acklimatiserar jag"],
)  # fmt: skip
async def test_how_animals_get_used_to_water(talk: Talk, line: str) -> None:
    await talk.say("/tank new Home 100 l fresh")
    await talk.say("ph 7.8 kh 6 gh 10 temp 25 ammonia 0")
    (reply,) = await talk.say(line)
    assert "float_closed" in reply.facts["steps"]


@pytest.mark.parametrize("line", ["fish acclimated", "how do plants acclimate", "kh 4"])
def test_nobody_gets_used_to_water(line: str) -> None:
    assert not gets_used(line)
