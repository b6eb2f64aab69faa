"""Settings in words."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import datetime

from bot.chat.words.reminders import quiet_shown
from bot.chat.words.text import _


def shown(
    zone: str, *, known: bool, fahrenheit: bool, us_gallons: bool, quiet: str | None
) -> list[str]:
    """All settings of a chat and how to change them."""
    clock = (
        _("Clock: {zone}. Change: /zone Europe/Lisbon, or: it is 19:40 here")
        if known
        else _(
            "Clock: {zone} (nobody told me yet). Change: /zone Europe/Lisbon, or: it is 19:40 here"
        )
    )
    units = _(
        "A bare temperature is {degrees} where both would do; a gallon is {gallon}. Change:"
        " /settings fahrenheit, celsius, us gallons, uk gallons"
    ).format(
        degrees="°F" if fahrenheit else "°C",
        gallon=_("US") if us_gallons else _("imperial"),
    )
    return [clock.format(zone=zone), units, *quiet_shown(quiet)]


def gallon(*, us: bool) -> str:
    """Which gallon is meant from now on, and how it is changed."""
    if us:
        return _("A gallon is the US one from now on: 3.785 L. Change: /settings uk gallons")
    return _("A gallon is the imperial one from now on: 4.546 L. Change: /settings us gallons")


def language(code: str, known: Sequence[str]) -> list[str]:
    """The language as it is, where there is a choice."""
    others = [each for each in known if each != code]
    if not others:
        return []
    return [
        _("Language: {code}. Change: /settings language {other} ({known})").format(
            code=code, other=others[0], known=", ".join(known)
        )
    ]


def language_unknown(known: Sequence[str]) -> list[str]:
    """No catalogue of that language."""
    return [
        _("I speak {known}; nothing was changed. Send: /settings language {example}").format(
            known=", ".join(known), example=known[-1]
        )
    ]


def how() -> list[str]:
    """The setting was not understood."""
    return [_("Send /settings, or for example: /settings fahrenheit, /settings uk gallons")]


def zone_shown(zone: str, now: datetime) -> list[str]:
    """The chat's clock as it is."""
    return [
        _("Your clock: {zone}, {clock} now. Change: /zone Europe/Lisbon").format(
            zone=zone, clock=f"{now:%H:%M}"
        )
    ]


def zone_set(zone: str, now: datetime) -> list[str]:
    """The chat lives by a zone."""
    return [
        _("Your clock is {zone} now: {clock}. Reminders keep their times in it.").format(
            zone=zone, clock=f"{now:%H:%M}"
        )
    ]


def zone_guessed(zone: str, now: datetime) -> list[str]:
    """A zone was taken from a clock time, and others would fit as well."""
    return [
        _("I take {zone} for your clock: {clock} now.").format(zone=zone, clock=f"{now:%H:%M}"),
        _("If summer time differs where you are, press your own, or send /zone and its name."),
    ]


def no_such_clock(wanted: str, now: datetime) -> list[str]:
    """No zone's clock shows that time now."""
    return [
        _("No clock shows {wanted} now (it is {clock} UTC), so nothing was changed.").format(
            wanted=wanted, clock=f"{now:%H:%M}"
        ),
        _("Send the time that your clock shows now, or for example: /zone Europe/Lisbon"),
    ]


def zone_unknown(wanted: str, near: Sequence[str]) -> list[str]:
    """No such zone."""
    return [
        _("I know no zone “{wanted}”, so nothing was changed.").format(wanted=wanted[:60]),
        _("Near it: {near}. Send for example: /zone Europe/Lisbon").format(near=", ".join(near)),
    ]
