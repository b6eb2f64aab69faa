"""Words for what a tank uses up a day, and how often a dose makes up for it."""

from __future__ import annotations

from bot.chat.words import names
from bot.chat.words.levels import unit
from bot.chat.words.numbers import plain
from bot.chat.words.text import _, ngettext


def rises(analyte: str, rate: float) -> str:
    """It builds up. [unit/day]"""
    return _("{name} is not used up: it rises by about {rate}{unit} a day.").format(
        name=names.label(analyte), rate=plain(rate, 2), unit=unit(analyte)
    )


def every(tank: str, analyte: str, days: int, amount: float, rate: float) -> str:
    """So much once in so many days makes up for the use of a day."""
    return ngettext(
        "{tank}: about every day {amount}{unit} {name}: it uses {rate}{unit} a day by the last two"
        " readings.",
        "{tank}: about every {days} days {amount}{unit} {name}: it uses {rate}{unit} a day by the"
        " last two readings.",
        days,
    ).format(
        tank=tank,
        days=days,
        amount=plain(amount, 1),
        unit=unit(analyte),
        name=names.analyte(analyte),
        rate=plain(rate, 2),
    )


def ask(analyte: str, amount: float) -> str:
    """What to ask for the grams."""
    return _(
        "For the grams ask: dose {name} +{amount}. Test weekly: use changes with light."
    ).format(name=names.analyte(analyte), amount=plain(amount, 1))


def first_up(analyte: str, now: float, wish: float) -> str:
    """It stands under the wish."""
    return _("It is at {now}{unit}: first ask dose {name} {wish}.").format(
        now=plain(now, 1), unit=unit(analyte), name=names.analyte(analyte), wish=plain(wish, 1)
    )


def first_down(analyte: str, now: float, wish: float) -> str:
    """It stands over the wish."""
    return _("It is at {now}{unit}: dose nothing until it has come down to {wish}.").format(
        now=plain(now, 1), unit=unit(analyte), wish=plain(wish, 1)
    )


def by_no_calendar() -> str:
    """Nothing tells that any is used."""
    return _("Dose by no calendar then: test weekly, and dose when it has fallen.")
