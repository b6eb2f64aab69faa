"""``/start``, ``/help``, ``/settings``, ``/privacy`` and the chat's clock."""

from __future__ import annotations

import re
from datetime import time
from zoneinfo import ZoneInfo, ZoneInfoNotFoundError, available_timezones

from rapidfuzz import process

from bot.chat.model import Reply
from bot.chat.turn import Turn
from bot.chat.words import general
from bot.chat.words import settings as words
from bot.chat.words.text import speaking, spoken
from bot.reminders import planning
from bot.store.offers import Choice, Offer
from core.message.model import Command, Parsed
from core.schedule import zone_guess

_CLOCK = re.compile(r"\b(\d{1,2})[:.h](\d{2})\s{0,2}(am|pm)?\b", re.IGNORECASE)
_UNITS = {
    "fahrenheit": {"fahrenheit": True},
    "celsius": {"fahrenheit": False},
    "us": {"us_gallons": True},
    "uk": {"us_gallons": False},
    "imperial": {"us_gallons": False},
}


async def start(turn: Turn, _command: Command, _parsed: Parsed) -> list[Reply]:
    """The first words to a new chat."""
    return [await turn.reply(general.start())]


async def help_(turn: Turn, _command: Command, _parsed: Parsed) -> list[Reply]:
    """One screen, with examples from the keeper's own tanks."""
    names = [tank.name for tank in turn.tanks if tank.tank.named] or ["Fern"]
    return [await turn.reply(general.help_(names[0], names[1:]))]


async def privacy(turn: Turn, _command: Command, _parsed: Parsed) -> list[Reply]:
    """What is kept."""
    return [await turn.reply(general.privacy())]


async def show(turn: Turn, command: Command, _parsed: Parsed) -> list[Reply]:
    """``/settings`` shows; ``/settings fahrenheit`` and ``/settings uk gallons`` set units."""
    wanted = command.arguments.casefold().split()
    if "language" in wanted:
        return await _language(turn, wanted[wanted.index("language") + 1 :])
    changes = {key: value for word in wanted for key, value in _UNITS.get(word, {}).items()}
    if changes:
        await turn.change_chat(**changes)
    elif wanted:
        return [await turn.reply(words.how())]
    return [await turn.reply(_shown(turn))]


def _shown(turn: Turn) -> list[str]:
    chat = turn.chat
    lines = words.shown(
        chat.zone_name,
        known=chat.zone_known,
        fahrenheit=chat.fahrenheit,
        us_gallons=chat.us_gallons,
        quiet=chat.quiet,
    )
    return [*lines, *words.language(chat.language, _languages())]


def _languages() -> list[str]:
    return ["en", *spoken()]


async def _language(turn: Turn, wanted: list[str]) -> list[Reply]:
    """``/settings language pl``: one of those that have a catalogue, or English."""
    if len(wanted) != 1 or wanted[0] not in _languages():
        return [await turn.reply(words.language_unknown(_languages()))]
    await turn.change_chat(language=wanted[0])
    with speaking(wanted[0]):
        return [await turn.reply(_shown(turn))]


async def zone(turn: Turn, command: Command, _parsed: Parsed) -> list[Reply]:
    """``/zone Europe/Lisbon``, or ``it is 19:40 here``."""
    wanted = command.arguments.strip()
    clock = _clock(wanted)
    if clock is not None:
        return await _from_clock(turn, clock)
    name = _zone_named(wanted)
    if name is None:
        if not wanted:
            return [await turn.reply(words.zone_shown(turn.chat.zone_name, turn.local_now))]
        near = [found for found, _, _ in process.extract(wanted, _zones(), limit=3)]
        return [await turn.reply(words.zone_unknown(wanted, near))]
    return await set_zone(turn, name)


async def press_zone(turn: Turn, _offer: Offer, choice: Choice) -> list[Reply]:
    """Take one of the zones that a clock time may belong to."""
    return await set_zone(turn, choice.arguments["zone"])


async def set_zone(turn: Turn, name: str) -> list[Reply]:
    """Let the chat live by a zone; reminders keep their clock times in it."""
    await turn.change_chat(zone=name, zone_known=True)
    await planning.reschedule(turn.uow, turn.chat, turn.now, zone_changed=True)
    return [await turn.reply(words.zone_set(name, turn.local_now))]


async def _from_clock(turn: Turn, clock: time) -> list[Reply]:
    names = zone_guess(clock, turn.now)
    if not names:
        return [await turn.reply(words.no_such_clock(f"{clock:%H:%M}", turn.now))]
    await turn.change_chat(zone=names[0], zone_known=True)
    await planning.reschedule(turn.uow, turn.chat, turn.now, zone_changed=True)
    choices = [Choice(name, "set_zone", "", {"zone": name}) for name in names[:5]]
    return [await turn.reply(words.zone_guessed(names[0], turn.local_now), choices=choices)]


def _clock(text: str) -> time | None:
    found = _CLOCK.search(text)
    if found is None:
        return None
    hour, minute = int(found[1]), int(found[2])
    half = (found[3] or "").casefold()
    if half and 1 <= hour <= 12:
        hour = hour % 12 + (12 if half == "pm" else 0)
    return time(hour, minute) if hour < 24 and minute < 60 else None


def _zones() -> list[str]:
    return sorted(name for name in available_timezones() if "/" in name or name == "UTC")


def _zone_named(text: str) -> str | None:
    """The IANA name that is meant, whatever its case and spaces; a city alone will do."""
    wanted = text.strip().replace(" ", "_").casefold()
    for name in _zones():
        if wanted == name.casefold():
            return name
    cities = [name for name in _zones() if name.casefold().rsplit("/", 1)[-1] == wanted]
    try:
        return ZoneInfo(cities[0]).key if len(cities) == 1 else None
    except (ZoneInfoNotFoundError, ValueError):
        return None
