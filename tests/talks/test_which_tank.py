"""Of which of several tanks a message is, that names none, or names it only afterwards."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk

REEF = "/tank new Reef 200 l marine"
PLANTED = "/tank new Planted 90 l fresh"


async def say_all(talk: Talk, *lines: str) -> None:
    for each in lines:
        await talk.say(each)


@pytest.mark.parametrize("text", ["sg 1.026", "sal 34.8", "salinity 35 ppt", "sg 1.026 temp 25"])
async def test_sea_water_goes_to_the_only_sea_and_that_is_said(talk: Talk, text: str) -> None:
    await say_all(talk, REEF, PLANTED, "planted kh 4")
    (reply,) = await talk.say(text)
    assert reply.facts["tank"] == "Reef"
    assert "Planted is fresh" in reply.text
    assert reply.buttons[0].label == "it was in Planted"
    (moved,) = await talk.press(1, reply)
    assert moved.facts["tank"] == "Planted"
    assert [each["id"] for each in moved.facts["findings"]] == ["salt_in_fresh"]


@pytest.mark.parametrize(
    ("lines", "text"),
    [
        ((REEF, "/tank new Lagoon 90 l marine", PLANTED, "planted kh 4"), "sal 35"),
        (("/tank new Fern 60 l fresh", PLANTED, "planted kh 4"), "sg 1.026"),
        ((REEF, PLANTED, "planted kh 4"), "cleaned the filter, sg 1.026"),
    ],
    ids=["two seas", "no sea", "a deed beside it"],
)
async def test_sea_water_that_may_be_of_several_is_asked_for_its_tank(
    talk: Talk, lines: tuple[str, ...], text: str
) -> None:
    await say_all(talk, *lines)
    (reply,) = await talk.say(text)
    assert "Which tank" in reply.text
    assert not {"values", "events"} & set(reply.facts)
    assert reply.buttons[-1].label == "Planted"


@pytest.mark.parametrize("text", ["sg 1.001", "salinity 3", "kh 8", "planted sg 1.026"])
async def test_what_fresh_water_has_or_is_told_by_name_stays(talk: Talk, text: str) -> None:
    await say_all(talk, REEF, PLANTED, "planted kh 4")
    (reply,) = await talk.say(text)
    assert reply.facts["tank"] == "Planted"


async def test_sea_water_in_a_fresh_tank_is_never_called_well(talk: Talk) -> None:
    await say_all(talk, PLANTED, "planted sg 1.026")
    (reply,) = await talk.say("is planted ok")
    assert [each["id"] for each in reply.facts["findings"]] == ["salt_in_fresh"]
    assert "within the limits" not in reply.text


@pytest.mark.parametrize("told", ["changed 20", "maybe dosed 2 g baking soda", "gave it"])
@pytest.mark.parametrize(
    "said", ["no the reef", "no sorry that was into the reef", "that was reef"]
)
async def test_a_tank_named_behind_a_question_is_of_what_is_asked(
    talk: Talk, told: str, said: str
) -> None:
    await say_all(talk, REEF, PLANTED, "planted kh 4", "ammonia 0.5", told)
    first, *_others = await talk.say(said)
    assert first.text.startswith("For Reef:")
    assert "values" not in first.facts
    assert "Planted: ammonia 0.5" in await talk.text("planted ammonia?")


async def test_the_change_that_was_asked_about_is_put_there(talk: Talk) -> None:
    await say_all(talk, REEF, PLANTED, "planted kh 4", "ammonia 0.5", "changed 20")
    (asked,) = await talk.say("no the reef")
    assert [each.label for each in asked.buttons][:2] == ["changed 20 %", "changed 20 l"]
    (reply,) = await talk.press(1, asked)
    assert (reply.facts["tank"], reply.facts["events"][0]["percent"]) == ("Reef", 20)


@pytest.mark.parametrize(
    ("told", "tank"),
    [("raise kh to 6|gave it", "Reef"), ("dosed 2 g baking soda", "Reef"), ("kh 5", "Reef")],
)
async def test_what_was_put_on_record_last_is_moved(talk: Talk, told: str, tank: str) -> None:
    await say_all(talk, REEF, PLANTED, "planted kh 4 ph 7 ammonia 0", *told.split("|"))
    (reply, *_others) = await talk.say("no sorry that was into the reef")
    assert reply.text.startswith("Moved to Reef")
    assert reply.facts["tank"] == tank
    assert ("values" in reply.facts and bool(reply.facts["values"])) is (told == "kh 5")


async def test_a_reading_behind_a_question_is_what_is_moved(talk: Talk) -> None:
    await say_all(talk, REEF, PLANTED, "planted kh 4", "changed 20", "nitrate 5")
    (reply,) = await talk.say("no that was the reef")
    assert reply.text.startswith("Moved to Reef: Reef: nitrate 5")


async def test_of_a_part_that_is_no_plans_it_is_asked_how_much_went_there(talk: Talk) -> None:
    await say_all(talk, REEF, PLANTED, "planted kh 4 ph 7 ammonia 0", "gave the second")
    (reply,) = await talk.say("no sorry that was into the reef")
    assert "How much of what went into Reef" in reply.text


PLANNED = (REEF, PLANTED, "reef kh 6.5 temp 25 ph 8.2 ammonia 0 sal 35", "reef dose kh 8.5")


async def test_a_test_that_another_tanks_plan_waits_for_goes_there(talk: Talk) -> None:
    await say_all(talk, *PLANNED, "log it", "planted kh 4")
    await talk.wait(days=1)
    (reply,) = await talk.say("alk 7.9")
    assert reply.facts["tank"] == "Reef"
    assert "its plan waits" in reply.text
    assert reply.buttons[0].label == "it was in Planted"


@pytest.mark.parametrize(
    ("told", "text", "tank"),
    [
        ("planted kh 5.5", "alk 7", None),
        ("planted ph 7", "alk 7", None),
        ("planted kh 4", "dosed 2 g soda, alk 7.9", None),
        ("planted kh 3", "alk 3.5", "Planted"),
        ("planted kh 4", "gh 8", "Planted"),
    ],
    ids=["either", "unknown", "a deed beside it", "only its own", "not waited for"],
)
async def test_a_test_that_may_be_of_either_is_asked_for_its_tank(
    talk: Talk, told: str, text: str, tank: str | None
) -> None:
    await say_all(talk, *PLANNED, "log it", told)
    await talk.wait(days=1)
    (reply, *_more) = await talk.say(text)
    assert reply.facts.get("tank") == tank
    assert ("Which tank" in reply.text) == (tank is None)


async def test_a_goal_goes_to_no_other_tank(talk: Talk) -> None:
    await say_all(talk, "/tank new Shrimp 60 l fresh", "/tank new Big 240 l fresh")
    await talk.say("how much bicarb to kh 8")
    assert all("parts" not in each.facts for each in await talk.say("shrimp is kh 4"))
    await talk.say("big: how much bicarb to kh 8")
    (_kept, plan) = await talk.say("big is kh 4")
    assert (plan.facts["volume_l"], plan.facts["to"]) == (240.0, 8.0)
