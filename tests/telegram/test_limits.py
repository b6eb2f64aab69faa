"""Sending limits on a clock of our own: Telegram's "Bots FAQ" gives 1, 20 and 30."""

from __future__ import annotations

import asyncio
import heapq
import itertools
from collections import Counter

import pytest

from bot.delivery import Throttled
from bot.telegram.limits import Limiter, Rates


class Time:
    """Seconds that pass only while everybody sleeps."""

    def __init__(self) -> None:
        self.now = 1000.0
        self._sleepers: list[tuple[float, int, asyncio.Future[None]]] = []
        self._numbers = itertools.count()

    def read(self) -> float:
        return self.now

    async def sleep(self, seconds: float) -> None:
        future: asyncio.Future[None] = asyncio.get_running_loop().create_future()
        heapq.heappush(self._sleepers, (self.now + seconds, next(self._numbers), future))
        await future

    async def run(self, *tasks: asyncio.Task[None]) -> None:
        """Let time pass until all tasks are done."""
        while True:
            for _ in range(20):
                await asyncio.sleep(0)
            if all(task.done() for task in tasks):
                break
            if not self._sleepers:
                continue  # somebody still has a step to make
            at, _, future = heapq.heappop(self._sleepers)
            self.now = max(self.now, at)
            future.set_result(None)
        for task in tasks:
            task.result()


PATIENT = Rates(patience=1e9)


async def _send_all(rates: Rates, chats: list[str]) -> list[tuple[float, str]]:
    time = Time()
    limiter = Limiter(rates, time.read, time.sleep)
    sent: list[tuple[float, str]] = []

    async def send(chat: str) -> None:
        async with limiter.turn(chat, group=chat.startswith("-")):
            sent.append((time.now, chat))

    await time.run(*(asyncio.create_task(send(chat)) for chat in chats))
    return sent


def _most_within(times: list[float], span: float) -> int:
    return max(sum(1 for other in times if t <= other < t + span) for t in times)


async def test_one_a_second_to_a_chat() -> None:
    times = [at for at, _ in await _send_all(PATIENT, ["7"] * 10)]
    assert _most_within(times, 1.0) == 1
    assert times[-1] - times[0] == pytest.approx(9.0)


async def test_twenty_a_minute_to_a_group() -> None:
    times = [at for at, _ in await _send_all(PATIENT, ["-7"] * 70)]
    assert _most_within(times, 60.0) == 20
    assert times[-1] - times[0] < 4 * 60.5


async def test_thirty_a_second_in_all_and_no_burst_of_what_was_saved_up() -> None:
    sent = await _send_all(PATIENT, [str(number) for number in range(300)])
    times = [at for at, _ in sent]
    assert _most_within(times, 1.0) == 30
    assert times[-1] - times[0] < 10.0
    assert max(Counter(chat for _, chat in sent).values()) == 1


async def test_a_slow_server_never_sees_more_in_one_second() -> None:
    time = Time()
    limiter = Limiter(PATIENT, time.read, time.sleep)
    accepted: list[float] = []

    async def send(number: int) -> None:
        async with limiter.turn(str(number), group=False):
            delay = (number * 37 % 11) / 10  # the first of a burst may arrive last
            await time.sleep(delay)
            accepted.append(time.now)
            await time.sleep(0.1)

    await time.run(*(asyncio.create_task(send(number)) for number in range(200)))
    assert _most_within(accepted, 1.0) <= 30


async def test_first_come_first_served() -> None:
    sent = await _send_all(PATIENT, [str(number) for number in range(100)])
    assert [chat for _, chat in sent] == [str(number) for number in range(100)]


async def test_a_halt_holds_its_chat_alone_and_nothing_lifts_it() -> None:
    time = Time()
    limiter = Limiter(Rates(), time.read, time.sleep)
    limiter.halt("1", 30)
    async with limiter.turn("2", group=False):
        pass
    time.now += 29
    limiter.halt("1", 6)
    with pytest.raises(Throttled) as caught:
        async with limiter.turn("1", group=False):
            raise AssertionError("sent during a halt")
    assert caught.value.retry_after == pytest.approx(6)
    time.now += 6
    async with limiter.turn("1", group=False):
        pass


async def test_a_shorter_halt_does_not_shorten_a_longer_one() -> None:
    time = Time()
    limiter = Limiter(Rates(), time.read, time.sleep)
    limiter.halt("1", 60)
    limiter.halt("1", 10)
    time.now += 30
    with pytest.raises(Throttled):
        async with limiter.turn("1", group=False):
            raise AssertionError("sent during a halt")


async def test_a_wait_beyond_patience_is_handed_back_and_counts_nothing() -> None:
    time = Time()
    limiter = Limiter(Rates(chat_every=0.0, patience=2.0), time.read, time.sleep)
    for _ in range(20):
        async with limiter.turn("-7", group=True):
            pass
    for _ in range(5):
        with pytest.raises(Throttled) as caught:
            async with limiter.turn("-7", group=True):
                raise AssertionError("the 21st of a minute")
    assert caught.value.retry_after == pytest.approx(60.5)


async def test_a_failed_message_counts_all_the_same() -> None:
    time = Time()
    limiter = Limiter(Rates(patience=0.5), time.read, time.sleep)
    with pytest.raises(ValueError, match="lost"):
        async with limiter.turn("7", group=False):
            raise ValueError("lost")
    with pytest.raises(Throttled):
        async with limiter.turn("7", group=False):
            raise AssertionError("it may have arrived, so the next must wait")


async def test_quiet_chats_are_forgotten(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("bot.telegram.limits.MOST_LANES", 10)
    time = Time()
    limiter = Limiter(Rates(), time.read, time.sleep)
    for number in range(50):
        time.now += 2
        async with limiter.turn(str(number), group=False):
            pass
    assert len(limiter._lanes) <= 10
