"""The last day on which a kit is good, as its box has it: 05/2026, 31.5.2026, may 2026."""

from __future__ import annotations

import re
from calendar import monthrange
from datetime import date
from typing import Final

from core.message.token import Token

_DAY: Final = re.compile(r"\b(\d{1,2})[./](\d{1,2})[./](\d{4}|\d{2})\b")
_MONTH: Final = re.compile(r"\b(\d{1,2})[./-](\d{4}|\d{2})\b")
_ISO: Final = re.compile(r"\b(\d{4})-(\d{1,2})(?:-(\d{1,2}))?\b")


def until(text: str, tokens: list[Token]) -> tuple[int, int, int | None] | None:
    """The year, the month and the day if there is one."""
    if iso := _ISO.search(text):
        return int(iso[1]), int(iso[2]), int(iso[3]) if iso[3] else None
    if day := _DAY.search(text):
        return _year(day[3]), int(day[2]), int(day[1])
    if month := _MONTH.search(text):
        return _year(month[2]), int(month[1]), None
    return _named_month(tokens)


def _named_month(tokens: list[Token]) -> tuple[int, int, int | None] | None:
    """`may 2026`, `31 may 2026`, `may 31 2026`."""
    months = [t for t in tokens if t.kind == "time" and str(t.value).startswith("month")]
    numbers = [int(t.text) for t in tokens if t.kind == "number" and t.text.isdigit()]
    years = [number for number in numbers if 2000 <= number < 2100]
    days = [number for number in numbers if 1 <= number <= 31]
    if not months or not years or not str(months[0].value)[5:]:
        return None
    return years[0], int(str(months[0].value)[5:]), days[0] if days else None


def _year(written: str) -> int:
    """A year of two digits is of this century."""
    return int(written) + (2000 if len(written) == 2 else 0)


def day_of(year: int, month: int, day: int | None) -> date | None:
    """The day; the last one of a month that has none; None where no calendar has it."""
    if not (2000 <= year < 2100 and 1 <= month <= 12):
        return None
    last = monthrange(year, month)[1]
    return date(year, month, day or last) if 1 <= (day or last) <= last else None
