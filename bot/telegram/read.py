"""A raw update of the Bot API, read into what the conversation understands.

Each update is read alone and from plain JSON, so that one that cannot be read stops no other.
"""

from __future__ import annotations

import json
import re
from datetime import UTC, datetime
from typing import Any

from bot.chat.model import Address, Incoming
from bot.inbox.model import Departure, Unreadable
from bot.telegram.api import Me

MESSENGER = "telegram"
ALLOWED = ["message", "edited_message", "callback_query", "my_chat_member"]
"""The kinds of update that we ask for; others that come all the same are not for us."""

ATTACHMENTS = (
    "photo", "sticker", "voice", "video", "video_note", "animation", "audio", "document",
    "location", "venue", "contact", "poll", "dice", "story", "game", "paid_media", "checklist",
)  # fmt: skip
GROUPS = ("group", "supergroup")
_COMMAND = re.compile(r"/(\w+)(?:@(\w+))?")

Json = dict[str, Any]


def update_number(update: Any) -> int | None:
    """Give the `update_id` of an update, None where it has none that is a number."""
    number = update.get("update_id") if isinstance(update, dict) else None
    return number if isinstance(number, int) and not isinstance(number, bool) else None


def read_raw(raw: str, me: Me, received_at: datetime) -> Incoming | Departure | None:
    """Read an update kept as JSON text; see `read_update`."""
    try:
        return read_update(json.loads(raw), me, received_at)
    except ValueError as error:
        raise Unreadable("no JSON") from error


def read_update(update: Any, me: Me, received_at: datetime) -> Incoming | Departure | None:
    """Read one update.

    Parameters
    ----------
    update : Any
        What the server sent, which may be anything.
    me : Me
        The bot, to know in a group what is said to it.
    received_at : datetime
        When it came; a press has no time of its own.

    Returns
    -------
    Incoming or Departure or None
        None for what is not meant for us: service messages, other bots and commands to them,
        channels, pictures in a group that were not sent to us.

    Raises
    ------
    Unreadable
        Where it lacks what the Bot API promises.
    """
    number = update_number(update)
    if number is None:
        raise Unreadable("update_id is no number")
    for name, edited in (("message", False), ("edited_message", True)):
        if name in update:
            return _message(str(number), _part(update, name), me, edited=edited)
    if "callback_query" in update:
        return _press(str(number), _part(update, "callback_query"), received_at)
    if "my_chat_member" in update:
        return _membership(_part(update, "my_chat_member"))
    return None


def _message(number: str, message: Json, me: Me, *, edited: bool) -> Incoming | Departure | None:
    chat = _part(message, "chat")
    kind = _text(chat, "type")
    author = message.get("from")
    if kind == "channel" or author is None:
        return None
    address = _address(message, chat)
    if "migrate_to_chat_id" in message:
        return Departure(address, str(_number(message, "migrate_to_chat_id")))
    author_id, author_name = _author(message)
    if author_id is None:
        return None
    group = kind in GROUPS
    text = _clean(_text(message, "text", _text(message, "caption", "")))
    attachment = next((name for name in ATTACHMENTS if name in message), None)
    to_us, text = _spoken_to(text, message, me)
    if to_us is None or not (text or attachment or "text" in message):
        return None
    if group and not text and not to_us:
        return None
    return Incoming(
        address=address,
        update_id=number,
        kind="edit" if edited else "message" if text or not attachment else "other",
        at=_moment(message, "date"),
        text=text,
        author_id=author_id,
        author_name=author_name,
        message_ref=str(_number(message, "message_id")),
        reply_to=_answered(message),
        attachment=attachment,
        group=group,
        addressed=to_us or not group,
        language=_language(author),
    )


def _press(number: str, query: Json, received_at: datetime) -> Incoming | None:
    _text(query, "id")
    author = _part(query, "from")
    action = _text(query, "data", "")
    if not action or "message" not in query:
        return None  # a game, or a button of a message that was sent through another chat
    message = _part(query, "message")
    chat = _part(message, "chat")
    return Incoming(
        address=_address(message, chat),
        update_id=number,
        kind="press",
        at=received_at,
        author_id=str(_number(author, "id")),
        author_name=_name(author),
        message_ref=str(_number(message, "message_id")),
        action=_clean(action),
        group=_text(chat, "type") in GROUPS,
        language=_language(author),
    )


def _membership(change: Json) -> Departure | None:
    chat = _part(change, "chat")
    status = _text(_part(change, "new_chat_member"), "status")
    if status in ("kicked", "left") and _text(chat, "type") != "channel":
        return Departure(Address(MESSENGER, str(_number(chat, "id"))))
    return None


def _spoken_to(text: str, message: Json, me: Me) -> tuple[bool | None, str]:
    """Whether a line is said to us (None: to another bot), and the line without our name."""
    command = _COMMAND.match(text)
    if command:
        to = command[2]
        if to is not None and to.lower() != me.username.lower():
            return None, text
        return True, f"/{command[1]}{text[command.end() :]}"
    name = re.compile(rf"\s*@{re.escape(me.username)}\b[,:]?\s*", re.IGNORECASE)
    bare, mentions = name.subn(" ", text)
    if me.username and mentions:
        return True, bare.strip()
    answered = message.get("reply_to_message")
    sender = answered.get("from") if isinstance(answered, dict) else None
    return isinstance(sender, dict) and sender.get("id") == me.id, text


def _address(message: Json, chat: Json) -> Address:
    """Where to answer: the topic only where it is one, since replies have threads as well."""
    thread = None
    if message.get("is_topic_message") is True:
        thread = str(_number(message, "message_thread_id"))
    return Address(MESSENGER, str(_number(chat, "id")), thread)


def _author(message: Json) -> tuple[str | None, str]:
    """Id and name of who speaks; no id for a bot and for a post that a channel passed on.

    An administrator who stays anonymous, or a person who speaks as a channel, comes under a
    bot's account with the real speaker in `sender_chat`.
    """
    author = _part(message, "from")
    if "sender_chat" in message:
        sender = _part(message, "sender_chat")
        if message.get("is_automatic_forward") is True:
            return None, ""
        return str(_number(sender, "id")), _clean(_text(sender, "title", ""))
    number = str(_number(author, "id"))
    return (None if author.get("is_bot") is True else number), _name(author)


def _answered(message: Json) -> str | None:
    answered = message.get("reply_to_message")
    if not isinstance(answered, dict) or "forum_topic_created" in answered:
        return None  # in a topic every message hangs below the one that opened it
    return str(_number(answered, "message_id"))


def _name(person: Json) -> str:
    names = (_text(person, "first_name", ""), _text(person, "last_name", ""))
    return _clean(" ".join(name for name in names if name))


def _language(person: Any) -> str | None:
    code = _text(person, "language_code", "") if isinstance(person, dict) else ""
    return code.partition("-")[0].lower() or None


def _moment(part: Json, key: str) -> datetime:
    seconds = _number(part, key)
    try:
        return datetime.fromtimestamp(seconds, UTC)
    except (OverflowError, ValueError, OSError) as error:
        raise Unreadable(f"{key} is no time") from error


def _part(whole: Json, key: str) -> Json:
    part = whole.get(key)
    if not isinstance(part, dict):
        raise Unreadable(f"{key} is no object")
    return part


def _text(part: Json, key: str, default: str | None = None) -> str:
    text = part.get(key, default)
    if not isinstance(text, str):
        raise Unreadable(f"{key} is no text")
    return text


def _number(part: Json, key: str) -> int:
    number = part.get(key)
    if not isinstance(number, int) or isinstance(number, bool):
        raise Unreadable(f"{key} is no number")
    return number


def _clean(text: str) -> str:
    """Text that every database takes: no NUL, no half of a surrogate pair."""
    whole = text.encode("utf-16-le", "surrogatepass").decode("utf-16-le", "replace")
    return whole.replace("\x00", "")
