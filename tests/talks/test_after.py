"""What is asked after an answer: does it harm those that are there, may the next part go in.

Ranges of animals are those of the table; potassium over 20 mg/L is the caution of the limits with
shrimps or snails (common practice).
"""

from __future__ import annotations

import pytest

from core.message.after import asked
from tests.chat.harness import Talk

FERN = (
    "/tank new Fern 90 l fresh",
    "added 10 amano shrimp",
    "kh 2 gh 7 ph 6.9 temp 24 ammonia 0 k 5",
)

HARM = (
    "is it dangerous for the shrimps",
    "will it hurt the shrimps",
    "ist das gefährlich für die Garnelen",
    "schadet das den Garnelen",
    "c'est dangereux pour les crevettes ?",
    "est-ce dangereux pour les crevettes",
    "¿es peligroso para las gambas?",
    "é perigoso para os camarões",
    "è pericoloso per i gamberetti",
    "is het gevaarlijk voor de garnalen",
    "czy to niebezpieczne dla krewetek",
    "är det farligt för räkorna",
)
WELL = (
    "is it safe for the shrimps",
    "is it ok for my fish",
    "can the shrimps take it",
    "ist das sicher für die Garnelen",
    "vertragen die Garnelen das",
    "est-ce bon pour les crevettes",
    "es seguro para las gambas",
    "é seguro para os camarões",
    "va bene per i gamberetti",
    "is dat veilig voor de garnalen",
    "czy to bezpieczne dla krewetek",
    "är det säkert för räkorna",
)


@pytest.fixture
async def fern(talk: Talk) -> Talk:
    """A tank with shrimps, measured."""
    for line in FERN:
        await talk.say(line)
    return talk


def _begins_with_neither(text: str) -> bool:
    return not text.startswith(("Yes", "No:", "No,", "No "))


@pytest.mark.parametrize("line", [*HARM, *WELL])
async def test_after_a_plan_it_is_about_the_plan(fern: Talk, line: str) -> None:
    await fern.say("dose kh 4")
    text = await fern.text(line)
    assert text.startswith("Fern: as planned, it passes no limit that I know for the animals there")
    assert "Only in 2 parts" in text


SOME = (HARM[0], WELL[0], HARM[2], WELL[11])


@pytest.mark.parametrize("line", SOME)
async def test_where_a_plan_leads_past_the_animals_is_told(fern: Talk, line: str) -> None:
    """Potassium over 20 mg/L is the caution with shrimps, which a plan only warns of."""
    await fern.say("dose k 30")
    (reply,) = await fern.say(line)
    assert reply.text.startswith("Fern: where that plan leads does not suit them. Potassium 30")
    assert reply.facts["findings"][0]["limit"] == 20


@pytest.mark.parametrize("line", SOME)
async def test_after_a_refusal_its_reason_is_said_again(fern: Talk, line: str) -> None:
    """Amano shrimp bear KH 1 to 12 by the table."""
    refused = await fern.text("dose kh 14")
    again = await fern.text(line)
    assert again == f"I gave no amount for that. {refused}"


@pytest.mark.parametrize("line", [*HARM, *WELL])
async def test_after_a_dose_it_is_about_the_dose(fern: Talk, line: str) -> None:
    await fern.say("dosed 20 g potassium sulfate")
    text = await fern.text(line)
    assert "Too much: potassium +100 mg/L" in text
    assert "animals in Fern now" not in text  # nobody asked to add any


@pytest.mark.parametrize("line", [*HARM[:1], *HARM[2:3], *HARM[4:], *WELL])
async def test_else_it_is_about_the_water(fern: Talk, line: str) -> None:
    await fern.say("kh 5")
    await fern.say("quiet hours 22:00-07:00")  # nothing of a plan
    text = await fern.text(line)
    assert _begins_with_neither(text)
    assert "A few at a time" not in text


async def test_after_a_change_it_is_about_the_change(fern: Talk) -> None:
    await fern.say("/source tap kh 12 gh 14 ph 7.6 temp 24 total chlorine 0")
    await fern.say("what if i change 50%")
    assert "all at once it would be too much for them" in await fern.text(WELL[0])
    await fern.say("what if i change 5%")
    assert "passes no limit that I know for the animals there" in await fern.text(HARM[0])


async def test_poison_in_the_water_goes_before_the_plan(fern: Talk) -> None:
    await fern.say("dose kh 4")
    await fern.say("log it")
    await fern.wait(days=1)
    await fern.say("kh 3 ph 7 ammonia 2")
    assert "Ammonia is dangerous" in await fern.text(WELL[0])
    for line in ("can i add the second part", "kann ich den zweiten Teil geben"):
        (reply,) = await fern.say(line)
        assert "ammonia" in reply.lines[0].text.casefold()
        assert "grams" not in reply.facts


async def test_animals_that_are_not_there_may_be_asked_about(fern: Talk) -> None:
    await fern.say("dose kh 4")
    assert "discus" in await fern.text("is it dangerous for discus")
    assert "for neon tetra" in await fern.text("is it safe for neons")
    assert "a child" not in await fern.text("is it dangerous for my child")


@pytest.mark.parametrize(
    "line",
    [
        "can i add the second part",
        "can i put in the second dose",
        "kann ich den zweiten teil geben",
        "puis-je ajouter la deuxième partie",
        "puedo echar la segunda parte",
        "posso colocar a segunda parte",
        "posso aggiungere la seconda parte",
        "kan ik het tweede deel toevoegen",
        "czy mogę dodać drugą część",
        "kan jag tillsätta andra delen",
    ],
)
async def test_a_part_is_no_animal(fern: Talk, line: str) -> None:
    assert "no plan with a part left" in await fern.text(line)
    await fern.say("dose kh 4")
    await fern.say("log it")
    (reply,) = await fern.say(line)
    assert "animals" not in reply.lines[0].text
    assert "grams" not in reply.facts  # nothing was tested since the first part
    await fern.wait(days=1)
    await fern.say("kh 3 ph 7 ammonia 0")
    facts = await fern.facts(line)
    assert facts["to"] == 4
    assert facts["grams"] == pytest.approx(90 * 29.96e-3, rel=2e-3)  # C, from NaHCO3's weight


@pytest.mark.parametrize(
    "line",
    ["will ph crash", "kann der pH abstürzen", "le ph va s'effondrer", "el ph va a caer en picado",
     "o ph pode cair", "il ph può crollare", "kan de ph instorten", "czy ph się załamie",
     "kan ph krascha"],
)  # fmt: skip
async def test_whether_ph_may_crash_is_told_by_kh(fern: Talk, line: str) -> None:
    facts = await fern.facts(line)
    assert facts["kh"] == 2
    assert "emergency" not in facts
    await fern.say("kh 6")
    assert "hardly: KH is 6 °dH" in await fern.text(line)
    await fern.say("what if i change 80% with rain")
    assert "it can: KH would be only" in await fern.text(line)


async def test_a_crash_that_is_told_stays_an_emergency(fern: Talk) -> None:
    assert (await fern.facts("ph crashed"))["emergency"] == "ph_crash"


@pytest.mark.parametrize(
    "line",
    ["can i add 3 shrimps", "can i add the corys", "kh 4", "is kh 4 ok", "how do i add fish",
     "kann ich garnelen einsetzen"],
)  # fmt: skip
def test_other_questions_are_none_of_it(line: str) -> None:
    assert asked(line) is None


@pytest.mark.parametrize(
    "line",
    ["is kh 20 dangerous for the shrimps", "ist kh 20 gefährlich für garnelen",
     "is kh 20 safe for the shrimps", "kh 20 est dangereux pour les crevettes ?"],
)  # fmt: skip
async def test_a_value_is_judged_for_those_there_by_a_name_of_several(
    fern: Talk, line: str
) -> None:
    """Amano shrimp bear KH 1 to 12 by the table."""
    (reply,) = await fern.say(line)
    assert "That is not safe. KH 20 °dH is high for Amano shrimp" in reply.text


async def test_no_question_of_danger_begins_with_yes_or_no(fern: Talk) -> None:
    await fern.say("/source tap kh 12 gh 16")
    for line in (
        "is my tap dangerous for the shrimps",
        "is my tap bad for discus",
        "would this water be dangerous for discus",
        "would that be bad for a betta",
        "would this be bad for the shrimps",
    ):
        assert _begins_with_neither(await fern.text(line)), line


async def test_whether_more_may_come_is_asked_of_newcomers(fern: Talk) -> None:
    for line in ("is it safe to add more shrimps", "can i add amano shrimp"):
        assert "A few at a time" in await fern.text(line)


@pytest.mark.parametrize("line", ["is it dangerous for the shrimps", "is it safe for the shrimps"])
async def test_after_an_amount_it_is_about_the_amount(fern: Talk, line: str) -> None:
    await fern.say("what happens if i use 5 g baking soda")
    assert "all at once it is too much for them" in await fern.text(line)
    await fern.say("what happens if i use 60 g baking soda")
    assert "too much for amano shrimp" in (await fern.text(line)).casefold()
    await fern.say("what happens if i use 1 g baking soda")
    assert "so much passes no limit" in await fern.text(line)


async def test_who_is_on_no_record_lives_there_all_the_same(talk: Talk) -> None:
    await talk.say("/tank new Mar 300 l marine")
    await talk.say("ca 420 sal 35 alk 8 mg 1300 ph 8.2 temp 25 ammonia 0")
    await talk.say("dose alk 9")
    for line in ("is it safe for the corals", "ist das gefährlich für die korallen"):
        assert "within what suits them" in await talk.text(line)
    await talk.say("log it")
    assert "none is on record" not in await talk.text("is it dangerous for the corals")


async def test_after_a_call_for_help_its_steps_are_said_again(fern: Talk) -> None:
    await fern.say("i forgot the dechlorinator")
    for line in ("is it dangerous for the shrimps", "will they be ok", "will it kill my fish"):
        assert (await fern.facts(line))["emergency"] == "chlorine"
    await fern.say("kh 5 ph 7 ammonia 0")
    assert (await fern.facts("is it safe for the shrimps"))["emergency"] == "chlorine"
    await fern.say("chlorine 0")
    assert "emergency" not in await fern.facts("is it safe for the shrimps")


@pytest.mark.parametrize(
    "asked_of_it",
    [
        "is it dangerous",
        "is that safe",
        "is it safe",
        "ist das gefährlich",
        "ist das sicher",
        "c'est dangereux",
        "c'est sûr",
        "es peligroso",
        "é seguro",
        "è pericoloso",
        "is dat veilig",
        "czy to bezpieczne",
        "är det farligt",
    ],
)
@pytest.mark.parametrize(
    ("refused", "reason"),
    [
        ("can i use bleach to clean it", "kills gills"),
        ("how much vinegar to lower ph", "acid"),
        ("can i mix bleach and vinegar", "poisonous gas"),
        ("the fish are gasping", "Air now"),
    ],
)
async def test_after_a_refusal_its_reason_is_told_not_that_the_plan_before_is_safe(
    fern: Talk, refused: str, reason: str, asked_of_it: str
) -> None:
    await fern.say("dose kh 4")
    await fern.say(refused)
    told = await fern.text(asked_of_it)
    assert reason.casefold() in told.casefold()
    assert "within the limits" not in told
