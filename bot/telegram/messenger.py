"""Telegram as the inbox and the reminders see it: updates read, replies sent."""

from __future__ import annotations

import asyncio
import json
import logging
from datetime import datetime
from pathlib import Path
from typing import Any

from telegram.error import TelegramError

from bot.chat.model import Address, Incoming, Reply
from bot.delivery import Refused, Throttled
from bot.inbox.model import Departure
from bot.inbox.trouble import report
from bot.telegram import render
from bot.telegram.api import Api, upload
from bot.telegram.errors import delivery_error, says
from bot.telegram.limits import Limiter
from bot.telegram.read import MESSENGER, read_raw

log = logging.getLogger(__name__)

CANNOT_EDIT = (
    "message can't be edited",
    "message to edit not found",
    "message_id_invalid",
    "there is no text in the message to edit",
    "message identifier is not specified",
)
NO_PREVIEW = json.dumps({"is_disabled": True})


class Telegram:
    """Carries replies to Telegram and reads what came from it.

    Parameters
    ----------
    api : Api
        The Bot API.
    limiter : Limiter
        How fast messages may go.
    """

    messenger = MESSENGER

    def __init__(self, api: Api, limiter: Limiter) -> None:
        self._api = api
        self._limiter = limiter

    def read(self, raw: str, received_at: datetime) -> Incoming | Departure | None:
        """Read an update kept as JSON; see `bot.telegram.read`."""
        return read_raw(raw, self._api.me, received_at)

    def pages(self, reply: Reply) -> list[Reply]:
        """Split a reply into replies of one message each."""
        return render.pages(reply)

    async def send(self, address: Address, reply: Reply) -> str | None:
        """Send a reply, in as many messages as it takes; the id is that of the last one.

        Raises
        ------
        ChatGone, Throttled, Unreachable, MaybeSent, Refused
            As `bot.delivery` words them.
        """
        ref: str | None = None
        for page in render.pages(reply):
            ref = await self._send_page(address, page)
        return ref

    async def acknowledge(self, raw: str) -> None:
        """Let the pressed button stop spinning; too late is no harm, so nothing is raised."""
        query = json.loads(raw)["callback_query"]["id"]
        try:
            await self._api.call("answerCallbackQuery", callback_query_id=query)
        except TelegramError as error:
            log.debug("a press was not acknowledged: %s", type(delivery_error(error)).__name__)

    async def _send_page(self, address: Address, page: Reply) -> str | None:
        try:
            async with self._limiter.turn(address.chat, group=address.chat.startswith("-")):
                return await self._post(address, page)
        except TelegramError as error:
            known = delivery_error(error)
            if isinstance(known, Throttled):
                self._limiter.halt(address.chat, known.retry_after)
            raise known from None  # the library's own words may hold the token

    async def _post(self, address: Address, page: Reply) -> str | None:
        where = {"chat_id": address.chat, "message_thread_id": address.thread}
        try:
            if page.edits is not None and not (page.picture or page.document):
                return await self._edit(address, page)
            return await self._send_new(where, page)
        except TelegramError as error:
            if says(error, "message thread not found", "topic_deleted"):
                return await self._send_new({"chat_id": address.chat}, page)
            raise

    async def _edit(self, address: Address, page: Reply) -> str | None:
        where = {"chat_id": address.chat, "message_id": page.edits}
        try:
            await self._api.call("editMessageText", **where, **_text(page))
        except TelegramError as error:
            if says(error, "message is not modified"):
                return page.edits
            if says(error, *CANNOT_EDIT):
                thread = {"chat_id": address.chat, "message_thread_id": address.thread}
                return await self._send_new(thread, page)
            raise
        return page.edits

    async def _send_new(self, where: dict[str, Any], page: Reply) -> str | None:
        if page.picture or page.document:
            return _id(await self._send_file(where, page))
        try:
            return _id(await self._api.call("sendMessage", **where, **_text(page)))
        except TelegramError as error:
            if not says(error, "can't parse entities"):
                raise
            report(log, "our own markup was refused; the message goes out plain")
        return _id(await self._api.call("sendMessage", **where, **_text(page, plain=True)))

    async def _send_file(self, where: dict[str, Any], page: Reply) -> Any:
        kind = "photo" if page.picture else "document"
        path = Path(page.picture or page.document or "")
        try:
            content = await asyncio.to_thread(path.read_bytes)
        except OSError as error:
            raise Refused(f"{kind} cannot be read: {type(error).__name__}") from error
        caption = render.to_html(page.lines)
        return await self._api.call(
            "sendPhoto" if page.picture else "sendDocument",
            **where,
            **{kind: upload(content, path.name)},
            caption=caption or None,
            parse_mode="HTML" if caption else None,
            reply_markup=render.keyboard(page.buttons),
        )


def _text(page: Reply, *, plain: bool = False) -> dict[str, Any]:
    return {
        "text": render.to_plain(page.lines) if plain else render.to_html(page.lines),
        "parse_mode": None if plain else "HTML",
        "reply_markup": render.keyboard(page.buttons),
        "link_preview_options": NO_PREVIEW,
    }


def _id(result: Any) -> str | None:
    """Find the message's id in an answer; an accepted message without one is sent all the same."""
    number = result.get("message_id") if isinstance(result, dict) else None
    return None if number is None else str(number)
