"""What the inbox holds and what it asks of a messenger and of the conversation."""

from __future__ import annotations

from collections.abc import Awaitable, Callable
from dataclasses import dataclass
from datetime import datetime
from typing import Protocol

from bot.chat.model import Address, Incoming, Reply
from bot.reminders.courier import Courier
from bot.store.uow import UnitOfWork

BeforeCommit = Callable[[UnitOfWork, list[Reply]], Awaitable[None]]


class Unreadable(Exception):
    """An update that does not have the shape its messenger promises; the message says where."""


@dataclass(frozen=True, slots=True)
class Departure:
    """A chat closed itself to us, or (`moved_to`) went on under another id."""

    address: Address
    moved_to: str | None = None


@dataclass(frozen=True, slots=True)
class Arrival:
    """An update as it came, ready to be kept.

    `chat` orders: rows of one chat are answered one after the other. An arrival with a `problem`
    cannot be read; it is kept for the operator and never taken.
    """

    update_id: str
    chat: str
    raw: str
    problem: str | None = None


@dataclass(frozen=True, slots=True)
class Job:
    """A row taken from the inbox under a lease.

    `attempts` counts how often the row was taken, whatever came of it. `replies` is None until
    the message was handled; then what was to be sent, as stored, of which `sent` were accepted;
    the next one was sent `unsure` times without an acknowledgement. `interrupted` says that
    somebody held it before and never finished, so that the next reply may be a repeat.
    """

    id: int
    update_id: str
    chat: str
    raw: str
    received_at: datetime
    attempts: int
    replies: str | None
    sent: int
    unsure: int
    interrupted: bool
    error: str | None


class Messenger(Courier, Protocol):
    """A messenger as the inbox needs it: a courier that can also read what it brought."""

    def read(self, raw: str, received_at: datetime) -> Incoming | Departure | None:
        """Read an update; None for one that is not meant for us. Raises Unreadable."""
        ...

    def pages(self, reply: Reply) -> list[Reply]:
        """Split a reply into replies that are one message each; the last has the buttons."""
        ...

    async def acknowledge(self, raw: str) -> None:
        """Tell the messenger that a press was seen; it is no error where that comes too late."""
        ...


class Conversation(Protocol):
    """The conversation as the inbox needs it; `bot.app.App` is one."""

    async def handle(
        self, incoming: Incoming, *, before_commit: BeforeCommit | None = None
    ) -> list[Reply]:
        """Answer a message; all it stores, and `before_commit`, are one unit of work."""
        ...

    async def language(self, address: Address) -> str:
        """The language in which a chat is spoken to, two letters."""
        ...

    async def chat_gone(self, address: Address, moved_to: str | None = None) -> None:
        """Learn that a chat is closed until it speaks again, or goes on under another id."""
        ...
