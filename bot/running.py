"""`meniscus run`, wired: configuration, database, the Telegram bot, and signals that end it."""

from __future__ import annotations

import asyncio
import logging
import signal
from contextlib import suppress

from bot.clock import SystemClock
from bot.database_url import default_url
from bot.defaults import Defaults
from bot.opening import opened
from bot.settings import Settings


def serve(settings: Settings) -> int:
    """Run the bot until SIGINT or SIGTERM, and give the exit status.

    Raises
    ------
    StartError
        If the database cannot be opened.
    """
    logging.basicConfig(format="%(asctime)s %(levelname)s %(name)s: %(message)s")
    logging.getLogger("bot").setLevel(logging.INFO)  # others' info lines hold the token's URLs
    asyncio.run(_serve(settings))
    return 0


async def _serve(settings: Settings) -> None:
    from bot.telegram.service import run  # only this command needs it

    stop = asyncio.Event()
    for number in (signal.SIGINT, signal.SIGTERM):
        with suppress(NotImplementedError):  # on Windows Ctrl-C comes as KeyboardInterrupt
            asyncio.get_running_loop().add_signal_handler(number, stop.set)
    defaults = Defaults(**settings.defaults.model_dump())
    async with opened(settings.database.url or default_url(), SystemClock(), defaults) as app:
        await run(app, settings, stop)
