"""Polling that confirms an update to Telegram only once it is in the inbox.

A long poll, the rows committed, and only then the higher offset: whenever the process dies, what
was not committed is sent again, and what was committed twice is kept once.
"""

from __future__ import annotations

import asyncio
import hashlib
import json
import logging
import random
from collections.abc import Awaitable, Callable, Sequence
from dataclasses import dataclass
from datetime import datetime
from typing import Any, TypeVar

from telegram.error import NetworkError, TelegramError

from bot.clock import Clock
from bot.inbox.model import Arrival, Unreadable
from bot.inbox.rows import Inbox
from bot.inbox.trouble import describe, report, wait_before
from bot.starting import StartError
from bot.telegram.api import Api, Me
from bot.telegram.errors import is_conflict, is_token_refused, wait_asked
from bot.telegram.read import ALLOWED, read_update, update_number

log = logging.getLogger(__name__)
T = TypeVar("T")

POLL_S = 30
"""How long Telegram holds a poll open where there is nothing to say."""

LONGEST_PAUSE_S = 30.0
CONFLICT_PAUSE_S = 5.0
"""How long to leave another poller alone; it must be ours again within 15 s of its death."""


class TokenRefused(StartError):
    """Telegram does not know the token, or knows it no longer."""

    def __init__(self) -> None:
        super().__init__(
            "Telegram refuses the token: check telegram.token, or ask BotFather for a new one"
        )


class PollingStuck(StartError):
    """Polling hung twice in spite of a new connection; a supervisor should start us again."""

    def __init__(self) -> None:
        super().__init__("polling is stuck: no answer and no error from the Bot API server")


class Poller:
    """Brings updates into the inbox until told to stop.

    Parameters
    ----------
    connect : callable
        Makes a new connection to the Bot API server.
    inbox : Inbox
        Where updates are kept.
    clock : Clock
        Real time.
    arrived : callable
        Called after something new was committed.
    poll_s : int
        Length of a long poll. [s]
    patience_s : float, optional
        How long a poll may neither end nor fail: three polls if not given. [s]
    """

    def __init__(
        self,
        connect: Callable[[], Awaitable[Api]],
        inbox: Inbox,
        clock: Clock,
        arrived: Callable[[], None],
        *,
        poll_s: int = POLL_S,
        patience_s: float | None = None,
    ) -> None:
        self._connect = connect
        self._inbox = inbox
        self._clock = clock
        self._arrived = arrived
        self._poll_s = poll_s
        self._patience_s = 3 * poll_s + 30 if patience_s is None else patience_s
        self._api: Api | None = None
        self._offset: int | None = None
        self._failures = 0
        self._hung = 0

    async def run(self, stop: asyncio.Event) -> None:
        """Poll until `stop` is set.

        Raises
        ------
        TokenRefused
            Where the server refuses the token, at the start or later.
        PollingStuck
            Where polls hang without an answer even on a new connection.
        """
        stopping = asyncio.create_task(stop.wait())
        try:
            while not stop.is_set():
                pause = await self._round(stopping)
                if pause:
                    await asyncio.wait({stopping}, timeout=pause)
        finally:
            stopping.cancel()
            await self._disconnect()

    async def _round(self, stopping: asyncio.Task[Any]) -> float:
        """One poll and its commit; returns how long to pause before the next. [s]"""
        try:
            if self._api is None:
                self._api = await _unless(stopping, self._connect(), None)
            found = await self._poll(self._api, stopping)
            await self._keep(self._api.me, found)
        except _Stopped:
            return 0.0
        except _Hung:
            return await self._unstick()
        except TelegramError as error:
            return self._pause_after(error)
        except Exception as error:  # noqa: BLE001 - the database may come back
            self._failures += 1
            report(log, "updates could not be kept: %s", describe(error))
            return wait_before(self._failures, LONGEST_PAUSE_S).total_seconds()
        self._failures = self._hung = 0
        return 0.0

    async def _poll(self, api: Api, stopping: asyncio.Task[Any]) -> list[Any]:
        poll = api.updates(self._offset, self._poll_s, ALLOWED)
        return await _unless(stopping, poll, self._patience_s)

    async def _keep(self, me: Me, found: list[Any]) -> None:
        """Commit a batch, then let the offset move, so that the next poll confirms it."""
        batch = sort_batch(found, me, self._clock.now())
        for arrival in batch.arrivals:
            if arrival.problem is not None:
                report(log, "update %s is parked: %s", arrival.update_id, arrival.problem)
        if await self._inbox.receive(batch.arrivals):
            self._arrived()
        if batch.last is not None:
            self._offset = batch.last + 1
        elif found:
            # nobody can tell what to confirm: go past as many as there were, if we know where
            self._offset = None if self._offset is None else self._offset + len(found)
            raise Unreadable("a batch without a single update_id")

    async def _unstick(self) -> float:
        self._hung += 1
        report(log, "a poll neither ended nor failed for %g s", self._patience_s)
        if self._hung > 1:
            raise PollingStuck
        await self._disconnect()
        return 0.0

    def _pause_after(self, error: TelegramError) -> float:
        if is_token_refused(error):
            raise TokenRefused from None
        wait = wait_asked(error)
        if wait is not None:
            return wait
        if is_conflict(error):
            log.warning("somebody else polls with this token, or a webhook is set; waiting")
            return CONFLICT_PAUSE_S * random.uniform(0.8, 1.4)  # noqa: S311 - two must not dance
        self._failures += 1
        level = logging.WARNING if type(error) is NetworkError else logging.INFO
        log.log(level, "polling failed, trying again: %s", type(error).__name__)
        return wait_before(self._failures, LONGEST_PAUSE_S).total_seconds()

    async def _disconnect(self) -> None:
        if self._api is not None:
            api, self._api = self._api, None
            await api.close()


@dataclass(frozen=True, slots=True)
class Batch:
    """What a poll brought: what to keep, and the highest update_id seen."""

    arrivals: Sequence[Arrival]
    last: int | None


def sort_batch(found: list[Any], me: Me, now: datetime) -> Batch:
    """Read each update alone: kept, dropped where it is not for us, parked where unreadable."""
    sorted_ones = (_arrival(update, me, now) for update in found)
    unique = {arrival.update_id: arrival for arrival in sorted_ones if arrival is not None}
    numbers = [number for number in map(update_number, found) if number is not None]
    return Batch(list(unique.values()), max(numbers, default=None))


def _arrival(update: Any, me: Me, now: datetime) -> Arrival | None:
    raw = json.dumps(update)
    number = update_number(update)
    name = f"unreadable-{hashlib.sha256(raw.encode()).hexdigest()[:16]}"
    try:
        came = read_update(update, me, now)
    except Unreadable as problem:
        return Arrival(name if number is None else str(number), "", raw, str(problem))
    except Exception as error:  # noqa: BLE001 - a shape nobody thought of
        return Arrival(name if number is None else str(number), "", raw, type(error).__name__)
    if came is None:
        return None
    address = came.address
    return Arrival(str(number), address.chat, raw)


class _Stopped(Exception):
    """We were asked to stop; what was under way is not confirmed and comes again."""


class _Hung(Exception):
    """Something neither ended nor failed in time."""


async def _unless(stopping: asyncio.Task[Any], work: Awaitable[T], patience_s: float | None) -> T:
    """Await `work` unless we are asked to stop or it hangs; then cancel it, and wait no longer."""
    task = asyncio.ensure_future(work)
    await asyncio.wait({task, stopping}, timeout=patience_s, return_when=asyncio.FIRST_COMPLETED)
    if task.done():
        return task.result()
    task.cancel()
    await asyncio.wait({task}, timeout=1)
    raise _Stopped if stopping.done() else _Hung
