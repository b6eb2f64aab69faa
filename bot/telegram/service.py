"""The bot on Telegram: poller, inbox, reminders and the couriers between them, until stopped."""

from __future__ import annotations

import asyncio
import logging
import os
import secrets
import socket
from collections.abc import AsyncIterator, Awaitable, Callable
from contextlib import AsyncExitStack, ExitStack, asynccontextmanager
from functools import partial
from typing import TYPE_CHECKING, Protocol

from telegram.error import TelegramError

from bot.clock import SystemClock
from bot.database_url import sqlite_file
from bot.inbox.pool import Pool
from bot.inbox.rows import Inbox
from bot.inbox.trouble import wait_before
from bot.inbox.worker import Worker
from bot.telegram.api import Api, connect
from bot.telegram.errors import is_token_refused, wait_asked
from bot.telegram.limits import Limiter, Rates
from bot.telegram.menu import set_menu
from bot.telegram.messenger import Telegram
from bot.telegram.poller import LONGEST_PAUSE_S, Poller, TokenRefused
from bot.telegram.read import MESSENGER
from bot.terminal.lock import DatabaseBusy, held

if TYPE_CHECKING:
    from bot.app import App
    from bot.settings import Settings

log = logging.getLogger(__name__)

Reach = Callable[[], Awaitable[Api]]


class Background(Protocol):
    """Something that runs beside the bot, such as the clock that wakes the reminders."""

    async def run(self, stop: asyncio.Event) -> None:
        """Run until `stop` is set."""
        ...


async def run(
    app: App,
    settings: Settings,
    stop: asyncio.Event,
    *,
    waker: Background | None = None,
    rates: Rates | None = None,
) -> None:
    """Serve Telegram until `stop` is set; then end what is in hand and return.

    Parameters
    ----------
    app : App
        The house.
    settings : Settings
        With the token in its place.
    stop : asyncio.Event
        Set by whoever wants it to end.
    waker : Background, optional
        What delivers reminders; the house's own if not given.
    rates : Rates, optional
        How fast to send; Telegram's limits if not given.

    Raises
    ------
    StartError
        Where the token is refused, or polling hangs for good.
    """
    token = settings.telegram.token
    if token is None:
        raise TokenRefused
    reach = partial(connect, token.get_secret_value(), settings.telegram.api_url)
    api = await _first_connection(reach, stop)
    if api is None:
        return
    async with AsyncExitStack() as stack:
        stack.push_async_callback(api.close)
        log.info("on Telegram as @%s", api.me.username)
        await _serve(app, api, reach, stop, waker or _own_waker(app), rates)


async def _serve(
    app: App,
    api: Api,
    reach: Reach,
    stop: asyncio.Event,
    waker: Background,
    rates: Rates | None,
) -> None:
    clock = SystemClock()
    messenger = Telegram(api, Limiter(rates))
    app.add_courier(messenger)
    inbox = Inbox(app.database, clock, messenger=MESSENGER, owner=_owner())
    pool = Pool(inbox, Worker(inbox, messenger, app), clock)
    poller = Poller(reach, inbox, clock, pool.wake)
    async with _alone(app, inbox):
        await set_menu(api)
        parts = (_part(part, stop) for part in (pool, poller, waker))
        ended = await asyncio.gather(*parts, return_exceptions=True)
    for error in ended:
        if error is not None:
            raise error


async def _part(part: Background, stop: asyncio.Event) -> None:
    """Run a part; should it fail, the others are told to stop and end what they hold."""
    try:
        await part.run(stop)
    finally:
        stop.set()


async def _first_connection(reach: Reach, stop: asyncio.Event) -> Api | None:
    """Connect, however long the network takes to come up; None where we are stopped first."""
    stopping = asyncio.create_task(stop.wait())
    failures = 0
    try:
        while not stop.is_set():
            try:
                return await reach()
            except TelegramError as error:
                if is_token_refused(error):
                    raise TokenRefused from None
                failures += 1
                wait = wait_asked(error) or wait_before(failures, LONGEST_PAUSE_S).total_seconds()
                log.warning("no way to Telegram yet: %s", type(error).__name__)
            await asyncio.wait({stopping}, timeout=wait)
    finally:
        stopping.cancel()
    return None


@asynccontextmanager
async def _alone(app: App, inbox: Inbox) -> AsyncIterator[None]:
    """Take over at once what a dead process held, where it is certain that none is alive.

    A SQLite file is on one machine, where the operating system knows who lives. On PostgreSQL,
    and beside another process that lives, a dead one's leases run out by themselves.
    """
    path = sqlite_file(app.database.url.render_as_string(hide_password=False))
    with ExitStack() as stack:
        if path is not None:
            try:
                stack.enter_context(held(path.with_name(f"{path.name}-run")))
            except DatabaseBusy:
                log.warning("another bot runs on %s; only PostgreSQL is made for that", path)
            else:
                await inbox.release_all()
                await app.take_over(MESSENGER)
        yield


def _owner() -> str:
    return f"{socket.gethostname()}-{os.getpid()}-{secrets.token_hex(4)}"


def _own_waker(app: App) -> Background:
    from bot.reminders.waker import Waker

    return Waker(app)
