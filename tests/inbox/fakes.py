"""A conversation and a messenger small enough to see through, for the inbox alone."""

from __future__ import annotations

import asyncio
import json
from collections.abc import Callable
from dataclasses import replace
from datetime import datetime
from typing import Any

from bot.chat.model import Address, Incoming, Line, Reply
from bot.inbox.model import Arrival, BeforeCommit, Departure, Unreadable
from bot.store.chats import NewChat
from bot.store.database import Database
from bot.store.log import Entry
from bot.store.offers import Offer

MESSENGER = "test"


def arrival(number: int, chat: str, text: str = "kh 4", **more: Any) -> Arrival:
    raw = json.dumps({"id": number, "chat": chat, "text": text, **more})
    return Arrival(str(number), chat, raw)


class Post:
    """A messenger: reads our own small JSON, and keeps what it was given to send.

    `trouble` holds errors to raise, one for each message sent, None for none; `lost` ones are
    raised after the message was accepted.
    """

    messenger = MESSENGER

    def __init__(self) -> None:
        self.sent: list[tuple[Address, Reply]] = []
        self.tried = 0
        self.trouble: list[Exception | None] = []
        self.lost: list[Exception | None] = []
        self.acknowledged: list[str] = []
        self.accepted = asyncio.Condition()

    def read(self, raw: str, received_at: datetime) -> Incoming | Departure | None:
        update = json.loads(raw)
        if "id" not in update:
            raise Unreadable("id is missing")
        address = Address(MESSENGER, update["chat"])
        if update["text"] == "left":
            return Departure(address)
        return Incoming(
            address,
            str(update["id"]),
            update.get("kind", "message"),
            received_at,
            text=update["text"],
            addressed=update.get("addressed", True),
        )

    def pages(self, reply: Reply) -> list[Reply]:
        return [replace(reply, lines=(line,)) for line in reply.lines]

    async def send(self, address: Address, reply: Reply) -> str | None:
        self.tried += 1
        if self.trouble and (error := self.trouble.pop(0)):
            raise error
        self.sent.append((address, reply))
        async with self.accepted:
            self.accepted.notify_all()
        if self.lost and (error := self.lost.pop(0)):
            raise error
        return str(len(self.sent))

    async def acknowledge(self, raw: str) -> None:
        self.acknowledged.append(str(json.loads(raw)["id"]))

    def texts(self, chat: str | None = None) -> list[str]:
        return [reply.text for address, reply in self.sent if chat in (None, address.chat)]

    async def until(self, condition: Callable[[], bool], timeout_s: float = 10) -> None:
        """Wait until the condition holds; it is looked at after each message sent."""
        async with asyncio.timeout(timeout_s), self.accepted:
            await self.accepted.wait_for(condition)


class Echo:
    """A conversation that stores each message as an entry and says it back."""

    def __init__(self, database: Database) -> None:
        self._database = database
        self.handled: list[str] = []
        self.gone: list[tuple[str, str | None]] = []
        self.spoken = "en"
        self.errors: dict[str, Exception] = {}
        self.gate: asyncio.Event | None = None
        self.entered = asyncio.Event()
        self.inside: set[str] = set()
        self.most_inside = 0

    async def handle(
        self, incoming: Incoming, *, before_commit: BeforeCommit | None = None
    ) -> list[Reply]:
        assert incoming.address.chat not in self.inside, "a chat overtook itself"
        self.inside.add(incoming.address.chat)
        self.entered.set()
        self.most_inside = max(self.most_inside, len(self.inside))
        try:
            if self.gate is not None:
                await self.gate.wait()
            return await self._answer(incoming, before_commit)
        finally:
            self.inside.discard(incoming.address.chat)

    async def _answer(self, incoming: Incoming, before_commit: BeforeCommit | None) -> list[Reply]:
        async with self._database.write() as uow:
            chat = await uow.chats.ensure(
                incoming.address, group=False, new=NewChat(), now=incoming.at
            )
            await uow.log.add(
                chat.id, Entry(incoming.update_id, "reading", incoming.text, incoming.at)
            )
            if incoming.text in self.errors:
                raise self.errors[incoming.text]
            token = await uow.offers.add(chat.id, Offer((), incoming.at))
            lines = tuple(Line(f"heard {part}") for part in incoming.text.split("|"))
            replies = [Reply(lines, token=token)] if incoming.text != "quiet" else []
            if before_commit is not None:
                await before_commit(uow, replies)
            await uow.commit()
        self.handled.append(incoming.update_id)
        return replies

    async def language(self, _address: Address) -> str:
        return self.spoken

    async def chat_gone(self, address: Address, moved_to: str | None = None) -> None:
        self.gone.append((address.chat, moved_to))
