"""Anything at all may be sent: a short kind answer or silence, no exception, no wrong store."""

from __future__ import annotations

import string

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from bot.chat.model import Reply
from tests.chat.harness import Talk

NASTY = [
    "ph 9**9**9**9",
    "kh 4" * 25_000,
    "\x00\x07\x1b[31mph\x00",
    "<b>ph 7</b>",
    "\u202eph 7.2\u202c",
    "\u2066kh\u2069 \u200b4\u200d2",
    "🐟🐠🐡",
    "",
    "   \n\t  ",
    "/",
    "//tank",
    "/tank new \U0001f420 90 l fresh",
    "'; DROP TABLE readings; --",
    "%s %d {0} {x!r}",
    "ph NaN kh inf gh 1e309",
    "ph -7",
    "kh 99999999999999999999999999999999",
    "@" * 4000,
    "done 99999999999999999999",
    "done -1",
    "kh 4 \ud800",
    "remind me to " + "x" * 5000 + " in 24h",
]


def fits_a_screen(replies: list[Reply]) -> bool:
    return all(len(reply.text) < 4000 and len(reply.lines) <= 12 for reply in replies)


@pytest.mark.parametrize("text", NASTY, ids=range(len(NASTY)))
@pytest.mark.parametrize("kind", ["message", "edit"])
async def test_nasty_texts_get_a_short_answer(talk: Talk, text: str, kind: str) -> None:
    assert fits_a_screen(await talk.say(text, kind=kind))


@pytest.mark.parametrize("text", NASTY[:12], ids=range(12))
async def test_nasty_texts_store_nothing(talk: Talk, text: str) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say(text)
    async with talk.app.database.read() as uow:
        stored = await uow.log.readings(1)
    # What is plainly a reading in the mess may be kept; a number that was not typed may not.
    assert all(str(reading.what.value).removesuffix(".0") in text for reading in stored)


async def test_what_is_not_text_is_answered_in_private_and_not_in_a_group(
    talk: Talk,
) -> None:
    (reply,) = await talk.say("", kind="other", attachment="photo")
    assert "only read text" in reply.text
    assert await talk.say("", kind="other", attachment="sticker", group=True) == []


@pytest.mark.parametrize(
    "action",
    ["", "1", "1:2", "1:x:0", "2:1:0", "1:999:0", "1:1:99", "1:-1:0", "1:" + "9" * 40 + ":0"],
)
async def test_a_button_that_nobody_gave_out(talk: Talk, action: str) -> None:
    await talk.say("kh 4")
    (reply,) = await talk.say("", kind="press", action=action)
    assert "too old" in reply.text


async def test_a_button_of_another_chat(talk: Talk) -> None:
    (reply,) = await talk.say("kh 4")
    stranger = Talk(talk.app, talk.clock, chat="2")
    (answer,) = await stranger.press(1, reply)
    assert "another chat" in answer.text
    async with talk.app.database.read() as uow:
        assert len(await uow.log.readings(1)) == 1


words = st.one_of(
    st.sampled_from(
        ["ph", "kh", "gh", "no3", "7.2", "4", "undo", "no,", "dose", "remind me to", "in 24h",
         "done", "/tank", "new", "more", "yes", "fern:", "changed", "30%", "every",
         "7 days", "at 19:00"]
    ),
    st.text(string.printable, max_size=8),
    st.text(max_size=6),
)  # fmt: skip


@settings(max_examples=150, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(st.lists(words, max_size=9), st.sampled_from(["message", "edit", "press"]))
async def test_no_line_of_words_raises(talk: Talk, parts: list[str], kind: str) -> None:
    text = " ".join(parts)
    assert fits_a_screen(await talk.say(text, kind=kind, action=text))
