"""A conversation in one process: the real house on a file, with a clock that is moved by hand."""

from __future__ import annotations

import tempfile
from collections.abc import AsyncIterator, Hashable
from contextlib import asynccontextmanager
from dataclasses import dataclass, field
from datetime import UTC, datetime, timedelta
from pathlib import Path
from typing import Any

from sqlalchemy.engine import URL, Dialect, Engine

from bot.app import App
from bot.chat.model import Address, Incoming, Reply
from bot.clock import SimulatedClock
from bot.defaults import Defaults
from tests.chat.remembered import Walk

START = datetime(2026, 3, 1, 12, tzinfo=UTC)
"""A Sunday at noon."""


@dataclass
class Talk:
    """One chat: what is said, what comes back, and the reminders that arrive."""

    house: App
    clock: SimulatedClock
    group: bool = False
    chat: str = "1"
    messenger: str = "test"
    arrived: list[Reply] = field(default_factory=list)
    last: list[Reply] = field(default_factory=list)
    count: int = 0
    walk: Walk | None = None

    @property
    def app(self) -> App:
        """The house, to look into it or to change it."""
        if self.walk is not None:
            self.walk.end()
        return self.house

    @property
    def address(self) -> Address:
        return Address(self.messenger, self.chat)

    async def say(self, text: str, **parts: Any) -> list[Reply]:
        """Send a message and return the replies."""
        self.count += 1
        incoming = Incoming(
            **{
                "address": self.address,
                "update_id": f"{self.chat}-{self.count}",
                "kind": "message",
                "at": self.clock.now(),
                "text": text,
                "author_id": "anna",
                "author_name": "Anna",
                "message_ref": f"m{self.count}",
                "group": self.group,
                "addressed": not self.group,
                **parts,
            }
        )
        step = (incoming, self.clock.now())
        known = None if self.walk is None else self.walk.known(step)
        replies = await self._answered(incoming, step) if known is None else list(known)
        self.last = replies or self.last
        return replies

    async def _answered(self, incoming: Incoming, step: Hashable) -> list[Reply]:
        if self.walk is not None:
            self.walk.leave()
        replies = await self.house.handle(incoming)
        for number, reply in enumerate(replies):
            await self.house.sent(self.address, reply, f"r{self.count}.{number}")
        if self.walk is not None:
            self.walk.arrive(step, tuple(replies))
        return replies

    async def text(self, text: str, **parts: Any) -> str:
        """Send a message and return all that came back, as one text."""
        return "\n".join(reply.text for reply in await self.say(text, **parts))

    async def facts(self, text: str, **parts: Any) -> dict[str, Any]:
        """Send a message and return the facts of the only reply."""
        (reply,) = await self.say(text, **parts)
        return dict(reply.facts)

    async def press(self, number: int, reply: Reply | None = None, **parts: Any) -> list[Reply]:
        """Press a button, of the latest reply that has buttons unless another is given."""
        held = reply or next(r for r in reversed([*self.arrived, *self.last]) if r.buttons)
        action = held.buttons[number - 1].action
        return await self.say("", kind="press", action=action, **parts)

    async def wait(self, **span: float) -> list[Reply]:
        """Let time pass and return the reminders that arrive on the way."""
        self.arrived.clear()
        target = self.clock.now() + timedelta(**span)
        known = None if self.walk is None else self.walk.known(target)
        if known is None:
            await self._pass(target)
        else:
            self.clock.move_to(target)
            self.arrived += known
        if self.arrived:
            self.last = []
        return list(self.arrived)

    async def _pass(self, target: datetime) -> None:
        if self.walk is not None:
            self.walk.leave()
        while (due := await self.house.next_due()) is not None and due <= target:
            self.clock.move_to(due)
            await self.house.deliver_due()
        self.clock.move_to(target)
        await self.house.deliver_due()
        if self.walk is not None:
            self.walk.arrive(target, tuple(self.arrived))

    async def send(self, _address: Address, reply: Reply) -> str:
        """Carry a reminder: the harness is its own courier."""
        self.arrived.append(reply)
        return f"d{len(self.arrived)}"


_compiled: dict[str, tuple[Dialect, dict[Any, Any]]] = {}


def _compile_once(engine: Engine) -> None:
    """Let the engines of all tests share their compiled statements: a third of a test's time.

    SQLAlchemy keeps them by dialect object, so that the engines share that as well.
    """
    shared, statements = _compiled.setdefault(engine.dialect.name, (engine.dialect, {}))
    engine.dialect = shared
    engine.update_execution_options(compiled_cache=statements)


_empty: list[bytes] = []


async def _empty_database() -> bytes:
    """A database that was brought up to date, made once: the migrations take 0.1 s a test."""
    if not _empty:
        with tempfile.TemporaryDirectory() as folder:
            path = Path(folder) / "empty.sqlite3"
            async with App.open(f"sqlite+aiosqlite:///{path}", SimulatedClock(START)):
                pass
            _empty.append(path.read_bytes())
    return _empty[0]


@asynccontextmanager
async def talking(
    folder: Path,
    *,
    group: bool = False,
    zone: str | None = "UTC",
    start: datetime = START,
    url: URL | str | None = None,
    language: str = "en",
    remembering: bool = False,
) -> AsyncIterator[Talk]:
    """Open a house on a file of a folder, unless on another database, and a chat in it.

    With `remembering` what other tests said from the beginning on is not worked out again: for a
    new file, and a house that nobody patches.
    """
    walk = None
    clock = SimulatedClock(start)
    if url is None:
        path = folder / "chat.sqlite3"
        if not path.exists():
            path.write_bytes(await _empty_database())
        url = f"sqlite+aiosqlite:///{path}"
        walk = Walk(path, (group, zone, start, language)) if remembering else None
    async with App.open(url, clock, Defaults(timezone=zone, language=language)) as app:
        _compile_once(app.database.engine.sync_engine)
        talk = Talk(app, clock, group=group, walk=walk)
        app.add_courier(talk)
        yield talk
