"""What of a plan went in, or shall: so much, half of it, told twice, done later or after a test.

Grams by molar mass (29.96 mg/L of sodium bicarbonate a °dH, from the formula weight 84.007).
"""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk

A_PART = 90 * 29.96e-3


@pytest.fixture
async def one(talk: Talk) -> Talk:
    """A plan in one part: KH 2 to 3 in 90 L."""
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("kh 2 gh 5 ph 7.0 temp 25 ammonia 0")
    await talk.say("dose kh 3")
    return talk


@pytest.fixture
async def two(talk: Talk) -> Talk:
    """A plan in two parts: KH 2 to 4 in 90 L."""
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("kh 2 gh 5 ph 7.0 temp 25 ammonia 0")
    await talk.say("dose kh 4")
    return talk


def grams(facts: dict) -> float:  # type: ignore[type-arg]
    (event,) = facts["events"]
    return float(event["grams"])


@pytest.mark.parametrize(
    "text",
    [
        "hab nur 1g genommen", "ok weighed 1 g and its in", "only used 1 g", "j'ai pris 1 g",
        "solo puse 1 g", "só pus 1 g", "ho messo solo 1 g", "heb maar 1 g gedaan",
        "dałem tylko 1 g", "gav bara 1 g",
    ],
)  # fmt: skip
async def test_so_much_went_in_and_the_rest_of_the_part_is_left(one: Talk, text: str) -> None:
    assert grams(await one.facts(text)) == 1.0
    assert (await one.facts("wieviel noch"))["rest"] == pytest.approx(A_PART - 1.0, rel=2e-3)
    assert grams(await one.facts("done")) == pytest.approx(A_PART - 1.0, rel=2e-3)


@pytest.mark.parametrize("text", ["just 1 g", "ill only give 1 g", "nur 1 g", "seulement 1 g"])
async def test_so_much_and_no_more_is_what_done_logs(one: Talk, text: str) -> None:
    assert "When it is in, send: done" in await one.text(text)
    assert grams(await one.facts("done")) == 1.0


async def test_more_than_a_part_is_kept_apart(one: Talk) -> None:
    assert "Not more than 2.7 g" in await one.text("ill just give 5 g")


@pytest.mark.parametrize(
    "text",
    [
        "its in", "ive put it in", "gave it", "j ai mis la 1ere dose", "erste portion drin",
        "c'est dedans", "ya está dentro", "já está dentro", "è dentro", "zit erin",
        "już jest w środku", "den är i",
    ],
)  # fmt: skip
async def test_it_is_in_also_behind_a_reading(one: Talk, text: str) -> None:
    await one.say("ph 7.1")
    assert grams(await one.facts(text)) == pytest.approx(A_PART, rel=2e-3)
    assert "events" not in await one.facts(text)  # twice: is on record already


@pytest.mark.parametrize(
    ("first", "second"),
    [
        ("ok first half is in", "second half in"),
        ("i only put half in", "zweite hälfte drin"),
        ("hab die hälfte reingetan", "did the rest"),
        ("le puse la mitad hoy", "put the rest in"),
    ],
)
async def test_half_of_the_only_part(one: Talk, first: str, second: str) -> None:
    assert grams(await one.facts(first)) == pytest.approx(A_PART / 2, rel=2e-3)
    assert grams(await one.facts(second)) == pytest.approx(A_PART / 2, rel=2e-3)
    assert "on record already" in await one.text("its in")


async def test_half_of_two_parts_is_asked(two: Talk) -> None:
    (asked,) = await two.say("half is in")
    assert asked.text.startswith("Half of what?")
    (logged,) = await two.press(2, asked)
    assert grams(dict(logged.facts)) == pytest.approx(A_PART, rel=2e-3)


@pytest.mark.parametrize("text", ["put it in", "i gave it", "done", "hab ich gegeben"])
async def test_told_twice_is_asked(two: Talk, text: str) -> None:
    await two.say("put it in")
    (asked,) = await two.say(text)
    assert "Is it a second one, or the same?" in asked.text
    assert "events" not in asked.facts
    assert "on record once" in await two.text("no")


async def test_a_second_one_is_told_as_such(two: Talk) -> None:
    await two.say("put it in")
    (logged, *_more) = await two.say("second part in")
    assert grams(dict(logged.facts)) == pytest.approx(A_PART, rel=2e-3)


@pytest.mark.parametrize(
    "text",
    [
        "gonna put it in tonight", "ill give it tomorrow", "je vais le mettre ce soir",
        "voy a ponerlo mañana", "vou pôr amanhã", "ich werde es morgen geben",
    ],
)  # fmt: skip
async def test_what_is_to_come_is_not_logged(one: Talk, text: str) -> None:
    (reply,) = await one.say(text)
    assert "send: done" in reply.text or reply.text.startswith("Fine.")
    assert "events" not in reply.facts
    assert "no dose on record" in await one.text("what did i dose")


@pytest.mark.parametrize("text", ["so am i done", "how much is left", "wieviel noch"])
async def test_a_goal_that_is_measured_needs_no_more(one: Talk, text: str) -> None:
    await one.wait(hours=2)
    await one.say("kh 3")
    assert (await one.text(text)).startswith("Goal reached: KH is 3")


async def test_a_part_that_a_test_shows_is_asked_when(one: Talk) -> None:
    await one.wait(hours=2)
    await one.say("kh 3")
    (asked,) = await one.say("gave it")
    assert "before that test, or after it?" in asked.text
    (logged,) = await one.press(1, asked)
    assert grams(dict(logged.facts)) == pytest.approx(A_PART, rel=2e-3)
    assert (await one.text("how much is left")).startswith("Goal reached")


async def test_done_is_of_the_plan_behind_a_retest(one: Talk) -> None:
    await one.say("kh 2.2")
    assert grams(await one.facts("done")) == pytest.approx(A_PART, rel=2e-3)


async def test_done_of_an_older_plan_is_asked(one: Talk) -> None:
    await one.wait(hours=48)
    (asked,) = await one.say("done")
    assert asked.text.startswith("Is it 2.7 g of sodium bicarbonate (baking soda) for Fern")
    (logged,) = await one.say("yes")
    assert grams(dict(logged.facts)) == pytest.approx(A_PART, rel=2e-3)


async def test_done_long_after_a_plan_is_of_nothing(one: Talk) -> None:
    await one.wait(hours=100)
    assert "Nothing is waiting" in await one.text("done")


async def test_done_after_what_is_left_was_told(two: Talk) -> None:
    await two.wait(hours=40)
    assert "When it is in, send: done" in await two.text("how much is left")
    assert grams(await two.facts("done")) == pytest.approx(A_PART, rel=2e-3)


CHANGE = (
    "/tank new Fern 54 l fresh",
    "tap kh 4 gh 6 ph 7.4 nitrate 10 20c",
    "kh 4 gh 6 ph 7.2 nitrate 60 25c ammonia 0",
    "what if i change 25%",
)


@pytest.mark.parametrize(
    "text", ["c'est trop, 10 litres ça va?", "ill only do 10 l", "nur 10 l", "is 10 l ok?"]
)
async def test_so_many_litres_are_what_done_logs(talk: Talk, text: str) -> None:
    for each in CHANGE:
        await talk.say(each)
    assert (await talk.facts(text))["litres"] == pytest.approx(10.0)
    (event,) = (await talk.facts("done"))["events"]
    assert event["litres"] == 10.0
    (event,) = (await talk.facts("en fait 12"))["events"]
    assert event["litres"] == 12.0


async def test_a_change_is_done_behind_a_reading(talk: Talk) -> None:
    for each in CHANGE:
        await talk.say(each)
    await talk.say("ph 7.1")
    (event,) = (await talk.facts("did it"))["events"]
    assert event["percent"] == pytest.approx(25.0)


@pytest.mark.parametrize(
    "text", ["ill change 20l tomorrow", "ill test later", "ok ill do it later"]
)
async def test_what_i_will_do_is_no_illness(talk: Talk, text: str) -> None:
    await talk.say("/tank new Fern 54 l fresh")
    (reply,) = await talk.say(text)
    assert reply.text.startswith("Fine.") or "not done yet, so nothing is logged" in reply.text
    assert "emergency" not in reply.facts


@pytest.mark.parametrize(
    "text",
    [
        "what did i put in", "did i put it in", "how much did i give", "i took 2 g out",
        "used up 5 g", "is it in", "who put it in", "czy dałem", "i used 1 g last time",
    ],
)  # fmt: skip
async def test_what_tells_no_deed_logs_none(two: Talk, text: str) -> None:
    for reply in await two.say(text):
        assert "events" not in reply.facts
    assert "no dose on record" in await two.text("what did i dose")


async def test_half_of_two_parts_may_be_typed_in_grams(two: Talk) -> None:
    await two.say("half is in")
    assert grams(await two.facts("1.3 g")) == pytest.approx(1.3)
    assert (await two.facts("how much is left"))["rest"] == pytest.approx(A_PART - 1.3, rel=2e-3)


async def test_a_plan_is_told_another_way_behind_talk_of_it(two: Talk) -> None:
    await two.say("ill give it tomorrow")
    assert (await two.facts("with potassium bicarbonate"))["substance"] == "potassium bicarbonate"


@pytest.mark.parametrize(
    "text",
    [
        "please put it in", "put it in please", "can you put it in", "add it for me please",
        "gib es bitte rein", "kannst du es reingeben", "mets-le s'il te plait",
        "échalo por favor", "põe isso por favor", "aggiungilo", "doe het erin", "dodaj to",
        "kan du hälla i det",
    ],
)  # fmt: skip
async def test_who_bids_us_put_it_in_is_told_that_we_only_tell(two: Talk, text: str) -> None:
    reply = (await two.say(text))[0]
    assert reply.text.startswith("I put nothing in")
    assert reply.facts["parts"] == pytest.approx([A_PART, A_PART], rel=2e-3)
    assert "no dose on record" in await two.text("what did i dose")
    assert grams(await two.facts("put it in")) == pytest.approx(A_PART, rel=2e-3)
    assert "what now" in await two.text(text)


@pytest.mark.parametrize(
    "text",
    [
        "hab ich es schon gegeben",
        "habe ich das reingetan",
        "ai-je mis la dose",
        "heb ik het gegeven",
    ],
)
async def test_who_asks_whether_it_is_in_tells_no_deed(two: Talk, text: str) -> None:
    assert "not on record" in await two.text(text) or "None of the 2" in await two.text(text)
    assert "no dose on record" in await two.text("what did i dose")


@pytest.mark.parametrize("text", ["its in", "done", "ist drin", "first part in"])
async def test_of_two_salts_it_stays_asked_which_it_was(talk: Talk, text: str) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("kh 2 gh 2 ph 7.0 temp 25 ammonia 0")
    await talk.say("dose gh 4")
    await talk.say("put in 1 g")
    assert (await talk.text(text)).startswith("1 g of which")
    assert "no dose on record" in await talk.text("what did i dose")


@pytest.mark.parametrize("text", ["its in", "done", "yes it is in"])
async def test_of_a_half_it_stays_asked_how_much_it_was(two: Talk, text: str) -> None:
    await two.say("half is in")
    for reply in await two.say(text):
        assert "events" not in reply.facts
    assert "no dose on record" in await two.text("what did i dose")


@pytest.mark.parametrize("text", ["its in", "done", "log it please"])
async def test_what_may_be_told_twice_stays_asked(two: Talk, text: str) -> None:
    await two.say("put it in")
    for _time in range(2):
        (asked,) = await two.say(text)
        assert "Is it a second one, or the same?" in asked.text


async def test_a_deed_of_two_salts_counts_as_far_as_both_went_in(talk: Talk) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("kh 2 gh 2 ph 7.0 temp 25 ammonia 0")
    await talk.say("dose gh 4")
    await talk.say("dosed 1 g calcium chloride")
    assert "rest" not in await talk.facts("how much is left")


async def test_a_part_keeps_its_time_and_its_plan_when_it_is_put_right(two: Talk) -> None:
    await two.say("its in")
    await two.wait(hours=6)
    await two.say("that was 4 hours ago")
    before = (await two.facts("how much is left"))["test_at"]
    await two.say("no, 2.5 g")
    left = await two.facts("how much is left")
    assert (left["left"], left["test_at"]) == (1, before)


@pytest.mark.parametrize("line", ["1 g", "1g", "1 gram"])
async def test_grams_alone_are_what_is_to_go_in(two: Talk, line: str) -> None:
    await two.say(line)
    assert grams(await two.facts("done")) == 1.0


@pytest.mark.parametrize("line", ["gave 2.7 g", "gave 12 g", "gave 2.6 g"])
@pytest.mark.parametrize("asked", ["how much more", "what is left", "how much soda now"])
async def test_nothing_of_today_is_left_once_a_part_is_in(
    talk: Talk, line: str, asked: str
) -> None:
    await talk.say("/tank new fern 90 l fresh")
    await talk.say("kh 3 ammonia 0 ph 7")
    await talk.say("dose kh 5")
    await talk.say(line)
    (told,) = await talk.say(asked)
    assert "rest" not in told.facts
    assert not told.buttons


@pytest.mark.parametrize("text", ["next one in", "ok next one in", "next part is in"])
async def test_the_next_one_told_to_be_in_is_a_part_and_no_new_plan(two: Talk, text: str) -> None:
    await two.say("its in")
    await two.wait(hours=25)
    await two.say("kh 3 ph 7.1 ammonia 0")
    (reply,) = await two.say(text)
    assert grams(dict(reply.facts)) == pytest.approx(A_PART, rel=2e-3)
    assert "log it" not in [button.label for button in reply.buttons]


async def test_whether_the_next_one_is_in_logs_nothing(two: Talk) -> None:
    await two.say("its in")
    assert not any("events" in reply.facts for reply in await two.say("next one in?"))


@pytest.mark.parametrize(
    "text",
    ["my son gave it too", "hmm my wife also put the soda in this morning", "partner gave it too"],
)
async def test_anothers_deed_is_one_more_and_asked_about(talk: Talk, text: str) -> None:
    for said in ("100 l", "kh 3 ammonia 0", "kh to 5", "did it"):
        await talk.say(said)
    assert "Is it a second one, or the same?" in await talk.text(text)


@pytest.mark.parametrize(
    ("text", "grams"),
    [("my husband threw in 1kg already", 1003), ("actually i put in twice that", 6)],
)
async def test_so_much_more_is_counted(talk: Talk, text: str, grams: float) -> None:
    for said in ("100 l", "kh 3 ammonia 0", "kh to 5", "did it"):
        await talk.say(said)
    assert f"Too much for one day: {grams} g" in await talk.text(text)


@pytest.mark.parametrize(
    "text", ["did the double", "did a double", "i gave double", "gave it twice"]
)
async def test_double_a_day_after_a_part_is_two_parts(talk: Talk, text: str) -> None:
    await talk.say("/tank new Fern 200 l fresh")
    await talk.say("kh 3")
    await talk.say("dose kh 7")
    await talk.say("did the first dose this morning")
    await talk.wait(hours=24)
    replies = await talk.say(text)
    assert grams(replies[0].facts) == pytest.approx(2 * 200 * 29.96e-3, rel=2e-3)
    assert "Too much for one day" in "".join(each.text for each in replies)
    assert "1 of 4 parts is left" in await talk.text("what is left")


async def test_double_right_after_a_part_is_that_part_once_more(talk: Talk) -> None:
    await talk.say("/tank new Fern 200 l fresh")
    await talk.say("kh 3")
    await talk.say("dose kh 7")
    await talk.say("done")
    assert grams(await talk.facts("oops i gave double")) == pytest.approx(200 * 29.96e-3, rel=2e-3)


@pytest.mark.parametrize("told", ["put 1 tsp in", "i put 1 tsp of baking soda in"])
async def test_of_a_part_by_the_spoon_nothing_is_left_to_put_in(talk: Talk, told: str) -> None:
    await talk.say("my tank is 200 l kh 2")
    await talk.say("want 5")
    await talk.say(told)
    left = (await talk.text("what is left")).splitlines()
    assert "tomorrow" in left[0]
    assert not any(" g of" in line for line in left)


async def test_of_a_part_begun_before_a_test_nothing_is_left_that_day(talk: Talk) -> None:
    await talk.say("my tank is 200 l kh 2")
    await talk.say("want 5")
    await talk.say("put 3 g in")
    assert "3 g of" in await talk.text("what is left")
    assert "No more now" in await talk.text("kh 3")
    left = await talk.text("what is left")
    assert "tomorrow" in left
    assert " g of" not in left


async def test_a_plan_in_water_that_is_kept_soft_says_that_it_is_none_of_its_needs(
    talk: Talk,
) -> None:
    await talk.say("200 l tank, 10 neons, kh 3")
    plan = (await talk.say("want 5"))[-1]
    assert "kept soft for what lives in it" in plan.lines[1].text
    assert "soft water on purpose" in await talk.text("are you sure thats safe for neon tetras")


@pytest.mark.parametrize("told", ["200 l tank, 10 guppies, kh 3", "200 l tank, kh 3"])
async def test_a_plan_in_other_water_says_nothing_of_soft(talk: Talk, told: str) -> None:
    await talk.say(told)
    plan = (await talk.say("want 5"))[-1]
    assert "kept soft" not in plan.text
    assert "parts" in plan.facts
