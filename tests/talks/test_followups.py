"""A plan asked for another way. Grams by molar mass: 29.96 mg/L of sodium bicarbonate a °dH,
35.70 of potassium bicarbonate (C, from the formula weights 84.007 and 100.115)."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk

PLAN = ("/tank new Fern 90 l fresh", "kh 4 gh 6 ph 7.2 ammonia 0 temp 24", "dose kh 6")
SODIUM, POTASSIUM = 2.996e-2, 3.570e-2


async def after_plan(talk: Talk) -> None:
    for line in PLAN:
        await talk.say(line)


@pytest.mark.parametrize(
    ("line", "grams", "parts"),
    [
        ("and with potassium bicarbonate instead?", 90 * 2 * POTASSIUM, 2),
        ("i only have potassium bicarbonate", 90 * 2 * POTASSIUM, 2),
        ("i have potassium bicarbonate only", 90 * 2 * POTASSIUM, 2),
        ("ich habe Kaliumhydrogencarbonat nur", 90 * 2 * POTASSIUM, 2),
        ("how much of it for 40 l?", 40 * 2 * SODIUM, 2),
        ("wie viel davon für 40 l?", 40 * 2 * SODIUM, 2),
        ("combien pour 40 l", 40 * 2 * SODIUM, 2),
        ("make it 3 parts", 90 * 2 * SODIUM, 3),
        ("slower please", 90 * 2 * SODIUM, 4),
        ("half of that", 90 * SODIUM, 1),
        ("what about kh 5?", 90 * SODIUM, 1),
        ("and for 120 l?", 120 * 2 * SODIUM, 2),
    ],
)
async def test_one_thing_of_the_plan_is_another(
    talk: Talk, line: str, grams: float, parts: int
) -> None:
    await after_plan(talk)
    facts = await talk.facts(line)
    assert facts["grams"] == pytest.approx(grams, rel=2e-3)
    assert len(facts["parts"]) == parts


async def test_changes_add_up(talk: Talk) -> None:
    await after_plan(talk)
    await talk.say("with potassium bicarbonate")
    facts = await talk.facts("half of that")
    assert facts["substance"] == "potassium bicarbonate"
    assert facts["to"] == 5.0


async def test_fewer_parts_than_are_safe_are_refused_in_the_first_line(talk: Talk) -> None:
    await after_plan(talk)
    (reply,) = await talk.say("in 1 day")
    assert reply.text.startswith("Not in 1: 2 parts")
    assert len(reply.facts["parts"]) == 2


async def test_twice_as_much_stays_in_safe_steps(talk: Talk) -> None:
    await after_plan(talk)
    facts = await talk.facts("twice that")
    assert (facts["to"], len(facts["parts"])) == (8.0, 4)


async def test_another_tank_is_planned_from_its_own_readings(talk: Talk) -> None:
    await talk.say("/tank new Quarry 200 l fresh")
    await talk.say("kh 5 ph 7.2 ammonia 0 temp 24")
    await after_plan(talk)
    facts = await talk.facts("for quarry too")
    assert (facts["tank"], facts["from"], facts["to"]) == ("Quarry", 5.0, 6.0)
    assert facts["grams"] == pytest.approx(200 * SODIUM, rel=2e-3)


async def test_what_is_refused_stays_refused_and_can_be_asked_otherwise(talk: Talk) -> None:
    await after_plan(talk)
    assert (await talk.facts("with washing soda?"))["refused"] == "carbonate"
    assert (await talk.facts("with vinegar"))["refused"] == "acid"
    assert (await talk.facts("with baking soda"))["substance"] == "sodium bicarbonate"


async def test_a_change_and_an_effect_are_asked_again(talk: Talk) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("tap: kh 6 gh 10 ph 7.6 temp 25")
    await talk.say("kh 5 gh 8 ph 7.2 ammonia 0 temp 25")
    await talk.say("what if i change 50%")
    assert (await talk.facts("and 20%?"))["share"] == pytest.approx(0.2)
    await talk.say("what does 10 g baking soda do in 120 l")
    assert (await talk.facts("and 5 g?"))["grams"] == 5.0


async def test_a_reading_or_a_report_between_is_no_follow_up(talk: Talk) -> None:
    await after_plan(talk)
    assert (await talk.facts("kh 4.5"))["values"][0]["value"] == 4.5
    assert "did not find" in await talk.text("in two days")


async def test_a_group_is_not_overheard(talk: Talk) -> None:
    await after_plan(talk)
    assert await talk.say("in two days", group=True, addressed=False) == []


async def test_done_right_after_a_plan_logs_its_first_part(talk: Talk) -> None:
    await after_plan(talk)
    (reply,) = await talk.say("done")
    assert reply.facts["events"][0]["grams"] == pytest.approx(90 * SODIUM, rel=2e-3)
    assert "Nothing is stored again" in await talk.text("done")


TANKS = (
    "/tank new Fern 100 l fresh",
    "/tank new Quarry 400 l fresh",
    "quarry: kh 7 ph 7.8 temp 25",
    "/source tap ph 7.6 kh 8 gh 12 no3 5 temp 24",
    "fern: kh 5 gh 5 ph 7 no3 40 temp 24 ammonia 0",
)


async def two_tanks(talk: Talk) -> None:
    for line in TANKS:
        await talk.say(line)


async def test_a_bare_number_stands_for_the_one_that_was_asked(talk: Talk) -> None:
    await two_tanks(talk)
    await talk.say("what if i change 10%")
    assert (await talk.facts("and 15?"))["share"] == pytest.approx(0.15)
    assert (await talk.facts("and for quarry?"))["tank"] == "Quarry"
    await talk.say("dose kh 6 for fern")
    assert (await talk.facts("and 7?"))["to"] == 7.0
    assert (await talk.facts("no, 8"))["to"] == 8.0


async def test_a_change_with_other_water(talk: Talk) -> None:
    """Of 15 %, half of it without minerals, the KH of tank and tap leave 5 + 0.15 (4 - 5)."""
    await two_tanks(talk)
    await talk.say("what if i change 15%")
    half = await talk.facts("and with half ro half tap?")
    assert half["at_once"]["kh"] == pytest.approx(5 + 0.15 * (4 - 5), abs=0.02)
    pure = await talk.facts("and with ro?")
    assert pure["at_once"]["kh"] == pytest.approx(5 - 0.15 * 5, abs=0.02)


async def test_another_analyte_another_tank_other_animals(talk: Talk) -> None:
    await two_tanks(talk)
    await talk.say("history of kh")
    assert "GH 5" in await talk.text("and gh?")
    assert "nitrate 40" in await talk.text("und nitrat?")
    assert "Quarry: no readings of nitrate" in await talk.text("what about the quarry?")
    assert "KH 2 is low" in await talk.text("is kh 2 ok")
    assert "KH 2" not in await talk.text("and 8?")
    await talk.say("can i keep neons in fern")
    assert (await talk.facts("and guppies?"))["species"] == "Poecilia reticulata"


async def test_one_number_of_the_last_message_is_put_right(talk: Talk) -> None:
    await two_tanks(talk)
    await talk.say("ph 7.2")
    assert (await talk.facts("no, 7.4"))["values"][0]["value"] == 7.4
    assert (await talk.facts("actually 7.6"))["values"][0]["value"] == 7.6
    assert "pH 7.2" not in await talk.text("history of ph")
    await talk.say("changed 30%")
    assert (await talk.facts("no, 25"))["events"][0]["percent"] == 25
    await talk.say("kh 4 gh 6")
    assert "did not find" in await talk.text("no, 5")  # which of the two?


@pytest.mark.parametrize(
    "said",
    [
        "no that was 2.5", "nein, das war 2,5", "non, c'était 2,5", "no era 2,5", "não, era 2,5",
        "nee het was 2,5", "nie, było 2,5", "nej det var 2,5", "sorry it's 2.5",
    ],
)  # fmt: skip
async def test_a_number_put_right_stays_at_its_time(talk: Talk, said: str) -> None:
    await two_tanks(talk)
    await talk.say("yesterday 20:00 phosphate 4")
    before = (await talk.facts("when did i last test phosphate"))["values"][0]["at"]
    assert (await talk.facts(said))["values"][0]["value"] == 2.5
    after = (await talk.facts("when did i last test phosphate"))["values"][0]
    assert (after["value"], after["at"]) == (2.5, before)


@pytest.mark.parametrize(
    "said",
    [
        "no, yesterday", "sorry that was yesterday", "nein, gestern", "non, c'était hier",
        "no, ayer", "não, ontem", "no, ieri", "nee, gisteren", "nie, wczoraj", "nej, igår",
    ],
)  # fmt: skip
async def test_the_time_of_the_last_message_is_put_right(talk: Talk, said: str) -> None:
    await two_tanks(talk)
    await talk.say("phosphate 4")
    before = (await talk.facts("when did i last test phosphate"))["values"][0]["at"]
    assert "Corrected" in await talk.text(said)
    after = (await talk.facts("when did i last test phosphate"))["values"][0]
    assert after["value"] == 4
    assert after["at"][:10] < before[:10]


async def test_a_time_to_come_puts_nothing_right(talk: Talk) -> None:
    await two_tanks(talk)
    await talk.say("kh 4")
    assert "did not find" in await talk.text("no, tomorrow")


async def test_a_reminder_gets_another_time_and_keeps_the_rest(talk: Talk) -> None:
    await two_tanks(talk)
    await talk.say("remind me to test fern every friday at 19:00")
    made = (await talk.facts("no, saturday"))["reminder"]
    assert (made["what"], made["due"]) == ("test fern", "2026-03-07T19:00:00+00:00")
    assert "Saturday at 19:00" in await talk.text("no, every 2 weeks")
    assert "10:00" in await talk.text("actually at 10:00")
    assert "Sonntag" not in await talk.text("nein, jeden sonntag")
    reminders = (await talk.facts("/remind"))["reminders"]
    assert [(each["what"], each["due"][:16]) for each in reminders] == [
        ("test fern", "2026-03-08T10:00")
    ]


async def test_why_not_is_about_the_last_answer(talk: Talk) -> None:
    await two_tanks(talk)
    await talk.say("quarry: ammonia 4 ph 8.2 kh 7 temp 26")
    await talk.say("fern: kh 4")
    (refused,) = await talk.say("dose kh 9 for quarry")
    assert refused.facts["refused"].startswith("ammonia")
    for line in ("why not?", "warum nicht", "¿por qué no?"):
        told = await talk.text(line)
        assert told.startswith(refused.lines[0].text)
        assert "raising pH makes it worse" in told


async def test_why_leaves_the_plan_what_is_spoken_of(talk: Talk) -> None:
    await two_tanks(talk)
    await talk.say("dose kh 9 for quarry")
    await talk.say("why")
    assert (await talk.facts("and for fern?"))["tank"] == "Fern"


async def test_a_question_makes_the_tank_that_it_names_the_one_in_use(talk: Talk) -> None:
    await two_tanks(talk)
    await talk.say("dose kh 9 for quarry")
    assert (await talk.text("trend kh")).startswith("Quarry")
    assert "Fern: 100 L" in await talk.text("fern")
    assert (await talk.text("trend kh")).startswith("Fern")
    assert await talk.say("quarry", group=True, addressed=False) == []


async def test_a_volume_that_was_asked_for_is_taken_after_a_question_between(talk: Talk) -> None:
    await talk.say("/tank new Moss fresh")
    await talk.say("kh 4 gh 6 ph 7.2 ammonia 0 temp 24")
    assert (await talk.facts("dose kh 6"))["refused"] == "volume_unknown"
    await talk.say("history of kh")
    assert (await talk.say("90 l"))[-1].facts["to"] == 6.0


async def test_a_plan_is_made_anew_for_the_volume_put_right(talk: Talk) -> None:
    await after_plan(talk)
    told, plan = await talk.say("actually the tank is 70 l")
    assert told.facts["volume_l"] == 70.0
    assert plan.facts["grams"] == pytest.approx(70 * 2 * SODIUM, rel=2e-3)
    assert len(await talk.say("fern is 80 l")) == 2
    await talk.say("kh 5")
    assert len(await talk.say("fern is 90 l")) == 1


async def test_done_right_after_a_change_was_asked_about_logs_it(talk: Talk) -> None:
    await two_tanks(talk)
    await talk.say("what if i change 10%")
    assert (await talk.facts("i did it"))["events"][0]["percent"] == 10
    await talk.wait(days=2)
    await talk.say("fern: kh 5 gh 5 ph 7 no3 40 temp 24 ammonia 0")
    (plan,) = await talk.say("what if i change 50%")
    (which,) = await talk.say("ok i did that")
    assert which.buttons[0].label == "changed 50 %"
    (logged,) = await talk.press(2)
    assert logged.facts["events"][0]["percent"] <= 100 * plan.facts["steps"][0]


async def test_what_to_do_about_it_is_what_now(talk: Talk) -> None:
    await two_tanks(talk)
    await talk.say("fern: ammonia 4 ph 8")
    now = await talk.text("what now")
    assert await talk.text("what should i do about it") == now
    assert await talk.text("was kann ich dagegen tun") == now


@pytest.mark.parametrize(
    "line", ["what about with tap water instead", "with tap instead", "und mit Leitungswasser?"]
)
async def test_water_takes_the_place_of_a_salt(talk: Talk, line: str) -> None:
    """By amount: from KH 4 to 6 with a tap of 9 is 2/5 of the water."""
    await talk.say("/source tap ph 7.4 kh 9 gh 8 temp 24")
    await after_plan(talk)
    facts = await talk.facts(line)
    assert facts["share"] == pytest.approx(2 / 5)
    assert "grams" not in facts


@pytest.mark.parametrize(
    "line",
    ["i have potassium bicarbonate", "i have no potassium bicarbonate", "i have 3 fish only"],
)
async def test_what_else_is_there_asks_for_nothing(talk: Talk, line: str) -> None:
    await after_plan(talk)
    (reply,) = await talk.say(line)
    assert "parts" not in reply.facts
