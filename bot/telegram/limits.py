"""How fast we send: about one message a second to a chat, 20 a minute to a group, 30 a second.

The numbers are those of Telegram's "Bots FAQ" ("My bot is hitting limits, how do I avoid
this?"); what the server asks for with `retry_after` goes before them. Sliding windows, so that
nothing that was saved up goes out in one burst, and counted from when a message's answer came:
the server took it some time before, so that no window of the server's ever holds more.
"""

from __future__ import annotations

import asyncio
import time
from collections import OrderedDict, deque
from collections.abc import AsyncIterator, Awaitable, Callable
from contextlib import asynccontextmanager
from dataclasses import dataclass, field

from bot.delivery import Throttled

MOST_LANES = 10_000
"""How many chats are remembered; the ones quiet for longest are forgotten first."""


@dataclass(frozen=True, slots=True)
class Rates:
    """How much may be sent.

    Attributes
    ----------
    chat_every : float
        Least time from the end of one message to a chat to the start of the next. [s]
    group_most, group_span : int, float
        Messages to one group within a sliding window. [1, s]
    overall_most, overall_span : int, float
        Messages in all within a sliding window. [1, s]
    patience : float
        A longer wait is handed back as `Throttled` instead of being waited for here. [s]
    """

    chat_every: float = 1.0
    group_most: int = 20
    group_span: float = 60.5
    overall_most: int = 30
    overall_span: float = 1.0
    patience: float = 5.0


@dataclass(slots=True)
class _Lane:
    """One chat: when it may be sent to again, and when it was."""

    not_before: float = 0.0
    times: deque[float] = field(default_factory=deque)
    lock: asyncio.Lock = field(default_factory=asyncio.Lock)


class Limiter:
    """Gives each message its turn.

    Parameters
    ----------
    rates : Rates
        How much may be sent.
    clock : callable
        Monotonic seconds.
    sleep : callable
        Waits that many seconds.
    """

    def __init__(
        self,
        rates: Rates | None = None,
        clock: Callable[[], float] = time.monotonic,
        sleep: Callable[[float], Awaitable[None]] = asyncio.sleep,
    ) -> None:
        self._rates = rates or Rates()
        self._clock = clock
        self._sleep = sleep
        self._lanes: OrderedDict[str, _Lane] = OrderedDict()
        self._gate = asyncio.Lock()
        self._flying = 0
        self._landed: deque[float] = deque()
        self._landing = asyncio.Event()

    @asynccontextmanager
    async def turn(self, chat: str, *, group: bool) -> AsyncIterator[None]:
        """Wait until one message may go to a chat; the block sends it.

        Raises
        ------
        Throttled
            Where that would take longer than `Rates.patience`; nothing was counted then.
        """
        lane = self._lane(chat)
        self._check(self._wait(lane, group=group))
        async with lane.lock:
            while (wait := self._wait(lane, group=group)) > 0:
                self._check(wait)
                await self._sleep(wait)
            await self._take_off()
            try:
                yield
            finally:
                now = self._land()
                lane.not_before = max(lane.not_before, now + self._rates.chat_every)
                if group:
                    lane.times.append(now)

    def halt(self, chat: str, seconds: float) -> None:
        """Send nothing to a chat for a while, as the server asked."""
        lane = self._lane(chat)
        lane.not_before = max(lane.not_before, self._clock() + seconds)

    def _check(self, wait: float) -> None:
        if wait > self._rates.patience:
            raise Throttled(wait)

    def _wait(self, lane: _Lane, *, group: bool) -> float:
        now = self._clock()
        ready = lane.not_before
        if group:
            _forget(lane.times, now - self._rates.group_span)
            if len(lane.times) >= self._rates.group_most:
                ready = max(ready, lane.times[-self._rates.group_most] + self._rates.group_span)
        return ready - now

    async def _take_off(self) -> None:
        """Wait for a place among all that is under way or has just arrived."""
        rates = self._rates
        async with self._gate:  # first come, first served
            while True:
                now = self._clock()
                _forget(self._landed, now - rates.overall_span)
                if self._flying + len(self._landed) < rates.overall_most:
                    self._flying += 1
                    return
                if self._landed:
                    await self._sleep(self._landed[0] + rates.overall_span - now)
                else:
                    self._landing.clear()
                    await self._landing.wait()

    def _land(self) -> float:
        now = self._clock()
        self._flying -= 1
        self._landed.append(now)
        self._landing.set()
        return now

    def _lane(self, chat: str) -> _Lane:
        lane = self._lanes.setdefault(chat, _Lane())
        self._lanes.move_to_end(chat)
        if len(self._lanes) > MOST_LANES:
            oldest, idle = next(iter(self._lanes.items()))
            if not idle.lock.locked() and idle.not_before <= self._clock():
                del self._lanes[oldest]
        return lane


def _forget(times: deque[float], before: float) -> None:
    while times and times[0] <= before:
        times.popleft()
