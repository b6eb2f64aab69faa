"""Volumes, targets and measures that cannot be: a short answer that says what to send."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk

FERN = ("/tank new Fern 90 l fresh", "kh 4 gh 6 ph 7.2 temp 25 ammonia 0")


@pytest.mark.parametrize(
    ("before", "message", "says"),
    [
        ((), "how much baking soda for 0 l from kh 3 to 6", "Send the net volume again"),
        ((), "how much baking soda for 0.3 ml from kh 3 to 6", "Send the net volume again"),
        ((), "how much baking soda for 3,000,000 l from kh 3 to 6", "Send the net volume again"),
        ((), "how much baking soda for 100 l from kh 6 to 3", "already at 3"),
        (FERN, "dose kh 2", "how much can i change with ro"),
        ((), "how much calcium sulfate for 100 l gh 4 to 200", "Send it again"),
        (FERN, "dose gh 300", "gh 300 ppm"),
        ((), "what does 2 spoons of baking soda do in 100 l", "Weigh it and ask again"),
        (("/tank new Fern fresh", FERN[1]), "dose kh 5", "Send for example: 90 l"),
        ((), "/tank new Null 0 l fresh", "Send for example"),
        ((), "/tank new Huge 3000000 l fresh", "Send for example: 90 l"),
        ((), "/tank new Tiny 0.3 ml fresh", "Send for example: 90 l"),
    ],
)
async def test_it_says_what_to_send(
    talk: Talk, before: tuple[str, ...], message: str, says: str
) -> None:
    for text in before:
        await talk.say(text)
    (reply,) = await talk.say(message)
    assert says in reply.text
    assert "grams" not in reply.facts
    assert len(reply.lines) <= 3


async def test_a_plan_asked_twice_is_the_same_and_a_second_dose_waits(talk: Talk) -> None:
    for text in FERN:
        await talk.say(text)
    (first,) = await talk.say("dose kh 5")
    (again,) = await talk.say("dose kh 5")
    assert again.text == first.text
    await talk.press(1, again)
    (waits,) = await talk.say("dose kh 5")
    assert waits.text.startswith("Fern: No second dose yet")
    assert "grams" not in waits.facts
