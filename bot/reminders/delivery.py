"""Saying what is due: claimed under a lease, sent, settled; a crash in between repeats, openly.

`deliver_due` and `next_due` are the only delivery code; whatever wakes up calls them.
"""

from __future__ import annotations

import asyncio
import logging
import uuid
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime, timedelta
from itertools import groupby

from bot.chat.due import compose
from bot.chat.model import Address, Reply
from bot.chat.words.text import speaking
from bot.clock import Clock
from bot.delivery import ChatGone, MaybeSent, Refused, Throttled, Unreachable
from bot.reminders.courier import Courier
from bot.reminders.planning import occurrence_after, wake_time
from bot.store.chats import Chat
from bot.store.database import Database
from bot.store.reminders import Reminder

LEASE = timedelta(seconds=60)
"""How long a claimed reminder is left alone; longer than any send may take."""

BACK_OFF_FIRST = timedelta(seconds=2)
BACK_OFF_MOST = timedelta(minutes=2)

LANES = 4
"""Chats that are sent to side by side."""

log = logging.getLogger(__name__)


@dataclass(frozen=True, slots=True)
class Parcel:
    """Reminders of one chat and topic that go out as one message."""

    chat: Chat
    reminders: tuple[Reminder, ...]
    reply: Reply
    address: Address


class Delivery:
    """Delivers reminders of one database through couriers.

    Parameters
    ----------
    database : Database
        Where the reminders are.
    clock : Clock
        The chats' clock, which due times follow.
    real : Clock
        The machine's clock, which leases and back-off follow.
    """

    def __init__(self, database: Database, clock: Clock, real: Clock) -> None:
        self._database = database
        self._clock = clock
        self._real = real
        self._couriers: dict[str, Courier] = {}
        self._owner = uuid.uuid4().hex
        self._running = asyncio.Lock()

    def add(self, courier: Courier) -> None:
        """Let a courier carry to the chats of its messenger."""
        self._couriers[courier.messenger] = courier

    async def next_due(self) -> datetime | None:
        """When the next reminder may be said that a courier here can carry."""
        async with self._database.read() as uow:
            return await uow.reminders.next_wake(tuple(self._couriers))

    async def deliver_due(self) -> int:
        """Say all that is due now, chats side by side, and return how many messages went out."""
        async with self._running:
            counts = await asyncio.gather(*(self._lane() for _ in range(LANES)))
        return sum(counts)

    async def _lane(self) -> int:
        count = 0
        while parcels := await self._claim():
            for parcel in parcels:
                count += await self._deliver(parcel)
        return count

    async def _claim(self) -> list[Parcel]:
        """Take what is due in one chat and write the messages, a topic each."""
        now, real_now = self._clock.now(), self._real.now()
        async with self._database.write() as uow:
            claimed = await uow.reminders.claim(
                tuple(self._couriers),
                now=now,
                real_now=real_now,
                lease_until=real_now + LEASE,
                owner=self._owner,
            )
            parcels = []
            for thread, group in groupby(sorted(claimed, key=_by_thread), key=_by_thread):
                reminders = tuple(group)
                chat = await uow.chats.get(reminders[0].chat_id, thread or None)
                with speaking(chat.language):
                    reply = await compose(uow, chat, reminders, now)
                parcels.append(Parcel(chat, reminders, reply, chat.address))
            await uow.commit()
        return parcels

    async def _deliver(self, parcel: Parcel) -> int:
        """Send one message and note what came of it; 1 if it went out."""
        courier = self._couriers[parcel.address.messenger]
        try:
            ref = await courier.send(parcel.address, parcel.reply)
        except ChatGone as gone:
            await self._give_back(parcel, None, gone=gone)
        except Refused:
            log.exception("reminders %s were refused by the messenger", _ids(parcel.reminders))
            await self._park(parcel)
        except Throttled as throttled:
            await self._give_back(parcel, timedelta(seconds=throttled.retry_after))
        except MaybeSent:
            await self._give_back(parcel, self._back_off(parcel), maybe_sent=True)
        except Unreachable:
            await self._give_back(parcel, self._back_off(parcel))
        else:
            await self._settle(parcel, ref)
            return 1
        return 0

    async def _settle(self, parcel: Parcel, ref: str | None) -> None:
        now = self._clock.now()
        async with self._database.write() as uow:
            for reminder in parcel.reminders:
                after = max(now, reminder.next_due or now)
                due = occurrence_after(reminder, parcel.chat, after)
                await uow.reminders.settle(
                    reminder,
                    owner=self._owner,
                    next_due=due,
                    wake_at=None if due is None else wake_time(due, parcel.chat),
                    message_ref=ref,
                )
            if ref is not None and parcel.reply.token is not None:
                await uow.offers.note_sent(parcel.reply.token, ref)
            await uow.commit()

    async def _give_back(
        self,
        parcel: Parcel,
        wait: timedelta | None,
        *,
        maybe_sent: bool = False,
        gone: ChatGone | None = None,
    ) -> None:
        not_before = None if wait is None else self._real.now() + wait
        async with self._database.write() as uow:
            for reminder in parcel.reminders:
                await uow.reminders.give_back(
                    reminder, owner=self._owner, not_before=not_before, maybe_sent=maybe_sent
                )
            if gone is not None:
                await uow.chats.leave(parcel.address, gone.moved_to, self._clock.now())
            await uow.commit()

    async def _park(self, parcel: Parcel) -> None:
        async with self._database.write() as uow:
            for reminder in parcel.reminders:
                await uow.reminders.park(reminder, owner=self._owner)
            await uow.commit()

    def _back_off(self, parcel: Parcel) -> timedelta:
        tries = max(reminder.attempts for reminder in parcel.reminders)
        doubled: timedelta = BACK_OFF_FIRST * 2 ** min(tries, 10)
        return min(doubled, BACK_OFF_MOST)


def _by_thread(reminder: Reminder) -> str:
    return reminder.thread or ""


def _ids(reminders: Sequence[Reminder]) -> list[int]:
    return [reminder.id for reminder in reminders]
