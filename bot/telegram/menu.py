"""The menu of commands that Telegram shows beside the message field."""

from __future__ import annotations

import json
import logging

from telegram.error import TelegramError

from bot.chat.words.text import N_, _, speaking, spoken
from bot.telegram.api import Api
from bot.telegram.errors import delivery_error

log = logging.getLogger(__name__)

COMMANDS = {
    "help": N_("What I understand, with examples"),
    "tank": N_("Show, add or change a tank"),
    "remind": N_("What is due and when"),
    "zone": N_("Your time zone"),
    "settings": N_("Units, language, quiet hours"),
    "privacy": N_("What I keep, and how to have it deleted"),
}


async def set_menu(api: Api) -> None:
    """Polling instead of a webhook, and the menu; a failure of the menu is no reason to stop.

    Telegram shows each person the menu of their own language, where there is one.
    """
    try:
        await api.call("deleteWebhook", drop_pending_updates=False)
        await api.call("setMyCommands", commands=_commands("en"))
        for language in spoken():
            commands = _commands(language)
            await api.call("setMyCommands", commands=commands, language_code=language)
    except TelegramError as error:
        log.warning("the menu was not set: %s", type(delivery_error(error)).__name__)


def _commands(language: str) -> str:
    with speaking(language):
        told = [{"command": name, "description": _(text)} for name, text in COMMANDS.items()]
    return json.dumps(told)
