"""The real bot as a process of its own, against the local Bot API server."""

from __future__ import annotations

import asyncio
import os
import signal
import sys
from collections.abc import AsyncIterator
from contextlib import asynccontextmanager
from pathlib import Path

from tests.botapi import BotApi

ROOT = Path(__file__).parents[2]


class BotProcess:
    """`meniscus run` on a database, started, stopped and killed.

    Parameters
    ----------
    server : BotApi
        Running.
    url : str
        Database URL as an operator writes it.
    log : Path
        Where its standard error goes; kept over restarts.
    """

    def __init__(self, server: BotApi, url: str, log: Path) -> None:
        self._server = server
        self._url = url
        self.log = log
        self._process: asyncio.subprocess.Process | None = None

    async def start(self, *command: str) -> None:
        """Start it; it polls some time later."""
        kept = {k: v for k, v in os.environ.items() if not k.startswith("MENISCUS_")}
        settings = {
            "MENISCUS_TELEGRAM__TOKEN": self._server.token,
            "MENISCUS_TELEGRAM__API_URL": self._server.url,
            "MENISCUS_DATABASE__URL": self._url,
        }
        with self.log.open("ab") as log:
            self._process = await asyncio.create_subprocess_exec(
                sys.executable,
                *(command or ("-m", "bot", "run")),
                cwd=ROOT,
                env={**kept, **settings, "PYTHONPATH": str(ROOT)},
                stdout=log,
                stderr=log,
            )

    @property
    def pid(self) -> int:
        """The process's id."""
        assert self._process is not None
        return self._process.pid

    @property
    def alive(self) -> bool:
        """Whether it still runs, as far as we were told."""
        return self._process is not None and self._process.returncode is None

    def kill(self) -> None:
        """SIGKILL, at once."""
        if self.alive:
            os.kill(self.pid, signal.SIGKILL)

    async def wait(self, timeout_s: float = 30.0) -> int:
        """Its exit status, once it has ended."""
        assert self._process is not None
        async with asyncio.timeout(timeout_s):
            return await self._process.wait()

    async def stop(self, number: int = signal.SIGTERM) -> int:
        """Ask it to end and give its exit status."""
        if self.alive:
            os.kill(self.pid, number)
        return await self.wait()


@asynccontextmanager
async def running_bot(server: BotApi, url: str, log: Path) -> AsyncIterator[BotProcess]:
    """A bot for as long as the block runs, whatever state it leaves it in."""
    bot = BotProcess(server, url, log)
    await bot.start()
    try:
        yield bot
    finally:
        bot.kill()
        await bot.wait()
