"""What is asked of the tanks themselves, and of the one in use."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk


@pytest.fixture
async def two(talk: Talk) -> Talk:
    await talk.say("/tank new cube 60 l fresh")
    await talk.say("/tank new reefy 200 l fresh")
    return talk


@pytest.mark.parametrize(
    "text", ["my tanks", "what tanks", "meine Becken", "mes bacs?", "moje akwaria"]
)
async def test_tanks_are_listed_with_what_stands(two: Talk, text: str) -> None:
    await two.say("cube: kh 3")
    (told,) = await two.say(text)
    assert [each["volume_l"] for each in told.facts["tanks"]] == [60, 200]
    assert told.facts["readings"]["cube"]["kh"] == 3
    assert told.facts["readings"]["reefy"] == {}


@pytest.mark.parametrize(
    "text",
    [
        "which one is worst",
        "which tank is worse",
        "compare tanks",
        "welches becken ist schlechter?",
    ],
)
async def test_the_worse_one_is_told_first(two: Talk, text: str) -> None:
    await two.say("cube: nitrite 0 ammonia 0")
    await two.say("reefy: nitrite 1")
    head, *each = await two.say(text)
    assert head.facts["tanks"] == ["reefy", "cube"]
    assert "reefy" in head.text
    assert [reply.facts["tank"] for reply in each] == ["reefy", "cube"]


async def test_no_tank_is_called_worse_while_one_is_not_measured(two: Talk) -> None:
    await two.say("reefy: nitrite 1")
    head, *_each = await two.say("which tank is worse?")
    assert "cannot tell" in head.text
    assert "cube" in head.text


async def test_a_change_and_the_readings_are_told_of_each(two: Talk) -> None:
    await two.say("cube: nitrite 0")
    await two.say("reefy: nitrite 1")
    changes = await two.say("which tank needs a change")
    assert [reply.facts["tank"] for reply in changes] == ["cube", "reefy"]
    assert [len(reply.facts["findings"]) > 0 for reply in changes] == [False, True]
    assert len(await two.say("last readings of both")) == 2


@pytest.mark.parametrize("text", ["switch to cube", "use the cube", "nimm cube", "passe à cube"])
async def test_a_tank_is_taken_from_then_on(two: Talk, text: str) -> None:
    await two.say("reefy: kh 5")
    await two.say(text)
    assert (await two.say("which tank is this?"))[0].facts["tank"] == "cube"
    assert (await two.say("kh 4"))[0].facts["tank"] == "cube"


@pytest.mark.parametrize(
    "text", ["use 5 g soda in cube", "switch to cube?? 5 g", "should i use cube salt"]
)
async def test_other_uses_switch_to_no_tank(two: Talk, text: str) -> None:
    await two.say("reefy: kh 5")
    await two.say(text)
    assert "cube: 60" not in (await two.text("how is my water"))


async def test_the_other_is_answered_as_the_last_was(two: Talk) -> None:
    await two.say("cube: kh 3 ph 7 ammonia 0 temp 24")
    await two.say("reefy: kh 2 ph 7 ammonia 0 temp 24")
    await two.say("how is the cube")
    (told,) = await two.say("and the other?")
    assert told.facts["tank"] == "reefy"
    assert told.facts["readings"]["kh"] == 2
    plan = (await two.say("dose kh 4 in cube"))[0]
    assert plan.facts["tank"] == "cube"
    other = (await two.say("and the other one?"))[0]
    assert (other.facts["tank"], other.facts["from"], other.facts["to"]) == ("reefy", 2, 4)


@pytest.mark.parametrize("text", ["oops that was for the cube only", "nur cube", "only in cube"])
async def test_what_was_told_of_both_counts_in_one_alone(two: Talk, text: str) -> None:
    await two.say("ph 7 in both")
    await two.say(text)
    assert "pH 7" in await two.text("history ph for cube")
    assert "no readings" in await two.text("history ph for reefy")


async def test_what_was_told_of_the_other_is_moved(two: Talk) -> None:
    await two.say("ph 7 in reefy")
    (told,) = await two.say("that was for the cube only")
    assert (told.facts["tank"], told.facts["values"][0]["value"]) == ("cube", 7)
    assert "no readings" in await two.text("history ph for reefy")


async def test_a_question_about_animals_is_asked_of_the_tank_that_is_named(two: Talk) -> None:
    await two.say("switch to cube")
    await two.say("6 neons")
    (asked,) = await two.say("in the big one")
    assert asked.facts["tank"] == "reefy"
    assert "6 neons" not in await two.text("who lives where")
    await two.say("yes")
    assert "reefy: 6 neons" in await two.text("who lives there")


@pytest.mark.parametrize("text", ["how many left", "wie viele noch?", "ile zostało"])
async def test_after_a_death_the_number_on_record_is_told(two: Talk, text: str) -> None:
    await two.say("reefy: added 10 neons")
    await two.say("2 neons died")
    assert (await two.say(text))[0].facts["stock"] == {"reefy": {"neons": 8}}


@pytest.mark.parametrize("text", ["werte?", "values", "wyniki"])
async def test_the_last_readings_are_told_in_a_word(two: Talk, text: str) -> None:
    await two.say("reefy: kh 5")
    told = await two.text(text)
    assert "reefy" in told
    assert "KH 5" in told


async def test_what_is_low_is_told_by_the_last_readings(two: Talk) -> None:
    await two.say("reefy: kh 1 ph 7")
    assert (await two.say("whats low"))[0].facts["findings"][0]["id"] == "low_kh"


@pytest.mark.parametrize("text", ["the cube", "in the cube", "das cube becken", "oh the cube one"])
async def test_a_tank_right_after_a_reading_without_one_is_of_it(two: Talk, text: str) -> None:
    await two.say("kh 3")
    assert "Moved to cube" in await two.text(text)
    assert (await two.say("how much soda for kh 5"))[0].facts["volume_l"] == 60


async def test_its_bare_name_shows_it_and_asks_of_the_reading(two: Talk) -> None:
    await two.say("ammonia 2")
    *_shown, asked = await two.say("cube")
    (moved, *_rest) = await two.press(1, asked)
    assert "Moved to cube" in moved.text


async def test_after_a_reading_of_a_named_tank_it_is_only_shown(two: Talk) -> None:
    await two.say("reefy kh 3")
    assert "Moved" not in await two.text("the cube")
    assert (await two.say("is it ok"))[0].facts["tank"] == "cube"


async def test_after_a_question_it_is_asked_of_that_one(two: Talk) -> None:
    await two.say("cube: kh 3 ph 7 ammonia 0")
    await two.say("reefy: kh 4 ph 7 ammonia 0")
    await two.say("how much soda for kh 5")
    assert (await two.say("the cube"))[0].facts["volume_l"] == 60


@pytest.mark.parametrize(
    ("text", "kinds"),
    [
        ("its freshwater sorry", ["fresh", "fresh"]),
        ("no its not marine, its fresh", ["fresh", "fresh"]),
        ("das ist süßwasser", ["fresh", "fresh"]),
        ("cube is saltwater", ["marine", "marine"]),
        ("it was salt", ["fresh", "marine"]),
        ("is it freshwater?", ["fresh", "marine"]),
    ],
)
async def test_the_water_of_a_tank_is_put_right(talk: Talk, text: str, kinds: list[str]) -> None:
    await talk.say("/tank new cube 60 l fresh")
    await talk.say("/tank new reefy 200 l marine")
    await talk.say("reefy: kh 5")
    await talk.say(text)
    assert [(await talk.facts(f"/tank {each}"))["kind"] for each in ("cube", "reefy")] == kinds


@pytest.mark.parametrize(
    "text",
    ["no the ammonia is in cube", "sorry ammonia is for cube", "ammonia is in cube not reefy"],
)
async def test_a_value_is_moved_to_the_tank_that_it_is_in(two: Talk, text: str) -> None:
    await two.say("ammonia 1 in reefy")
    assert "Moved to cube" in await two.text(text)
    assert "cube: Ammonia 1" in await two.text("is cube ok")
    assert "Ammonia" not in await two.text("and reefy?")


async def test_there_is_none_of_it_moves_nothing(two: Talk) -> None:
    await two.say("ammonia 1 in reefy")
    assert "Moved" not in await two.text("no ammonia in cube")


@pytest.mark.parametrize("text", ["no the other one", "sorry the other one", "no i meant the cube"])
async def test_with_regret_a_reading_is_of_the_one_that_was_meant(two: Talk, text: str) -> None:
    await two.say("reefy kh 3")
    assert "Moved to cube" in await two.text(text)


@pytest.mark.parametrize(
    "text", ["sorry the other one", "i meant the cube", "wait no i meant the shrimp one"]
)
async def test_with_regret_a_question_is_of_the_one_that_was_meant(two: Talk, text: str) -> None:
    await two.say("added 10 cherry shrimp to cube")
    await two.say("cube: kh 3 ph 7 ammonia 0")
    await two.say("reefy: kh 4 ph 7 ammonia 0")
    await two.say("how much soda for kh 5 in reefy")
    assert (await two.say(text))[0].facts["volume_l"] == 60


async def test_so_is_what_was_told_in_the_same_breath(two: Talk) -> None:
    await two.say("kh 4 in the reefy want 10")
    moved, plan = await two.say("no i meant the cube")
    assert "Moved to cube" in moved.text
    assert (plan.facts["volume_l"], plan.facts["from"]) == (60, 4)


async def test_how_big_they_are_and_which_got_a_dose_is_told(two: Talk) -> None:
    await two.say("put 1 g baking soda in cube")
    assert [each.facts["volume_l"] for each in await two.say("how big is my tank")] == [60, 200]
    assert (await two.say("how big is reefy"))[0].facts["volume_l"] == 200
    told = await two.say("which one did i dose")
    assert [each.facts["tank"] for each in told] == ["cube", "reefy"]
    assert "dosed 1 g" in told[0].text


@pytest.mark.parametrize(
    "text", ["what have i got", "what do i have", "was hab ich", "qué tengo", "vad har jag"]
)
async def test_what_one_has_is_the_tanks_on_record(talk: Talk, text: str) -> None:
    assert (await talk.text(text)).startswith("No tanks yet")
    await talk.say("/tank new Fern 100 l fresh")
    assert [each["tank"] for each in (await talk.facts(text))["tanks"]] == ["Fern"], text


async def test_what_one_has_is_the_reminders_as_well(talk: Talk) -> None:
    await talk.say("remind me sunday to feed")
    assert "feed" in await talk.text("what have i got")
    await talk.say("/tank new Fern 100 l fresh")
    told = [reply.text for reply in await talk.say("what have i got")]
    assert "Fern" in told[0]
    assert "feed" in told[1]


async def test_a_dose_asked_for_by_size_is_planned_and_asked_anew_of_the_other(talk: Talk) -> None:
    for line in ("tank den 60 l", "tank big 240 l", "den: kh 5", "big: kh 4"):
        await talk.say(line)
    assert "big (240 L): KH 4 → 9" in await talk.text(
        "whats the dose for the big one to get to kh 9"
    )
    assert "den (60 L): KH 5 → 9" in await talk.text("and the little one?")
    assert "big (240 L): KH 4 → 9" in await talk.text("same for the other one")


async def test_a_number_in_other_units_is_no_dose(talk: Talk) -> None:
    await talk.say("tank big 240 l")
    assert "161 ppm" in await talk.text("what is kh 9 in ppm")
