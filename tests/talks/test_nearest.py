"""What nothing understood is asked back by what it names, beside what is spoken of."""

from __future__ import annotations

import pytest

from bot.chat.words import nearest as words
from core.message.themes import About, Theme, themes
from tests.chat.harness import Talk

HINT = "I did not find"
THINGS: dict[Theme, str] = {"substance": "crushed coral", "animal": "neon tetras"}
THEMES: tuple[Theme, ...] = (
    "substance", "animal", "filter", "change", "test", "stock", "algae", "due",
)  # fmt: skip


@pytest.mark.parametrize(
    "line",
    ["i have some crushed coral", "mein filterschwamm wirkt komisch", "my mate says vinegar",
     "mes mousses, bof", "i dream of shrimps", "boh, i test"],
)  # fmt: skip
async def test_a_message_that_names_something_is_asked_back(talk: Talk, line: str) -> None:
    await talk.say("/tank new fern 90 l fresh")
    (told,) = await talk.say(line)
    assert told.text.startswith(HINT)
    assert [button.label for button in told.buttons][-1] == "how is my water"
    assert len(told.buttons) > 1


@pytest.mark.parametrize("theme", THEMES)
async def test_every_question_that_is_offered_is_answered(talk: Talk, theme: Theme) -> None:
    await talk.say("/tank new fern 90 l fresh")
    await talk.say("kh 5 gh 6 ph 7 ammonia 0 nitrite 0 no3 10")
    for question in (*words.asked(About(theme, THINGS.get(theme, ""))), words.how_it_is()):
        (told, *_) = await talk.say(question)
        assert HINT not in told.text, question


async def test_a_pressed_question_is_answered_as_if_typed_and_can_be_asked_again(
    talk: Talk,
) -> None:
    await talk.say("/tank new fern 90 l fresh")
    (asked,) = await talk.say("strips hm")
    (first,) = await talk.press(1, asked)
    (second,) = await talk.press(1, asked)
    assert first.text == second.text
    assert "weekly" in first.text


async def test_what_waits_for_an_answer_still_does(talk: Talk) -> None:
    await talk.say("how much baking soda from kh 3 to 4")
    (asked,) = await talk.say("i have some crushed coral")
    assert asked.buttons
    (told,) = await talk.say("90 l")
    assert told.facts["volume_l"] == 90.0
    assert told.facts["grams"] > 0.0


async def test_nothing_named_is_told_what_to_send(talk: Talk) -> None:
    (told,) = await talk.say("so it goes")
    assert told.text.startswith(HINT)
    assert not told.buttons


@pytest.mark.parametrize(
    ("text", "found"),
    [
        ("should i feed less before the vattenbyte", ["change"]),
        ("how do i clean the filter", ["filter"]),
        ("too many fish, i think, and algae", ["stock", "algae"]),
        ("the reflecting light", ["algae"]),
        ("my filtering is contested", []),
    ],
)
def test_themes_are_whole_words(text: str, found: list[Theme]) -> None:
    assert [each.theme for each in themes(text)] == found


@pytest.mark.parametrize(
    ("text", "offered"),
    [
        ("it turned yellow at some point", False), ("no idea really", False),
        ("my guppies blah blah", True), ("the shrimp blah", True), ("tetras blah", True),
    ],
)  # fmt: skip
async def test_only_what_an_animal_is_called_is_offered_as_one(
    talk: Talk, text: str, offered: bool
) -> None:
    await talk.say("my tank is 100 l")
    (reply,) = await talk.say(text)
    assert any("can i keep" in button.label for button in reply.buttons) is offered
