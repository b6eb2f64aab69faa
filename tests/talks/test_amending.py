"""The deed or reading that was just told is put right in other words; nothing else is."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk


@pytest.fixture
async def fern(talk: Talk) -> Talk:
    await talk.say("/tank new Fern 90 l fresh")
    return talk


@pytest.mark.parametrize(
    ("told", "right", "says"),
    [
        ("put in 3 g baking soda", "oh wait it was only 2g", "Corrected: Fern: dosed 2 g"),
        ("put in 3 g baking soda", "oh wait only put 2 g", "Corrected: Fern: dosed 2 g"),
        ("put in 6 g baking soda", "3 g not 6", "Corrected: Fern: dosed 3 g"),
        ("put in 6 g baking soda", "en fait 12", "Corrected: Fern: dosed 12 g"),
        ("put in 6 g baking soda", "scratch that it was heaped so 8", "Corrected: Fern: dosed 8 g"),
        ("put in 4 g baking soda", "half of that actually", "Corrected: Fern: dosed 2 g"),
        ("put in 4 g baking soda", "spilled half of it", "Corrected: Fern: dosed 2 g"),
        ("put in 4 g baking soda", "oh no half of it got spilled", "Corrected: Fern: dosed 2 g"),
        ("changed 30 l", "never did that", "Taken back"),
        ("changed 30 l", "das hab ich nie gemacht", "Taken back"),
        ("changed 30%", "i did 25 instead of 30", "Corrected: Fern: changed 25 %"),
        ("changed 30%", "no that was 40%", "Corrected: Fern: changed 40 %"),
        ("changed 10 l", "en fait 12", "Corrected: Fern: changed 12 L"),
        ("changed 10 l", "davon nur die hälfte", "Corrected: Fern: changed 5 L"),
        ("changed 30%", "it was yesterday", "Corrected: Fern (yesterday 12:00): changed 30 %"),
        ("kh 4.5", "non pardon 5,4", "Corrected: KH 5.4"),
        ("nitrat 20", "ne quatsch warens 10", "Corrected: nitrate 10 mg/L"),
        (
            "put in 3 g epsom",
            "no wait that was calcium chloride",
            "Corrected: Fern: dosed 3 g calc",
        ),
        ("put in 2 g washing soda", "it was baking soda not washing soda", "sodium bicarbonate"),
        ("put in 2 g baking soda", "undo that, havent actually done it", "Taken back"),
        ("put in a teaspoon of baking soda", "oops that was a whole tablespoon", "dosed 3 tea"),
        ("put in a teaspoon of baking soda", "no it was a tablespoon", "dosed 3 teaspoons"),
        ("put in a teaspoon of baking soda", "it was 2 tbsp not 1 tsp", "dosed 6 teaspoons"),
        ("put in 2 g baking soda", "sorry that was a teaspoon", "dosed 1 teaspoon"),
        ("put in 5 ml of baking soda", "2.5 ml not 5", "Corrected: Fern: dosed 2.5 mL"),
    ],
)
async def test_it_is_put_right(fern: Talk, told: str, right: str, says: str) -> None:
    await fern.say(told)
    assert says in await fern.text(right)


@pytest.mark.parametrize(
    ("told", "said"),
    [
        ("nitrate 20", "i did 25"),
        ("nitrate 20", "only changed 10"),
        ("put in 3 g baking soda", "it was epsom not gypsum"),
        ("changed 30%", "20 not 25"),
        ("kh 4 gh 8", "no 5"),
        ("put in 3 g baking soda", "no wait"),
        ("changed 30%", "oops that was a whole tablespoon"),
        ("kh 5", "2.5 ml not 5"),
    ],
)
async def test_what_does_not_fit_puts_nothing_right(fern: Talk, told: str, said: str) -> None:
    await fern.say(told)
    assert "Corrected" not in await fern.text(said)


async def test_both_are_taken_back(fern: Talk) -> None:
    await fern.say("changed 30%")
    await fern.say("put in 2 g baking soda")
    first, second = await fern.say("no wait, undo both")
    assert "dosed 2 g" in first.text
    assert "changed 30 %" in second.text


async def test_what_was_not_done_is_taken_back_whole(fern: Talk) -> None:
    await fern.say("put in 3 g baking soda")
    await fern.say("oh wait it was only 2g")
    await fern.say("havent actually done it")
    assert "no dose on record" in await fern.text("what did i dose")


async def test_a_deed_goes_to_the_tank_that_it_was_done_in(fern: Talk) -> None:
    await fern.say("/tank new Quarry 60 l fresh")
    await fern.say("fern: put in 2 g baking soda")
    assert (await fern.text("did it in quarry by mistake")).startswith("Moved to Quarry")
    await fern.say("fern: changed 20%")
    assert (await fern.text("oh no i did it in the other one")).startswith("Moved to Quarry")
    assert "Moved" not in await fern.text("did it go in quarry")


async def test_a_part_that_was_put_right_stays_one_of_its_plan(fern: Talk) -> None:
    await fern.say("kh 2 gh 5 ph 7.0 temp 25 ammonia 0")
    part = (await fern.facts("dose kh 4"))["parts"][0]
    await fern.say("done")
    await fern.say("i only put half in")
    left = await fern.facts("how much is left")
    assert left["rest"] == pytest.approx(part / 2, rel=1e-3)
    (logged,) = await fern.say("done")
    assert logged.facts["events"][0]["grams"] == pytest.approx(part / 2, rel=1e-3)
    assert "1 of 2 parts is left." in await fern.text("how much is left")


async def test_the_volume_of_the_tank_puts_no_change_right(fern: Talk) -> None:
    await fern.say("changed 30%")
    assert "Does Fern hold 60 L" in await fern.text("it's 60 l")


@pytest.fixture
async def two(talk: Talk) -> Talk:
    await talk.say("/tank new Main 200 l fresh")
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("fern no3 25")
    return talk


@pytest.mark.parametrize(
    "line",
    [
        "oops that was main",
        "oh wait wrong tank, thats Main",
        "no thats main",
        "ach nein, das war Main",
        "oups mauvais bac, c'est Main",
        "wrong tank",
    ],
)
async def test_a_reading_goes_to_the_tank_that_it_is_of(two: Talk, line: str) -> None:
    assert "Moved to Main: Main: nitrate 25 mg/L" in await two.text(line)


@pytest.mark.parametrize("line", ["no main is fine", "no, main was fine", "oops main is 20"])
async def test_how_another_tank_is_moves_nothing(two: Talk, line: str) -> None:
    assert "Moved" not in await two.text(line)


@pytest.mark.parametrize(
    "line",
    ["forget the kh", "vergiss das kh", "oublie le kh", "borra el kh", "zapomnij kh", "glöm kh",
     "delete the kh reading", "scratch the kh", "strike the kh reading", "cancel the kh",
     "ok forget fern, delete that reading"],
)  # fmt: skip
async def test_a_value_is_forgotten(fern: Talk, line: str) -> None:
    await fern.say("kh 5")
    assert "Taken back: Fern: KH 5" in await fern.text(line)


@pytest.mark.parametrize(
    "line", ["remove the kh", "should i forget the kh", "don't forget the kh", "forget fern"]
)
async def test_what_is_to_be_removed_from_the_water_is_not_forgotten(fern: Talk, line: str) -> None:
    await fern.say("kh 5")
    assert "Taken back" not in await fern.text(line)


async def test_what_else_was_told_stays(fern: Talk) -> None:
    await fern.say("kh 5 no2 0.5")
    await fern.say("forget the nitrite")
    assert "Measured: KH 5 °dH." in await fern.text("how is fern")


async def test_grams_take_the_place_of_spoons(fern: Talk) -> None:
    await fern.say("dosed 2 tsp baking soda")
    assert "Corrected: Fern: dosed 2 g" in await fern.text("no it was 2 grams not teaspoons")


@pytest.mark.parametrize(
    ("told", "taken_back"),
    [
        ("kh 9", "nah thats the mix bucket"),
        ("kh 9", "ne das war der eimer"),
        ("kh 9", "non, c'était le seau"),
        ("kh 9", "no, era el cubo"),
        ("kh 9", "não, era o balde"),
        ("kh 9", "no, era il secchio"),
        ("kh 9", "nee dat was de emmer"),
        ("kh 9", "nie, to było wiadro"),
        ("kh 9", "nej det var hinken"),
        ("nitrate 300", "no way thats real, ignore that"),
        ("put in 2 g baking soda", "sorry wasnt me, my wife says she didnt do it"),
        ("put in 2 g baking soda", "ich wars nicht"),
        ("put in 2 g baking soda", "no fui yo"),
    ],
)
async def test_what_is_none_of_the_tank_is_taken_back(
    fern: Talk, told: str, taken_back: str
) -> None:
    await fern.say(told)
    assert (await fern.text(taken_back)).startswith("Taken back")


async def test_the_unit_that_was_meant(fern: Talk) -> None:
    await fern.say("kh 2.1")
    assert (await fern.text("thats meq")).startswith("Corrected: KH 2.1 meq/L = 5.9 °dH")


@pytest.mark.parametrize("text", ["the bucket", "is that the mix bucket?", "meq", "thats fine"])
async def test_a_bucket_that_is_only_named_takes_nothing_back(fern: Talk, text: str) -> None:
    await fern.say("kh 9")
    said = await fern.text(text)
    assert not said.startswith(("Taken back", "Corrected"))
