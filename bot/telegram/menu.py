"""The menu of commands that Telegram shows beside the message field."""

from __future__ import annotations

import json
import logging

from telegram.error import TelegramError

from bot.telegram.api import Api
from bot.telegram.errors import delivery_error

log = logging.getLogger(__name__)

COMMANDS = {
    "help": "What I understand, with examples",
    "tank": "Show, add or change a tank",
    "remind": "What is due and when",
    "zone": "Your time zone",
    "settings": "Units, language, quiet hours",
    "privacy": "What I keep, and how to have it deleted",
}


async def set_menu(api: Api) -> None:
    """Polling instead of a webhook, and the menu; a failure of the menu is no reason to stop."""
    commands = [{"command": name, "description": text} for name, text in COMMANDS.items()]
    try:
        await api.call("deleteWebhook", drop_pending_updates=False)
        await api.call("setMyCommands", commands=json.dumps(commands))
    except TelegramError as error:
        log.warning("the menu was not set: %s", type(delivery_error(error)).__name__)
