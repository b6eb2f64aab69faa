"""Reminders by the wall clock, while the chat waits for its next line."""

from __future__ import annotations

import asyncio
from collections.abc import AsyncIterator
from datetime import timedelta

import pytest

from bot.clock import SystemClock
from bot.terminal import chat
from bot.terminal.script import follow
from tests.terminal.fakes import Table


async def test_a_reminder_arrives_while_nothing_is_typed(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(chat, "WAKER_AFTER_S", 0.01)
    table = Table(clock=SystemClock())
    arrived = asyncio.Event()
    original = table.shown.show

    def show(said: object, **where: object) -> None:
        original(said, **where)  # type: ignore[arg-type]
        if "due" in table.shown.texts:
            arrived.set()

    table.shown.show = show  # type: ignore[assignment, method-assign]

    async def typed() -> AsyncIterator[str]:
        yield "kh 4"
        table.schedule(table.clock.now() + timedelta(milliseconds=100), "due")
        table.app.changed.set()
        async with asyncio.timeout(10):
            await arrived.wait()
        yield "kh 5"

    status = await chat._with_reminders(
        follow(table.session, typed()),
        table.session,
        table.app,  # type: ignore[arg-type]
        table.clock,
    )
    assert status == 0
    assert [(line, text) for line, text, _ in table.shown.all] == [
        (1, "heard kh 4"),
        (1, "due"),  # of a reminder by the wall clock, the last line read
        (2, "heard kh 5"),
    ]


async def test_a_reader_that_left_ends_the_chat(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(chat, "WAKER_AFTER_S", 0.01)
    table = Table(clock=SystemClock())
    table.schedule(table.clock.now() + timedelta(milliseconds=50), "due")

    async def typed() -> AsyncIterator[str]:
        table.shown.broken = True
        await asyncio.Event().wait()
        yield "never"

    async with asyncio.timeout(10):
        with pytest.raises(BrokenPipeError):
            await chat._with_reminders(
                follow(table.session, typed()),
                table.session,
                table.app,  # type: ignore[arg-type]
                table.clock,
            )
