"""Ammonia that was told gates until it is read anew, and a 0 right after it is doubted."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk


@pytest.fixture
async def fern(talk: Talk) -> Talk:
    await talk.say("/tank new fern 90 l fresh")
    return talk


async def test_ammonia_over_its_limit_is_told_each_time_that_it_is_read(fern: Talk) -> None:
    first = await fern.text("kh 1 ph 6 ammonia 3")
    assert "Ammonia is dangerous" in first
    await fern.say("ammonia 0")
    assert "Ammonia is dangerous" in await fern.text("ammonia is 3 really")
    assert "Ammonia is dangerous" not in await fern.text("gh 4")


@pytest.mark.parametrize("between", [{"hours": 1}, {"days": 1}, {"days": 3}])
async def test_ammonia_that_was_not_settled_gates_a_dose(
    fern: Talk, between: dict[str, float]
) -> None:
    await fern.say("kh 1 ph 6")
    (asked,) = await fern.say("ammonia is 3 really lied")
    assert "Not stored" in asked.text
    await fern.wait(**between)
    for told in ("ph 6.2", "kh 1", "gh 4", "nitrite 0"):
        await fern.say(told)
    (refused,) = await fern.say("dose kh 5")
    assert refused.facts["refused"] == "ammonia"
    await fern.say("ammonia 0")
    (dose,) = await fern.say("dose kh 5")
    assert dose.facts["grams"] > 0.0


async def test_another_number_asked_about_a_day_later_does_not_hide_it(fern: Talk) -> None:
    await fern.say("kh 1 ph 6")
    await fern.say("ammonia is 3 really lied")
    await fern.wait(hours=20)
    await fern.say("kh is 2 really lied")
    (refused,) = await fern.say("dose kh 5")
    assert refused.facts["refused"] == "ammonia"


async def test_what_was_left_out_gates_nothing(fern: Talk) -> None:
    await fern.say("kh 4 ph 7 ammonia 0")
    await fern.say("ammonia is 3 really lied")
    await fern.press(2)
    await fern.wait(days=1)
    (dose,) = await fern.say("dose kh 5")
    assert dose.facts["grams"] > 0.0


async def test_ammonia_gone_within_minutes_is_read_again_before_a_dose(fern: Talk) -> None:
    await fern.say("kh 4 ph 7 gh 6")
    await fern.say("ammonia 3")
    await fern.wait(minutes=5)
    (zero,) = await fern.say("all ammonia 0")
    (jump,) = (each for each in zero.facts["findings"] if each["id"] == "sudden_jump")
    assert (jump["analyte"], jump["was"], jump["value"]) == ("ammonia", 3.0, 0.0)
    (refused,) = await fern.say("dose kh 5")
    assert (refused.facts["refused"], refused.facts["analyte"]) == ("jumped", "ammonia")
    await fern.wait(minutes=5)
    await fern.say("ammonia 0")
    (dose,) = await fern.say("dose kh 5")
    assert dose.facts["grams"] > 0.0


@pytest.mark.parametrize(
    ("before", "hours", "done"),
    [("ammonia 0.25", 0, None), ("ammonia 3", 5, None), ("ammonia 3", 0, "changed 50%")],
)
async def test_ammonia_that_may_have_gone_is_no_jump(
    fern: Talk, before: str, hours: int, done: str | None
) -> None:
    await fern.say("kh 4 ph 7")
    await fern.say(before)
    await fern.wait(hours=hours)
    if done:
        await fern.say(done)
    (zero,) = await fern.say("ammonia 0")
    assert all(each["id"] != "sudden_jump" for each in zero.facts.get("findings", ()))


@pytest.mark.parametrize("told", ["ammonia 1", "ammonia 1 ph 6.4 kh 2"])
async def test_a_no_comes_before_what_is_asked_where_ammonia_is_read(talk: Talk, told: str) -> None:
    await talk.say("/tank new Reef 120 l fresh")
    await talk.say(told)
    (answer,) = await talk.say("dose kh 3")
    assert "No buffer now" in answer.lines[0].text
    assert "grams" not in answer.facts


async def test_without_ammonia_the_kh_is_asked_first(talk: Talk) -> None:
    await talk.say("/tank new Reef 120 l fresh")
    await talk.say("ammonia 0")
    assert "I need the KH first" in await talk.text("dose kh 6")
