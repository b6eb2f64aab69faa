"""Workers side by side: rows are claimed as fast as there are hands, and leases kept alive."""

from __future__ import annotations

import asyncio
import logging
from datetime import timedelta
from functools import partial

from bot.clock import Clock
from bot.inbox.model import Job
from bot.inbox.rows import Inbox, NotMine
from bot.inbox.statements import SUSPECT
from bot.inbox.trouble import describe, report, wait_before
from bot.inbox.worker import Worker

log = logging.getLogger(__name__)

IDLE_S = 1.0
"""How long to rest where nothing calls: other processes and old leases call nobody."""

GRACE_S = 10.0
"""How long work in hand may take to end once we are asked to stop."""

KEEP = timedelta(days=7)
"""How long answered rows are kept; Telegram may repeat an update for 24 hours."""

PRUNE_EVERY_S = 3600.0


class Pool:
    """Claims rows and works on them until told to stop.

    Parameters
    ----------
    inbox : Inbox
        Where rows are claimed.
    worker : Worker
        Who works on them.
    clock : Clock
        Real time.
    size : int
        How many rows are worked on at once.
    keep : timedelta
        How long answered rows are kept.
    """

    def __init__(
        self,
        inbox: Inbox,
        worker: Worker,
        clock: Clock,
        *,
        size: int = 32,
        keep: timedelta = KEEP,
        idle_s: float = IDLE_S,
    ) -> None:
        self._inbox = inbox
        self._worker = worker
        self._clock = clock
        self._size = size
        self._keep = keep
        self._idle_s = idle_s
        self._wake = asyncio.Event()
        self._busy: dict[int, asyncio.Task[None]] = {}
        self._held: list[int] = []

    def wake(self) -> None:
        """Say that there may be something to claim."""
        self._wake.set()

    async def run(self, stop: asyncio.Event) -> None:
        """Work until `stop` is set, then end what is in hand."""
        helpers = [asyncio.create_task(self._renew()), asyncio.create_task(self._prune())]
        stopping = asyncio.create_task(stop.wait())
        stopping.add_done_callback(lambda _: self._wake.set())
        try:
            await self._claim_until(stop)
            await self._end()
        finally:
            for task in (*helpers, stopping, *self._busy.values()):
                task.cancel()

    async def _claim_until(self, stop: asyncio.Event) -> None:
        failures = 0
        while not stop.is_set():
            self._wake.clear()
            rest: float | None = self._idle_s
            try:
                if await self._claim(stop):
                    continue
                failures = 0
            except Exception as error:  # noqa: BLE001 - the database may come back
                failures += 1
                rest = wait_before(failures).total_seconds()
                report(log, "cannot look into the inbox: %s", describe(error))
            await _first(self._wake, rest)

    async def _claim(self, stop: asyncio.Event) -> bool:
        """Start work on rows; False where there is nothing to do or no hand free."""
        free = self._size - len(self._busy)
        jobs = await self._inbox.claim(free) if free else []
        if stop.is_set():
            return False  # too late to start; they are let go of with the rest
        suspects = [job for job in jobs if job.replies is None and job.attempts >= SUSPECT]
        if suspects:
            self._held = [job.id for job in jobs]
            await self._try_alone(suspects)
        for job in jobs:
            if job not in suspects:
                self._start(job)
        self._held = []
        return bool(jobs)

    async def _try_alone(self, suspects: list[Job]) -> None:
        """Work on each suspect with nothing else in hand, so that it hurts nobody but itself."""
        if self._busy:
            await asyncio.wait(self._busy.values())
        for job in suspects:
            try:
                await self._start(await self._inbox.count_trial(job))
            except NotMine:
                log.warning("update %s is in other hands now", job.update_id)

    def _start(self, job: Job) -> asyncio.Task[None]:
        task = asyncio.create_task(self._worker.work(job))
        self._busy[job.id] = task
        task.add_done_callback(partial(self._done, job.id))
        return task

    def _done(self, number: int, _task: asyncio.Task[None]) -> None:
        self._busy.pop(number, None)
        self._wake.set()

    async def _end(self) -> None:
        if self._busy:
            _, late = await asyncio.wait(self._busy.values(), timeout=GRACE_S)
            for task in late:
                task.cancel()
            await asyncio.gather(*late, return_exceptions=True)
        await self._inbox.let_go()

    async def _renew(self) -> None:
        """Keep the leases of all that is in hand; a lost one is found when the row is settled."""
        while True:
            await asyncio.sleep(self._inbox.lease.total_seconds() / 3)
            try:
                if in_hand := {*self._busy, *self._held}:
                    await self._inbox.renew(in_hand)
            except Exception as error:  # noqa: BLE001 - tried again before the lease ends
                report(log, "leases not renewed: %s", describe(error))

    async def _prune(self) -> None:
        while True:
            try:
                await self._inbox.prune(self._clock.now() - self._keep)
            except Exception as error:  # noqa: BLE001 - there is another time
                report(log, "old rows not pruned: %s", describe(error))
            await asyncio.sleep(PRUNE_EVERY_S)


async def _first(event: asyncio.Event, timeout_s: float | None) -> None:
    """Wait for an event, but not for ever."""
    try:
        async with asyncio.timeout(timeout_s):
            await event.wait()
    except TimeoutError:
        return
