"""Group commit: what many workers want written at the same time is written in one go."""

from __future__ import annotations

import asyncio
from collections.abc import Awaitable, Callable
from typing import Generic, TypeVar

T = TypeVar("T")


class Together(Generic[T]):
    """Gathers items while a write is under way and writes them all with the next one.

    Parameters
    ----------
    write : callable
        Writes a list of items, all of them or none.
    """

    def __init__(self, write: Callable[[list[T]], Awaitable[None]]) -> None:
        self._write = write
        self._waiting: list[tuple[T, asyncio.Future[None]]] = []
        self._writer: asyncio.Task[None] | None = None

    async def add(self, item: T) -> None:
        """Have an item written; returns once it is, raises what its write raised."""
        done: asyncio.Future[None] = asyncio.get_running_loop().create_future()
        self._waiting.append((item, done))
        if self._writer is None:
            self._writer = asyncio.create_task(self._write_all())
        await done

    async def _write_all(self) -> None:
        while self._waiting:
            batch, self._waiting = self._waiting, []
            try:
                await self._write([item for item, _ in batch])
            except Exception as error:  # noqa: BLE001 - each of them hears of it
                _tell(batch, error)
            else:
                _tell(batch, None)
        self._writer = None


def _tell(batch: list[tuple[T, asyncio.Future[None]]], error: Exception | None) -> None:
    for _, done in batch:
        if done.done():
            continue  # whoever wanted it was cancelled meanwhile
        if error is None:
            done.set_result(None)
        else:
            done.set_exception(error)
