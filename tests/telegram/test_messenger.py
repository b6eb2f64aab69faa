"""Replies sent to the strict local server, and every way in which it can say no."""

from __future__ import annotations

import asyncio
import json
from pathlib import Path
from typing import Any

import pytest

from bot.chat.model import Address, Button, Line, Reply
from bot.delivery import ChatGone, DeliveryError, MaybeSent, Refused, Throttled, Unreachable
from bot.telegram.api import Api, connect
from bot.telegram.limits import Limiter, Rates
from bot.telegram.messenger import Telegram
from tests.botapi import BotApi, Fault
from tests.botapi.model import Chat

HELLO = Reply((Line("kh 4 < 6 & rising", "strong"), Line("net volume", "quiet")))
BUTTONS = (Button("log it", "1:log:5"), Button("more", "1:more:5"))


def _private(server: BotApi) -> tuple[Chat, Address]:
    chat = server.world.private(server.world.person("Anna"))
    return chat, Address("telegram", str(chat.id))


async def test_a_reply_as_it_is_shown(server: BotApi, telegram: Telegram) -> None:
    chat, address = _private(server)
    ref = await telegram.send(address, Reply(HELLO.lines, BUTTONS))
    (call,) = server.accepted()
    shown = call.result
    assert shown["text"] == "kh 4 < 6 & rising\nnet volume"
    assert [e["type"] for e in shown["entities"]] == ["bold", "italic"]
    assert shown["reply_markup"]["inline_keyboard"] == [
        [
            {"text": "log it", "callback_data": "1:log:5"},
            {"text": "more", "callback_data": "1:more:5"},
        ]
    ]
    assert ref == str(shown["message_id"])
    assert json.loads(call.params["link_preview_options"]) == {"is_disabled": True}
    assert call.params["chat_id"] == str(chat.id)


async def test_long_replies_come_in_several_messages(server: BotApi, telegram: Telegram) -> None:
    _, address = _private(server)
    lines = tuple(Line(f"{number} <{'x' * 1000}>") for number in range(9))
    ref = await telegram.send(address, Reply(lines, BUTTONS))
    calls = server.accepted()
    assert "\n".join(server.texts()) == "\n".join(line.text for line in lines)
    assert ["reply_markup" in call.result for call in calls] == [False, False, True]
    assert ref == str(calls[-1].result["message_id"])


async def test_a_topic_is_kept_and_a_closed_one_falls_back(
    server: BotApi, telegram: Telegram
) -> None:
    forum = server.world.group("Forum", topics=True)
    topic = server.world.topic(forum)
    await telegram.send(Address("telegram", str(forum.id), str(topic)), HELLO)
    assert server.accepted()[-1].result["message_thread_id"] == topic
    await telegram.send(Address("telegram", str(forum.id), "999"), HELLO)
    assert "message_thread_id" not in server.accepted()[-1].result


async def test_a_message_is_edited_in_place(server: BotApi, telegram: Telegram) -> None:
    _, address = _private(server)
    ref = await telegram.send(address, Reply((Line("one"),), BUTTONS))
    assert await telegram.send(address, Reply((Line("two"),), edits=ref)) == ref
    edited = server.accepted("editMessageText")[-1].result
    assert edited["text"] == "two"
    assert "reply_markup" not in edited
    again = await telegram.send(address, Reply((Line("two"),), edits=ref))
    assert again == ref, "not modified is done"
    assert len(server.accepted("editMessageText")) == 1


@pytest.mark.parametrize("ref", ["999", "theirs"])
async def test_what_cannot_be_edited_is_sent(server: BotApi, telegram: Telegram, ref: str) -> None:
    chat, address = _private(server)
    theirs = server.world.say(chat, server.world.person("Anna"), "kh 4")
    edits = str(theirs["message_id"]) if ref == "theirs" else ref
    sent = await telegram.send(address, Reply((Line("two"),), edits=edits))
    assert sent == str(server.accepted()[-1].result["message_id"])
    assert server.texts() == ["two"]


async def test_pictures_and_documents(server: BotApi, telegram: Telegram, tmp_path: Path) -> None:
    _, address = _private(server)
    picture, table = tmp_path / "kh.png", tmp_path / "kh.csv"
    picture.write_bytes(b"png")
    table.write_bytes(b"a,b")
    await telegram.send(
        address, Reply((Line("a < b"),), BUTTONS, picture=str(picture), document=str(table))
    )
    photo, document = server.accepted("sendPhoto")[0], server.accepted("sendDocument")[0]
    assert photo.result["caption"] == "a < b"
    assert document.result["document"]["file_name"] == "kh.csv"
    assert document.result["reply_markup"]
    with pytest.raises(Refused):
        await telegram.send(address, Reply((), picture=str(tmp_path / "none.png")))


async def test_markup_that_is_refused_goes_out_plain(
    server: BotApi, telegram: Telegram, caplog: pytest.LogCaptureFixture
) -> None:
    _, address = _private(server)
    words = "Bad Request: can't parse entities: Unsupported start tag"
    server.faults.append(Fault("sendMessage", code=400, description=words))
    await telegram.send(address, HELLO)
    assert server.texts() == ["kh 4 < 6 & rising\nnet volume"]
    assert "markup was refused" in caplog.text


FAILURES: list[tuple[Fault, type[DeliveryError], str]] = [
    (Fault(code=403), ChatGone, "blocked"),
    (Fault(code=403, description="Forbidden: user is deactivated"), ChatGone, "deactivated"),
    (Fault(code=403, description="Forbidden: bot was kicked from the group chat"), ChatGone, "out"),
    (Fault(code=403, description="Forbidden: the group chat was deleted"), ChatGone, "deleted"),
    (
        Fault(code=403, description="Forbidden: bot can't initiate conversation with a user"),
        ChatGone,
        "never started",
    ),
    (Fault(code=400, description="Bad Request: chat not found"), ChatGone, "no such chat"),
    (Fault(code=400, description="Bad Request: PEER_ID_INVALID"), ChatGone, "no such peer"),
    (Fault(code=400, description="Bad Request: CHAT_WRITE_FORBIDDEN"), ChatGone, "muted"),
    (
        Fault(
            code=400,
            description="Bad Request: not enough rights to send text messages to the chat",
        ),
        ChatGone,
        "no rights",
    ),
    (Fault(code=400, description="Bad Request: message is too long"), Refused, "our own mistake"),
    (Fault(code=400, description="Bad Request: BUTTON_DATA_INVALID"), Refused, "our own mistake"),
    (Fault(code=413, description="Request Entity Too Large"), Refused, "too large a file"),
    (Fault(code=429, retry_after=7), Throttled, "asked to wait"),
    (Fault(code=500), Unreachable, "their trouble"),
    (Fault(code=502, body="<html>Bad Gateway</html>"), Unreachable, "a gateway's trouble"),
    (Fault(code=401), Unreachable, "the token is gone; the poller tells"),
    (Fault(drop="before"), MaybeSent, "nobody knows"),
    (Fault(drop="after"), MaybeSent, "nobody knows"),
    (Fault(code=200, body="no json"), MaybeSent, "accepted, and unreadable"),
]


@pytest.mark.parametrize(("fault", "kind", "why"), FAILURES)
async def test_failures_by_what_may_be_done(
    server: BotApi, telegram: Telegram, fault: Fault, kind: type[DeliveryError], why: str
) -> None:
    _, address = _private(server)
    server.faults.append(Fault(**{**_fields(fault), "method": "sendMessage", "times": 1}))
    with pytest.raises(DeliveryError) as caught:
        await telegram.send(address, HELLO)
    assert type(caught.value) is kind, why
    assert caught.value.__cause__ is None, "the library's words may hold the token"
    assert server.token not in str(caught.value)


def _fields(fault: Fault) -> dict[str, Any]:
    return {name: getattr(fault, name) for name in Fault.__dataclass_fields__}


async def test_a_moved_group_names_its_new_id(server: BotApi, telegram: Telegram) -> None:
    old, new = server.world.group("Old", kind="group"), server.world.group("New")
    old.moved_to = new.id
    with pytest.raises(ChatGone) as caught:
        await telegram.send(Address("telegram", str(old.id)), HELLO)
    assert caught.value.moved_to == str(new.id)


async def test_no_connection_is_certainly_not_sent() -> None:
    async with BotApi().running() as short_lived:
        _, address = _private(short_lived)
        gone = await connect(short_lived.token, short_lived.url)
    with pytest.raises(Unreachable):
        await Telegram(gone, Limiter()).send(address, HELLO)
    await gone.close()


async def test_a_429_halts_its_chat_and_no_other(server: BotApi, api: Api) -> None:
    telegram = Telegram(api, Limiter(Rates(patience=1.0)))
    (_, one), (_, two) = _private(server), _private(server)
    server.faults.append(Fault("sendMessage", code=429, retry_after=60))
    for _ in range(3):
        with pytest.raises(Throttled) as caught:
            await telegram.send(one, HELLO)
    assert caught.value.retry_after == pytest.approx(60, abs=2)
    assert await telegram.send(two, HELLO)
    assert len(server.calls) == 1 + 1 + 1, "who we are, the refused one, the other chat's"


async def test_many_at_once_under_the_servers_limits(server: BotApi, api: Api) -> None:
    server.limits.chat_per_second = 1
    server.limits.overall_per_second = 30
    telegram = Telegram(api, Limiter())
    addresses = [_private(server)[1] for _ in range(40)]
    await asyncio.gather(*(telegram.send(address, HELLO) for address in addresses))
    await telegram.send(addresses[0], HELLO)
    assert server.limits.refused == 0
    assert len(server.accepted()) == 41


async def test_a_press_is_acknowledged_and_too_late_is_no_error(
    server: BotApi, telegram: Telegram
) -> None:
    chat, address = _private(server)
    await telegram.send(address, Reply((Line("x"),), BUTTONS))
    query = server.world.press(server.accepted()[-1].result, server.world.people[chat.id], 0)
    raw = json.dumps({"callback_query": {"id": query}})
    await telegram.acknowledge(raw)
    await telegram.acknowledge(raw)
    assert len(server.accepted("answerCallbackQuery")) == 1
