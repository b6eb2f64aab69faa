"""The house put together: what came in goes to the conversation, what is due goes out."""

from __future__ import annotations

import asyncio
from collections.abc import AsyncIterator, Awaitable, Callable
from contextlib import asynccontextmanager
from dataclasses import replace
from datetime import datetime

from sqlalchemy.engine import URL

from bot.chat.conversation import answer
from bot.chat.model import Address, Incoming, Reply
from bot.chat.turn import Turn
from bot.chat.words.text import speaking, spoken
from bot.clock import Clock, SystemClock
from bot.defaults import Defaults
from bot.reminders import planning
from bot.reminders.courier import Courier
from bot.reminders.delivery import Delivery
from bot.store.chats import NewChat
from bot.store.database import Database
from bot.store.migrate import bring_up_to_date
from bot.store.uow import UnitOfWork

BeforeCommit = Callable[[UnitOfWork, list[Reply]], Awaitable[None]]


class App:
    """One running house on one database.

    Parameters
    ----------
    database : Database
        Brought up to date.
    clock : Clock
        The time that keepers live by; simulated in tests and demonstrations.
    defaults : Defaults
        What new chats start with.
    """

    def __init__(self, database: Database, clock: Clock, defaults: Defaults) -> None:
        self.database = database
        self.clock = clock
        self.changed = asyncio.Event()
        """Set when a message changed reminders: what is due next may be another."""
        self.new_chat = NewChat(
            zone=defaults.timezone or "UTC",
            zone_known=defaults.timezone is not None,
            fahrenheit=defaults.units == "us",
            us_gallons=defaults.units != "imperial",
            language=defaults.language,
        )
        """What a chat starts with before anybody sets anything."""
        self._delivery = Delivery(database, clock, SystemClock())

    @classmethod
    @asynccontextmanager
    async def open(
        cls, url: str | URL, clock: Clock, defaults: Defaults | None = None
    ) -> AsyncIterator[App]:
        """Open the database at an async SQLAlchemy URL, upgrade it, and close it at the end."""
        database = Database(url)
        try:
            await bring_up_to_date(database)
            yield cls(database, clock, defaults or Defaults())
        finally:
            await database.close()

    def add_courier(self, courier: Courier) -> None:
        """Let a messenger carry what is due to its chats."""
        self._delivery.add(courier)

    async def handle(
        self, incoming: Incoming, *, before_commit: BeforeCommit | None = None
    ) -> list[Reply]:
        """Answer one thing that a person did; all that it stores is one unit of work.

        Parameters
        ----------
        incoming : Incoming
            What came in.
        before_commit : callable, optional
            Runs in the same unit of work with the replies, so that whoever keeps an inbox can
            note them with what they rest on, or not at all.
        """
        storable = replace(
            incoming, text=_storable(incoming.text), author_name=_storable(incoming.author_name)
        )
        async with self.database.write() as uow:
            turn = await Turn.begin(uow, storable, self._new_chat(storable))
            with speaking(turn.chat.language):
                replies = await answer(turn)
            if before_commit is not None:
                await before_commit(uow, replies)
            await uow.commit()
            if uow.reminders.touched or turn.came_back:
                self.changed.set()
        return replies

    def _new_chat(self, incoming: Incoming) -> NewChat:
        """What a chat with somebody starts with: in their own language, where we have it."""
        own = incoming.language
        if incoming.group or own in {None, "en", self.new_chat.language} or own not in spoken():
            return self.new_chat
        return replace(self.new_chat, language=own)

    async def language(self, address: Address) -> str:
        """The language in which a chat is spoken to, two letters."""
        async with self.database.read() as uow:
            chat = await uow.chats.find(address)
        return self.new_chat.language if chat is None else chat.language

    async def sent(self, _address: Address, reply: Reply, message_ref: str) -> None:
        """Note under which id of its messenger a reply with a token was sent."""
        if reply.token is None:
            return
        async with self.database.write() as uow:
            await uow.offers.note_sent(reply.token, message_ref)
            await uow.commit()

    async def chat_gone(self, address: Address, moved_to: str | None = None) -> None:
        """Note that a chat cannot be reached any more, or goes on under another id."""
        async with self.database.write() as uow:
            await uow.chats.leave(address, moved_to, self.clock.now())
            await uow.commit()

    async def take_over(self, messenger: str) -> None:
        """Take up at once what a dead process was saying on a messenger.

        Only for whoever knows that no other process serves that messenger on this database;
        elsewhere a dead one's leases run out by themselves.
        """
        async with self.database.write() as uow:
            await uow.reminders.release(messenger)
            await uow.commit()

    async def live_by(self, address: Address, zone: str) -> None:
        """Let a chat that is there already live by another zone."""
        async with self.database.write() as uow:
            chat = await uow.chats.find(address)
            if chat is None or chat.zone_name == zone:
                return
            await uow.chats.change(chat.id, zone=zone, zone_known=True)
            uow.session.expire_all()
            chat = await uow.chats.get(chat.id)
            await planning.reschedule(uow, chat, self.clock.now(), zone_changed=True)
            await uow.commit()

    async def deliver_due(self) -> int:
        """Say all that is due by the clock and return how many messages that took."""
        return await self._delivery.deliver_due()

    async def next_due(self) -> datetime | None:
        """When the next reminder may be said, in UTC; None where there is none."""
        return await self._delivery.next_due()

    async def names(self, address: Address) -> list[str]:
        """Names of a chat's tanks, for completing what is typed."""
        async with self.database.read() as uow:
            chat = await uow.chats.find(address)
            tanks = [] if chat is None else await uow.tanks.of_chat(chat.id)
        return [tank.name for tank in tanks]

    async def holds_tanks(self) -> bool:
        """Tell whether the database holds a tank of anybody."""
        async with self.database.read() as uow:
            return await uow.tanks.any_at_all()


def _storable(text: str) -> str:
    """A text without what no database keeps: NUL, and halves of surrogate pairs."""
    if "\x00" in text or not text.isascii():
        return text.replace("\x00", "\ufffd").encode("utf-8", "replace").decode()
    return text
