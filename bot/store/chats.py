"""Conversations and their settings."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime, tzinfo
from typing import Any, cast
from zoneinfo import ZoneInfo

from sqlalchemy import Row, Table, bindparam, select, update
from sqlalchemy.ext.asyncio import AsyncSession

from bot.chat.model import Address
from bot.store.models import ChatRow


@dataclass(frozen=True, slots=True)
class Chat:
    """A conversation as the rest of the house sees it."""

    id: int
    address: Address
    is_group: bool
    zone_name: str
    zone_known: bool
    fahrenheit: bool
    us_gallons: bool
    language: str
    quiet: str | None
    paused_from: datetime | None
    paused_until: datetime | None
    tank_id: int | None
    gone_at: datetime | None

    @property
    def zone(self) -> tzinfo:
        """The chat's time zone."""
        return ZoneInfo(self.zone_name)


@dataclass(frozen=True, slots=True)
class NewChat:
    """What a chat starts with before anybody sets anything."""

    zone: str = "UTC"
    zone_known: bool = False
    fahrenheit: bool = False
    us_gallons: bool = True
    language: str = "en"


_TABLE = cast("Table", ChatRow.__table__)
_AT_ADDRESS = select(_TABLE).where(
    _TABLE.c.messenger == bindparam("messenger"), _TABLE.c.external == bindparam("external")
)
_LOCKED = _AT_ADDRESS.with_for_update()


class Chats:
    """Queries about conversations, in one unit of work."""

    def __init__(self, session: AsyncSession) -> None:
        self._session = session

    async def ensure(self, address: Address, *, group: bool, new: NewChat, now: datetime) -> Chat:
        """Find the chat at an address, or make it with the defaults of `new`.

        The chat's row is locked until the unit of work ends, so that two units about one chat
        never work on what the other is changing. A chat that was gone is there again as soon as
        something comes in from it; what is returned still says since when it was.
        """
        row = await self._row(address, lock=True)
        if row is None:
            await self._insert(address, group=group, new=new, now=now)
            row = await self._row(address, lock=True)
        if row is None:
            raise LookupError("a chat that was just made is gone")
        if row.gone_at is not None:
            await self.change(row.id, gone_at=None)
        return _chat(row, address.thread)

    async def _insert(self, address: Address, *, group: bool, new: NewChat, now: datetime) -> None:
        """Make a chat, unless another process did so in this moment."""
        if self._dialect == "sqlite":
            from sqlalchemy.dialects.sqlite import insert
        else:  # loaded where it is needed: it would weigh on every cold start
            from sqlalchemy.dialects.postgresql import insert  # type: ignore[assignment]
        await self._session.execute(
            insert(ChatRow)
            .values(
                messenger=address.messenger,
                external=address.chat,
                is_group=group,
                zone=new.zone,
                zone_known=new.zone_known,
                fahrenheit=new.fahrenheit,
                us_gallons=new.us_gallons,
                language=new.language,
                created_at=now,
            )
            .on_conflict_do_nothing(index_elements=["messenger", "external"])
        )

    @property
    def _dialect(self) -> str:
        return self._session.get_bind().dialect.name

    async def find(self, address: Address) -> Chat | None:
        """Find the chat at an address; None where nobody ever wrote from there."""
        row = await self._row(address)
        return None if row is None else _chat(row, address.thread)

    async def get(self, chat_id: int, thread: str | None = None) -> Chat:
        """Give the chat of an id that the store itself gave out."""
        row = await self._session.get_one(ChatRow, chat_id)
        return _chat(row, thread)

    async def change(self, chat_id: int, **settings: Any) -> None:
        """Set columns of one chat by name."""
        await self._session.execute(update(ChatRow).where(ChatRow.id == chat_id).values(**settings))

    async def leave(self, address: Address, moved_to: str | None, now: datetime) -> None:
        """Note that a chat is gone, or that a group goes on under another id."""
        columns: dict[str, Any] = {"gone_at": now} if moved_to is None else {"external": moved_to}
        await self._session.execute(
            update(ChatRow)
            .where(ChatRow.messenger == address.messenger, ChatRow.external == address.chat)
            .values(**columns)
        )

    async def _row(self, address: Address, *, lock: bool = False) -> Row[Any] | None:
        where = {"messenger": address.messenger, "external": address.chat}
        found = await self._session.execute(_LOCKED if lock else _AT_ADDRESS, where)
        return found.one_or_none()


def _chat(row: ChatRow | Row[Any], thread: str | None) -> Chat:
    return Chat(
        id=row.id,
        address=Address(row.messenger, row.external, thread),
        is_group=row.is_group,
        zone_name=row.zone,
        zone_known=row.zone_known,
        fahrenheit=row.fahrenheit,
        us_gallons=row.us_gallons,
        language=row.language,
        quiet=row.quiet,
        paused_from=row.paused_from,
        paused_until=row.paused_until,
        tank_id=row.tank_id,
        gone_at=row.gone_at,
    )
