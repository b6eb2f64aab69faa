"""Words about what was done and measured before."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from datetime import datetime, timedelta
from typing import Final

from bot.chat.words import names, numbers, readings
from bot.chat.words.text import N_, _, ngettext
from core.message.model import Event, Value

DEEDS: Final[Mapping[str, str]] = {
    "water_change": N_("water change"),
    "dose": N_("dose"),
    "filter": N_("cleaning of the filter"),
    "fed": N_("feeding"),
    "added": N_("animal that came"),
    "lost": N_("loss"),
    "measured": N_("measurement"),
}


def deed(event: Event, at: datetime, now: datetime) -> str:
    """An event with its moment."""
    return _("{when}: {told}").format(when=numbers.when(at, now), told=readings.event(event))


def measurement(values: Sequence[Value], at: datetime, now: datetime) -> str:
    """What was measured at one moment."""
    told = ", ".join(numbers.entered(value) for value in values)
    return _("{when}: {told}").format(when=numbers.when(at, now), told=told)


def last(tank: str, told: str, ago: timedelta) -> str:
    """The newest, and how long ago it was."""
    days = ago // timedelta(days=1)
    if days < 1:
        return names.of_tank(tank, told)
    template = ngettext("{tank}: {days} day ago. {told}", "{tank}: {days} days ago. {told}", days)
    return template.format(tank=tank, days=days, told=told)


def yes(tank: str, told: str) -> str:
    """It was done then."""
    return _("{tank}: yes. {told}").format(tank=tank, told=told)


def no(tank: str, kind: str) -> str:
    """It was not done then, as far as anybody said."""
    return _("{tank}: no {deed} on record for then.").format(tank=tank, deed=_(DEEDS[kind]))


def never(tank: str, kind: str) -> str:
    """Nothing of the kind is on record."""
    return _("{tank}: no {deed} on record.").format(tank=tank, deed=_(DEEDS[kind]))


def newest(told: str) -> str:
    """What is on record nearest before or since."""
    return _("The last on record: {told}").format(told=told)


def no_value(tank: str, analyte: str) -> str:
    """Nothing was measured in the span that is asked about."""
    told = _("{tank}: {name} was not measured then.")
    return told.format(tank=tank, name=names.label(analyte))


def unmeasured(tank: str, analyte: str) -> list[str]:
    """Nothing of it is on record."""
    told = _("{tank}: {name} was not measured yet. Measure it and send the number.")
    return [told.format(tank=tank, name=names.label(analyte))]


def before(analyte: str, told: Sequence[str]) -> list[str]:
    """What was done to the water after the last measurement, newest first."""
    only = _("That was measured before this: {told}").format(told="; ".join(told))
    return [only, _("Test {name} again for what it is now.").format(name=names.label(analyte))]
