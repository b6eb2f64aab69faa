"""What is told to be in after no amount was given is asked for; a part without its test goes on
record, and all parts together are judged as one dose of the day. The words are ours."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk

READ = ("/tank new Fern 90 l fresh", "kh 3 gh 8 ph 7 ammonia 0 temp 25")


async def planned(talk: Talk, *lines: str) -> None:
    """A plan of three parts, and what else is said."""
    for line in (*READ, "raise kh to 6", *lines):
        await talk.say(line)


@pytest.mark.parametrize(
    "line",
    [
        "second dose in, forgot to test", "2nd one in didnt test", "2nd part in but didnt test",
        "forgot to test, second one is in", "zweite Portion drin, test vergessen",
        "deuxième dose mise, pas testé", "segunda dosis dentro, no medí",
    ],
)  # fmt: skip
async def test_a_part_without_its_test_is_kept_and_the_next_one_waits(
    talk: Talk, line: str
) -> None:
    await planned(talk, "done")
    await talk.wait(days=1)
    (kept,) = await talk.say(line)
    assert kept.facts["events"][0]["grams"] == pytest.approx(2.7, abs=0.05)
    assert "the next part waits until you have tested KH" in kept.text
    assert "grams" not in kept.facts
    left = await talk.facts("what is left")
    assert left["left"] == 1
    assert "test_at" in left


@pytest.mark.parametrize(
    "line", ["second dose in, forgot to test?", "i forgot to test", "can i do the second untested"]
)
async def test_what_tells_of_no_part_is_none(talk: Talk, line: str) -> None:
    await planned(talk, "done")
    await talk.wait(days=1)
    await talk.say(line)
    assert (await talk.facts("what is left"))["left"] == 2


@pytest.mark.parametrize(
    "line",
    [
        "done all at once", "cool all in", "did all three parts at once", "all 3 in",
        "put the whole lot in today", "alle drei auf einmal rein", "gave it all at once",
    ],
)  # fmt: skip
async def test_all_parts_together_are_one_dose_of_the_day(talk: Talk, line: str) -> None:
    await planned(talk)
    answer = await talk.text(line)
    assert "logged 8.1 g" in answer
    assert "Too much for one day" in answer


@pytest.mark.parametrize("line", ["all three parts at once?", "can i do all 3 at once"])
async def test_who_asks_put_nothing_in(talk: Talk, line: str) -> None:
    await planned(talk)
    assert (await talk.text(line)).startswith("No: give the 3 parts")


@pytest.mark.parametrize(
    ("wish", "grams"), [("raise kh to 8", 6.0), ("raise ca to 420", 14.7), ("raise mg to 1300", 84)]
)
@pytest.mark.parametrize("line", ["ok in", "okay, in now"])
async def test_a_part_of_a_reefs_plan_is_kept(
    talk: Talk, wish: str, grams: float, line: str
) -> None:
    await talk.say("/tank new Reef 200 l marine")
    await talk.say("kh 7 ca 380 mg 1200 salinity 35 ph 8.1 ammonia 0 temp 25")
    await talk.say(wish)
    events = (await talk.facts(line))["events"]
    assert [each["grams"] for each in events] == [pytest.approx(grams, rel=0.02)]


@pytest.mark.parametrize("line", ["ok im in", "ok in a minute", "ok in?", "ok not in", "in"])
async def test_other_short_words_keep_nothing(talk: Talk, line: str) -> None:
    await planned(talk, line)
    assert (await talk.facts("what is left"))["left"] == 3


TOLD = [
    "gave it all at once", "put all of it in", "put it in anyway", "too late its in", "already in",
    "did it anyway", "hab es trotzdem reingetan", "je l'ai mis quand même", "ya lo eché",
]  # fmt: skip


@pytest.mark.parametrize("line", TOLD)
async def test_after_a_refusal_it_is_asked_how_much_went_in(talk: Talk, line: str) -> None:
    for told in (READ[0], "kh 3 gh 8 ph 8.4 ammonia 3 temp 25", "raise kh to 6"):
        await talk.say(told)
    assert "How much of what went in?" in await talk.text(line)
    assert "sodium" not in await talk.text("undo")


@pytest.mark.parametrize("line", ["done", "did that", "already did a water change", "its in?"])
async def test_what_may_be_of_the_advice_is_not_taken_for_the_dose(talk: Talk, line: str) -> None:
    for told in (READ[0], "kh 3 gh 8 ph 8.4 ammonia 3 temp 25", "raise kh to 6"):
        await talk.say(told)
    assert "How much of what went in?" not in await talk.text(line)


@pytest.mark.parametrize("plan", [(), ("raise kh to 6",)])
@pytest.mark.parametrize(
    ("line", "grams"), [("its in", 20.0), ("did it anyway", 20.0), ("i put half of it in", 10.0)]
)
async def test_of_an_amount_that_was_asked_about_it_is_asked_whether_it_is_in(
    talk: Talk, plan: tuple[str, ...], line: str, grams: float
) -> None:
    for told in (*READ, *plan, "can i put in 20 g baking soda"):
        await talk.say(told)
    (asked,) = await talk.say(line)
    assert asked.facts["grams"] == grams
    assert [button.meaning for button in asked.buttons] == ["yes", "no"]
    kept = await talk.text("yes")
    assert f"logged {grams:g} g sodium bicarbonate" in kept
    assert "Too much for one day" in kept


async def test_of_something_else_nothing_is_kept(talk: Talk) -> None:
    for told in (*READ, "can i put in 20 g baking soda", "its in"):
        await talk.say(told)
    assert "Nothing is stored" in await talk.text("no")
