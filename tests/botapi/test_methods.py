"""What the server takes and what it refuses, in the real one's words."""

from __future__ import annotations

import json
from typing import Any

import aiohttp
import pytest

from tests.botapi import BotApi
from tests.botapi.client import Caller
from tests.botapi.model import Standing

ROW = {"text": "x", "callback_data": "y"}
REFUSED: list[tuple[dict[str, Any], str, str]] = [
    ({"text": ""}, "message text is empty", "nothing"),
    ({"text": " \n "}, "message text is empty", "only blanks"),
    ({"text": "<b></b>", "parse_mode": "HTML"}, "message text is empty", "only tags"),
    ({"text": "a" * 4097}, "message is too long", "one character too many"),
    ({"text": "\N{FISH}" * 2049}, "message is too long", "UTF-16 units are counted"),
    ({"text": "a < b", "parse_mode": "HTML"}, "can't parse entities", "bad markup"),
    ({"text": "x", "parse_mode": "MarkdownV2"}, "unsupported parse_mode", "HTML alone"),
    ({"text": "x", "chat_id": 5}, "chat not found", "nobody's chat"),
    ({"text": "x", "message_thread_id": 9}, "message thread not found", "no such topic"),
    ({"text": "x", "reply_parameters": {"message_id": 99}}, "replied not found", "no message"),
    (
        {
            "text": "x",
            "reply_markup": {"inline_keyboard": [[{"text": "x", "callback_data": "é" * 33}]]},
        },
        "BUTTON_DATA_INVALID",
        "66 bytes",
    ),
    (
        {"text": "x", "reply_markup": {"inline_keyboard": [[{"text": "", "callback_data": "y"}]]}},
        "button text is empty",
        "a button without words",
    ),
    ({"text": "x", "reply_markup": {"inline_keyboard": [[ROW] * 9]}}, "TOO_LONG", "nine in a row"),
    ({"text": "x", "reply_markup": "{"}, "can't parse reply keyboard", "broken JSON"),
]
STANDINGS: list[tuple[Standing, int, str]] = [
    ("blocked", 403, "Forbidden: bot was blocked by the user"),
    ("kicked", 403, "Forbidden: bot was kicked from the private chat"),
    ("deactivated", 403, "Forbidden: user is deactivated"),
    ("not_found", 400, "Bad Request: chat not found"),
]


@pytest.mark.parametrize(("params", "words", "why"), REFUSED)
async def test_refused_messages(
    api: BotApi, call: Caller, params: dict[str, Any], words: str, why: str
) -> None:
    chat = api.world.private(api.world.person("Anna"))
    answer = await call("sendMessage", **{"chat_id": chat.id, **params})
    assert answer["error_code"] == 400
    assert words in answer["description"], why
    assert not api.accepted()


@pytest.mark.parametrize(("standing", "code", "words"), STANDINGS)
async def test_chats_that_are_gone(
    api: BotApi, call: Caller, standing: Standing, code: int, words: str
) -> None:
    chat = api.world.private(api.world.person("Anna"))
    chat.standing = standing
    answer = await call("sendMessage", chat_id=chat.id, text="x")
    assert (answer["error_code"], answer["description"]) == (code, words)


async def test_a_moved_group_names_its_new_id(api: BotApi, call: Caller) -> None:
    old, new = api.world.group("Old", kind="group"), api.world.group("New")
    old.moved_to = new.id
    answer = await call("sendMessage", chat_id=old.id, text="x")
    assert answer["parameters"] == {"migrate_to_chat_id": new.id}


async def test_the_longest_message_is_taken(api: BotApi, call: Caller) -> None:
    chat = api.world.private(api.world.person("Anna"))
    text = "<b>" + "&lt;" * 4096 + "</b>"
    answer = await call("sendMessage", chat_id=chat.id, text=text, parse_mode="HTML")
    assert answer["result"]["text"] == "<" * 4096
    assert answer["result"]["entities"] == [{"type": "bold", "offset": 0, "length": 4096}]


async def test_edits(api: BotApi, call: Caller) -> None:
    anna = api.world.person("Anna")
    chat = api.world.private(anna)
    keyboard = {"inline_keyboard": [[{"text": "Done", "callback_data": "1"}]]}
    sent = await call("sendMessage", chat_id=chat.id, text="one", reply_markup=keyboard)
    where = {"chat_id": chat.id, "message_id": sent["result"]["message_id"]}
    same = await call("editMessageText", **where, text="one", reply_markup=keyboard)
    assert "message is not modified" in same["description"]
    assert (await call("editMessageText", **where, text="two"))["result"]["text"] == "two"
    assert "not modified" in (await call("editMessageReplyMarkup", **where))["description"]
    assert (await call("editMessageReplyMarkup", **where, reply_markup=keyboard))["ok"]
    theirs = api.world.say(chat, anna, "mine")
    answer = await call(
        "editMessageText", chat_id=chat.id, message_id=theirs["message_id"], text="x"
    )
    assert answer["description"] == "Bad Request: message can't be edited"
    answer = await call("editMessageText", chat_id=chat.id, message_id=999, text="x")
    assert answer["description"] == "Bad Request: message to edit not found"


async def test_a_press_is_answered_once_and_in_time(api: BotApi, call: Caller) -> None:
    now = 1_000_000.0
    api.world.clock, api.press_expiry = lambda: now, 150
    anna = api.world.person("Anna")
    chat = api.world.private(anna)
    keyboard = {"inline_keyboard": [[{"text": "Done", "callback_data": "1"}]]}
    sent = (await call("sendMessage", chat_id=chat.id, text="x", reply_markup=keyboard))["result"]
    query = api.world.press(sent, anna, 0)
    update = (await call("getUpdates"))["result"][0]["callback_query"]
    assert (update["id"], update["data"]) == (query, "1")
    assert (await call("answerCallbackQuery", callback_query_id=query))["ok"]
    assert "too old" in (await call("answerCallbackQuery", callback_query_id=query))["description"]
    late = api.world.press(sent, anna, 0)
    now += 151
    assert "too old" in (await call("answerCallbackQuery", callback_query_id=late))["description"]


async def test_uploads(api: BotApi) -> None:
    chat = api.world.private(api.world.person("Anna"))
    async with aiohttp.ClientSession() as session:
        for method, field in (("sendPhoto", "photo"), ("sendDocument", "document")):
            form = aiohttp.FormData({"chat_id": str(chat.id), "caption": "a &lt; b"})
            form.add_field("parse_mode", "HTML")
            form.add_field(field, b"bytes", filename="x.png")
            async with session.post(f"{api.url}/bot{api.token}/{method}", data=form) as response:
                result = (await response.json())["result"]
            assert result["caption"] == "a < b"
            assert result[field]
    assert len(api.accepted("sendDocument")) == 1


async def test_commands_and_identity(api: BotApi, call: Caller) -> None:
    good = [{"command": "help", "description": "What I can do"}]
    assert (await call("setMyCommands", commands=json.dumps(good)))["ok"]
    assert api.commands == good
    bad = await call("setMyCommands", commands=[{"command": "Help!", "description": "x"}])
    assert bad["description"] == "Bad Request: BOT_COMMAND_INVALID"
    assert (await call("getMe"))["result"]["is_bot"] is True
    assert (await call("sendDance"))["error_code"] == 404


async def test_only_its_own_token_opens_it(api: BotApi) -> None:
    async with (
        aiohttp.ClientSession() as session,
        session.post(f"{api.url}/bot1:wrong/getMe") as response,
    ):
        assert (await response.json())["error_code"] == 401
    assert not api.calls
