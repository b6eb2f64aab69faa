"""``all good?``, ``fish ok?``, ``is that high``: the verdict that ``is that ok?`` gives."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk

ASKED = [
    "all good?", "everything fine?", "ok now?", "looks good?", "fish ok?", "better?", "good?",
    "fish look fine tho", "is that high", "too quick?", "are the fish ok", "will they be ok?",
    "whats wrong with my water for them", "so all good now?", "alles gut?", "ist das hoch",
    "tout va bien?", "todo bien?", "tutto bene?", "tudo bem?", "alles oké?", "wszystko ok?",
    "allt bra?", "är det högt", "czy to wysokie",
]  # fmt: skip


async def water(talk: Talk) -> None:
    await talk.say("/tank new Fern 100 l fresh")
    await talk.say("added 10 neon tetras")
    await talk.say("kh 4 gh 16 ph 7 ammonia 0 nitrite 0")


@pytest.mark.parametrize("text", ASKED)
async def test_the_verdict_is_given(talk: Talk, text: str) -> None:
    await water(talk)
    plainly = await talk.text("is that ok?")
    assert "GH 16" in plainly
    assert await talk.text(text) == plainly


@pytest.mark.parametrize("text", ["good", "fish ok"])
async def test_without_a_mark_it_is_small_talk(talk: Talk, text: str) -> None:
    await water(talk)
    assert "GH 16" not in await talk.text(text)


@pytest.mark.parametrize("text", ["all good", "todo bien", "alles gut"])
async def test_relief_without_a_mark_is_told_what_stands(talk: Talk, text: str) -> None:
    await water(talk)
    assert "GH 16" in await talk.text(text)


@pytest.mark.parametrize(("by", "said"), [("0.4", "more than the 0.3"), (".2", "within the 0.3")])
async def test_a_swing_is_held_against_a_days_step(talk: Talk, by: str, said: str) -> None:
    await water(talk)
    assert said in await talk.text(f"is a swing of {by} bad")


async def test_a_swing_of_another_value_is_not_of_ph(talk: Talk) -> None:
    await water(talk)
    assert "pH swing" not in await talk.text("is a gh swing of 2 bad")


@pytest.mark.parametrize(
    "text",
    ["is gh the problem?", "ist gh das problem?", "le gh est le problème?", "gh is the cause?"],
)
async def test_a_value_that_is_blamed_is_judged(talk: Talk, text: str) -> None:
    await water(talk)
    said = await talk.text(text)
    assert "GH 16 °dH is high for neon tetras" in said
    assert "For neon tetras: GH 1–10" in said


async def test_an_animal_that_is_named_is_asked_for(talk: Talk) -> None:
    await water(talk)
    assert "too small for pleco" in await talk.text("pleco ok in this?")
    assert "GH 16" in await talk.text("neon tetras ok in there?")


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("is that pH too low for them", "For neon tetras: pH 5–7.5"),
        ("is kh 2 too low for cardinals", "For cardinals: KH 0–8"),
        ("is gh too high for them", "For neon tetras: GH 1–10"),
    ],
)
async def test_what_suits_those_that_are_meant_is_told(talk: Talk, text: str, said: str) -> None:
    await water(talk)
    assert said in await talk.text(text)


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("whats the right temp for a betta", "For betta: temperature 24–29"),
        ("what is the right gh for neon tetras", "GH 1–10"),
    ],
)
async def test_what_is_right_for_a_kind_is_told(talk: Talk, text: str, said: str) -> None:
    await talk.say("/tank new Fern 100 l fresh")
    assert said in await talk.text(text)


async def test_what_a_word_means_is_still_explained(talk: Talk) -> None:
    await talk.say("/tank new Fern 100 l fresh")
    assert "calcium and magnesium" in await talk.text("what is gh")
