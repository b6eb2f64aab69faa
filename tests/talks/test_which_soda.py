"""Soda that nobody said which: baking soda raises KH by 1 °dH with 29.96 mg/L (from the formula
weight 84.007), washing soda with 53/84 of that."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk


@pytest.fixture
async def hall(talk: Talk) -> Talk:
    """A tank of 45 L, measured."""
    await talk.say("/tank new Hall 45 l fresh")
    await talk.say("kh 3 gh 6 ph 7 temp 25 ammonia 0")
    return talk


@pytest.mark.parametrize("line", ["added 3 g soda", "dosed 3 g of soda", "put in 3 g soda"])
async def test_which_it_was_is_asked_with_what_it_did_at_the_least(hall: Talk, line: str) -> None:
    stored, asked = await hall.say(line)
    assert stored.facts["events"][0]["substance"] == "soda"
    assert asked.facts["kh"] == pytest.approx(3.0 / (45 * 29.96e-3), rel=5e-3)
    assert "put in nothing more" in asked.text


@pytest.mark.parametrize(
    ("button", "substance", "judged"),
    [(1, "sodium bicarbonate", "Too much for one day"), (2, "sodium carbonate", "lifts pH fast")],
)
async def test_the_button_puts_it_right_and_it_is_judged(
    hall: Talk, button: int, substance: str, judged: str
) -> None:
    _stored, asked = await hall.say("added 3 g soda")
    told = "\n".join(reply.text for reply in await hall.press(button, asked))
    assert substance in told
    assert judged in told


async def test_a_soda_by_its_name_is_not_asked_about(hall: Talk) -> None:
    assert len(await hall.say("added 1 g baking soda")) == 1
