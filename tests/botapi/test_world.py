"""What reaches the bot: privacy mode, topics, replies, attachments, membership."""

from __future__ import annotations

from typing import Any

from tests.botapi import BotApi
from tests.botapi.client import Caller


async def _latest(call: Caller) -> list[dict[str, Any]]:
    result: list[dict[str, Any]] = (await call("getUpdates", timeout=0))["result"]
    return result


async def test_privacy_mode_hides_plain_lines_of_a_group(api: BotApi, call: Caller) -> None:
    anna, group = api.world.person("Anna"), api.world.group("Reading room")
    answered = (await call("sendMessage", chat_id=group.id, text="hello"))["result"]
    api.world.say(group, anna, "kh 4")
    api.world.say(group, anna, "@meniscus_test_bot kh 4")
    api.world.say(group, anna, "/w kh 4")
    api.world.say(group, anna, "kh 5", reply_to=answered["message_id"])
    texts = [update["message"]["text"] for update in await _latest(call)]
    assert texts == ["/w kh 4", "kh 5"]


async def test_without_privacy_mode_all_lines_arrive(call: Caller, api: BotApi) -> None:
    api.world.privacy = False
    anna, group = api.world.person("Anna"), api.world.group("Reading room")
    other = api.world.person("Other", is_bot=True)
    api.world.say(group, anna, "kh 4")
    api.world.say(group, other, "I am a bot")
    api.world.say(group, anna, "\N{FISH} @meniscus_test_bot kh 4")
    updates = await _latest(call)
    assert len(updates) == 2
    mention = {"type": "mention", "offset": 3, "length": 18}
    assert updates[1]["message"]["entities"] == [mention]


async def test_topics_and_threads_of_replies(api: BotApi, call: Caller) -> None:
    api.world.privacy = False
    anna, forum = api.world.person("Anna"), api.world.group("Forum", topics=True)
    topic = api.world.topic(forum)
    api.world.say(forum, anna, "kh 4", thread=topic)
    plain = api.world.group("Plain")
    first = api.world.say(plain, anna, "one")
    api.world.say(plain, anna, "two", reply_to=first["message_id"])
    in_topic, _, reply = (update["message"] for update in await _latest(call))
    assert in_topic["is_topic_message"] is True
    assert reply["message_thread_id"] == first["message_id"]
    assert "is_topic_message" not in reply
    answer = await call("sendMessage", chat_id=forum.id, message_thread_id=topic, text="x")
    assert answer["result"]["message_thread_id"] == topic


async def test_other_things_people_send(api: BotApi, call: Caller) -> None:
    anna = api.world.person("Anna")
    chat = api.world.private(anna)
    api.world.attach(chat, anna, "photo", caption="kh 4")
    api.world.attach(chat, anna, "sticker")
    api.world.forward(chat, anna, text="kh 9")
    said = api.world.say(chat, anna, "kh 4")
    api.world.edit(said, "kh 5")
    api.world.membership(chat, anna, "member", "kicked")
    photo, sticker, forwarded, message, edited, member = await _latest(call)
    assert photo["message"]["caption"] == "kh 4"
    assert sticker["message"]["sticker"]["emoji"]
    assert forwarded["message"]["forward_origin"]["type"] == "hidden_user"
    assert edited["edited_message"]["message_id"] == message["message"]["message_id"]
    assert edited["edited_message"]["text"] == "kh 5"
    assert member["my_chat_member"]["new_chat_member"]["status"] == "kicked"


async def test_the_control_path_does_the_same(call: Caller) -> None:
    said = await call.control("say", person="Anna", text="kh 4")
    chat = said["chat"]["id"]
    await call.control("edit", chat=chat, message=said["message_id"], text="kh 5")
    await call.control("attach", person="Anna", what="voice")
    await call.control("forward", person="Anna", text="kh 6")
    group = await call.control("group", title="Forum", topics=2)
    assert len(group["topics"]) == 2
    await call.control("update", update={"message": "broken"})
    assert len(await _latest(call)) == 5
    await call.control("fault", method="sendMessage", code=500)
    assert (await call("sendMessage", chat_id=chat, text="x"))["error_code"] == 500
    keyboard = {"inline_keyboard": [[{"text": "a", "callback_data": "b"}]]}
    sent = await call("sendMessage", chat_id=chat, text="x", reply_markup=keyboard)
    message = sent["result"]["message_id"]
    assert await call.control("press", person="Anna", chat=chat, message=message, button=0)
    log = await call.control("calls", method="sendMessage", accepted=True)
    assert [entry["params"]["text"] for entry in log] == ["x"]
    await call.control("standing", chat=chat, standing="blocked")
    assert (await call("sendMessage", chat_id=chat, text="x"))["error_code"] == 403
    assert (await call.control("state"))["pending"] == 6
    assert "error" in await call.control("press", chat=chat)
    assert "error" in await call.control("nothing")
