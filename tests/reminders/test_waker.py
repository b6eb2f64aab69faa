"""The waker: at the due time, when something changed, at every sweep, and never after a stop."""

from __future__ import annotations

import asyncio
from datetime import UTC, datetime, timedelta

import pytest

from bot.reminders.waker import Waker


class App:
    """What a waker wakes, counted."""

    def __init__(self) -> None:
        self.changed = asyncio.Event()
        self.due: datetime | None = None
        self.delivered: asyncio.Queue[datetime] = asyncio.Queue()
        self.fails = 0

    async def deliver_due(self) -> int:
        if self.fails:
            self.fails -= 1
            raise ConnectionError
        await self.delivered.put(datetime.now(UTC))
        return 0

    async def next_due(self) -> datetime | None:
        return self.due


async def delivered(app: App) -> datetime:
    return await asyncio.wait_for(app.delivered.get(), 5)


@pytest.fixture
def app() -> App:
    return App()


async def run(app: App, sweep: timedelta) -> tuple[asyncio.Task[None], asyncio.Event]:
    stop = asyncio.Event()
    task = asyncio.create_task(Waker(app, sweep).run(stop))
    await delivered(app)  # what is overdue at the start
    return task, stop


async def end(task: asyncio.Task[None], stop: asyncio.Event) -> None:
    stop.set()
    await asyncio.wait_for(task, 5)


async def test_it_wakes_at_the_due_time(app: App) -> None:
    app.due = datetime.now(UTC) + timedelta(seconds=0.3)
    task, stop = await run(app, timedelta(hours=1))
    assert await delivered(app) >= app.due
    await end(task, stop)


async def test_it_looks_again_when_something_changed(app: App) -> None:
    task, stop = await run(app, timedelta(hours=1))
    app.due = datetime.now(UTC) + timedelta(seconds=0.2)
    app.changed.set()
    await delivered(app)
    assert await delivered(app) >= app.due
    await end(task, stop)


async def test_it_sweeps_without_being_told(app: App) -> None:
    task, stop = await run(app, timedelta(seconds=0.2))
    await delivered(app)
    await delivered(app)
    await end(task, stop)


async def test_a_failure_does_not_end_it(app: App, caplog: pytest.LogCaptureFixture) -> None:
    task, stop = await run(app, timedelta(seconds=0.1))
    app.fails = 2
    await delivered(app)
    assert "tried again" in caplog.text
    await end(task, stop)


async def test_a_due_time_long_past_is_not_dropped(app: App) -> None:
    """APScheduler drops what it finds late unless it is told not to."""
    app.due = datetime.now(UTC) - timedelta(days=400)
    task, stop = await run(app, timedelta(hours=1))
    await delivered(app)
    app.due = None
    await end(task, stop)


async def test_every_job_lives_through_any_lateness(
    app: App, monkeypatch: pytest.MonkeyPatch
) -> None:
    from apscheduler.schedulers.asyncio import AsyncIOScheduler

    made = []
    add = AsyncIOScheduler.add_job

    def watched(self: object, *args: object, **parts: object) -> object:
        made.append(add(self, *args, **parts))
        return made[-1]

    monkeypatch.setattr(AsyncIOScheduler, "add_job", watched)
    app.due = datetime.now(UTC) + timedelta(seconds=0.1)
    task, stop = await run(app, timedelta(hours=1))
    await delivered(app)
    await end(task, stop)
    assert len(made) >= 2
    assert {job.misfire_grace_time for job in made} == {None}
