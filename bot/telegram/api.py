"""Calling the Bot API: the one place that touches python-telegram-bot.

Only its HTTP and its error classes are used. Its own polling confirms updates that sit in memory
alone, and its parsing of a batch fails as a whole on one unreadable update.
"""

from __future__ import annotations

import logging
import warnings
from dataclasses import dataclass
from typing import Any

from telegram import Bot, InputFile
from telegram.request import HTTPXRequest
from telegram.warnings import PTBDeprecationWarning, PTBUserWarning

POLL_MARGIN_S = 10.0
"""How much longer than the long poll we wait for its answer."""

Params = dict[str, Any]


@dataclass(frozen=True, slots=True)
class Me:
    """Who the bot is on Telegram."""

    id: int
    username: str


class Api:
    """Methods of the Bot API, by name, with plain parameters and plain results.

    Made by `connect`; errors are python-telegram-bot's, see `bot.telegram.errors`.
    """

    def __init__(self, bot: Bot, me: Me) -> None:
        self._bot = bot
        self.me = me

    async def call(self, method: str, **params: Any) -> Any:
        """Call a method; parameters that are None are left out."""
        return await self._bot.do_api_request(method, api_kwargs=params)

    async def updates(self, offset: int | None, timeout_s: int, allowed: list[str]) -> list[Any]:
        """One long poll: raw updates, all those below `offset` being confirmed by it."""
        found = await self._bot.do_api_request(
            "getUpdates",
            api_kwargs={"offset": offset, "timeout": timeout_s, "allowed_updates": allowed},
            read_timeout=timeout_s + POLL_MARGIN_S,
        )
        return found if isinstance(found, list) else []

    async def close(self) -> None:
        """Close the connections."""
        await self._bot.shutdown()


async def connect(token: str, root: str) -> Api:
    """Open connections to a Bot API server and ask it who we are.

    Parameters
    ----------
    token : str
        The bot's token.
    root : str
        Root of the server; ``/bot<token>/<method>`` is appended.

    Raises
    ------
    telegram.error.TelegramError
        InvalidToken where the token is refused; others where the server cannot be reached.
    """
    _quieten()
    bot = Bot(
        token,
        base_url=f"{root}/bot",
        base_file_url=f"{root}/file/bot",
        request=HTTPXRequest(
            connection_pool_size=64,
            connect_timeout=10,
            read_timeout=20,
            write_timeout=20,
            pool_timeout=30,
        ),
        get_updates_request=HTTPXRequest(
            connection_pool_size=2, connect_timeout=10, write_timeout=10, pool_timeout=10
        ),
    )
    try:
        await bot.initialize()
    except BaseException:
        await bot.shutdown()
        raise
    return Api(bot, Me(bot.bot.id, bot.bot.username or ""))


def upload(content: bytes, name: str) -> InputFile:
    """Wrap a file's content for an upload."""
    return InputFile(content, filename=name)


def _quieten() -> None:
    """Keep the token and keepers' words out of the log, and hush two hints meant for others.

    httpx logs every address, which holds the token; python-telegram-bot logs what it cannot
    parse. It also suggests its own wrappers of the methods that we call by name, and announces
    that a wait will be a timedelta, which `errors` reads either way.
    """
    logging.getLogger("httpx").setLevel(logging.WARNING)
    logging.getLogger("httpcore").setLevel(logging.WARNING)
    logging.getLogger("telegram").setLevel(logging.CRITICAL + 1)
    warnings.filterwarnings("ignore", r"\s*Please use 'Bot\.", PTBUserWarning)
    warnings.filterwarnings("ignore", ".*`retry_after` will be of type", PTBDeprecationWarning)
