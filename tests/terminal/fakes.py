"""A house with nobody in it: it records what comes in and answers as it was told to."""

from __future__ import annotations

import asyncio
from collections.abc import Callable
from contextlib import suppress
from datetime import UTC, datetime

from bot.chat.model import Address, Button, Incoming, Line, Reply
from bot.clock import Clock, SimulatedClock
from bot.delivery import Unreachable
from bot.terminal.session import Session

START = datetime(2026, 3, 1, 9, 0, tzinfo=UTC)


def reply(text: str, *labels: str, **rest: object) -> Reply:
    buttons = tuple(Button(label, f"1:7:{place}") for place, label in enumerate(labels))
    return Reply((Line(text),), buttons, **rest)  # type: ignore[arg-type]


class FakeApp:
    """Stands where `bot.app.App` does."""

    def __init__(self, clock: Clock) -> None:
        self.clock = clock
        self.changed = asyncio.Event()
        self.heard: list[Incoming] = []
        self.noted: list[tuple[Address, Reply, str]] = []
        self.due: list[tuple[datetime, Address, Reply]] = []
        self.answer: Callable[[Incoming], list[Reply]] = lambda said: [reply(f"heard {said.text}")]
        self.courier: Session | None = None
        self.refs: list[str | None] = []
        self.undeliverable = 0

    async def handle(self, incoming: Incoming) -> list[Reply]:
        self.heard.append(incoming)
        return self.answer(incoming)

    async def sent(self, address: Address, said: Reply, message_ref: str) -> None:
        self.noted.append((address, said, message_ref))

    async def next_due(self) -> datetime | None:
        return min((due for due, _, _ in self.due), default=None)

    async def deliver_due(self) -> int:
        now = self.clock.now()
        ready = sorted((item for item in self.due if item[0] <= now), key=lambda item: item[0])
        if self.undeliverable:
            return 0
        for item in ready:
            self.due.remove(item)
            assert self.courier is not None
            with suppress(Unreachable):  # given back and tried again later, in the real house
                self.refs.append(await self.courier.send(item[1], item[2]))
        return len(ready)

    async def names(self, _address: Address) -> list[str]:
        return ["Fern", "Quarry", "Reading room"]


class Shown:
    """An output that keeps what it was shown."""

    def __init__(self) -> None:
        self.all: list[tuple[int, str, datetime]] = []
        self.broken = False

    def show(self, said: Reply, *, line: int, now: datetime) -> None:
        if self.broken:
            raise BrokenPipeError
        self.all.append((line, said.text, now))

    def done(self, *, line: int) -> None:
        self.all.append((line, "<done>", START))

    @property
    def texts(self) -> list[str]:
        return [text for _, text, _ in self.all]


class Table:
    """A session on a fake house, with a simulated clock unless told otherwise."""

    def __init__(self, *, group: bool = False, clock: Clock | None = None) -> None:
        self.clock = clock or SimulatedClock(START)
        self.app = FakeApp(self.clock)
        self.shown = Shown()
        self.session = Session(
            self.app,  # type: ignore[arg-type]
            self.clock,
            self.shown,
            over=asyncio.Event(),
            group=group,
        )
        self.app.courier = self.session

    async def take(self, *lines: str) -> None:
        for line in lines:
            await self.session.take(line)

    def schedule(self, due: datetime, text: str, *labels: str, **rest: object) -> None:
        item = (due, self.session.address, reply(text, *labels, kind="reminder", **rest))
        self.app.due.append(item)
