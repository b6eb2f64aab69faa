"""A text that opens as a question is no deed, with or without its mark."""

from __future__ import annotations

import pytest

from core.message.deed_opened import asks_change, opened
from tests.chat.harness import Talk

CHANGE = [
    "do i wc",
    "do we wc today",
    "do i do a wc",
    "do i change water",
    "should i wc",
    "need wc",
    "is wc needed",
    "wc?",
    "mach ich wasserwechsel",
    "muss ich ww machen",
    "dois je faire un changement d'eau",
    "est ce que je change l'eau",
    "hago cambio de agua",
    "debo cambiar el agua",
    "faço tpa",
    "devo trocar a água",
    "faccio il cambio",
    "devo cambiare acqua",
    "doe ik een waterwissel",
    "moet ik water verversen",
    "czy robić podmianę",
    "czy podmienić wodę",
    "gör jag vattenbyte",
    "ska jag byta vatten",
]
OTHERS = [
    "do i top up",
    "do i add salt",
    "do i dose 3 g baking soda",
    "did i feed",
    "do i feed",
    "do i clean the filter",
    "do i change 30%",
    "did i change 30%",
    "did we add 5 g salt",
    "have i dosed 3 g baking soda",
    "habe ich gefüttert",
    "habe ich 30% gewechselt",
    "soll ich 30% wechseln",
    "ai-je changé 30%",
    "heb ik 30% ververst",
    "czy podmieniłem 30%",
    "har jag bytt 30%",
    "ska jag byta 30%",
]
DEEDS = ["i did wc", "wc 30%", "changed 30%", "hab 30% gewechselt", "cambio agua 30%", "fed"]


async def _on_record(talk: Talk) -> str:
    return await talk.text("when did i last change water")


@pytest.mark.parametrize("text", CHANGE)
async def test_a_change_that_is_asked_about_is_answered_not_stored(talk: Talk, text: str) -> None:
    await talk.say("/tank new Fern 75 l fresh")
    await talk.say("kh 4 ph 7 ammonia 0 nitrite 0 temp 25")
    (reply,) = await talk.say(text)
    assert "events" not in reply.facts
    assert "nothing that was measured asks for a water change now" in reply.text
    assert "no water change on record" in await _on_record(talk)


@pytest.mark.parametrize("text", OTHERS)
async def test_no_deed_that_is_asked_about_is_stored(talk: Talk, text: str) -> None:
    await talk.say("/tank new Fern 75 l fresh")
    await talk.say("kh 4 ph 7 ammonia 0 nitrite 0 temp 25")
    replies = await talk.say(text)
    assert replies
    assert all(not reply.facts.get("events") for reply in replies)
    assert all("undo" not in [button.label for button in reply.buttons] for reply in replies)


async def test_what_was_done_is_answered_from_the_record(talk: Talk) -> None:
    await talk.say("/tank new Fern 75 l fresh")
    await talk.say("changed 20%")
    for text in ("did i wc", "have we changed 20%", "habe ich 20% gewechselt"):
        assert "changed 20 %" in await talk.text(text), text


@pytest.mark.parametrize("text", DEEDS)
async def test_a_deed_that_is_told_is_stored(talk: Talk, text: str) -> None:
    await talk.say("/tank new Fern 75 l fresh")
    (reply,) = await talk.say(text)
    assert reply.facts["events"], text


def test_which_texts_open_a_question() -> None:
    assert [opened(text) for text in ("so did we feed", "i did wc", "30% wc")] == [
        "done",
        None,
        None,
    ]
    assert not asks_change("do i change 30%")
    assert not asks_change("do i feed")
