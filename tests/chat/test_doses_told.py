"""Doses told in other orders: each is on record once, with its own amount and its own thing."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("dosed 5 g epsom then another 3 g salt", [(5.0, "magnesium sulfate"), (3.0, "sodium")]),
        ("dosed epsom, 5 g then salt, 3 g", [(5.0, "magnesium sulfate"), (3.0, "sodium")]),
        ("added baking soda, 3 g", [(3.0, "sodium bicarbonate")]),
        ("natron reingetan, 3 g", [(3.0, "sodium bicarbonate")]),
    ],
)
async def test_each_thing_keeps_its_amount(
    talk: Talk, text: str, told: list[tuple[float, str]]
) -> None:
    await talk.say("/tank new Shed 100 l fresh")
    (reply, *_) = await talk.say(text)
    events = reply.facts["events"]
    assert [each["grams"] for each in events] == [grams for grams, _ in told]
    assert all(
        each["substance"].startswith(name) for each, (_, name) in zip(events, told, strict=True)
    )


async def test_spoons_behind_a_comma_are_judged(talk: Talk) -> None:
    await talk.say("/tank new Shed 100 l fresh")
    (reply,) = await talk.say("put baking soda in, 3 tablespoons")
    assert reply.facts["events"][0]["spoons"] == 9.0
    assert "Too much for one day" in reply.text
