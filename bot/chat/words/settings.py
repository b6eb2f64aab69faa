"""Settings in words."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import datetime


def shown(
    zone: str, *, known: bool, fahrenheit: bool, us_gallons: bool, quiet: str | None
) -> list[str]:
    """All settings of a chat and how to change them."""
    guess = "" if known else " (nobody told me yet)"
    degrees = "°F" if fahrenheit else "°C"
    gallon = "US" if us_gallons else "imperial"
    return [
        f"Clock: {zone}{guess}. Change: /zone Europe/Lisbon, or: it is 19:40 here",
        f"A bare temperature is {degrees} where both would do; a gallon is {gallon}."
        " Change: /settings fahrenheit, celsius, us gallons, uk gallons",
        f"Quiet hours: {quiet or 'off'}. Change: quiet hours 22:00-07:00",
    ]


def how() -> list[str]:
    """The setting was not understood."""
    return ["Send /settings, or for example: /settings fahrenheit, /settings uk gallons"]


def zone_shown(zone: str, now: datetime) -> list[str]:
    """The chat's clock as it is."""
    return [f"Your clock: {zone}, {now:%H:%M} now. Change: /zone Europe/Lisbon"]


def zone_set(zone: str, now: datetime) -> list[str]:
    """The chat lives by a zone."""
    return [f"Your clock is {zone} now: {now:%H:%M}. Reminders keep their times in it."]


def zone_guessed(zone: str, now: datetime) -> list[str]:
    """A zone was taken from a clock time, and others would fit as well."""
    return [
        f"I take {zone} for your clock: {now:%H:%M} now.",
        "If summer time differs where you are, press your own, or send /zone and its name.",
    ]


def no_such_clock(wanted: str, now: datetime) -> list[str]:
    """No zone's clock shows that time now."""
    return [
        f"No clock shows {wanted} now (it is {now:%H:%M} UTC), so nothing was changed.",
        "Send the time that your clock shows now, or for example: /zone Europe/Lisbon",
    ]


def zone_unknown(wanted: str, near: Sequence[str]) -> list[str]:
    """No such zone."""
    return [
        f"I know no zone “{wanted[:60]}”, so nothing was changed.",
        f"Near it: {', '.join(near)}. Send for example: /zone Europe/Lisbon",
    ]
