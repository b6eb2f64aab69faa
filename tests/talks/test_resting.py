"""Fish of the bottom that lie still at night are no emergency; with any other sign they are."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk


@pytest.mark.parametrize(
    "text",
    ["my corys are lying still on the bottom at night", "loaches lie on their side at night",
     "plecos not moving in the dark, is that normal?",
     "meine schmerlen liegen nachts auf der seite",
     "panzerwelse liegen nachts still am boden"],
)  # fmt: skip
async def test_rest_at_night_is_told_calmly(talk: Talk, text: str) -> None:
    await talk.say("/tank new reef 100 l fresh")
    (reply,) = await talk.say(text)
    assert "emergency" not in reply.facts
    assert reply.text.startswith("At night they often rest so")


@pytest.mark.parametrize(
    "text",
    ["my guppies are lying still on the bottom at night", "corys are lying on their side at night",
     "corys lying on the bottom", "corys lying on the bottom at night gasping"],
)  # fmt: skip
async def test_any_other_sign_stays_a_call(talk: Talk, text: str) -> None:
    await talk.say("/tank new reef 100 l fresh")
    (reply, *_) = await talk.say(text)
    assert "emergency" in reply.facts


async def test_in_a_tank_with_ammonia_it_stays_a_call(talk: Talk) -> None:
    await talk.say("/tank new reef 100 l fresh")
    await talk.say("ammonia 4 ph 8 temp 25")
    (reply, *_) = await talk.say("my corys are lying still on the bottom at night")
    assert "emergency" in reply.facts
