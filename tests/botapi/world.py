"""The people and chats around the bot, and what happens in them."""

from __future__ import annotations

import itertools
import time
from collections.abc import Callable
from typing import Any

from tests.botapi.model import Chat, Person
from tests.botapi.updates import Updates

ATTACHMENTS: dict[str, Any] = {
    "photo": [
        {"file_id": "p1", "file_unique_id": "u1", "width": 90, "height": 60, "file_size": 1253}
    ],
    "sticker": {
        "file_id": "s1",
        "file_unique_id": "us1",
        "type": "regular",
        "width": 512,
        "height": 512,
        "is_animated": False,
        "is_video": False,
        "emoji": "\N{TROPICAL FISH}",
    },
    "voice": {"file_id": "v1", "file_unique_id": "uv1", "duration": 3, "mime_type": "audio/ogg"},
    "video": {
        "file_id": "f1",
        "file_unique_id": "uf1",
        "width": 640,
        "height": 360,
        "duration": 5,
    },
    "document": {"file_id": "d1", "file_unique_id": "ud1", "file_name": "log.csv"},
    "location": {"latitude": 38.7, "longitude": -9.1},
    "contact": {"phone_number": "+000000", "first_name": "Somebody"},
    "poll": {
        "id": "9",
        "question": "?",
        "options": [],
        "total_voter_count": 0,
        "is_closed": False,
        "is_anonymous": True,
        "type": "regular",
        "allows_multiple_answers": False,
    },
}


class World:
    """Chats, people and messages; what people do becomes updates for the bot.

    Parameters
    ----------
    bot : Person
        The bot itself.
    updates : Updates
        Where its updates queue.
    clock : callable
        Seconds since the epoch; messages are dated by it.
    privacy : bool
        Telegram's privacy mode: in groups only commands, replies to the bot and service
        messages reach it.
    """

    def __init__(
        self,
        bot: Person,
        updates: Updates,
        clock: Callable[[], float] = time.time,
        *,
        privacy: bool = True,
    ) -> None:
        self.bot = bot
        self.updates = updates
        self.clock = clock
        self.privacy = privacy
        self.chats: dict[int, Chat] = {}
        self.people: dict[int, Person] = {}
        self.messages: dict[tuple[int, int], dict[str, Any]] = {}
        self.presses: dict[str, float] = {}
        self._numbers = itertools.count(1)

    # -- who and where ---------------------------------------------------------------------

    def person(self, name: str, *, is_bot: bool = False, language: str | None = "en") -> Person:
        """A new person (or another bot)."""
        number = 100_000 + next(self._numbers)
        username = f"{name.lower()}{number}" + ("_bot" if is_bot else "")
        self.people[number] = Person(number, name, username, language, is_bot)
        return self.people[number]

    def private(self, person: Person) -> Chat:
        """The private chat with a person; the same one each time."""
        if person.id not in self.chats:
            self.chats[person.id] = Chat(person.id, "private", first_name=person.first_name)
        return self.chats[person.id]

    def group(self, title: str, *, kind: Any = "supergroup", topics: bool = False) -> Chat:
        """A new group, supergroup or channel; `topics` makes it a forum."""
        number = -1_000_000_000_000 - next(self._numbers)
        self.chats[number] = Chat(number, kind, title=title, is_forum=topics)
        return self.chats[number]

    def topic(self, chat: Chat) -> int:
        """A new topic of a forum: its message_thread_id."""
        thread = self._next_message_id(chat)
        chat.topics.add(thread)
        return thread

    # -- what people do --------------------------------------------------------------------

    def say(
        self,
        chat: Chat,
        person: Person,
        text: str,
        *,
        reply_to: int | None = None,
        thread: int | None = None,
        **more: Any,
    ) -> dict[str, Any]:
        """A text message; returned as Telegram shows it, also when privacy mode hides it."""
        entities = self._entities(text)
        message = self.message(chat, person, reply_to=reply_to, thread=thread, text=text, **more)
        if entities:
            message["entities"] = entities
        self._deliver("message", chat, message)
        return message

    def attach(
        self, chat: Chat, person: Person, what: str, *, caption: str | None = None, **more: Any
    ) -> dict[str, Any]:
        """A photo, sticker, voice note and so on; ATTACHMENTS names them."""
        content = {what: ATTACHMENTS[what], **more}
        if caption is not None:
            content["caption"] = caption
        message = self.message(chat, person, **content)
        self._deliver("message", chat, message)
        return message

    def forward(self, chat: Chat, person: Person, **content: Any) -> dict[str, Any]:
        """A message forwarded from somebody whose account stays hidden."""
        origin = {
            "type": "hidden_user",
            "date": int(self.clock()) - 86_400,
            "sender_user_name": "Somebody",
        }
        message = self.message(chat, person, forward_origin=origin, **content)
        self._deliver("message", chat, message)
        return message

    def edit(self, message: dict[str, Any], text: str) -> dict[str, Any]:
        """Its author changes a text message."""
        edited = {**message, "text": text, "edit_date": int(self.clock())}
        edited.pop("entities", None)
        if entities := self._entities(text):
            edited["entities"] = entities
        chat = self.chats[message["chat"]["id"]]
        self.messages[chat.id, message["message_id"]] = edited
        self._deliver("edited_message", chat, edited)
        return edited

    def press(self, message: dict[str, Any], person: Person, data: str | int) -> str:
        """Press a button: its data, or its number from 0. Returns the query's id."""
        if isinstance(data, int):
            rows = message["reply_markup"]["inline_keyboard"]
            data = [button for row in rows for button in row][data]["callback_data"]
        query = str(4_000_000 + next(self._numbers))
        self.presses[query] = self.clock()
        shown = self.messages.get((message["chat"]["id"], message["message_id"]), message)
        self.updates.put(
            {
                "callback_query": {
                    "id": query,
                    "from": person.as_json(),
                    "message": shown,
                    "chat_instance": "1",
                    "data": data,
                }
            }
        )
        return query

    def service(self, chat: Chat, person: Person, **content: Any) -> dict[str, Any]:
        """A service message: new_chat_members, pinned_message and so on."""
        message = self.message(chat, person, **content)
        self.updates.put({"message": message})
        return message

    def membership(self, chat: Chat, person: Person, old: str, new: str) -> None:
        """The bot's own standing in a chat changes, as `my_chat_member` tells it."""
        bot = self.bot.as_json()
        self.updates.put(
            {
                "my_chat_member": {
                    "chat": chat.as_json(),
                    "from": person.as_json(),
                    "date": int(self.clock()),
                    "old_chat_member": {"user": bot, "status": old, "until_date": 0},
                    "new_chat_member": {"user": bot, "status": new, "until_date": 0},
                }
            }
        )

    # -- messages --------------------------------------------------------------------------

    def message(
        self,
        chat: Chat,
        person: Person | None,
        *,
        reply_to: int | None = None,
        thread: int | None = None,
        **content: Any,
    ) -> dict[str, Any]:
        """Put a message into a chat without telling the bot."""
        message: dict[str, Any] = {
            "message_id": self._next_message_id(chat),
            "date": int(self.clock()),
            "chat": chat.as_json(),
        }
        if person is not None:
            message["from"] = person.as_json()
        if thread is not None:
            message["message_thread_id"] = thread
            message["is_topic_message"] = True
        if reply_to is not None:
            answered = dict(self.messages[chat.id, reply_to])
            answered.pop("reply_to_message", None)
            message["reply_to_message"] = answered
            if chat.type == "supergroup" and thread is None:
                message["message_thread_id"] = reply_to  # a thread of replies is no topic
        message.update(content)
        self.messages[chat.id, message["message_id"]] = message
        return message

    def _next_message_id(self, chat: Chat) -> int:
        chat.last_message_id += 1
        return chat.last_message_id

    def _entities(self, text: str) -> list[dict[str, Any]]:
        entities: list[dict[str, Any]] = []
        if text.startswith("/") and len(text) > 1 and text[1].isalpha():
            command = text.split()[0]
            entities.append({"type": "bot_command", "offset": 0, "length": len(command)})
        mention = f"@{self.bot.username}"
        at = text.find(mention)
        if at == 0 or (at > 0 and text[at - 1].isspace()):
            offset = len(text[:at].encode("utf-16-le")) // 2
            entities.append({"type": "mention", "offset": offset, "length": len(mention)})
        return entities

    def _deliver(self, kind: str, chat: Chat, message: dict[str, Any]) -> None:
        if self.hidden(chat, message):
            return
        key = {"message": "channel_post", "edited_message": "edited_channel_post"}
        self.updates.put({key[kind] if chat.type == "channel" else kind: message})

    def hidden(self, chat: Chat, message: dict[str, Any]) -> bool:
        """Whether privacy mode (or being another bot's message) keeps it from the bot."""
        if chat.is_group and message.get("from", {}).get("is_bot"):
            return True
        if not (self.privacy and chat.is_group):
            return False
        if str(message.get("text", "")).startswith("/"):
            return False
        answered = message.get("reply_to_message", {}).get("from", {})
        return bool(answered.get("id") != self.bot.id)
