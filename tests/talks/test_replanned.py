"""A plan whose tank turns out to hold another amount is told anew; the old one stands no more."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk


@pytest.fixture
async def planned(talk: Talk) -> Talk:
    """A plan for 90 litres: 2.7 g of baking soda a part."""
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("kh 3 ph 6.8 ammonia 0 temp 24")
    assert "2.7 g" in await talk.text("dose kh 5")
    return talk


@pytest.mark.parametrize(
    "text",
    [
        "its only 70 l actually",
        "fern is 70 l net",
        "fern is 70 l, not 90",
        "my tank is only 70 l",
        "/tank fern 70 l",
        "no, 70 l",
        "es sind nur 70 l",
        "ce n'est que 70 l",
        "en realidad 70 l",
        "são só 70 l",
        "in realtà sono 70 l",
        "het is maar 70 l",
        "to tylko 70 l",
        "det är bara 70 l",
    ],
)
async def test_the_volume_is_put_right_and_the_plan_told_anew(planned: Talk, text: str) -> None:
    changed, anew = await planned.say(text)
    assert changed.text.startswith("Now Fern: 70 L, fresh.")
    assert "reckoned for 90 L do not hold" in changed.text
    assert anew.facts["volume_l"] == 70.0
    assert anew.facts["grams"] == pytest.approx(4.2, abs=0.05)  # 5.4 g of 90 l, by rule of three
    assert await planned.text("log it") == "Fern: logged 2.1 g sodium bicarbonate."


async def test_a_bare_volume_is_asked_and_then_planned_for(planned: Talk) -> None:
    assert await planned.text("70 l") == "Does Fern hold 70 L of water?"
    held, anew = await planned.say("yes")
    assert held.text.startswith("Fern holds 70 L of water.")
    assert anew.facts["volume_l"] == 70.0


async def test_a_volume_that_is_far_off_is_asked(planned: Talk) -> None:
    assert await planned.text("it's only 2 l") == "Does Fern hold 2 L of water?"


async def test_what_went_in_is_judged_by_the_new_volume(planned: Talk) -> None:
    await planned.say("log it")
    changed, judged, anew = await planned.say("it's only 50 l actually")
    assert changed.text.startswith("Now Fern: 50 L, fresh.")
    assert judged.text.startswith("Fern: Too much for one day: 2.7 g")  # 1.8 °dH in 50 l
    assert anew.text.startswith("Fern: No second dose yet")


async def test_a_plan_for_any_water_is_of_no_tank(planned: Talk) -> None:
    await planned.say("how much baking soda for 100 l from kh 3 to 5")
    assert await planned.text("it's only 70 l") == "Does Fern hold 70 L of water?"


async def test_imperial_gallons_put_the_tank_and_its_plan_right(talk: Talk) -> None:
    await talk.say("new tank fern 30 gallons freshwater")
    await talk.say("kh 3")
    await talk.say("dose kh 5")
    assert (await talk.text("oh its uk gallons")).startswith("Now fern: 136 L")  # 30 x 4.54609 L
    assert not (await talk.text("oh its uk gallons")).startswith("Now")
