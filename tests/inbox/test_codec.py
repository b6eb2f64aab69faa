from __future__ import annotations

from datetime import UTC, datetime

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from bot.chat.model import Button, Line, Reply
from bot.inbox.codec import dump_replies, load_replies
from bot.inbox.model import Unreadable

TEXT = st.text()
LINES = st.builds(Line, TEXT, st.sampled_from(["plain", "strong", "quiet"]))
REPLIES = st.builds(
    Reply,
    st.lists(LINES, max_size=4).map(tuple),
    st.lists(st.builds(Button, TEXT, TEXT, TEXT), max_size=3).map(tuple),
    kind=st.sampled_from(["reply", "reminder"]),
    picture=st.none() | TEXT,
    edits=st.none() | TEXT,
    token=st.none() | st.integers(0, 2**53),
    at=st.none() | st.datetimes(timezones=st.just(UTC)),
)


@settings(max_examples=40)
@given(st.lists(REPLIES, max_size=3))
def test_replies_come_back_as_they_were_made(replies: list[Reply]) -> None:
    text = dump_replies(replies)
    assert text.isascii()
    assert load_replies(text) == replies


def test_facts_are_not_kept() -> None:
    reply = Reply((Line("x"),), facts={"at": datetime(2026, 1, 1, tzinfo=UTC)})
    assert load_replies(dump_replies([reply]))[0].facts == {}


@pytest.mark.parametrize(
    ("text", "why"),
    [
        ("", "no JSON"),
        ("[]", "a list"),
        ('{"version": 99, "replies": []}', "a later version"),
        ('{"version": 1, "replies": [{}]}', "a reply without lines"),
        ('{"version": 1, "replies": [{"lines": [["x"]], "buttons": []}]}', "half a line"),
    ],
)
def test_what_another_version_wrote_is_told_apart(text: str, why: str) -> None:
    with pytest.raises(Unreadable):
        pytest.fail(f"{why}: {load_replies(text)}")
