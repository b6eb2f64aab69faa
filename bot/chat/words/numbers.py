"""Numbers as a keeper reads them: as fine as the kit or the scale, never finer."""

from __future__ import annotations

import math
from datetime import datetime, timedelta

from core.analytes import ANALYTES
from core.message.model import Value
from core.units import from_canonical, label


def plain(number: float, decimals: int) -> str:
    """A number with at most so many decimals and no idle zeros."""
    text = f"{number:.{decimals}f}"
    return text.rstrip("0").rstrip(".") if "." in text else text


def span(low: float, high: float, decimals: int) -> str:
    """From where to where, rounded outwards; one number where both are the same."""
    tens = 10.0**decimals
    ends = math.floor(low * tens + 1e-6) / tens, math.ceil(high * tens - 1e-6) / tens
    return "–".join(dict.fromkeys(plain(end, decimals) for end in ends))


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
        return f"today {clock}"
    if days == 1:
        return f"tomorrow {clock}"
    if days == -1:
        return f"yesterday {clock}"
    date = f"{moment:%a} {moment.day} {moment:%b}"
    return f"{date} {clock}" if moment.year == now.year else f"{date} {moment.year} {clock}"


def age(span: timedelta) -> str:
    """How old something is, in the largest unit that fits."""
    hours = span.total_seconds() / 3600
    if hours < 1:
        return "just now"
    if hours < 48:
        return f"{hours:.0f} h old"
    return f"{hours / 24:.0f} days old"


def entered(value: Value) -> str:
    """A value as the keeper entered it: name, number with its qualifier, unit, basis."""
    analyte = ANALYTES.get(value.analyte)
    name = "SG" if value.unit == "SG" else analyte.label if analyte else value.analyte
    unit = value.unit or value.canonical_unit
    basis = f" as {value.basis}" if value.basis in {"N", "P", "NH3", "NH4"} else ""
    if value.value is None and value.low is None:
        return f"{name} not detected"
    return f"{name} {_number(value)}{_unit(unit)}{basis}"


def _number(value: Value) -> str:
    if value.low is not None and value.high is not None:
        return f"{plain(value.low, 3)}–{plain(value.high, 3)}"
    if value.value is None:
        return ""
    sign = {"<": "under ", ">": "over ", "~": "about "}.get(value.qualifier, "")
    return f"{sign}{plain(value.value, 4 if value.unit == 'SG' else 3)}"


def _unit(unit: str | None) -> str:
    written = label(unit) if unit and unit not in {"pH", "SG"} else ""
    return f" {written}" if written else ""


def also(value: Value) -> list[str]:
    """The same hardness in the other units of the trade, each once; a gravity's salinity."""
    if value.unit == "SG" and isinstance(value.canonical, float | int):
        return [f"salinity {plain(value.canonical, 1)} g/kg"]
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
