"""What was asked with buttons is answered by the end of one as well."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk


@pytest.mark.parametrize(
    ("line", "percent", "litres"),
    [
        ("20 l", None, 20.0), ("litres", None, 20.0), ("20 liter", None, 20.0),
        ("yes percent", 20.0, None), ("%", 20.0, None), ("20 %", 20.0, None),
    ],
)  # fmt: skip
async def test_the_unit_alone_answers_which_amount_was_meant(
    talk: Talk, line: str, percent: float | None, litres: float | None
) -> None:
    await talk.say("/tank new fern 90 l fresh")
    await talk.say("changed 20")
    (kept,) = await talk.say(line)
    (event,) = kept.facts["events"]
    assert (event.get("percent"), event.get("litres")) == (percent, litres)


@pytest.mark.parametrize("line", ["20", "30 l", "l?", "kh 20"])
async def test_what_is_the_end_of_no_button_or_of_two_keeps_no_change(
    talk: Talk, line: str
) -> None:
    await talk.say("/tank new fern 90 l fresh")
    await talk.say("changed 20")
    await talk.say(line)
    (past,) = await talk.say("when did i last change water")
    assert "no water change on record" in past.text
