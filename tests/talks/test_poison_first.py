"""While a poison stands in a tank no salt is dosed, and no verdict says that all is well."""

from __future__ import annotations

from collections.abc import Sequence

import pytest

from bot.chat.model import Reply
from tests.chat.harness import Talk

READ = "kh 3 gh 4 ph 7 ammonia 0 nitrite 0 temp 25"
CALLS = [
    ("my sister put bleach in the tank", "bleach"),
    ("forgot the dechlorinator, tap water went in", "chlorine"),
    ("wife washed hands with soap and put them in the tank", "contaminated"),
    ("sprayed bug spray near the tank", "contaminated"),
    ("ich habe bleichmittel ins becken gekippt", "bleach"),
    ("j'ai versé de la javel dans l'aquarium", "bleach"),
    ("sprayed bleach cleaner near the tank by accident, some may have got in", "bleach"),
    ("spilled some drain cleaner in it", "contaminated"),
    ("dumped half a bottle of algae killer in", "contaminated"),
    ("i gave double the dose of ich medicine", "contaminated"),
    ("habe die doppelte dosis medikament gegeben", "contaminated"),
    ("overdosed the copper medicine by like 3x", "copper"),
]
ASKED = (
    "dose kh 6",
    "dose gh 8",
    "how do i get kh to 5",
    "how do i raise gh",
    "how do i raise kh",
    "how much epsom salt",
    "should i add 2 g soda",
)


@pytest.fixture
async def fern(talk: Talk) -> Talk:
    await talk.say("/tank new fern 90 l fresh")
    return talk


def refused(replies: Sequence[Reply], danger: str) -> bool:
    """Whether the only answer refuses for a poison, in its first sentence and with no amount."""
    (reply,) = replies
    shown = {"grams", "parts", "salts", "forms", "goals"} & reply.facts.keys()
    return (
        reply.facts.get("refused") == "poison_first"
        and reply.facts["danger"] == danger
        and "No dose" in reply.lines[0].text
        and " g " not in reply.text
        and not shown
    )


@pytest.mark.parametrize("asked", ASKED)
@pytest.mark.parametrize(("call", "danger"), CALLS)
async def test_no_salt_before_it_is_settled(fern: Talk, call: str, danger: str, asked: str) -> None:
    await fern.say(call)
    await fern.say(READ)
    assert refused(await fern.say(asked), danger)


async def test_no_test_is_asked_for_first(fern: Talk) -> None:
    await fern.say("my sister put bleach in the tank")
    assert refused(await fern.say("dose kh 6"), "bleach")


@pytest.mark.parametrize(
    ("call", "settled"),
    [("my sister put bleach in the tank", "chlorine 0"), ("copper 0.3", "copper 0")],
)
async def test_its_test_lets_the_dose_go_on(fern: Talk, call: str, settled: str) -> None:
    await fern.say(READ)
    await fern.say(call)
    (first,) = await fern.say("dose kh 5")
    await fern.say(settled)
    (reply,) = await fern.say("dose kh 5")
    assert first.facts["refused"] == "poison_first"
    assert reply.facts["parts"]


async def test_a_bought_product_is_a_salt_too(fern: Talk) -> None:
    await fern.say("my buffer: 5 g per 80 l raises kh 1")
    await fern.say(READ)
    await fern.say("my sister put bleach in the tank")
    assert refused(await fern.say("dose kh 5 with my buffer"), "bleach")
    assert refused(await fern.say("how much of my buffer"), "bleach")


async def test_no_amount_by_a_label_either(fern: Talk) -> None:
    await fern.say("my sister put bleach in the tank")
    (kept,) = await fern.say("my buffer: 5 g per 80 l raises kh 1")
    assert kept.facts["refused"] == "poison_first"
    assert "grams" not in kept.facts


async def test_the_label_of_a_dechlorinator_is_scaled(fern: Talk) -> None:
    await fern.say("my sister put bleach in the tank")
    (reply,) = await fern.say("dechlorinator label says 5 ml per 100 l")
    assert reply.facts["millilitres"] == pytest.approx(4.5)


@pytest.mark.parametrize("asked", ["how much of my conditioner", "how much dechlorinator for 90 l"])
async def test_what_takes_chlorine_out_is_not_refused(fern: Talk, asked: str) -> None:
    await fern.say("my conditioner: 5 ml per 100 l")
    await fern.say("my sister put bleach in the tank")
    for reply in await fern.say(asked):
        assert reply.facts.get("refused") != "poison_first"


@pytest.mark.parametrize(
    "asked",
    [
        "dose kh from 3 to 6 in a 20 l bucket",
        "how much salt for 20 l ro to gh 6 kh 4",
        "how much thiosulfate for 90 l",
    ],
)
async def test_other_water_and_what_is_against_it_are_answered(fern: Talk, asked: str) -> None:
    await fern.say(READ)
    await fern.say("my sister put bleach in the tank")
    (reply,) = await fern.say(asked)
    assert "refused" not in reply.facts
    assert reply.facts["volume_l"]


async def test_another_tank_is_dosed(fern: Talk) -> None:
    await fern.say("my sister put bleach in the tank")
    await fern.say("/tank new quarry 60 l fresh")
    await fern.say(READ)
    (reply,) = await fern.say("dose kh 4")
    assert reply.facts["tank"] == "quarry"
    assert reply.facts["parts"]
    assert refused(await fern.say("dose kh 4 in fern"), "bleach")


async def test_copper_that_was_read_goes_first(fern: Talk) -> None:
    await fern.say("copper 0.3")
    await fern.say(READ)
    (reply,) = await fern.say("dose kh 5")
    assert refused([reply], "copper")
    assert "0.3" in reply.lines[0].text
    (reply,) = await fern.say("all ok?")
    assert reply.facts["emergency"] == "copper"


@pytest.mark.parametrize("asked", ["how much do i put in", "when is the next part", "go on"])
async def test_a_plan_of_before_does_not_go_on(fern: Talk, asked: str) -> None:
    await fern.say(READ)
    await fern.say("dose kh 5")
    await fern.say("my sister put bleach in the tank")
    (reply,) = await fern.say(asked)
    assert "refused" in reply.facts or "emergency" in reply.facts
    assert " g " not in reply.text


@pytest.mark.parametrize(
    "asked", ["all good?", "is it ok now", "is everything fine", "is that safe", "is my water ok"]
)
@pytest.mark.parametrize("before", ["dose kh 5", "kh 3"])
async def test_no_verdict_says_that_all_is_well(fern: Talk, before: str, asked: str) -> None:
    await fern.say(READ)
    await fern.say("dose kh 5")
    await fern.say("my sister put bleach in the tank")
    await fern.say(before)
    (reply,) = await fern.say(asked)
    assert reply.facts["emergency"] == "bleach"


@pytest.mark.parametrize(
    "asked",
    [
        "all good?",
        "is everything fine",
        "is my water ok",
        "alles gut?",
        "tout va bien?",
        "is all well",
    ],
)
async def test_after_a_plan_all_is_of_the_tank(fern: Talk, asked: str) -> None:
    await fern.say(READ)
    await fern.say("dose kh 5")
    (reply,) = await fern.say(asked)
    assert reply.facts["readings"]["kh"] == 3.0
    assert "parts" not in reply.facts


async def test_after_a_plan_that_is_the_plan(fern: Talk) -> None:
    await fern.say(READ)
    await fern.say("dose kh 5")
    (reply,) = await fern.say("is that ok?")
    assert reply.facts["parts"]


UNTESTED = "dumped half a bottle of algae killer in"


@pytest.mark.parametrize("waited", [0, 24, 48])
@pytest.mark.parametrize("call", [call for call, _danger in CALLS[-6:]])
async def test_no_other_test_and_no_day_lets_it_be_forgotten(
    fern: Talk, call: str, waited: int
) -> None:
    await fern.say(call)
    await fern.wait(hours=waited)
    await fern.say(READ)
    (reply,) = await fern.say("is my water ok")
    assert reply.facts["emergency"] in {"bleach", "contaminated", "copper"}
    (reply,) = await fern.say("dose kh 5")
    assert reply.facts["refused"] == "poison_first"


@pytest.mark.parametrize(
    ("told", "goes_on"),
    [
        (("changed 30%", "added carbon", "changed 30%"), True),
        (("changed 45 l", "added carbon"), True),
        (("changed 30%", "changed 30%"), False),
        (("added carbon",), False),
        (("changed 30%", "added carbon"), False),
    ],
)
async def test_what_no_kit_shows_is_washed_out(
    fern: Talk, told: Sequence[str], goes_on: bool
) -> None:
    await fern.say(UNTESTED)
    for line in told:
        await fern.say(line)
    await fern.wait(hours=1)
    await fern.say(READ)
    (reply,) = await fern.say("dose kh 5")
    assert ("parts" in reply.facts) is goes_on
    assert (reply.facts.get("danger") == "contaminated") is not goes_on


@pytest.mark.parametrize(("days", "goes_on"), [(1, False), (3, True)])
async def test_animals_that_are_well_some_days_later_tell_it(
    fern: Talk, days: int, goes_on: bool
) -> None:
    await fern.say(UNTESTED)
    await fern.wait(hours=24 * days)
    await fern.say("they look fine")
    await fern.say(READ)
    (reply,) = await fern.say("dose kh 5")
    assert ("parts" in reply.facts) is goes_on


@pytest.mark.parametrize("call", ["poured vinegar in", "too much fertilizer in the tank"])
async def test_what_its_readings_show_is_settled_by_them(fern: Talk, call: str) -> None:
    await fern.say(call)
    await fern.say(READ)
    (reply,) = await fern.say("dose kh 5")
    assert reply.facts.get("refused") != "poison_first"


async def test_no_dose_is_asked_for_meanwhile(fern: Talk) -> None:
    await fern.say("my sister put bleach in the tank")
    assert "dose kh" not in await fern.text(READ)


@pytest.mark.parametrize(
    "text",
    [
        "should i give double the dose of medicine",
        "i nearly gave double the dose of medicine",
        "overdosed the ferts",
    ],
)
async def test_what_is_no_poison_in_the_water_stops_no_dose(fern: Talk, text: str) -> None:
    await fern.say(text)
    await fern.say(READ)
    (reply,) = await fern.say("dose kh 5")
    assert reply.facts["parts"]
