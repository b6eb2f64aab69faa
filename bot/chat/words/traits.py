"""What was told of a tank for good, said back."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from datetime import date

from bot.chat.words import names
from bot.chat.words.numbers import MONTHS
from bot.chat.words.text import N_, _, ngettext
from core.message.doubts import FUTURE
from core.tank import Setup

REMIND_ME = N_("remind me in time")


def day(when: date) -> str:
    """A day as people write it."""
    told = _("{day} {month} {year}")
    return told.format(day=when.day, month=_(MONTHS[when.month - 1]), year=when.year)


def set_up(tank: str, first: date, today: date) -> list[str]:
    """When a tank was set up is on record."""
    age = (today - first).days
    if age == 0:
        template = _("{tank}: set up {day}, today.")
    elif age == 1:
        template = _("{tank}: set up {day}, yesterday.")
    else:
        template = ngettext(
            "{tank}: set up {day}, {days} day ago.", "{tank}: set up {day}, {days} days ago.", age
        )
    told = template.format(tank=tank, day=day(first), days=age)
    if age <= 60:
        return [
            told,
            _("Send ammonia and nitrite each day for now: I tell you how far its filter is."),
        ]
    return [told]


def carbon(tank: str, *, has: bool) -> list[str]:
    """Whether carbon dioxide is injected is on record."""
    template = (
        _("{tank}: CO2 is injected. Its pH is held against its own daily swing from now on.")
        if has
        else _("{tank}: no CO2 is injected.")
    )
    return [template.format(tank=tank)]


def made_for(tank: str, setup: Setup) -> list[str]:
    """What a tank is made for is on record, and what that changes."""
    return [_(_MADE_FOR[setup]).format(tank=tank)]


_MADE_FOR: Mapping[Setup, str] = {
    "planted": N_("{tank}: planted. Oxygen is judged by its low before dawn from now on."),
    "unplanted": N_("{tank}: no plants grow in it."),
    "reef": N_("{tank}: a reef. Copper, nitrate and salinity are judged for corals from now on."),
    "fish_only": N_("{tank}: fish only. Salinity may fall by 2 g/kg a day, not only 1."),
}


def not_the_sea(tank: str) -> list[str]:
    """A reef in fresh water."""
    return [
        _("{tank} is no marine tank on record. If it is one, send: /tank {tank} marine").format(
            tank=tank
        )
    ]


def kit(analyte: str, until: date, tank: str | None, *, past: bool) -> list[str]:
    """Until when a kit is good is on record."""
    if past:
        template = (
            _("{tank}: the {name} kit ended on {day}: I say so beside its readings.")
            if tank
            else _("The {name} kit ended on {day}: I say so beside its readings.")
        )
    else:
        template = (
            _("{tank}: the {name} kit is good until {day}.")
            if tank
            else _("The {name} kit is good until {day}.")
        )
    return [template.format(tank=tank, name=names.label(analyte), day=day(until))]


def renew_task(analyte: str, until: date) -> str:
    """The task of a reminder to get a new kit."""
    told = _("renew the {name} kit (good until {day})")
    return told.format(name=names.label(analyte), day=day(until))


def reminder_set(shown: str) -> list[str]:
    """A reminder was made."""
    return [_("I remind you {shown}.").format(shown=shown)]


def problem(reason: str, tank: str | None) -> list[str]:
    """The day was not understood; nothing was kept. `tank` is a keeper's own, for the example."""
    if reason == FUTURE:
        return [_("That day is still to come, so nothing was kept.")]
    if tank is None:
        return [_("I do not understand that day. Send for example: set up on 3 march")]
    told = _("I do not understand that day. Send for example: {tank} was set up on 3 march")
    return [told.format(tank=tank)]


def which_tank(tanks: Sequence[str]) -> list[str]:
    """No tank to keep it of."""
    if not tanks:
        return [_("Which tank? Add one first: /tank new Fern 90 l fresh")]
    return [_("Which tank is that? Say its name first: {tanks}.").format(tanks=", ".join(tanks))]
