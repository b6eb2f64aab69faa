"""What went in instead of a dose on record puts that one right, or is asked about."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk

INSTEAD = [
    "dosed 2 g baking soda instead", "i dosed 2 g instead", "put in 2 g instead",
    "habe stattdessen 2 g Natron gegeben", "j'ai mis 2 g de bicarbonate à la place",
    "puse 2 g de bicarbonato en su lugar",
]  # fmt: skip


@pytest.fixture
async def dosed(talk: Talk) -> Talk:
    """A plan of one part of 2.7 g, which is on record."""
    for line in (
        "/tank new Fern 90 l fresh", "kh 3 gh 8 ph 7 ammonia 0 temp 25", "raise kh to 4", "done",
    ):  # fmt: skip
        await talk.say(line)
    return talk


async def in_all(talk: Talk) -> float:
    total = (await talk.facts("how much soda did i use today"))["total"]
    grams: float = total[0]["grams"]
    return grams


@pytest.mark.parametrize("line", INSTEAD)
async def test_right_behind_it_the_dose_is_put_right(dosed: Talk, line: str) -> None:
    assert (await dosed.text(line)).startswith("Corrected: Fern: dosed 2 g sodium bicarbonate")
    assert await in_all(dosed) == 2.0


async def test_another_salt_takes_its_place(dosed: Talk) -> None:
    told = await dosed.text("dosed 2 g potassium bicarbonate instead")
    assert told.startswith("Corrected: Fern: dosed 2 g potassium bicarbonate (was")


@pytest.mark.parametrize("line", INSTEAD[:2])
@pytest.mark.parametrize(("button", "grams"), [(1, 2.0), (2, 4.7)])
async def test_where_more_was_said_since_it_is_asked(
    dosed: Talk, line: str, button: int, grams: float
) -> None:
    await dosed.say("kh 3.5")
    (asked,) = await dosed.say(line)
    assert "as well? Nothing is stored yet" in asked.text
    assert await in_all(dosed) == pytest.approx(2.7, abs=0.05)
    await dosed.press(button, asked)
    assert await in_all(dosed) == pytest.approx(grams, abs=0.05)
    assert "already" in (await dosed.press(button, asked))[0].text


@pytest.mark.parametrize(
    "line", ["can i dose 2 g instead", "should i use 2 g instead?", "2 g instead"]
)
async def test_who_asks_or_plans_changes_nothing(dosed: Talk, line: str) -> None:
    await dosed.say(line)
    assert await in_all(dosed) == pytest.approx(2.7, abs=0.05)


async def test_without_a_dose_on_record_it_is_a_dose(talk: Talk) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    assert "dosed 2 g" in await talk.text(INSTEAD[0])


async def test_the_part_of_another_day_stays(dosed: Talk) -> None:
    await dosed.wait(days=1)
    assert "Corrected" not in await dosed.text(INSTEAD[0])


@pytest.mark.parametrize("what", ["instead of a water change", "rather than a water change"])
async def test_what_was_not_done_is_not_kept(dosed: Talk, what: str) -> None:
    (kept,) = await dosed.say(f"dosed 2 g baking soda {what}")
    assert [event["kind"] for event in kept.facts["events"]] == ["dose"]
