"""What is due: the queries behind claiming, settling and answering reminders.

A claim takes everything of a chat that is due at once, so that it can be said in one message.
The chat's row is what claimers contend for: locked and skipped on PostgreSQL, serialised by the
write lock on SQLite. Due times are the chat's clock; leases and back-off are real time.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime
from typing import Any, cast

from sqlalchemy import ColumnElement, Table, and_, bindparam, func, or_, select, update
from sqlalchemy.ext.asyncio import AsyncSession

from bot.store.models import ChatRow, ReminderRow


@dataclass(frozen=True, slots=True)
class Reminder:
    """One reminder as it stands."""

    id: int
    chat_id: int
    thread: str | None
    tank_id: int | None
    what: str
    kind: str
    rule: str
    counts_from_done: bool
    anchor: datetime
    next_due: datetime | None
    wake_at: datetime | None
    open_due: datetime | None
    state: str
    attempts: int
    maybe_repeat: bool
    message_ref: str | None
    created_at: datetime
    created_by: str
    ended_at: datetime | None


@dataclass(frozen=True, slots=True)
class Draft:
    """A reminder that is about to be made."""

    what: str
    kind: str
    rule: str
    counts_from_done: bool
    anchor: datetime
    next_due: datetime
    wake_at: datetime
    created_at: datetime
    created_by: str
    tank_id: int | None = None
    thread: str | None = None


_FIELDS = tuple(Reminder.__dataclass_fields__)
_ALIVE = ReminderRow.ended_at.is_(None)
_TABLE = cast("Table", ReminderRow.__table__)
_OF_CHAT = select(*(_TABLE.c[name] for name in _FIELDS)).where(
    _TABLE.c.chat_id == bindparam("chat"), _TABLE.c.ended_at.is_(None)
)


class Reminders:
    """Queries about reminders, in one unit of work."""

    def __init__(self, session: AsyncSession) -> None:
        self._session = session
        self.touched = False
        """True once something was changed here, so that what is due next may have changed."""
        self._living: dict[int, list[Reminder]] = {}
        """Of each chat its living reminders, until one is changed."""

    async def add(self, chat_id: int, draft: Draft) -> int:
        """Keep a new reminder and return its id."""
        self._touch()
        row = ReminderRow(
            chat_id=chat_id,
            state="due",
            attempts=0,
            maybe_repeat=False,
            **{name: getattr(draft, name) for name in Draft.__dataclass_fields__},
        )
        self._session.add(row)
        await self._session.flush()
        return row.id

    def _touch(self) -> None:
        self.touched = True
        self._living.clear()

    async def get(self, reminder_id: int) -> Reminder | None:
        """Give one reminder, ended or not; None where the id was never given out."""
        row = await self._session.get(ReminderRow, reminder_id, populate_existing=True)
        return None if row is None else _reminder(row)

    async def of_chat(self, chat_id: int, *, only_open: bool = False) -> list[Reminder]:
        """All living reminders of a chat: open ones first, then by when they are due."""
        if chat_id not in self._living:
            rows = await self._session.execute(_OF_CHAT, {"chat": chat_id})
            self._living[chat_id] = sorted((Reminder(*row) for row in rows), key=_by_urgency)
        living = self._living[chat_id]
        return [each for each in living if each.open_due is not None or not only_open]

    async def change(self, reminder_id: int, **columns: Any) -> None:
        """Set columns of one reminder by name."""
        self._touch()
        await self._session.execute(
            update(ReminderRow).where(ReminderRow.id == reminder_id).values(**columns)
        )

    async def next_wake(self, messengers: Sequence[str]) -> datetime | None:
        """Tell when the next reminder may be said, over the chats that can be reached."""
        return await self._session.scalar(
            select(func.min(ReminderRow.wake_at))
            .join(ChatRow, ChatRow.id == ReminderRow.chat_id)
            .where(
                _ALIVE,
                ReminderRow.state.in_(("due", "sent")),
                ChatRow.gone_at.is_(None),
                ChatRow.messenger.in_(messengers),
            )
        )

    async def claim(
        self,
        messengers: Sequence[str],
        *,
        now: datetime,
        real_now: datetime,
        lease_until: datetime,
        owner: str,
    ) -> list[Reminder]:
        """Take all that is due in one chat, the longest waiting first; empty where nothing is.

        A row whose lease ran out is taken again and marked, since it may have been said.
        """
        ready = _ready(now, real_now)
        chat_id = await self._session.scalar(
            select(ChatRow.id)
            .join(ReminderRow, ReminderRow.chat_id == ChatRow.id)
            .where(ready, ChatRow.gone_at.is_(None), ChatRow.messenger.in_(messengers))
            .order_by(ReminderRow.wake_at)
            .limit(1)
            .with_for_update(skip_locked=True, of=ChatRow)
        )
        if chat_id is None:
            return []
        self._living.clear()
        taken = await self._session.scalars(
            update(ReminderRow)
            .where(ReminderRow.chat_id == chat_id, ready)
            .values(
                state="sending",
                owner=owner,
                lease_until=lease_until,
                maybe_repeat=or_(ReminderRow.maybe_repeat, ReminderRow.state == "sending"),
            )
            .returning(ReminderRow),
            execution_options={"populate_existing": True, "synchronize_session": False},
        )
        return sorted(map(_reminder, taken), key=lambda reminder: (reminder.next_due, reminder.id))

    async def release(self, messenger: str) -> None:
        """Put back what a dead process was saying, where it is certain that none is alive."""
        self._living.clear()
        chats = select(ChatRow.id).where(ChatRow.messenger == messenger)
        await self._session.execute(
            update(ReminderRow)
            .where(ReminderRow.state == "sending", ReminderRow.chat_id.in_(chats))
            .values(state="due", owner=None, lease_until=None, maybe_repeat=True)
        )

    async def settle(
        self,
        reminder: Reminder,
        *,
        owner: str,
        next_due: datetime | None,
        wake_at: datetime | None,
        message_ref: str | None,
    ) -> bool:
        """Note that a claimed reminder was said; False where it is no longer this owner's."""
        return await self._finish(
            reminder.id,
            owner,
            state="sent",
            open_due=reminder.next_due,
            next_due=next_due,
            wake_at=wake_at,
            message_ref=message_ref,
            maybe_repeat=False,
            attempts=0,
            not_before=None,
        )

    async def give_back(
        self, reminder: Reminder, *, owner: str, not_before: datetime | None, maybe_sent: bool
    ) -> bool:
        """Put a claimed reminder back to be tried again, not before a real time."""
        return await self._finish(
            reminder.id,
            owner,
            state="due",
            not_before=not_before,
            attempts=reminder.attempts + 1,
            maybe_repeat=reminder.maybe_repeat or maybe_sent,
        )

    async def park(self, reminder: Reminder, *, owner: str) -> bool:
        """Set a claimed reminder aside that can never be said as it is."""
        return await self._finish(reminder.id, owner, state="parked")

    async def _finish(self, reminder_id: int, owner: str, **columns: Any) -> bool:
        """Change a row that is being sent, if it is still this owner's."""
        self._living.clear()
        mine = await self._session.scalar(
            update(ReminderRow)
            .where(
                ReminderRow.id == reminder_id,
                ReminderRow.owner == owner,
                ReminderRow.state == "sending",
            )
            .values(owner=None, lease_until=None, **columns)
            .returning(ReminderRow.id)
        )
        return mine is not None


def _ready(now: datetime, real_now: datetime) -> ColumnElement[bool]:
    """Say of a reminder that it must be said now, or that whoever was saying it is gone."""
    waiting = and_(
        ReminderRow.state.in_(("due", "sent")),
        ReminderRow.wake_at <= now,
        or_(ReminderRow.not_before.is_(None), ReminderRow.not_before <= real_now),
    )
    abandoned = and_(ReminderRow.state == "sending", ReminderRow.lease_until < real_now)
    return and_(_ALIVE, or_(waiting, abandoned))


def _by_urgency(reminder: Reminder) -> tuple[bool, datetime, int]:
    due = reminder.open_due or reminder.next_due or reminder.created_at
    return reminder.open_due is None, due, reminder.id


def _reminder(row: ReminderRow) -> Reminder:
    return Reminder(**{name: getattr(row, name) for name in _FIELDS})


def of_tank(reminders: Sequence[Reminder], tank_id: int, kind: str) -> list[Reminder]:
    """Pick the reminders of one kind about one tank."""
    return [each for each in reminders if each.tank_id == tank_id and each.kind == kind]
