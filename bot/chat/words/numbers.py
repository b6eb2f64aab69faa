"""Numbers as a keeper reads them: as fine as the kit or the scale, never finer."""

from __future__ import annotations

import math
from datetime import datetime, timedelta
from typing import Final

from bot.chat.words import names
from bot.chat.words.text import N_, _, ngettext
from core.message.model import Value
from core.units import from_canonical, label

WEEKDAYS: Final = (N_("Mon"), N_("Tue"), N_("Wed"), N_("Thu"), N_("Fri"), N_("Sat"), N_("Sun"))
MONTHS: Final = (
    N_("Jan"), N_("Feb"), N_("Mar"), N_("Apr"), N_("May"), N_("Jun"),
    N_("Jul"), N_("Aug"), N_("Sep"), N_("Oct"), N_("Nov"), N_("Dec"),
)  # fmt: skip


def plain(number: float, decimals: int) -> str:
    """A number with at most so many decimals and no idle zeros."""
    text = f"{number:.{decimals}f}"
    return text.rstrip("0").rstrip(".") if "." in text else text


def span(low: float, high: float, decimals: int) -> str:
    """From where to where, rounded outwards; one number where both are the same."""
    tens = 10.0**decimals
    ends = math.floor(low * tens + 1e-6) / tens, math.ceil(high * tens - 1e-6) / tens
    return "–".join(dict.fromkeys(plain(end, decimals) for end in ends))


def at_most(share: float) -> float:
    """A share that is a limit, as it is shown: rounded down, so that what is read is within it."""
    finest = 0.01 if share >= 0.1 else 0.001
    return math.floor(share / finest + 1e-9) * finest


def grams(amount: float) -> str:
    """A mass for a kitchen or pocket scale: tenths, finer where less than a gram. [g]"""
    if amount >= 100:
        return f"{amount:.0f} g"
    if amount >= 1:
        return f"{plain(amount, 1)} g"
    return f"{plain(amount, 2) if amount >= 0.01 else plain(amount, 4)} g"


def litres(amount: float) -> str:
    """A volume of water. [L]"""
    return f"{plain(amount, 1 if amount < 100 else 0)} L"


def small(amount: float) -> str:
    """A small concentration to two figures. [mg/L]"""
    if amount == 0:
        return "0"
    if amount >= 10:
        return f"{amount:.0f}"
    if amount >= 1:
        return plain(amount, 1)
    return plain(amount, 2 if amount >= 0.095 else 3)


def when(moment: datetime, now: datetime) -> str:
    """A moment in the chat's zone as people say it; both must be local already."""
    clock = f"{moment:%H:%M}"
    days = (moment.date() - now.date()).days
    if days == 0:
        return _("today {clock}").format(clock=clock)
    if days == 1:
        return _("tomorrow {clock}").format(clock=clock)
    if days == -1:
        return _("yesterday {clock}").format(clock=clock)
    template = (
        _("{weekday} {day} {month} {clock}")
        if moment.year == now.year
        else _("{weekday} {day} {month} {year} {clock}")
    )
    return template.format(
        weekday=_(WEEKDAYS[moment.weekday()]),
        day=moment.day,
        month=_(MONTHS[moment.month - 1]),
        year=moment.year,
        clock=clock,
    )


def age(span: timedelta) -> str:
    """How old something is, in the largest unit that fits."""
    hours = span.total_seconds() / 3600
    if hours < 1:
        return _("just now")
    if hours < 48:
        return _("{hours} h old").format(hours=f"{hours:.0f}")
    days = round(hours / 24)
    return ngettext("{days} day old", "{days} days old", days).format(days=days)


def entered(value: Value) -> str:
    """A value as the keeper entered it: name, number with its qualifier, unit, basis."""
    name = _("SG") if value.unit == "SG" else names.label(value.analyte)
    if value.value is None and value.low is None:
        return _("{name} not detected").format(name=name)
    amount = _number(value) + _unit(value.unit or value.canonical_unit)
    if value.basis in {"N", "P", "NH3", "NH4"}:
        told = _("{name} {amount} as {basis}")
        return told.format(name=name, amount=amount, basis=value.basis)
    return _("{name} {amount}").format(name=name, amount=amount)


def _number(value: Value) -> str:
    if value.low is not None and value.high is not None:
        return f"{plain(value.low, 3)}–{plain(value.high, 3)}"
    if value.value is None:
        return ""
    number = plain(value.value, 4 if value.unit == "SG" else 3)
    if value.qualifier == "<":
        return _("under {number}").format(number=number)
    if value.qualifier == ">":
        return _("over {number}").format(number=number)
    return _("about {number}").format(number=number) if value.qualifier == "~" else number


def _unit(unit: str | None) -> str:
    if unit == "drops":
        return " " + _("drops")
    written = label(unit) if unit and unit not in {"pH", "SG"} else ""
    return f" {written}" if written else ""


def also(value: Value) -> list[str]:
    """The same hardness in the other units of the trade, each once; a gravity's salinity."""
    if value.unit == "SG" and isinstance(value.canonical, float | int):
        told = _("salinity {number} g/kg")
        return [told.format(number=plain(value.canonical, 1))]
    if value.analyte not in {"kh", "gh"} or not isinstance(value.canonical, float | int):
        return []
    told = value.unit or "°dH"
    shown = []
    for unit, decimals in (("°dH", 1), ("ppm CaCO3", 0), ("meq/L", 1)):
        if unit.split()[0] == told.split()[0]:
            continue
        key = "ppm" if unit.startswith("ppm") else unit
        shown.append(
            f"{plain(from_canonical(value.analyte, value.canonical, key), decimals)} {unit}"
        )
    return shown
