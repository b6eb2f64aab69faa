"""The Bot API methods, each checked as the real server checks it."""

from __future__ import annotations

import json
from collections.abc import Awaitable, Callable
from typing import TYPE_CHECKING, Any

from tests.botapi.markup import MarkupError, parse_html, utf16_length
from tests.botapi.model import Chat, Refusal

if TYPE_CHECKING:
    from tests.botapi.server import BotApi

Params = dict[str, Any]
LONGEST = {"text": 4096, "caption": 1024}
PRESS_EXPIRED = "Bad Request: query is too old and response timeout expired or query ID is invalid"
NOT_MODIFIED = (
    "Bad Request: message is not modified: specified new message content and reply markup are "
    "exactly the same as a current content and reply markup of the message"
)
WEBHOOK_ACTIVE = (
    "Conflict: can't use getUpdates method while webhook is active; "
    "use deleteWebhook to delete the webhook first"
)


def _bad(description: str) -> Refusal:
    return Refusal(400, f"Bad Request: {description}")


def _integer(params: Params, name: str, default: int, low: int, high: int) -> int:
    value = params.get(name, default)
    try:
        return max(low, min(high, int(value)))
    except (TypeError, ValueError):
        raise _bad(f"{name} must be an integer") from None


def _chat(api: BotApi, params: Params) -> Chat:
    given = str(params.get("chat_id", ""))
    if not given:
        raise _bad("chat_id is empty")
    chat = api.world.chats.get(int(given)) if given.lstrip("-").isdigit() else None
    if chat is None:
        raise _bad("chat not found")
    chat.check_reachable()
    return chat


def _formatted(params: Params, name: str) -> tuple[str, list[dict[str, Any]]]:
    source = str(params.get(name, ""))
    mode = str(params.get("parse_mode", ""))
    if mode.lower() not in ("", "html"):
        raise _bad("unsupported parse_mode")  # this server knows HTML alone
    try:
        text, entities = parse_html(source) if mode else (source, [])
    except MarkupError as error:
        raise _bad(f"can't parse entities: {error}") from None
    if utf16_length(text) > LONGEST[name]:
        raise _bad("message is too long" if name == "text" else "message caption is too long")
    if "\x00" in text:
        raise _bad("text must be encoded in UTF-8")
    return text, entities


def _text(params: Params) -> tuple[str, list[dict[str, Any]]]:
    text, entities = _formatted(params, "text")
    if not text.strip():
        raise _bad("message text is empty")
    return text, entities


def _keyboard(params: Params) -> dict[str, Any] | None:
    given = params.get("reply_markup")
    if given in (None, ""):
        return None
    try:
        markup = json.loads(given) if isinstance(given, str) else given
    except ValueError:
        raise _bad("can't parse reply keyboard markup JSON object") from None
    if not isinstance(markup, dict):
        raise _bad("object expected as reply markup")
    if "inline_keyboard" in markup:
        _check_inline(markup["inline_keyboard"])
        return markup if any(markup["inline_keyboard"]) else None
    return None  # force_reply, remove_keyboard: not shown with the message


def _check_inline(rows: Any) -> None:
    if not isinstance(rows, list) or not all(isinstance(row, list) for row in rows):
        raise _bad("inline keyboard must be an array of arrays")
    if sum(len(row) for row in rows) > 100 or any(len(row) > 8 for row in rows):
        raise _bad("REPLY_MARKUP_TOO_LONG")
    for button in (button for row in rows for button in row):
        if not str(button.get("text", "")).strip():
            raise _bad("inline keyboard button text is empty")
        if "callback_data" not in button:
            if "url" not in button:
                raise _bad("text buttons are unallowed in the inline keyboard")
            continue
        if not 1 <= len(button["callback_data"].encode()) <= 64:
            raise _bad("BUTTON_DATA_INVALID")


def _thread(chat: Chat, params: Params) -> int | None:
    if params.get("message_thread_id") in (None, ""):
        return None
    thread = _integer(params, "message_thread_id", 0, 0, 2**31)
    if thread not in chat.topics:
        raise _bad("message thread not found")
    return thread


def _reply_to(api: BotApi, chat: Chat, params: Params) -> int | None:
    given = params.get("reply_parameters")
    wanted = json.loads(given) if isinstance(given, str) else given or {}
    number = wanted.get("message_id", params.get("reply_to_message_id"))
    if number is None:
        return None
    if (chat.id, int(number)) not in api.world.messages:
        if wanted.get("allow_sending_without_reply"):
            return None
        raise _bad("message to be replied not found")
    return int(number)


def _post(api: BotApi, params: Params, content: dict[str, Any]) -> dict[str, Any]:
    chat = _chat(api, params)
    thread, reply_to = _thread(chat, params), _reply_to(api, chat, params)
    if keyboard := _keyboard(params):
        content["reply_markup"] = keyboard
    api.limits.check(chat, api.world.clock())
    return api.world.message(chat, api.world.bot, thread=thread, reply_to=reply_to, **content)


async def get_me(api: BotApi, _params: Params) -> Any:
    """The bot itself."""
    return {
        **api.world.bot.as_json(),
        "can_join_groups": True,
        "can_read_all_group_messages": not api.world.privacy,
        "supports_inline_queries": False,
    }


async def get_updates(api: BotApi, params: Params) -> Any:
    """Updates from `offset` on; see Updates.get."""
    if api.webhook.get("url"):
        raise Refusal(409, WEBHOOK_ACTIVE)
    offset = _integer(params, "offset", 0, -(2**31), 2**31)
    limit = _integer(params, "limit", 100, 1, 100)
    timeout = _integer(params, "timeout", 0, 0, 50)
    return await api.updates.get(offset, limit, timeout)


async def send_message(api: BotApi, params: Params) -> Any:
    """Post a text."""
    text, entities = _text(params)
    return _post(api, params, {"text": text, **({"entities": entities} if entities else {})})


def _sender(kind: str) -> Callable[[BotApi, Params], Awaitable[Any]]:
    async def send(api: BotApi, params: Params) -> Any:
        caption, entities = _formatted(params, "caption")
        upload = params.get(kind)
        if not upload:
            raise _bad(f"there is no {kind} in the request")
        size = upload["size"] if isinstance(upload, dict) else None
        if size == 0:
            raise _bad("file must be non-empty")
        described = {"file_id": f"sent-{kind}", "file_unique_id": f"u-{kind}", "file_size": size}
        if kind == "photo":
            content: dict[str, Any] = {kind: [{**described, "width": 90, "height": 60}]}
        else:
            name = upload["name"] if isinstance(upload, dict) else None
            content = {kind: {**described, "file_name": name}}
        if caption:
            content["caption"] = caption
        if entities:
            content["caption_entities"] = entities
        return _post(api, params, content)

    return send


def _own_message(api: BotApi, params: Params) -> dict[str, Any]:
    chat = _chat(api, params)
    number = _integer(params, "message_id", 0, 0, 2**31)
    message = api.world.messages.get((chat.id, number))
    if message is None:
        raise _bad("message to edit not found")
    if message.get("from", {}).get("id") != api.world.bot.id:
        raise _bad("message can't be edited")
    return message


def _change(api: BotApi, message: dict[str, Any], new: dict[str, Any]) -> dict[str, Any]:
    watched = ("text", "entities", "reply_markup")
    if all(message.get(key) == new.get(key) for key in watched):
        raise Refusal(400, NOT_MODIFIED)
    chat = api.world.chats[message["chat"]["id"]]
    api.limits.check(chat, api.world.clock())
    changed = {key: value for key, value in new.items() if value is not None}
    changed["edit_date"] = int(api.world.clock())
    api.world.messages[chat.id, message["message_id"]] = changed
    return changed


async def edit_message_text(api: BotApi, params: Params) -> Any:
    """Replace the text and the buttons of one of the bot's messages."""
    text, entities = _text(params)
    message = _own_message(api, params)
    if "text" not in message:
        raise _bad("there is no text in the message to edit")
    new = {**message, "text": text, "entities": entities or None}
    return _change(api, message, {**new, "reply_markup": _keyboard(params)})


async def edit_message_reply_markup(api: BotApi, params: Params) -> Any:
    """Replace the buttons of one of the bot's messages."""
    message = _own_message(api, params)
    return _change(api, message, {**message, "reply_markup": _keyboard(params)})


async def answer_callback_query(api: BotApi, params: Params) -> Any:
    """Stop the spinner on a pressed button."""
    query = str(params.get("callback_query_id", ""))
    pressed = api.world.presses.pop(query, None)
    expired = api.press_expiry is not None and pressed is not None
    if pressed is None or (expired and api.world.clock() - pressed > api.press_expiry):
        raise Refusal(400, PRESS_EXPIRED)
    if len(str(params.get("text", ""))) > 200:
        raise _bad("MESSAGE_TOO_LONG")
    return True


async def set_my_commands(api: BotApi, params: Params) -> Any:
    """The menu of commands."""
    given = params.get("commands", "[]")
    commands = json.loads(given) if isinstance(given, str) else given
    for command in commands:
        name, description = command["command"], command["description"]
        if not (1 <= len(name) <= 32 and name.replace("_", "a").isalnum() and name.islower()):
            raise _bad("BOT_COMMAND_INVALID")
        if not 1 <= len(description) <= 256:
            raise _bad("BOT_COMMAND_DESCRIPTION_INVALID")
    if len(commands) > 100:
        raise _bad("BOT_COMMANDS_TOO_MUCH")
    api.commands = commands
    return True


async def set_webhook(api: BotApi, params: Params) -> Any:
    """Note a webhook's address, which forbids polling; nothing is posted to it by this server."""
    if str(params.get("drop_pending_updates", "")).lower() == "true":
        api.updates.drop_all()
    api.webhook = {key: params[key] for key in ("url", "secret_token") if params.get(key)}
    return True


async def delete_webhook(api: BotApi, params: Params) -> Any:
    """Back to getUpdates."""
    return await set_webhook(api, {**params, "url": ""})


async def get_webhook_info(api: BotApi, _params: Params) -> Any:
    """Where updates are posted and how many wait."""
    return {
        "url": api.webhook.get("url", ""),
        "has_custom_certificate": False,
        "pending_update_count": api.updates.pending,
    }


METHODS: dict[str, Callable[[BotApi, Params], Awaitable[Any]]] = {
    "getMe": get_me,
    "getUpdates": get_updates,
    "sendMessage": send_message,
    "sendPhoto": _sender("photo"),
    "sendDocument": _sender("document"),
    "editMessageText": edit_message_text,
    "editMessageReplyMarkup": edit_message_reply_markup,
    "answerCallbackQuery": answer_callback_query,
    "setMyCommands": set_my_commands,
    "setWebhook": set_webhook,
    "deleteWebhook": delete_webhook,
    "getWebhookInfo": get_webhook_info,
}
BY_LOWER = {name.lower(): name for name in METHODS}
