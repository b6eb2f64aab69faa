"""Values of several tanks that nobody told of are no one tank's."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk


@pytest.mark.parametrize(
    "text", ["A ph 7 kh 4, B ph 7.2 kh 5, C ph 8 kh 9", "kitchen kh 4, bedroom kh 6"]
)
async def test_nothing_is_stored_of_them(talk: Talk, text: str) -> None:
    assert "Nothing is stored" in await talk.text(text)
    assert "Tank" not in await talk.text("/tank")


async def test_once_told_each_keeps_its_own(talk: Talk) -> None:
    await talk.say("/tank new A 90 l fresh")
    await talk.say("/tank new B 60 l fresh")
    told = await talk.text("A ph 7 kh 4, B ph 7.2 kh 5")
    assert "A: pH 7" in told
    assert "B: pH 7.2" in told
