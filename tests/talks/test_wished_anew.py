"""After a wish a value behind "for" or "i meant" is the wish anew, never a reading."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk

MEANT = [
    "i meant gh 5 kh 3",
    "sorry i meant gh 5 kh 3",
    "ich meinte gh 5 kh 3",
    "je voulais dire gh 5 kh 3",
    "quise decir gh 5 kh 3",
    "queria dizer gh 5 kh 3",
    "volevo dire gh 5 kh 3",
    "ik bedoelde gh 5 kh 3",
    "jag menade gh 5 kh 3",
]
WATER = "kh 2 gh 3 ph 6.8 ammonia 0 temp 25"
FOR = ["for", "and for", "für", "und für", "pour", "para", "per", "voor", "dla", "för"]


async def _unmoved(talk: Talk) -> None:
    told = await talk.text("how is fern")
    assert "KH 2 °dH" in told
    assert "GH 3 °dH" in told


@pytest.mark.parametrize("text", MEANT)
@pytest.mark.parametrize("wish", ["i want kh 4 and gh 6", "dose kh 4 gh 6"])
async def test_what_was_meant_is_the_wish_anew(talk: Talk, wish: str, text: str) -> None:
    await talk.say("/tank new Fern 75 l fresh")
    await talk.say(WATER)
    await talk.say(wish)
    told = await talk.text(text)
    assert "GH 3 → 5 °dH" in told
    assert "KH 2 → 3 °dH" in told
    await _unmoved(talk)


@pytest.mark.parametrize("text", MEANT)
async def test_of_a_bucket_it_is_the_same_bucket(talk: Talk, text: str) -> None:
    await talk.say("/tank new Fern 75 l fresh")
    await talk.say(WATER)
    await talk.say("how much salt for 20 l ro to gh 6 kh 4")
    assert "20 L of RO water to KH 3 GH 5" in await talk.text(text)
    await _unmoved(talk)


async def test_of_one_value(talk: Talk) -> None:
    await talk.say("/tank new Fern 75 l fresh")
    await talk.say(WATER)
    await talk.say("dose kh 6")
    assert "KH 2 → 5 °dH" in await talk.text("i meant kh 5")
    await _unmoved(talk)


async def test_after_a_reading_it_puts_the_reading_right(talk: Talk) -> None:
    await talk.say("/tank new Fern 75 l fresh")
    await talk.say(WATER)
    assert "Corrected" in await talk.text("i meant kh 3")


@pytest.mark.parametrize("word", FOR)
async def test_a_value_behind_for_is_never_stored_unasked(talk: Talk, word: str) -> None:
    await talk.say("/tank new Fern 75 l fresh")
    await talk.say(WATER)
    replies = await talk.say(f"{word} gh 10")
    assert all(not reply.facts.get("values") for reply in replies)
    await _unmoved(talk)
    await talk.say("how much salt for 20 l ro to gh 6 kh 4")
    assert "20 L of RO water to KH 4 GH 10" in await talk.text(f"{word} gh 10")
