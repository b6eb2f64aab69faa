"""A tank's name alone behind "delete" asks about the tank, and ends no reminder."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk


@pytest.mark.parametrize(
    "text",
    ["delete b", "remove the tank b", "lösch das Becken b", "supprime b", "borra b", "apaga b",
     "cancella b", "verwijder b", "usuń b", "ta bort b"],
)  # fmt: skip
async def test_the_tank_is_asked_about_and_its_reminder_stays(talk: Talk, text: str) -> None:
    await talk.say("/tank new a 100 l fresh")
    await talk.say("/tank new b 100 l fresh")
    await talk.say("remind me to feed b every 2 days")
    (asked,) = await talk.say(text)
    assert [button.meaning for button in asked.buttons] == ["yes", "no"]
    await talk.say("no")
    assert "feed b" in await talk.text("/remind")


@pytest.mark.parametrize("name", ["z", "k", "Fern"])
async def test_a_tank_without_a_reminder_too(talk: Talk, name: str) -> None:
    await talk.say(f"/tank new {name} 100 l fresh")
    await talk.say(f"delete {name}")
    assert f"{name} is deleted" in await talk.text("yes")


async def test_what_names_a_reminder_ends_it(talk: Talk) -> None:
    await talk.say("/tank new b 100 l fresh")
    await talk.say("remind me to feed b every 2 days")
    assert "not remind you" in await talk.text("delete the feed b reminder")
    assert "b: 100 L" in await talk.text("/tank b")
