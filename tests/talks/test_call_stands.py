"""A call for help stands before doses and verdicts until it is told to be over; words ours."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk

ASKED = "how much baking soda for kh 6"


@pytest.mark.parametrize(
    ("call", "danger"),
    [
        ("fish gasping", "gasping"),
        ("all at the top gulping", "gasping"),
        ("fish dying", "general"),
        ("meine Fische schnappen nach Luft", "gasping"),
        ("ammonia through the roof", "ammonia"),
    ],
)
@pytest.mark.parametrize("before", [True, False], ids=["tank first", "call first"])
async def test_of_animals(talk: Talk, call: str, danger: str, before: bool) -> None:
    for line in ["100 l kh 4", call] if before else [call, "100 l tank kh 4"]:
        await talk.say(line)
    await talk.say("gh 8")
    (verdict,) = await talk.say("is my water ok")
    assert "Not called well" in verdict.lines[0].text
    assert call in verdict.lines[0].text
    assert "within the limits" not in verdict.text
    (dose,) = await talk.say(ASKED)
    assert dose.facts["refused"] == "poison_first"
    assert dose.facts["danger"] == danger
    calm = "they breathe calmly now" if before else "they are fine now"
    over = "ammonia 0" if danger == "ammonia" else calm
    await talk.say(over)
    assert "grams" in (await talk.say(ASKED))[0].facts


@pytest.mark.parametrize(
    ("call", "danger"), [("fish gasping", "gasping"), ("put bleach in", "bleach")]
)
async def test_before_any_tank_is_told(talk: Talk, call: str, danger: str) -> None:
    await talk.say(call)
    (dose,) = await talk.say("how much baking soda for 100 l from kh 3 to 5")
    assert dose.facts == {"refused": "poison_first", "danger": danger}


@pytest.mark.parametrize("asked", ["esta bien el agua", "está bien el acuario", "sta bene l'acqua"])
async def test_to_ask_after_the_water_ends_no_call(talk: Talk, asked: str) -> None:
    for line in ("100 l kh 4", "fish gasping", asked):
        await talk.say(line)
    assert (await talk.say(ASKED))[0].facts["danger"] == "gasping"


async def test_a_good_test_tells_of_the_water_but_ends_no_call(talk: Talk) -> None:
    for line in ("150 l kh 4", "fish gasping", "ammonia 0 nitrite 0 ph 7.2"):
        await talk.say(line)
    (verdict,) = await talk.say("is my water ok")
    assert "Not called well" in verdict.lines[0].text
    assert verdict.facts["called"] == "gasping"
    assert (await talk.say(ASKED))[0].facts["danger"] == "gasping"
    await talk.wait(hours=25)
    assert "refused" not in (await talk.say(ASKED))[0].facts


@pytest.mark.parametrize(
    ("call", "danger", "end"),
    [
        ("heater cracked, got a shock", "electric", "turned off at the breaker"),
        ("i got a tingle when i put my hand in the water", "electric", "unplugged"),
        ("my son drank some of the ph down bottle", "swallowed", "called poison control"),
        ("my eyes burn from the bleach", "splashed", "eyes ok now"),
        ("mixed bleach and ammonia cleaner", "fumes", "fire brigade is here"),
    ],
)
@pytest.mark.parametrize(
    "asked", ["is my water ok", "can i still do the water change now", "he is ok so how much soda"]
)
async def test_of_people(talk: Talk, call: str, danger: str, end: str, asked: str) -> None:
    await talk.say("100 l kh 4")
    await talk.say(call)
    (reply,) = await talk.say(asked)
    assert reply.facts == {"emergency": danger}
    assert "First this" in reply.lines[0].text
    (ended,) = await talk.say(end)
    assert ended.lines[0].text.startswith("Good.")
    assert all("First this" not in each.text for each in await talk.say(asked))


async def test_what_is_told_beside_a_question_is_kept(talk: Talk) -> None:
    await talk.say("100 l")
    await talk.say("my son drank some of the ph down bottle")
    first, kept = await talk.say("kh 4 ph 7, is it ok?")
    assert first.facts == {"emergency": "swallowed"}
    assert [each["analyte"] for each in kept.facts["values"]] == ["kh", "ph"]


async def test_to_look_well_ends_no_poisoning(talk: Talk) -> None:
    await talk.say("my son drank some of the ph down bottle")
    (reply,) = await talk.say("he seems fine")
    assert reply.facts == {"emergency": "swallowed"}
    assert (await talk.say("how much soda"))[0].facts == {"emergency": "swallowed"}


@pytest.mark.parametrize(
    ("call", "end"),
    [
        ("power is out since 2 hours", "power back on"),
        ("power went out", "its back"),
        ("my tank is leaking", "ok fixed the leak"),
        ("heater stopped working", "fixed"),
        ("fish jumped out", "he is back in"),
        ("der Heizer ist kaputt", "ist repariert"),
    ],
)
async def test_of_things(talk: Talk, call: str, end: str) -> None:
    await talk.say("100 l kh 4 temp 25")
    await talk.say(call)
    await talk.say("gh 8")
    assert "Not called well" in (await talk.say("is my water ok"))[0].lines[0].text
    await talk.say(end)
    assert "Not called well" not in await talk.text("is my water ok")


async def test_washing_soda_for_baking_soda_is_what_is_asked_about(talk: Talk) -> None:
    for line in ("100 l kh 3", "how much soda for kh 4", "done"):
        await talk.say(line)
    await talk.say("i used washing soda not baking soda")
    reply = await talk.text("is that bad")
    assert "sodium carbonate lifts pH" in reply
    assert "within the limits" not in reply


@pytest.mark.parametrize(
    ("told", "danger", "volume"),
    [
        ("got zapped touching the tank, 100 l", "electric", 100.0),
        ("sprayed fly spray near the tank 80 l and the shrimp are twitching", "contaminated", 80.0),
        ("ant killer fell in, 60 l shrimp", "contaminated", 60.0),
        ("window cleaner got in the tank 60 l, shrimp", "contaminated", 60.0),
        ("hello my aquarium is 100 litre i have much fish dying", "general", 100.0),
        ("mein 80 l becken, fische schnappen nach luft", "gasping", 80.0),
        ("spilt a bit of bleach in my 50 l tank", "bleach", 50.0),
        ("my kid poured a cup of salt in my 60l shrimp tank", "overdose", 60.0),
        ("5 l of bleach fell in the pond", "bleach", None),
        ("changed 20 l, fish gasping", "gasping", None),
    ],
)
async def test_beside_the_litres_of_a_tank(
    talk: Talk, told: str, danger: str, volume: float | None
) -> None:
    first, *others = await talk.say(told)
    assert first.facts["emergency"] == danger
    made = [reply.facts["volume_l"] for reply in others if "volume_l" in reply.facts]
    assert made == ([] if volume is None else [volume])
    await talk.say("nitrate 10")
    assert (await talk.say("is my water ok"))[0].facts["emergency"] == danger


async def test_animals_told_beside_are_kept(talk: Talk) -> None:
    await talk.say("got a 120 l tank, 6 neons, they are gasping")
    assert "6" in await talk.text("/stock")


async def test_what_was_read_before_a_change_is_to_be_measured_again(talk: Talk) -> None:
    await talk.say("60 l kh 2 ph 6 ammonia 4")
    assert "ammonia 4 mg/L was in it" in await talk.text("changed half with tap")
    steps = await talk.text("fish went crazy")
    assert "Measure ammonia, nitrite, pH" in steps
    assert "ammonia 4" in steps.lower()


async def test_who_died_of_what_nobody_knows_holds_a_dose_until_ammonia_is_read(talk: Talk) -> None:
    for line in ("100 l kh 3", "a fish died"):
        await talk.say(line)
    (held,) = await talk.say("dose kh 5")
    assert (held.facts["refused"], held.facts["danger"]) == ("poison_first", "lost")
    await talk.say("ammonia 0")
    assert "grams" in (await talk.say("dose kh 5"))[0].facts


async def test_copper_that_was_refused_and_done_all_the_same_is_in(talk: Talk) -> None:
    for line in ("60 l with shrimps and snails", "fish have white spot"):
        await talk.say(line)
    (no,) = await talk.say("putting copper in, how much")
    assert no.facts["verdict"] == "no"
    assert "Copper kills invertebrates" in await talk.text("did it")


@pytest.mark.parametrize(
    ("call", "then"),
    [
        ("got a mouthful of bleach water siphoning", "feel a bit sick"),
        ("my little girl drank from the test bottle", "shes crying and her lips are red"),
        ("my little girl drank from the test bottle", "shes 4"),
        ("ich habe bleichmittel verschluckt", "mir ist übel"),
    ],
)
async def test_how_somebody_feels_is_told_of_the_person(talk: Talk, call: str, then: str) -> None:
    await talk.say("100 l kh 4")
    await talk.say(call)
    (reply,) = await talk.say(then)
    assert reply.facts == {"emergency": "swallowed"}
    assert then in reply.text
    assert "Stop feeding" not in reply.text


@pytest.mark.parametrize("then", ["the fish look sick", "the tank smells", "kh 5", "thanks"])
async def test_what_is_said_of_fish_or_water_is_not(talk: Talk, then: str) -> None:
    for line in ("100 l kh 4", "i swallowed some bleach"):
        await talk.say(line)
    replies = await talk.say(then)
    assert not any("Tell them" in reply.text for reply in replies)


@pytest.mark.parametrize(
    ("call", "asked", "no"),
    [
        ("spilt muriatic acid on my hand", "can i mix the bleach and the acid", "never mix"),
        ("spilt muriatic acid on my hand", "should i put baking soda on it", "No: nothing against"),
        ("my son drank the ph down", "can i give him milk", "No: nothing against"),
    ],
)
async def test_a_new_danger_asked_about_gets_its_own_no(
    talk: Talk, call: str, asked: str, no: str
) -> None:
    await talk.say(call)
    (reply,) = await talk.say(asked)
    assert no in reply.lines[0].text
    assert "First this" in reply.lines[1].text


@pytest.mark.parametrize("then", ["fish are floating", "fish gasping", "2 fish died"])
async def test_the_current_goes_before_the_fish(talk: Talk, then: str) -> None:
    await talk.say("100 l kh 4")
    await talk.say("heater cracked and i got a tingle when i put my hand in")
    first, *kept = await talk.say(then)
    assert first.facts == {"emergency": "electric"}
    assert "Switch the power off" in first.text
    assert "only then the fish" in first.lines[-1].text
    assert not any("remove the dead" in reply.text for reply in kept)
    await talk.say("power is off now")
    assert "Switch the power off" not in await talk.text("fish gasping")


@pytest.mark.parametrize(
    "told",
    ["refilled all of it straight from the tap", "forgot the stuff that takes chlorine out"],
)
async def test_untreated_water_is_treated_now(talk: Talk, told: str) -> None:
    await talk.say("100 l kh 4")
    steps = (await talk.say(told))[-1]
    assert steps.facts["emergency"] == "chlorine"
    assert "for all of its water" in steps.text


async def test_a_reading_beside_odd_fish_is_kept(talk: Talk) -> None:
    await talk.say("100 l kh 1")
    kept, steps = await talk.say("ph says 9.2 now and the fish are darting about")
    assert kept.facts["values"][0]["analyte"] == "ph"
    assert steps.facts["emergency"] == "general"


@pytest.mark.parametrize(
    ("told", "worse"),
    [
        ("ammonia 0.25 or maybe 2.5 cant read the colour", 2.5),
        ("nitrite 2 or 5", 5.0),
    ],
)
async def test_of_two_numbers_of_a_poison_the_worse_counts(
    talk: Talk, told: str, worse: float
) -> None:
    await talk.say("100 l kh 4")
    (reply,) = await talk.say(told)
    assert f"{worse:g} mg/L" in next(x.text for x in reply.lines if "take it as true" in x.text)
    labels = [button.label for button in reply.buttons]
    assert labels[0].endswith(told.split()[1])
    assert labels[1].endswith(f"{worse:g}")
