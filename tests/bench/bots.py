"""Two bots to measure: ours without Telegram's sending limits, and a bare echo.

python -m tests.bench.bots ours|echo
"""

from __future__ import annotations

import asyncio
import os
import signal
import sys

UNLIMITED = 10**9


async def ours() -> None:
    """`meniscus run` as it is, but that it may send as fast as it can."""
    from bot.clock import SystemClock
    from bot.defaults import Defaults
    from bot.opening import opened
    from bot.settings import load
    from bot.telegram import service
    from bot.telegram.limits import Rates

    settings = load().ready_to_run()
    stop = asyncio.Event()
    asyncio.get_running_loop().add_signal_handler(signal.SIGTERM, stop.set)
    rates = Rates(chat_every=0.0, group_most=UNLIMITED, overall_most=UNLIMITED)
    defaults = Defaults(**settings.defaults.model_dump())
    async with opened(str(settings.database.url), SystemClock(), defaults) as app:
        await service.run(app, settings, stop, rates=rates)


def echo() -> None:
    """Run python-telegram-bot with one handler that says each message back; nothing is kept."""
    from telegram import Update
    from telegram.ext import Application, ContextTypes, MessageHandler, filters

    async def say_back(update: Update, _: ContextTypes.DEFAULT_TYPE) -> None:
        assert update.message is not None
        await update.message.reply_text(update.message.text or "")

    root, token = os.environ["MENISCUS_TELEGRAM__API_URL"], os.environ["MENISCUS_TELEGRAM__TOKEN"]
    builder = Application.builder().token(token).base_url(f"{root}/bot").concurrent_updates(True)
    application = builder.build()
    application.add_handler(MessageHandler(filters.TEXT, say_back))
    application.run_polling()


if __name__ == "__main__":
    if sys.argv[1] == "echo":
        echo()
    else:
        asyncio.run(ours())
