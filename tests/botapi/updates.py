"""The queue of updates: kept until confirmed by a higher offset, then never shown again."""

from __future__ import annotations

import asyncio
import random
import time
from collections import deque
from dataclasses import dataclass
from typing import Any

from tests.botapi.model import Refusal

CONFLICT = (
    "Conflict: terminated by other getUpdates request; "
    "make sure that only one bot instance is running"
)


@dataclass(slots=True)
class Waiting:
    """An update that nobody has confirmed yet."""

    id: int
    payload: Any


class Updates:
    """Updates of one bot, handed out as `getUpdates` does.

    `copies` shows each update that many times within a batch and `shuffle` mixes the batch:
    what a bot that stores idempotently must stand.
    """

    def __init__(self, first_id: int = 1000) -> None:
        self._queue: deque[Waiting] = deque()
        self._next = first_id
        self._changed = asyncio.Event()
        self._poller = 0
        self.closing = False
        self.copies = 1
        self.shuffle: random.Random | None = None
        self.confirmed: list[int] = []
        self.handed_out: set[int] = set()

    @property
    def last_id(self) -> int:
        """Identifier of the newest update so far."""
        return self._next - 1

    @property
    def pending(self) -> int:
        """How many updates nobody has confirmed."""
        return len(self._queue)

    def put(self, update: Any) -> int:
        """Queue an update; a dict without `update_id` gets the next one."""
        number = self._next
        if isinstance(update, dict):
            update = {"update_id": number, **update}
        self._next += 1
        self._queue.append(Waiting(number, update))
        self._wake()
        return number

    def jump(self, next_id: int) -> None:
        """Go on from another identifier, as the real server does after a week of silence."""
        self._next = next_id

    def drop_all(self) -> None:
        """Forget all that waits, as `drop_pending_updates` asks."""
        self._queue.clear()

    def close(self) -> None:
        """End every long poll."""
        self.closing = True
        self._wake()

    async def get(self, offset: int, limit: int, timeout_s: float) -> list[Any]:
        """One `getUpdates`: confirm below `offset`, wait for something, show at most `limit`."""
        self._poller += 1
        mine = self._poller
        self._wake()  # a poll that waits finds that it is no longer the latest
        self._confirm(offset)
        deadline = time.monotonic() + timeout_s
        while not self._queue and not self.closing:
            left = deadline - time.monotonic()
            if left <= 0:
                return []
            changed = self._changed
            try:
                await asyncio.wait_for(changed.wait(), left)
            except TimeoutError:
                return []
            if mine != self._poller:
                raise Refusal(409, CONFLICT)
        return self._batch(limit)

    def _confirm(self, offset: int) -> None:
        if offset < 0:
            while len(self._queue) > -offset:
                self.confirmed.append(self._queue.popleft().id)
        if offset > self._next:
            return  # an offset from before a jump of the identifiers confirms nothing
        while self._queue and self._queue[0].id < offset:
            self.confirmed.append(self._queue.popleft().id)

    def _batch(self, limit: int) -> list[Any]:
        chosen = [self._queue[i] for i in range(min(limit, len(self._queue)))]
        self.handed_out.update(waiting.id for waiting in chosen)
        batch = [waiting.payload for waiting in chosen for _ in range(self.copies)]
        if self.shuffle is not None:
            self.shuffle.shuffle(batch)
        return batch

    def _wake(self) -> None:
        self._changed.set()
        self._changed = asyncio.Event()
