"""Updates as the Bot API sends them, and what the conversation is told."""

from __future__ import annotations

import json
from datetime import UTC, datetime
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from bot.chat.model import Address, Incoming
from bot.inbox.model import Departure, Unreadable
from bot.telegram.api import Me
from bot.telegram.read import read_raw, read_update
from tests.botapi import BotApi
from tests.botapi.world import ATTACHMENTS

ME = Me(42, "Meniscus_Test_Bot")
NOW = datetime(2026, 3, 1, 12, tzinfo=UTC)
SENT = 1_772_300_000
ANNA = {"id": 7, "is_bot": False, "first_name": "Anna", "last_name": "B", "language_code": "pt-BR"}
PRIVATE = {"id": 7, "type": "private", "first_name": "Anna"}
GROUP = {"id": -100, "type": "supergroup", "title": "Reading room"}
OURS = {"message_id": 3, "date": SENT, "chat": GROUP, "from": {"id": 42, "is_bot": True}}


def _message(chat: dict[str, Any] = PRIVATE, **content: Any) -> dict[str, Any]:
    message = {"message_id": 9, "date": SENT, "chat": chat, "from": ANNA, **content}
    return {"update_id": 5, "message": {k: v for k, v in message.items() if v is not None}}


def _read(update: Any) -> Incoming | Departure | None:
    return read_update(update, ME, NOW)


def _incoming(update: Any) -> Incoming:
    came = _read(update)
    assert isinstance(came, Incoming)
    return came


def test_a_private_message_in_full() -> None:
    assert _incoming(_message(text="kh 4")) == Incoming(
        address=Address("telegram", "7"),
        update_id="5",
        kind="message",
        at=datetime.fromtimestamp(SENT, UTC),
        text="kh 4",
        author_id="7",
        author_name="Anna B",
        message_ref="9",
        language="pt",
    )


def test_an_edit_keeps_the_time_of_its_message() -> None:
    update = _message(text="kh 5", edit_date=SENT + 3600)
    edited = {"update_id": 6, "edited_message": update["message"]}
    came = _incoming(edited)
    assert (came.kind, came.message_ref, came.at.timestamp()) == ("edit", "9", SENT)


def test_a_press_says_when_it_came_and_on_what() -> None:
    query = {"id": "77", "from": ANNA, "data": "1:done:5", "message": OURS}
    came = _incoming({"update_id": 5, "callback_query": query})
    assert (came.kind, came.action, came.message_ref, came.at) == ("press", "1:done:5", "3", NOW)
    assert came.addressed
    assert came.group


def test_a_press_on_a_message_that_is_no_longer_accessible() -> None:
    gone = {"chat": PRIVATE, "message_id": 3, "date": 0}
    query = {"id": "77", "from": ANNA, "data": "x", "message": gone}
    assert _incoming({"update_id": 5, "callback_query": query}).message_ref == "3"


@pytest.mark.parametrize("what", sorted(ATTACHMENTS))
def test_attachments_are_named(what: str) -> None:
    bare = _incoming(_message(**{what: ATTACHMENTS[what]}))
    assert (bare.kind, bare.attachment, bare.text) == ("other", what, "")
    told = _incoming(_message(**{what: ATTACHMENTS[what]}, caption="kh 4"))
    assert (told.kind, told.attachment, told.text) == ("message", what, "kh 4")


ADDRESSING = [
    ("kh 4", {}, False, "kh 4", "a plain line of a group is kept, unaddressed"),
    ("/w kh 4", {}, True, "/w kh 4", "a command"),
    ("/w@meniscus_test_bot kh 4", {}, True, "/w kh 4", "a command to us, whatever the case"),
    ("kh 4", {"reply_to_message": OURS}, True, "kh 4", "an answer to us"),
    ("@Meniscus_Test_Bot kh 4", {}, True, "kh 4", "a mention in front"),
    ("@meniscus_test_bot, kh 4", {}, True, "kh 4", "a mention with a comma"),
    ("what is kh 4 @meniscus_test_bot", {}, True, "what is kh 4", "a mention at the end"),
    ("@meniscus_test_bottle kh 4", {}, False, "@meniscus_test_bottle kh 4", "another name"),
    ("2/3 kh", {}, False, "2/3 kh", "a slash within is no command"),
]


@pytest.mark.parametrize(("text", "more", "addressed", "shown", "why"), ADDRESSING)
def test_who_is_spoken_to_in_a_group(
    text: str, more: dict[str, Any], addressed: bool, shown: str, why: str
) -> None:
    came = _incoming(_message(GROUP, text=text, **more))
    assert (came.addressed, came.text, came.group) == (addressed, shown, True), why


BOT = {"id": 99, "is_bot": True, "first_name": "Other"}
CHANNEL = {"id": -5, "type": "channel", "title": "News"}
NOT_FOR_US = [
    (_message(GROUP, text="/start@otherbot"), "a command to another bot"),
    (_message(GROUP, text="hello", **{"from": BOT}), "another bot"),
    (_message(GROUP, new_chat_members=[ANNA]), "a service message"),
    (_message(GROUP, photo=ATTACHMENTS["photo"]), "a picture in a group, not for us"),
    (_message(CHANNEL, text="x"), "a channel"),
    (_message(PRIVATE, pinned_message={}), "a service message in private"),
    (_message(GROUP, text="x", **{"from": None}), "nobody"),
    (
        _message(GROUP, text="x", sender_chat=CHANNEL, is_automatic_forward=True),
        "a channel's post passed on",
    ),
    ({"update_id": 5, "channel_post": {"chat": CHANNEL}}, "a channel's post"),
    ({"update_id": 5, "poll": {}}, "a kind we do not ask for"),
    ({"update_id": 5, "callback_query": {"id": "1", "from": ANNA, "data": "x"}}, "inline"),
    (
        {"update_id": 5, "callback_query": {"id": "1", "from": ANNA, "game_short_name": "x"}},
        "a game",
    ),
]


@pytest.mark.parametrize(("update", "why"), NOT_FOR_US)
def test_what_is_not_for_us(update: Any, why: str) -> None:
    assert _read(update) is None, why


def test_an_anonymous_administrator_is_heard() -> None:
    hidden = {"id": 1087968824, "is_bot": True, "first_name": "Group"}
    came = _incoming(_message(GROUP, text="kh 4", sender_chat=GROUP, **{"from": hidden}))
    assert (came.author_id, came.author_name) == ("-100", "Reading room")


def test_a_picture_sent_to_us_in_a_group_is_kept() -> None:
    came = _incoming(_message(GROUP, photo=ATTACHMENTS["photo"], reply_to_message=OURS))
    assert (came.kind, came.addressed, came.reply_to) == ("other", True, "3")


def test_threads_only_where_they_are_topics() -> None:
    topic = _message(GROUP, text="x", message_thread_id=4, is_topic_message=True)
    assert _incoming(topic).address.thread == "4"
    replies = _message(GROUP, text="x", message_thread_id=4, reply_to_message=OURS)
    assert _incoming(replies).address.thread is None


def test_the_message_that_opened_a_topic_is_not_answered() -> None:
    opening = {**OURS, "forum_topic_created": {"name": "Fern"}}
    update = _message(GROUP, text="x", is_topic_message=True, message_thread_id=3)
    update["message"]["reply_to_message"] = opening
    assert _incoming(update).reply_to is None


@pytest.mark.parametrize(
    ("old", "new", "gone"),
    [
        ("member", "kicked", True),
        ("member", "left", True),
        ("kicked", "member", False),
        ("left", "administrator", False),
    ],
)
def test_membership(old: str, new: str, gone: bool) -> None:
    change = {
        "chat": PRIVATE,
        "from": ANNA,
        "date": SENT,
        "old_chat_member": {"status": old},
        "new_chat_member": {"status": new},
    }
    came = _read({"update_id": 5, "my_chat_member": change})
    assert came == (Departure(Address("telegram", "7")) if gone else None)


def test_a_group_that_becomes_a_supergroup() -> None:
    came = _read(_message(GROUP, migrate_to_chat_id=-1001))
    assert came == Departure(Address("telegram", "-100"), "-1001")


UNREADABLE = [
    (None, "nothing"),
    ([], "a list"),
    ("text", "a text"),
    ({}, "no update_id"),
    ({"update_id": "5", "message": {}}, "an update_id of text"),
    ({"update_id": True, "message": {}}, "an update_id of yes"),
    ({"update_id": 5, "message": None}, "no message"),
    ({"update_id": 5, "message": {"message_id": 1}}, "no chat"),
    (_message({"id": "7", "type": "private"}, text="x"), "a chat's id of text"),
    (_message({"id": 7}, text="x"), "a chat of no kind"),
    (_message(text=["x"]), "a text that is a list"),
    (_message(text="x", date="today"), "a date in words"),
    (_message(text="x", date=10**30), "a date beyond time"),
    (_message(text="x", message_id=None), "no message id"),
    (_message(text="x", **{"from": {"id": None}}), "an author without id"),
    ({"update_id": 5, "callback_query": {"id": 1, "from": ANNA}}, "a query's id of number"),
    ({"update_id": 5, "my_chat_member": {"chat": PRIVATE}}, "a membership without status"),
]


@pytest.mark.parametrize(("update", "why"), UNREADABLE)
def test_what_cannot_be_read(update: Any, why: str) -> None:
    with pytest.raises(Unreadable):
        pytest.fail(f"{why}: {_read(update)}")


def test_text_is_made_fit_to_keep() -> None:
    came = _incoming(_message(text="a\x00b \ud83d\udc1f \ud800 \u202e<b>"))
    assert came.text == "ab \N{FISH} \N{REPLACEMENT CHARACTER} \u202e<b>"
    came.text.encode()


def test_what_the_local_server_sends_reads_the_same_from_raw() -> None:
    api = BotApi(privacy=False)
    anna = api.world.person("Anna")
    api.world.say(api.world.private(anna), anna, "kh 4")
    api.world.say(api.world.group("Room"), anna, "@meniscus_test_bot kh 4")
    me = Me(api.world.bot.id, api.world.bot.username or "")
    for waiting in api.updates._queue:
        came = read_raw(json.dumps(waiting.payload), me, NOW)
        assert isinstance(came, Incoming)
        assert came.addressed
        assert came.text == "kh 4"


JSON = st.recursive(
    st.none() | st.booleans() | st.integers() | st.floats() | st.text(max_size=8),
    lambda inner: st.lists(inner, max_size=3) | st.dictionaries(st.text(max_size=4), inner),
    max_leaves=8,
)
KEYS = ("message_id", "date", "chat", "from", "text", "caption", "reply_to_message", "photo")


@settings(max_examples=60)
@given(JSON, st.dictionaries(st.sampled_from(KEYS), JSON))
def test_anything_at_all_is_read_or_called_unreadable(update: Any, broken: dict[str, Any]) -> None:
    message = {**_message(text="kh 4")["message"], **broken}
    for candidate in (update, {"update_id": 5, "message": message}):
        try:
            came = _read(candidate)
        except Unreadable:
            continue
        if isinstance(came, Incoming):
            came.text.encode()
