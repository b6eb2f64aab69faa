"""What was told of a tank for good, said back."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date

from core.analytes import ANALYTES
from core.message.doubts import FUTURE

REMIND_ME = "remind me in time"


def day(when: date) -> str:
    """A day as people write it."""
    return f"{when.day} {when:%b %Y}"


def set_up(tank: str, first: date, today: date) -> list[str]:
    """When a tank was set up is on record."""
    age = (today - first).days
    ago = "today" if age == 0 else "yesterday" if age == 1 else f"{age} days ago"
    told = f"{tank}: set up {day(first)}, {ago}."
    if age <= 60:
        return [
            told,
            "Send ammonia and nitrite each day for now: I tell you how far its filter is.",
        ]
    return [told]


def carbon(tank: str, *, has: bool) -> list[str]:
    """Whether carbon dioxide is injected is on record."""
    if has:
        return [f"{tank}: CO2 is injected. Its pH is held against its own daily swing from now on."]
    return [f"{tank}: no CO2 is injected."]


def kit(analyte: str, until: date, tank: str | None, *, past: bool) -> list[str]:
    """Until when a kit is good is on record."""
    label = ANALYTES[analyte].label if analyte in ANALYTES else analyte
    whose = f"{tank}: the" if tank else "The"
    if past:
        return [f"{whose} {label} kit ended on {day(until)}: I say so beside its readings."]
    return [f"{whose} {label} kit is good until {day(until)}."]


def renew_task(analyte: str, until: date) -> str:
    """The task of a reminder to get a new kit."""
    label = ANALYTES[analyte].label if analyte in ANALYTES else analyte
    return f"renew the {label} kit (good until {day(until)})"


def reminder_set(shown: str) -> list[str]:
    """A reminder was made."""
    return [f"I remind you {shown}."]


def problem(reason: str) -> list[str]:
    """The day was not understood; nothing was kept."""
    if reason == FUTURE:
        return ["That day is still to come, so nothing was kept."]
    return ["I do not understand that day. Send for example: fern was set up on 3 march"]


def which_tank(names: Sequence[str]) -> list[str]:
    """No tank to keep it of."""
    if not names:
        return ["Which tank? Add one first: /tank new Fern 90 l fresh"]
    return [f"Which tank is that? Say its name first: {', '.join(names)}."]
