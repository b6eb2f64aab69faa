"""Why a reminder of a dose no longer names its amount."""

from __future__ import annotations

from bot.chat.words.numbers import litres, plain
from bot.chat.words.text import _


def poison(tank: str) -> str:
    """A poison was called out or read since."""
    told = _("{tank}: no dose and no amount now: what was told of its water still stands. Test it.")
    return told.format(tank=tank)


def ammonia(tank: str, value: float) -> str:
    """The last reading of ammonia forbids what raises pH. [mg/L]"""
    told = _(
        "{tank}: no amount now: ammonia was {value} mg/L. "
        "Test ammonia and pH first, then ask for the dose anew."
    )
    return told.format(tank=tank, value=plain(value, 2))


def volume(tank: str, before: float, now: float) -> str:
    """The tank was told to hold another amount of water since."""
    told = _(
        "{tank}: no amount now: it was set for {before}, the tank holds {now}. "
        "Test first, then ask for the dose anew."
    )
    return told.format(tank=tank, before=litres(before), now=litres(now))
