"""`that reading was the quarantine tank`: it is taken off the tank in use, and nothing is lost."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk

TOLD = [
    "that reading was the quarantine tank", "oh sorry that was the hospital tank",
    "that was quarantine", "das war das Quarantänebecken", "c'était le bac hôpital",
]  # fmt: skip


@pytest.mark.parametrize("text", TOLD)
async def test_it_is_taken_off_and_kept_in_the_buttons(talk: Talk, text: str) -> None:
    await talk.say("/tank new reef 100 l fresh")
    await talk.say("ammonia 0.5")
    (asked,) = await talk.say(text)
    assert asked.text.startswith("Taken off: reef: ammonia 0.5 mg/L")
    assert "no readings of ammonia" in await talk.text("history ammonia")
    (kept,) = await talk.press(1, asked)
    assert kept.facts["tank"] != "reef"
    assert [value["canonical"] for value in kept.facts["values"]] == [0.5]


async def test_it_may_be_of_the_tank_after_all(talk: Talk) -> None:
    await talk.say("/tank new reef 100 l fresh")
    await talk.say("ammonia 0.5")
    (asked,) = await talk.say(TOLD[0])
    await talk.press(2, asked)
    assert "ammonia 0.5" in await talk.text("history ammonia")


async def test_of_a_tank_on_record_it_is_moved(talk: Talk) -> None:
    await talk.say("/tank new reef 100 l fresh")
    await talk.say("/tank new hospital 30 l fresh")
    await talk.say("reef ammonia 0.5")
    assert "Moved to hospital" in await talk.text("that reading was the hospital tank")


@pytest.mark.parametrize(
    "text", ["that was the old kit", "that was the wrong tank", "that was a quarantine tank?"]
)
async def test_what_tells_no_other_tank_leaves_it(talk: Talk, text: str) -> None:
    await talk.say("/tank new reef 100 l fresh")
    await talk.say("ammonia 0.5")
    assert "Taken off" not in await talk.text(text)
    assert "ammonia 0.5" in await talk.text("history ammonia")
