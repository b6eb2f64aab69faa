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


def ammonia_asked(tank: str, said: str) -> str:
    """Ammonia was told in words that are asked about and not answered."""
    told = _("{tank}: no amount now: “{said}” is still asked about. Test ammonia and pH first.")
    return told.format(tank=tank, said=said)


def volume(tank: str, before: float, now: float) -> str:
    """The tank was told to hold another amount of water since."""
    told = _(
        "{tank}: no amount now: it was set for {before}, the tank holds {now}. "
        "Test first, then ask for the dose anew."
    )
    return told.format(tank=tank, before=litres(before), now=litres(now))


def untold(tank: str, said: str) -> str:
    """What went in since is on no record: it may be what the reminder is of."""
    told = _("{tank}: no amount now: “{said}” is not on record. Give nothing, say what went in.")
    return told.format(tank=tank, said=said)


def reached(tank: str, goal: str) -> str:
    """The goal of the plan is measured; `goal` says so."""
    return _("{tank}: {goal}").format(tank=tank, goal=goal)


def is_in(tank: str) -> str:
    """The part is on record."""
    return _("{tank}: give nothing: this part is on record already.").format(tank=tank)
