"""Questions of a word or two: a substance, a use, table salt, how animals get used to water."""

from __future__ import annotations

import pytest

from core.message import doubts, parse
from core.message.alone import substance_asked
from core.message.homecoming import gets_used
from tests.chat.harness import Talk
from tests.messages import corpus


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


PPM = (
    "can i put {} ppm",
    "can i put {} ppm to speed up",
    "kann ich {} ppm geben",
    "puis-je mettre {} ppm",
    "puedo echar {} ppm",
    "posso pôr {} ppm",
    "posso mettere {} ppm",
    "mag ik {} ppm toevoegen",
    "czy mogę dodać {} ppm",
    "kan jag tillsätta {} ppm",
)


@pytest.mark.parametrize("line", PPM)
async def test_so_many_ppm_of_a_cycle(talk: Talk, line: str) -> None:
    """At most 4 mg/L as N: more stalls the cycle (common practice)."""
    await talk.say("/tank new Neu 60 l fresh")
    await talk.say("kh 4 ph 7.5 temp 25 ammonia 0 nitrite 0")
    assert "of what" in await talk.text(line.format(8))
    await talk.say("how much ammonium chloride for 2 ppm as N")
    (much,) = await talk.say(line.format(8))
    assert much.facts["refused"] == "cycling_implausible"
    (less,) = await talk.say(line.format(3))  # counted as N, or as NH4?
    assert less.facts == {"ask": "basis", "analyte": "ammonia"}


async def test_ammonia_goes_where_no_animal_is(talk: Talk) -> None:
    await talk.say("/tank new Fern 60 l fresh")
    await talk.say("added 6 guppies")
    (reply,) = await talk.say("can i add 3 ppm ammonia")
    assert reply.facts["refused"] == "animals_on_record"


@pytest.mark.parametrize(
    "line",
    ["how much baking soda for my tank with 5 fish", "how much baking soda for 12 cardinal tetras",
     "30 cm cube how much baking soda", "how much baking soda for 60x30x35 cm",
     "how much baking soda for 60 x 30 x 35", "how much baking soda for 3 tanks",
     "wie viel natron für 5 fische"],
)  # fmt: skip
def test_what_is_counted_or_long_is_no_value(line: str) -> None:
    question = parse(line, corpus.context()).question
    assert question is not None
    assert not question.premises
    assert (question.start_value, question.target, question.delta) == (None, None, None)


@pytest.mark.parametrize(
    ("line", "target"),
    [("how much baking soda for 60 l to kh 5", 5.0), ("dose kh 5 fish tank", 5.0)],
)
def test_a_number_of_its_name_is_its_value(line: str, target: float) -> None:
    question = parse(line, corpus.context()).question
    assert question is not None
    assert question.target == target


@pytest.mark.parametrize("line", ["alk 6.5 was 8 in my xylo", "kh is 6.5 was 8 before"])
def test_an_earlier_value_is_not_offered_beside_an_unknown_word(line: str) -> None:
    now, then = parse(line, corpus.context()).doubts
    assert (now.value is not None, then.value, then.reason) == (True, None, doubts.PAST)


async def test_a_low_kh_has_an_amount_offered_and_yes_takes_it(talk: Talk) -> None:
    await talk.say("100 l kh 2")
    said = await talk.text("how much baking soda do i need")
    assert "KH 2 is low: 4 is enough for most fish" in said
    (plan,) = await talk.say("yes")
    assert (plan.facts["from"], plan.facts["to"]) == (2.0, 4.0)


@pytest.mark.parametrize("asked", ["how much baking soda", "how much bicarbonate should i add"])
async def test_a_kh_that_is_not_low_is_told_to_need_none(talk: Talk, asked: str) -> None:
    await talk.say("100 l kh 6")
    said = await talk.text(asked)
    assert "KH 6 needs none" in said
    assert not any(button.label.startswith("dose") for button in talk.last[-1].buttons)


async def test_no_amount_is_offered_where_kh_leapt_or_is_old(talk: Talk) -> None:
    await talk.say("100 l kh 6")
    await talk.say("kh 2")
    assert "is enough" not in await talk.text("how much baking soda")
    await talk.wait(days=10)
    assert "is enough" not in await talk.text("how much baking soda")
