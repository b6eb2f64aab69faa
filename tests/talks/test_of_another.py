"""`put in 20 g of it` after another product was told is not the plan's salt."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk


@pytest.fixture
async def planned(talk: Talk) -> Talk:
    await talk.say("/tank new Fern 60 l fresh")
    await talk.say("kh 3")
    await talk.say("dose kh 5")
    return talk


@pytest.mark.parametrize("text", ["put in 20 g of it all at once", "gave 20 g of it"])
async def test_it_is_what_was_told_last(planned: Talk, text: str) -> None:
    await planned.say("only got sodium carbonate anhydrous")
    (reply,) = await planned.say(text)
    assert "20 g sodium carbonate" in reply.text


async def test_it_is_the_plans_where_nothing_else_was_told(planned: Talk) -> None:
    assert "1.5 g sodium bicarbonate" in await planned.text("put in 1.5 g of it")
