"""A dose told by whoever in words that nothing understands: nothing more goes in before that.

Grams by molar mass (29.96 mg/L of sodium bicarbonate a °dH, from the formula weight 84.007).
"""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk

A_PART = 100 * 29.96e-3


@pytest.fixture
async def two(talk: Talk) -> Talk:
    """A plan in two parts: KH 3 to 5 in 100 L."""
    await talk.say("/tank new Fern 100 l fresh")
    await talk.say("kh 3")
    await talk.say("how much baking soda for kh 5")
    return talk


@pytest.mark.parametrize(
    ("told", "amounts"),
    [
        ("my dad chucked in a full 1 kg bag already", ["1000 g"]),
        ("someone else dosed it too", ["3 g"]),
        ("he put another bag in", []),
        ("hi its Anna, i already gave part 2 this morning", ["3 g"]),
        ("gave a bit less, 2.5", ["2.5 g"]),
        ("gave the first half yesterday at 9pm", ["1.5 g", "3 g"]),
        ("gave 2.7 and changed 20%", ["2.7 g"]),
        ("put also 3 tsp baking soda so ph stays", ["3 tsp"]),
        ("meine Frau hat schon was reingekippt", ["3 g"]),
        ("ive put two doses in cause i thought one wasnt enough", ["3 g", "6 g"]),
        ("my brother in law topped it with some of the kh powder", []),
        ("put 40 g baking soda in the tank 100 l", ["40 g"]),
        ("the dose is in but i forgot to stir", ["3 g"]),
        ("i topped it up with bicarb", ["3 g"]),
        ("10g baking soda in the tank", ["10 g"]),
        ("mi mujer ya echó una cucharada", ["3 tsp"]),
        ("son says he dosed it aswell", ["3 g"]),
        ("husband put 30 too he says", []),
        ("in morning i have give 10 gram", ["10 g"]),
        ("my dad put a bag in this afternoon not knowing", []),
    ],
)
async def test_it_stands_in_the_way_of_every_amount(
    two: Talk, told: str, amounts: list[str]
) -> None:
    asked = (await two.say(told))[-1]
    assert asked.facts["said"] == told
    assert [each.label.split(" of ")[0] for each in asked.buttons[:-1]] == [
        each if "tsp" not in each else "3 tsp sodium bicarbonate (baking soda)" for each in amounts
    ]
    for line in ("what now", "how much is left", "how much more", "how much for kh 5"):
        (again,) = await two.say(line)
        assert told in again.lines[0].text
        assert again.facts["refused"] == "told_first"
    judged = await two.text("is my water ok")
    assert told in judged.partition("\n")[0]
    assert "Ask: dose" not in judged


async def test_a_second_one_needs_no_plan_and_its_amount_no_name(talk: Talk) -> None:
    await talk.say("200 l kh 5")
    await talk.say("husband did it too")
    assert (await talk.facts("dose kh 6"))["refused"] == "told_first"
    assert "What was it" in await talk.text("he says 1 kg bag")
    assert (await talk.facts("dose kh 6"))["refused"] == "told_first"
    (logged, *_) = (await talk.facts("it was baking soda"))["events"]
    assert logged["grams"] == 1000.0


@pytest.mark.parametrize(
    "talk_of_it",
    [
        ("120 l kh 2 how much baking soda to 4", "kid poured the whole box in", "500g i think"),
        ("120 l kh 2", "whole box of baking soda went in", "500g"),
        ("120 l kh 2", "i overdosed", "about 500 g", "it was baking soda"),
    ],
)
async def test_an_amount_asked_for_is_a_deed(talk: Talk, talk_of_it: tuple[str, ...]) -> None:
    for line in talk_of_it:
        told = await talk.text(line)
    assert "dosed 500 g sodium bicarbonate" in told
    assert "KH +139.1 °dH" in told


async def test_an_amount_of_a_poison_is_answered_by_its_steps(talk: Talk) -> None:
    await talk.say("120 l kh 2")
    await talk.say("overdosed the copper medicine")
    assert (await talk.facts("20 g"))["emergency"] == "overdose"


async def test_its_button_puts_it_on_record_once_however_often_it_is_asked(two: Talk) -> None:
    (asked,) = await two.say("someone else dosed it too")
    (again,) = await two.say("what now")
    (logged,) = await two.press(1, again)
    assert logged.facts["events"][0]["grams"] == pytest.approx(A_PART, rel=2e-3)
    assert all("events" not in each.facts for each in await two.press(1, asked))
    assert (await two.facts("how much is left"))["left"] == 1


async def test_a_spoon_of_it_counts_as_what_it_weighs(two: Talk) -> None:
    await two.say("2 spoonfuls in")
    assert "All 2 parts are on record" in await two.text("how much is left")


@pytest.mark.parametrize(
    "told", ["i think i gave it", "think dad did it as well", "oh i think i did it twice"]
)
async def test_what_is_in_perhaps_stands_in_the_way_as_well(two: Talk, told: str) -> None:
    await two.say("done")
    await two.say(told)
    for line in ("what now", "part 2 today?", "how much is left"):
        assert "Not logged, for it may not be in" in await two.text(line)


@pytest.mark.parametrize("word", ["no", "nothing went in", "no they didn't"])
async def test_nothing_of_it_lets_the_plan_go_on(two: Talk, word: str) -> None:
    await two.say("he put another bag in")
    await two.say(word)
    assert "parts" in await two.facts("how much for kh 5")


async def test_two_that_were_told_are_two_questions(two: Talk) -> None:
    await two.say("ok dosed it earlier, bit less")
    await two.say("my wife says she put the dose in already too")
    await two.say("3 g baking soda")
    assert "my wife says" in await two.text("what now")


async def test_a_slip_of_the_amount_is_the_answer(talk: Talk) -> None:
    await talk.say("tank 100 l kh 3 i put in 3 kg baking soda")
    (logged,) = await talk.say("typo 3 g")
    assert logged.facts["events"][0]["grams"] == pytest.approx(3.0)


async def test_a_test_of_a_day_after_counts_it_in(two: Talk) -> None:
    await two.say("someone else dosed it too")
    await two.wait(hours=22)
    await two.say("kh 4")
    assert (await two.facts("how much baking soda for kh 5"))["from"] == 4.0


async def test_a_second_one_or_the_same_is_asked_on(two: Talk) -> None:
    await two.say("done")
    await two.say("my wife gave it too")
    for line in ("how much is left", "what now", "how much for kh 5"):
        assert "Is it a second one, or the same?" in (await two.say(line))[0].lines[0].text
    await two.say("the same one")
    assert (await two.facts("how much is left"))["left"] == 1


@pytest.mark.parametrize(
    ("told", "why"),
    [
        ("Anna here, i already gave part 2", "“Anna here"),
        ("my husband dosed the rest already all of it", "on record already"),
        ("kh 5", "Goal reached"),
        ("ammonia 1?", "“ammonia 1”"),
    ],
)
async def test_a_reminder_of_a_part_that_may_be_in_says_so_first(
    two: Talk, told: str, why: str
) -> None:
    await two.say("done")
    await two.say("remind me tomorrow 18:00 part 2")
    await two.say(told)
    (due,) = await two.wait(hours=48)
    assert why in due.lines[0].text
    assert "3 g" not in due.text
    assert "3 g" not in await two.text("later")


@pytest.mark.parametrize(
    "text",
    [
        "my wife put plants in",
        "my son gave me the tank",
        "he put a bag of shrimps in",
        "i will put a spoon in tomorrow",
        "did she put the dose in?",
        "my other fish did it too",
    ],
)
async def test_what_was_no_dose_stands_in_no_way(two: Talk, text: str) -> None:
    await two.say(text)
    assert "parts" in await two.facts("how much for kh 5")


async def test_it_is_what_was_named_last_though_it_was_refused(talk: Talk) -> None:
    await talk.say("tank 100 l")
    await talk.say("kh 3, how much soda for kh 5")
    await talk.say("i only got washing soda")
    (event,) = (await talk.facts("put 2 tablespoons of it in already"))["events"]
    assert event["substance"] == "sodium carbonate"


async def test_what_is_told_in_passing_is_no_question_how_it_is_done(talk: Talk) -> None:
    await talk.say("saltwater 250 litres, alk 6.5")
    (asked,) = await talk.say("already put 20 grams of soda ash in a while ago")
    assert "Did 20 g of sodium carbonate go in?" in asked.text
    (logged, *_rest) = await talk.press(1, asked)
    (event,) = logged.facts["events"]
    assert (event["substance"], event["grams"]) == ("sodium carbonate", 20.0)


@pytest.mark.parametrize("told", ["i put ammonia remover in yesterday", "we put nitrite binder in"])
async def test_a_remedy_by_the_name_of_what_it_takes_out_went_in(talk: Talk, told: str) -> None:
    await talk.say("100 litres ph 7.9 kh 7")
    assert "what went in" in await talk.text(told)
    assert "what went in" in await talk.text("dose kh 8")
    assert "what went in" in await talk.text("what did i put in so far")


async def test_another_name_is_never_put_on_record_as_the_plans_salt(two: Talk) -> None:
    (asked,) = await two.say("i already put 20 grams of the ash in")
    assert [each.label for each in asked.buttons] == ["nothing went in"]
    (same,) = await two.say("i already put 3 grams of the powder in")
    assert "3 g" in same.text


async def test_first_aid_stands_beside_the_question(talk: Talk) -> None:
    await talk.say("120 l kh 4 ph 7")
    told = "my son tipped in half a box of baking soda about 250 g"
    for line in (told, "what do I do"):
        answered = await talk.text(line)
        assert "If they gasp, give air at once" in answered
        assert "a tenth to a quarter" in answered
        assert "Did 250 g" in answered
    assert "no acid" in (await talk.text("how much acid to bring it down")).lower()


async def test_a_little_needs_no_first_aid(talk: Talk) -> None:
    await talk.say("120 l kh 4 ph 7")
    assert "a tenth to a quarter" not in await talk.text(
        "my son tipped in about 1 g of baking soda"
    )


@pytest.mark.parametrize(
    ("told", "one", "spoons"),
    [
        ("thanks. added 4 caps of it", "the cap is about 5ml", 4.0),
        ("added 4 capfuls of baking soda", "one holds a teaspoon", 4.0),
        ("two scoops went in", "a scoop is 10 ml", 4.0),
        ("habe 4 kappen davon reingetan", "eine kappe fasst 5 ml", 4.0),
    ],
)
async def test_of_caps_it_is_asked_what_one_holds(
    two: Talk, told: str, one: str, spoons: float
) -> None:
    (asked,) = await two.say(told)
    assert "what does one hold" in asked.text
    assert [each.label for each in asked.buttons] == ["nothing went in"]
    assert (await two.facts("how much for kh 5"))["refused"] == "told_first"
    (event,) = (await two.facts(one))["events"]
    assert (event["substance"], event["spoons"]) == ("sodium bicarbonate", spoons)


async def test_what_a_cap_holds_is_heard_behind_a_reading(two: Talk) -> None:
    await two.say("added 4 caps of it")
    await two.say("gh 8")
    (event,) = (await two.facts("the cap is about 5ml"))["events"]
    assert event["spoons"] == 4.0
    assert "events" not in await two.facts("the cap is about 5ml")


async def test_of_two_numbers_none_is_put_on_record_unasked(two: Talk) -> None:
    (asked,) = await two.say("dont remember if i added 4 or 6 tbh")
    shown = [each.label.split(" of ")[0] for each in asked.buttons]
    assert shown == ["4 g", "6 g", "nothing went in"]
    assert "events" not in await two.facts("yes")


async def test_how_much_it_was_is_heard_behind_a_call(talk: Talk) -> None:
    await talk.say("60l tank, kh 1 gh 5 ph 6.2")
    await talk.say("how much baking soda to kh 4")
    await talk.say("ok did it all at once")
    await talk.say("shrimp are twitching")
    (event,) = (await talk.facts("it was about 5 spoons i think"))["events"]
    assert (event["substance"], event["spoons"]) == ("sodium bicarbonate", 5.0)


@pytest.mark.parametrize("text", ["it was about 5 spoons i think", "the cap is about 5ml"])
async def test_an_amount_of_nothing_open_is_no_dose(two: Talk, text: str) -> None:
    replies = await two.say(text)
    assert all("spoons" not in str(each.facts.get("events")) for each in replies)


@pytest.mark.parametrize(
    "asked",
    [
        "how much baking soda for 120 l from kh 3 to 5",
        "i have a 120 l tank, kh 3, how much soda to kh 6",
    ],
)
async def test_what_went_in_before_a_tank_was_told_stands_against_its_litres(
    talk: Talk, asked: str
) -> None:
    said = "my brother chucked in a bag of stuff"
    await talk.say(said)
    assert (await talk.facts(asked))["said"] == said
    await talk.say("120 l")
    await talk.say("kh 3 ph 7 ammonia 0 temp 25")
    assert (await talk.facts("dose kh 5"))["said"] == said
    await talk.say("nothing went in")
    assert "grams" in await talk.facts("dose kh 5")


async def test_new_water_apart_has_its_amount_whatever_went_in(talk: Talk) -> None:
    await talk.say("my brother chucked in a bag of stuff")
    assert "salts" in await talk.facts("how much baking soda for 20 l of ro water to kh 4")


@pytest.mark.parametrize(
    "text", ["10 g baking soda in the tank?", "can 10 g baking soda in the tank hurt",
             "10 g baking soda in the tank tomorrow", "i want 10 g baking soda in the tank"]
)  # fmt: skip
async def test_so_much_in_the_tank_that_is_asked_or_meant_is_not_in(two: Talk, text: str) -> None:
    assert "is not on record" not in await two.text(text)


@pytest.mark.parametrize(
    ("told", "spoons"),
    [
        ("i put 2 teaspoons of baking soda in my 20 gallon", 2.0),
        ("my wife tipped a tablespoon of baking soda into our 75 l tank this morning", 3.0),
        ("hab 2 teelöffel natron in mein 75 l becken getan", 2.0),
    ],
)
async def test_spoons_told_without_a_tank_stand_before_any_amount(
    talk: Talk, told: str, spoons: float
) -> None:
    (asked,) = await talk.say(told)
    assert "Weigh it" not in asked.text
    assert "refused" not in asked.facts
    await talk.say("kh 3")
    (held,) = await talk.say("how much to get to 5")
    assert held.facts["refused"] == "told_first"
    (event,) = (await talk.press(1, held))[0].facts["events"]
    assert (event["substance"], event["spoons"]) == ("sodium bicarbonate", spoons)
    await talk.say("75 l")
    assert (await talk.facts("how much to get to 5"))["refused"] != "told_first"


async def test_of_spoons_told_in_so_much_water_it_is_judged(talk: Talk) -> None:
    (asked,) = await talk.say("i put 2 teaspoons of baking soda in my 20 gallon")
    assert "Too much for one day" in (await talk.press(1, asked))[0].text


@pytest.mark.parametrize(
    "text",
    [
        "what do 2 teaspoons of baking soda do in my 20 gallon",
        "can i put 2 teaspoons of baking soda in my 20 gallon",
        "should i put 2 teaspoons of baking soda in my 20 gallon",
    ],
)
async def test_spoons_that_are_asked_about_are_not_told(talk: Talk, text: str) -> None:
    assert (await talk.facts(text))["refused"] == "substance_unknown"
    await talk.say("my tank is 75 l, kh 3")
    assert "parts" in await talk.facts("how much baking soda to get to kh 5")


@pytest.mark.parametrize(
    "told",
    [
        "put the second half in just now, kh test was 3 drops before that",
        "added the first part, test was 3 drops",
        "test was 3 drops, put the first part in after",
    ],
)
async def test_a_part_told_beside_a_test_is_asked_about_and_the_test_named(
    two: Talk, told: str
) -> None:
    replies = await two.say(told)
    assert "3 drops" in replies[0].text
    assert "said" in replies[-1].facts
    labels = [each.label for each in replies[-1].buttons]
    assert any(label.startswith("3 g") for label in labels)  # a part
    (again,) = await two.say("what is left")
    assert again.facts["refused"] == "told_first"


async def test_a_number_of_a_test_is_no_amount(two: Talk) -> None:
    asked = (await two.say("put the first half in just now, kh was 4 before that"))[-1]
    labels = [each.label.split(" of ")[0] for each in asked.buttons]
    assert labels == ["1.5 g", "3 g", "nothing went in"]


async def test_a_test_put_in_is_no_dose(two: Talk) -> None:
    await two.say("put the test in a drawer, kh was 3 drops before")
    assert "parts" in await two.facts("how much for kh 5")


@pytest.mark.parametrize(
    "told",
    [
        "my husband put some in as well about an hour before me, maybe 2 teaspoons",
        "he put the first lot in at 9 this mornin", "i didnt know and put another lot in at 11",
        "I already put a tablespoon in yesterday, should have said",
        "i already chucked in 2 tsp this morning before i tested, is it still that much?",
    ],
)  # fmt: skip
async def test_what_comes_next_behind_a_deed_does_not_undo_it(two: Talk, told: str) -> None:
    assert (await two.say(told))[-1].facts["said"]
    assert (await two.facts("so what do i add tonight"))["refused"] == "told_first"


@pytest.mark.parametrize(
    "told",
    [
        "put 2 tsp in, ok?", "i put 2 tsp in, almost", "if i put 2 tsp in, what happens",
        "put an airstone in, should have said", "will put a lot in tonight",
    ],
)  # fmt: skip
async def test_what_is_only_meant_is_not_held(two: Talk, told: str) -> None:
    assert all("said" not in each.facts for each in await two.say(told))


async def test_each_was_so_much_of_all_that_is_open(two: Talk) -> None:
    await two.say("he put the first lot in at 9 this mornin")
    await two.say("i didnt know and put another lot in at 11")
    (event,) = (await two.facts("each was 8 grams"))["events"]
    assert event["grams"] == 16
    assert (await two.facts("how much more")).get("refused") != "told_first"


async def test_a_part_told_after_a_refusal_is_held_and_not_called_too_much(talk: Talk) -> None:
    await talk.say("30l tank, kh 1 gh 6")
    await talk.say("how much baking soda do i need to get kh 3")
    told = await talk.text("I did the first one just now")
    assert "Too much" not in told
    left = (await talk.say("so how much left"))[0]
    assert left.facts["refused"] == "told_first"
