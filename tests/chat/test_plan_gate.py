"""Ammonia that is read behind a plan, over what the plan bears: no part of it is led on to."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk


@pytest.fixture
async def blind(talk: Talk) -> Talk:
    """A plan in three parts that tells the highest ammonia under which it holds."""
    await talk.say("/tank new Fern 75 l fresh")
    await talk.say("kh 2")
    plan = await talk.facts("how much baking soda to 5")
    assert 0.2 < plan["only_if_ammonia_below"] < 0.4
    assert len(plan["parts"]) == 3
    return talk


@pytest.fixture
async def measured(talk: Talk) -> Talk:
    """A plan that rests on ammonia 0, and so tells no condition."""
    await talk.say("/tank new Fern 75 l fresh")
    await talk.say("kh 2 ph 7 ammonia 0 temp 25")
    assert "only_if_ammonia_below" not in await talk.facts("how much baking soda to 5")
    return talk


async def test_a_part_told_with_ammonia_over_the_gate_says_no_further_part(blind: Talk) -> None:
    assert "No part of the plan now: ammonia is 0.5" in await blind.text("ammonia is 0.5")
    logged = await blind.text("put the first one in")
    assert "logged 2.2 g" in logged
    assert "No further part of the plan: ammonia is 0.5" in logged


async def test_a_reading_behind_a_part_says_so_too(measured: Talk) -> None:
    await measured.say("put the first one in")
    assert "No further part of the plan: ammonia is 12" in await measured.text("ammonia 12")


@pytest.mark.parametrize("ammonia", ["ammonia 0", "ammonia 0.1"])
async def test_ammonia_under_the_gate_stops_nothing(blind: Talk, ammonia: str) -> None:
    assert "part of the plan" not in await blind.text(ammonia)
    assert "part of the plan" not in await blind.text("put the first one in")


async def test_once_all_parts_are_in_nothing_is_left_to_stop(talk: Talk) -> None:
    await talk.say("/tank new Fern 75 l fresh")
    await talk.say("kh 2")
    assert len((await talk.facts("how much baking soda to 3"))["parts"]) == 1
    await talk.say("its in")
    assert "part of the plan" not in await talk.text("ammonia 0.5")


@pytest.mark.parametrize("begun", [True, False])
async def test_the_reminder_is_of_the_test_and_names_no_amount(blind: Talk, begun: bool) -> None:
    await blind.say("ammonia is 0.5")
    if begun:
        await blind.say("put the first one in")
    told = await blind.text("remind me tomorrow 8")
    assert "retest KH, pH and ammonia, tomorrow 08:00" in told
    assert " g of" not in told


@pytest.mark.parametrize(
    "text",
    [
        "is it still ok to give it", "can i still give it", "is it safe to put the first part in?",
        "next dose?", "how do i dissolve it", "darf ich es noch reintun", "so how much now",
    ],
)  # fmt: skip
async def test_whether_a_part_may_go_in_is_answered_no(blind: Talk, text: str) -> None:
    await blind.say("ammonia is 0.5")
    (reply,) = await blind.say(text)
    assert reply.text.removeprefix("Fern: ").startswith(
        ("No, not now: ammonia is 0.5", "No buffer now")
    )
    assert reply.facts["refused"] in {"ammonia", "temperature_unknown"}
    assert " g of" not in reply.text


async def test_a_later_test_under_the_gate_lets_it_go_on(blind: Talk) -> None:
    await blind.say("ammonia is 0.5")
    await blind.say("ammonia is 0.1")
    assert "parts" in await blind.facts("can i give it now")


@pytest.mark.parametrize(
    ("task", "told", "said"),
    [
        ("add 2 g soda", "ammonia 4 ph 7.2", "Fern: no amount now: ammonia was 4 mg/L."),
        ("add 3 ml buffer", "bleach fell into the tank", "Fern: no dose and no amount now"),
        ("add 2 g soda", "tank is only 40 l", "it was set for 75 L, the tank holds 40 L."),
        ("add 2 g soda", "ammonia 0 ph 7.2", ""),
        ("feed 2 g", "ammonia 4 ph 7.2", ""),
    ],
)
async def test_a_reminder_set_before_names_no_amount_that_holds_no_more(
    talk: Talk, task: str, told: str, said: str
) -> None:
    await talk.say("/tank new Fern 75 l fresh")
    await talk.say("kh 4")
    await talk.say(f"remind me to {task} tomorrow at 8")
    await talk.say(told)
    (due,) = await talk.wait(hours=24)
    assert (" g" in due.text or " ml" in due.text) is (not said)
    assert said in due.text


async def test_a_reminder_set_behind_another_volume_names_its_amount(talk: Talk) -> None:
    await talk.say("/tank new Fern 75 l fresh")
    await talk.say("tank is only 40 l")
    await talk.say("remind me to add 2 g soda tomorrow at 8")
    (due,) = await talk.wait(hours=24)
    assert "add 2 g soda" in due.text


@pytest.mark.parametrize(("ammonia", "held"), [("3", True), ("0", False)])
async def test_a_reminder_to_dose_says_that_ammonia_stands_against_it(
    talk: Talk, ammonia: str, held: bool
) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("remind me every day at 8 to dose kh")
    await talk.say(f"ammonia {ammonia} ph 8")
    (due,) = await talk.wait(days=1)
    assert ("on_hold" in due.facts) is held
    assert ("Test ammonia and pH first" in due.text) is held
