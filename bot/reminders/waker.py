"""The clock that wakes delivery: APScheduler armed for the next due time, and a steady sweep.

It tells no time of its own beyond waking up. A sweep at least every 30 s reads the wall clock
again, so that a stepped clock, another process's reminder or a spent lease is found.
"""

from __future__ import annotations

import asyncio
import logging
from datetime import datetime, timedelta
from typing import Any, Protocol

SWEEP = timedelta(seconds=30)

log = logging.getLogger(__name__)


class Sleeper(Protocol):
    """What the waker wakes."""

    changed: asyncio.Event

    async def deliver_due(self) -> int:
        """Say all that is due."""
        ...

    async def next_due(self) -> datetime | None:
        """When there is something to say next."""
        ...


class Waker:
    """Wakes an app at its due times until it is stopped.

    Parameters
    ----------
    app : Sleeper
        What delivers. Its `changed` event makes the waker look again at once.
    sweep : timedelta, optional
        The longest it sleeps.
    """

    def __init__(self, app: Sleeper, sweep: timedelta = SWEEP) -> None:
        self._app = app
        self._sweep = sweep
        self._wake = asyncio.Event()

    async def run(self, stop: asyncio.Event) -> None:
        """Deliver what is due, at its time, until `stop` is set."""
        from apscheduler.schedulers.asyncio import AsyncIOScheduler

        scheduler: Any = AsyncIOScheduler(
            timezone="UTC", job_defaults={"misfire_grace_time": None, "coalesce": True}
        )
        scheduler.add_job(
            self._wake.set, "interval", seconds=self._sweep.total_seconds(), id="sweep"
        )
        scheduler.start()
        followers = [
            asyncio.create_task(self._follow(self._app.changed, clear=True)),
            asyncio.create_task(self._follow(stop, clear=False)),
        ]
        try:
            while not stop.is_set():
                self._wake.clear()
                await self._deliver()
                await self._arm(scheduler)
                await self._wake.wait()
        finally:
            for follower in followers:
                follower.cancel()
            scheduler.shutdown(wait=False)

    async def _deliver(self) -> None:
        try:
            await self._app.deliver_due()
        except Exception:
            # The table is the truth and the sweep comes again: a passing fault of the database
            # must not end the only thing that reminds.
            log.exception("delivery failed and is tried again at the next sweep")

    async def _arm(self, scheduler: Any) -> None:
        try:
            due = await self._app.next_due()
        except Exception:
            log.exception("the next due time cannot be read; the sweep looks again")
            return
        if due is not None:
            scheduler.add_job(self._wake.set, "date", run_date=due, id="due", replace_existing=True)

    async def _follow(self, event: asyncio.Event, *, clear: bool) -> None:
        """Wake whenever an event is set."""
        while True:
            await event.wait()
            if clear:
                event.clear()
            self._wake.set()
            if not clear:
                return
