"""``ph under 6`` is a reading at a kit's end, and names the crash where KH is spent."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk

UNDER = ["ph under 6", "ph below 6", "ph unter 6", "ph sous 6", "ph sotto 6", "ph onder 6",
         "ph poniżej 6", "ph abaixo de 6", "ph por debajo de 6"]  # fmt: skip


@pytest.mark.parametrize("text", UNDER)
async def test_it_is_kept_and_the_crash_named_after_a_low_kh(talk: Talk, text: str) -> None:
    await talk.say("/tank new Fern 100 l fresh")
    await talk.say("kh 0")
    said = "\n".join(reply.text for reply in await talk.say(text))
    assert "pH under 6" in said
    assert "pH crash" in said
    assert "RO" not in said


async def test_without_a_kh_it_is_kept_alone(talk: Talk) -> None:
    await talk.say("/tank new Fern 100 l fresh")
    said = await talk.text("ph under 6")
    assert "pH under 6" in said
    assert "crash" not in said


async def test_a_kh_at_the_end_of_a_kit_is_kept(talk: Talk) -> None:
    await talk.say("/tank new Fern 100 l fresh")
    assert "KH under 2" in await talk.text("kh under 2")


@pytest.mark.parametrize(
    "text",
    ["get ph under 6", "want ph under 6", "ph should be under 6", "how do i get ph under 6",
     "ph soll unter 6", "ph under 6?", "nitrate under 20", "can i keep ph under 6"],
)  # fmt: skip
async def test_wishes_and_questions_store_nothing(talk: Talk, text: str) -> None:
    await talk.say("/tank new Fern 100 l fresh")
    await talk.say("kh 1")
    for reply in await talk.say(text):
        assert "values" not in reply.facts
        assert "pH crash" not in reply.text


async def test_over_what_a_kit_ends_at_it_is_a_wish_where_kh_holds(talk: Talk) -> None:
    await talk.say("/tank new Fern 100 l fresh")
    await talk.say("kh 8")
    for reply in await talk.say("ph under 7"):
        assert "values" not in reply.facts
