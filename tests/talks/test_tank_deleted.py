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


@pytest.mark.parametrize(
    "text",
    ["sold that tank", "that tank is gone", "i sold b", "the b tank is gone",
     "got rid of b last week", "i dont have b anymore", "I've sold the tank.",
     "ich habe b verkauft", "b gibt es nicht mehr",
     "j'ai vendu le bac", "vendí el acuario", "ho venduto l'acquario", "de bak is verkocht",
     "sprzedałem akwarium", "jag sålde akvariet"],
)  # fmt: skip
async def test_a_tank_that_is_no_more_is_asked_about(talk: Talk, text: str) -> None:
    await talk.say("/tank new a 100 l fresh")
    await talk.say("/tank new b 100 l fresh")
    await talk.say("remind me to test kh of b every 7 days")
    await talk.say("b kh 4")
    (asked,) = await talk.say(text)
    assert asked.text.startswith("Delete b?")
    assert [button.meaning for button in asked.buttons] == ["yes", "no"]
    assert "test kh" in await talk.text("/remind")
    await talk.say("yes")
    assert "test kh" not in await talk.text("/remind")


@pytest.mark.parametrize(
    "text",
    ["i dont have b", "should i sell the tank", "sold that tank?", "sold 3 fish from that tank",
     "i will sell the tank", "the fish in b are gone", "i sold the stand of b",
     "ammonia in b is gone"],
)  # fmt: skip
async def test_what_tells_no_tank_gone_asks_nothing(talk: Talk, text: str) -> None:
    await talk.say("/tank new b 100 l fresh")
    assert not any(reply.text.startswith("Delete") for reply in await talk.say(text))
