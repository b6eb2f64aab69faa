"""The inbox table: received, taken, handled, answered, or parked for the operator.

A row is *waiting* until a worker takes it under a lease, *taken* until its message was handled,
*handled* (with its replies, in the same unit of work as what the message stored) until the last
reply was accepted, then *answered*. A lease that runs out lets another worker take the row where
it stands: a taken one is handled from the start, a handled one only sends what is left. A row
that is put back for later has no owner, and its lease is the time before which nobody takes it.
All of these times are real, whatever clock the keepers live by.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import replace
from datetime import datetime, timedelta
from typing import Any

from sqlalchemy import delete, func, select, update
from sqlalchemy.dialects import postgresql, sqlite

from bot.clock import Clock
from bot.inbox import statements
from bot.inbox.model import Arrival, Job
from bot.inbox.together import Together
from bot.store.database import Database
from bot.store.models import InboxRow
from bot.store.uow import UnitOfWork

LEASE = timedelta(seconds=15)
"""How long a worker may hold a row without a sign of life."""

Shown = tuple[int, str]
"""The token of a reply, and the messenger's id of the message that showed it."""

_Answered = tuple[int, int, str | None, Shown | None]


class NotMine(Exception):
    """A row was taken by somebody else while it was being worked on."""


class Inbox:
    """The inbox of one messenger, as one process uses it.

    Parameters
    ----------
    database : Database
        Where it is kept.
    clock : Clock
        Real time, never a simulated clock.
    messenger : str
        Whose updates these are.
    owner : str
        Name of this process, different from that of any other, living or dead.
    lease : timedelta
        How long a row is held without renewal.
    """

    def __init__(
        self,
        database: Database,
        clock: Clock,
        *,
        messenger: str,
        owner: str,
        lease: timedelta = LEASE,
    ) -> None:
        self._database = database
        self._clock = clock
        self._messenger = messenger
        self.owner = owner
        self.lease = lease
        self._settling = Together(self._note_answered)

    async def receive(self, arrivals: Sequence[Arrival]) -> int:
        """Keep updates, each once; returns how many were new. Committed on return."""
        if not arrivals:
            return 0
        now = self._clock.now()
        rows = [self._row(arrival, now) for arrival in arrivals]
        insert: Any = sqlite.insert if self._database.is_sqlite else postgresql.insert
        statement = (
            insert(InboxRow)
            .values(rows)
            .on_conflict_do_nothing(index_elements=["messenger", "update_id"])
            .returning(InboxRow.id)
        )
        async with self._database.write() as uow:
            new = len((await uow.session.scalars(statement)).all())
            await uow.commit()
        return new

    async def claim(self, limit: int) -> list[Job]:
        """Take at most `limit` rows, the oldest open one of each chat that nobody holds."""
        now = self._clock.now()
        async with self._database.write() as uow:
            rows = await uow.session.execute(statements.next_rows(self._messenger, now, limit))
            held = {row.id: row.owner is not None for row in rows}
            if not held:
                return []
            taken = await uow.session.execute(
                statements.take(list(held), self.owner, now + self.lease)
            )
            jobs = [statements.job(row, interrupted=held[row.id]) for row in taken]
            await uow.commit()
        return sorted(jobs, key=lambda job: job.id)

    async def count_trial(self, job: Job) -> Job:
        """Note that a suspect is tried alone now; raises NotMine where it was taken away."""
        if not await self._finish([job.id], attempts=job.attempts + 1):
            raise NotMine(job.id)
        return replace(job, attempts=job.attempts + 1)

    async def renew(self, ids: Iterable[int]) -> None:
        """Show that this process still works on these rows."""
        await self._finish(list(ids), lease_until=self._clock.now() + self.lease)

    async def note_handled(
        self, uow: UnitOfWork, job: Job, replies: str, error: str | None = None
    ) -> None:
        """Write the replies of a message into its row, within the unit of work that made them.

        Raises
        ------
        NotMine
            Where the row is no longer this process's; the unit of work must not be committed.
        """
        values = {"state": "handled", "replies": replies, "sent": 0, "error": error}
        mine = await uow.session.scalar(statements.settle([job.id], self.owner, values))
        if mine is None:
            raise NotMine(job.id)

    async def note_failed(self, job: Job, replies: str, reference: str) -> None:
        """Note that a message could not be handled; `replies` tell the keeper so."""
        async with self._database.write() as uow:
            await self.note_handled(uow, job, replies, reference)
            await uow.commit()

    async def note_sent(self, job: Job, sent: int, shown: Shown | None = None) -> None:
        """Note how many replies have been accepted; raises NotMine where the row is gone."""
        async with self._database.write() as uow:
            values = {"sent": sent, "unsure": 0}
            if await uow.session.scalar(statements.settle([job.id], self.owner, values)) is None:
                raise NotMine(job.id)
            await _note_shown(uow, shown)
            await uow.commit()

    async def answered(
        self, job: Job, sent: int, error: str | None = None, shown: Shown | None = None
    ) -> None:
        """Note that nothing is left to do, and under which id the last reply was shown."""
        await self._settling.add((job.id, sent, error, shown))

    async def park(self, job: Job, error: str, sent: int = 0) -> None:
        """Set a row aside for the operator, with a short reference to the log."""
        values = {"state": "parked", "sent": sent, "answered_at": self._clock.now()}
        await self._finish([job.id], **values, error=error, **statements.FREE)

    async def postpone(
        self,
        job: Job,
        delay: timedelta,
        *,
        in_doubt: bool,
        sent: int | None = None,
        unsure: int = 0,
    ) -> None:
        """Let a row be taken again after a while.

        With `in_doubt` it keeps its owner, as after a crash: the next reply may be a repeat.
        With `sent` it is known how many replies were accepted, and `unsure` says how often the
        next one was sent without an acknowledgement.
        """
        values: dict[str, Any] = {} if sent is None else {"sent": sent, "unsure": unsure}
        values["owner"] = self.owner if in_doubt else None
        await self._finish([job.id], **values, lease_until=self._clock.now() + delay)

    async def release_all(self) -> int:
        """Let go of whatever other owners hold, at once; only for who knows that they are dead."""
        now = self._clock.now()
        return await self._change(
            update(InboxRow)
            .where(
                InboxRow.messenger == self._messenger,
                InboxRow.state.in_(statements.OPEN),
                InboxRow.owner.is_not(None),
                InboxRow.owner != self.owner,
            )
            .values(lease_until=now)
            .returning(InboxRow.id)
        )

    async def prune(self, before: datetime) -> int:
        """Forget rows that were answered before a moment; returns how many."""
        return await self._change(
            delete(InboxRow)
            .where(
                InboxRow.messenger == self._messenger,
                InboxRow.state == "answered",
                InboxRow.answered_at < before,
            )
            .returning(InboxRow.id)
        )

    async def counts(self) -> dict[str, int]:
        """How many rows there are in each state that has any."""
        query = (
            select(InboxRow.state, func.count().label("rows"))
            .where(InboxRow.messenger == self._messenger)
            .group_by(InboxRow.state)
        )
        async with self._database.read() as uow:
            return {row.state: row.rows for row in await uow.session.execute(query)}

    def _row(self, arrival: Arrival, now: datetime) -> dict[str, Any]:
        return {
            "messenger": self._messenger,
            "update_id": arrival.update_id,
            "chat": arrival.chat,
            "raw": arrival.raw,
            "received_at": now,
            "state": "waiting" if arrival.problem is None else "parked",
            "attempts": 0,
            "sent": 0,
            "error": arrival.problem,
        }

    async def let_go(self) -> int:
        """Let go of all that this process still holds, as the last thing it does."""
        now = self._clock.now()
        return await self._change(statements.settle(None, self.owner, {"lease_until": now}))

    async def _note_answered(self, rows: list[_Answered]) -> None:
        ids: dict[tuple[int, str | None], list[int]] = {}
        for row, sent, error, _ in rows:
            ids.setdefault((sent, error), []).append(row)
        done = {"state": "answered", "answered_at": self._clock.now(), **statements.FREE}
        async with self._database.write() as uow:
            for (sent, error), some in ids.items():
                values = {**done, "sent": sent, "error": error}
                await uow.session.execute(statements.settle(some, self.owner, values))
            for *_, shown in rows:
                await _note_shown(uow, shown)
            await uow.commit()

    async def _finish(self, ids: list[int], **values: Any) -> int:
        return await self._change(statements.settle(ids, self.owner, values))

    async def _change(self, statement: Any) -> int:
        async with self._database.write() as uow:
            changed = len((await uow.session.scalars(statement)).all())
            await uow.commit()
        return changed


async def _note_shown(uow: UnitOfWork, shown: Shown | None) -> None:
    if shown is not None:
        await uow.offers.note_sent(*shown)
