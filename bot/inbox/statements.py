"""The statements of the inbox: whose turn it is, what is taken, what is settled."""

from __future__ import annotations

from datetime import datetime
from typing import Any

from sqlalchemy import ColumnElement, Row, and_, case, exists, func, or_, select, update
from sqlalchemy.orm import aliased

from bot.inbox.model import Job
from bot.store.models import InboxRow

OPEN = ("waiting", "taken", "handled")

SUSPECT = 6
"""Taken this often and never handled, a message may be what kills us: it is tried alone, and
from then on only those trials count, so that what was in hand beside it is not blamed."""


def next_rows(messenger: str, now: datetime, limit: int) -> Any:
    """Select the rows whose turn it is, and lock them where the engine locks rows."""
    older = aliased(InboxRow)
    overtaking = exists().where(
        older.messenger == InboxRow.messenger,
        older.chat == InboxRow.chat,
        older.state.in_(OPEN),
        older.id < InboxRow.id,
    )
    return (
        select(InboxRow.id, InboxRow.owner)
        .where(
            InboxRow.messenger == messenger,
            InboxRow.state.in_(OPEN),
            or_(InboxRow.lease_until.is_(None), InboxRow.lease_until <= now),
            ~overtaking,
        )
        .order_by(InboxRow.id)
        .limit(limit)
        .with_for_update(skip_locked=True)
    )


def take(ids: list[int], owner: str, until: datetime) -> Any:
    """Take rows under a lease; what was never handled, too often, is a suspect and not counted."""
    state: ColumnElement[str] = func.replace(InboxRow.state, "waiting", "taken")
    suspect = and_(InboxRow.replies.is_(None), InboxRow.attempts >= SUSPECT)
    attempts = case((suspect, InboxRow.attempts), else_=InboxRow.attempts + 1)
    return (
        update(InboxRow)
        .where(InboxRow.id.in_(ids))
        .values(state=state, owner=owner, lease_until=until, attempts=attempts)
        .returning(*(getattr(InboxRow, name) for name in _JOB))
        .execution_options(synchronize_session=False)
    )


def settle(ids: list[int] | None, owner: str, values: dict[str, Any]) -> Any:
    """Change open rows (all of them for None) where the owner still is this one."""
    chosen = () if ids is None else (InboxRow.id.in_(ids),)
    return (
        update(InboxRow)
        .where(*chosen, InboxRow.owner == owner, InboxRow.state.in_(OPEN))
        .values(**values)
        .returning(InboxRow.id)
        .execution_options(synchronize_session=False)
    )


FREE = {"owner": None, "lease_until": None}
_JOB = (
    "id", "update_id", "chat", "raw", "received_at", "attempts", "replies", "sent", "unsure",
    "error",
)  # fmt: skip


def job(row: Row[Any], *, interrupted: bool) -> Job:
    """What a row that was taken is to be done."""
    return Job(interrupted=interrupted, **{name: getattr(row, name) for name in _JOB})
