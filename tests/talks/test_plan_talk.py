"""What keepers say right after a plan. Grams by molar mass (29.96 mg/L of sodium bicarbonate a °dH,
C, from the formula weight 84.007); a teaspoon of it 4.6 g (USDA FoodData Central, from memory)."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk

A_PART = 180 * 29.96e-3


@pytest.fixture
async def planned(talk: Talk) -> Talk:
    """A plan in two parts, KH 2 to 4."""
    await talk.say("/tank new Hall 180 l fresh")
    await talk.say("kh 2 gh 5 ph 7.0 temp 25 ammonia 0")
    facts = await talk.facts("dose kh 4")
    assert facts["parts"] == pytest.approx([A_PART, A_PART], rel=2e-3)
    return talk


async def test_how_it_goes_in(planned: Talk) -> None:
    (reply,) = await planned.say("how do i dissolve it?")
    (jug,) = reply.facts["jugs"]
    assert jug["grams"] == pytest.approx(A_PART, rel=2e-3)
    assert jug["litres"] == 0.5
    assert reply.lines[0].text.startswith("Stir 5.4 g of sodium bicarbonate")
    assert "Never dry" in reply.text


@pytest.mark.parametrize("text", ["can i just pour it in?", "in den Filter?", "nel filtro?"])
async def test_straight_in_is_refused_in_the_first_line(planned: Talk, text: str) -> None:
    (reply,) = await planned.say(text)
    assert reply.lines[0].text == "No: not dry, and not into the filter."
    assert "Stir 5.4 g" in reply.text


async def test_after_another_dose_the_plan_is_not_helped_in(planned: Talk) -> None:
    await planned.say("log it")
    assert "Stir 5.4 g" in await planned.text("how do i dissolve it")  # its own part
    await planned.say("dosed 50 g baking soda")
    for text in ("how do i dissolve it", "i have no scale", "can i just pour it in"):
        (reply,) = await planned.say(text)
        assert "jugs" not in reply.facts
        assert reply.lines[0].text.startswith("Test KH, pH and ammonia from")
        assert "send the readings, and ask again" in reply.text


async def test_each_salt_has_its_jug_and_its_hazard(planned: Talk) -> None:
    await planned.say("dose kh 4 gh 7")
    (reply,) = await planned.say("where do i put it")
    assert len(reply.facts["jugs"]) == 3
    assert "never buffer and calcium in one jug" in reply.text
    assert "gets hot" in reply.text


async def test_no_number_of_spoons_is_ever_given(planned: Talk) -> None:
    for text in ("how many spoons is that", "i have no scale"):
        (reply,) = await planned.say(text)
        assert reply.lines[0].text.startswith("Not by spoon:")
        assert reply.facts["spoon_grams"] == [3.2, 6.0]
        (stock,) = reply.facts["stock"]
        assert stock["grams"] * stock["millilitres"] / 1000 == pytest.approx(A_PART, rel=0.05)
        assert "raise kh to 4 with tap" in reply.text


async def test_what_is_left_of_a_plan_is_put_on_record_once(planned: Talk) -> None:
    (first,) = await planned.say("first part done")
    assert "logged 5.4 g" in first.text
    (rest,) = await planned.say("i put both parts in")
    assert "logged 5.4 g" in rest.text
    assert "Too much for one day" in rest.text
    (again,) = await planned.say("i put the second part in")
    assert "on record already" in again.text
    (pressed,) = await planned.say("log it")
    assert "logged" not in pressed.text


async def test_all_of_it_at_one_time_is_on_record_and_warned_of(planned: Talk) -> None:
    (reply,) = await planned.say("i put it all in")
    assert "logged 10.8 g" in reply.text
    assert "Too much for one day" in reply.text
    assert "still on record" in await planned.text("never mind")
    assert "Taken back" in await planned.text("undo")
    assert "logged 5.4 g" in await planned.text("the first part is in")


@pytest.mark.parametrize(("hours", "warned"), [(3, True), (19, True), (21, False)])
async def test_doses_of_one_day_are_counted_together(
    planned: Talk, hours: float, warned: bool
) -> None:
    assert "Too much" not in await planned.text("dosed 5.4 g baking soda")
    await planned.wait(hours=hours)
    assert ("Too much" in await planned.text("dosed 5.4 g baking soda")) is warned


async def test_other_salts_are_not_counted_with_it(planned: Talk) -> None:
    await planned.say("dosed 5.4 g baking soda")
    assert "Too much" not in await planned.text("dosed 5 g epsom salt")


async def test_when_to_test_counts_from_what_went_in(planned: Talk) -> None:
    (before,) = await planned.say("when do i test again")
    assert "if it goes in now" in before.text
    await planned.say("log it")
    await planned.wait(hours=3)
    (after,) = await planned.say("when can i add more?")
    assert before.facts["test_at"] == after.facts["test_at"]
    assert "next part only after that" in after.text


async def test_a_plan_stays_what_is_spoken_of(planned: Talk) -> None:
    for text in ("how do i dissolve it", "no scale", "when is the next part", "all at once"):
        await planned.say(text)
    assert (await planned.facts("slower"))["parts"] == pytest.approx([A_PART / 2] * 4, rel=2e-3)
    await planned.say("where do i put it")
    assert "logged 2.7 g" in await planned.text("done")


async def test_a_plan_is_let_be(planned: Talk) -> None:
    assert "Nothing was stored" in await planned.text("never mind")


async def test_a_question_of_ours_is_left_out(planned: Talk) -> None:
    await planned.say("kh 44")
    text = await planned.text("never mind")
    assert "on record" not in text
    assert "kh 2" in (await planned.text("history kh")).lower().replace("kh: 2", "kh 2")


async def test_without_a_plan_none_of_it_is_guessed(talk: Talk) -> None:
    await talk.say("/tank new Hall 180 l fresh")
    for text in ("how do i dissolve it", "i put both parts in", "second part is in"):
        assert "logged" not in await talk.text(text)


@pytest.fixture
async def changing(talk: Talk) -> Talk:
    """A change that is within the limits."""
    await talk.say("/tank new Hall 180 l fresh")
    await talk.say("/source tap ph 7.2 kh 4 gh 6 no3 5 temp 24")
    await talk.say("ph 7.0 kh 4 gh 6 temp 25 no3 40 ammonia 0")
    facts = await talk.facts("what if i change 25%")
    assert facts["steps"] == [0.25]
    return talk


async def test_how_a_change_is_done(changing: Talk) -> None:
    (reply,) = await changing.say("how do i do that")
    assert reply.facts["litres"] == pytest.approx(45.0)
    assert reply.facts["temperature"] == 25.0
    assert "Take out 25 % (45 L)" in reply.text
    assert "Heater and filter off" in reply.text
    assert "change" in await changing.text("done")


async def test_a_change_or_a_part_may_wait_but_is_never_doubled(
    changing: Talk,
) -> None:
    assert "Never two in one day" in await changing.text("can it wait?")
    assert "A day after this one" in await changing.text("when can i change again")
    await changing.say("dose kh 6")
    for text in ("i forgot the second part", "ich habe den zweiten Teil vergessen"):
        assert "Never give two in one day" in await changing.text(text)


async def test_an_emergency_is_not_told_to_wait(talk: Talk) -> None:
    await talk.say("/tank new Hall 180 l fresh")
    await talk.say("/source tap ph 7.2 kh 4 gh 6 no3 5 temp 25")
    await talk.say("ph 8.4 kh 4 gh 6 temp 25 ammonia 4 nitrite 0")
    facts = await talk.facts("what if i change 30%")
    assert facts["emergency"]
    assert facts["steps"]
    assert (await talk.text("can it wait")).startswith("Rather now")


async def test_a_refused_change_has_no_way_to_be_done(talk: Talk) -> None:
    await talk.say("/tank new Hall 180 l fresh")
    await talk.say("ph 7.0 kh 4 gh 6 temp 25 ammonia 0")
    await talk.say("what if i change 30%")
    assert "Take out" not in await talk.text("how do i do that")


async def test_a_plan_let_go_is_no_next_step_but_can_still_be_logged(planned: Talk) -> None:
    await planned.text("never mind")
    for asked in ("what now", "/remind"):
        assert "The first" not in await planned.text(asked)
        assert " g of" not in await planned.text(asked)
    assert "Then press or send: yes" in await planned.text("done")
    assert "logged" in await planned.text("yes")


async def test_how_much_behind_a_low_kh_is_of_what_was_advised(talk: Talk) -> None:
    await talk.say("my tank is 100 l")
    await talk.say("kh 2")
    facts = await talk.facts("how much should i add")
    assert (facts["substance"], facts["to"]) == ("sodium bicarbonate", 4.0)
    assert "parts" not in await talk.facts("how much food should i add")


@pytest.mark.parametrize("told", ["kh 6", "kh 2, ammonia 2"])
async def test_how_much_without_a_need_or_beside_poison_tells_no_amount(
    talk: Talk, told: str
) -> None:
    await talk.say(f"my tank is 100 l, {told}")
    replies = await talk.say("how much should i add")
    assert all(not {"grams", "parts"} & each.facts.keys() for each in replies)


async def test_whether_more_is_needed_is_heard_with_no_plan(talk: Talk) -> None:
    await talk.say("my tank is 100 l, kh 4")
    judged = await talk.text("do i need to add any more or leave it")
    assert "within the limits that I know" in judged
    await talk.say("dose kh 5")
    await talk.say("done")
    assert "test first" in await talk.text("do i need to add any more")


async def test_nah_leave_it_is_no_dose(talk: Talk) -> None:
    await talk.say("my tank is 100 l, kh 2")
    await talk.say("how much baking soda")
    assert "Nothing was stored" in await talk.text("nah leave it")


@pytest.fixture
async def of_100(talk: Talk) -> Talk:
    """A plan in two parts for 100 L."""
    await talk.say("my tank is 100 l, kh 2")
    await talk.say("dose kh 4")
    return talk


@pytest.mark.parametrize("said", ["theres gravel and rocks in it", "does the sand count"])
async def test_what_takes_room_holds_a_plan_back(of_100: Talk, said: str) -> None:
    assert "less than 100 L" in await of_100.text(said)
    (held,) = await of_100.say("so how much then")
    assert "less than 100 L" in held.text
    assert " g of" not in held.text
    assert "80 L" in await of_100.text("80")
    assert (await of_100.facts("dose kh 4"))["volume_l"] == 80.0


async def test_what_takes_room_and_is_counted_lets_the_plan_go_on(of_100: Talk) -> None:
    (asked,) = await of_100.say("theres gravel in it")
    await of_100.press(1, asked)
    assert "3 g of" in await of_100.text("so how much then")


@pytest.mark.parametrize(
    "said",
    [
        "thats not right, the packet says way more",
        "how did you work that out",
        "auf der packung steht viel mehr",
    ],
)
async def test_a_doubted_plan_tells_what_it_rests_on(of_100: Talk, said: str) -> None:
    told = await of_100.text(said)
    assert "100 L" in told
    assert "formula weight" in told
    assert ("no more than the plan" in told) == ("pack" in said)
