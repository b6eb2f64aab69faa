"""Days: ISO and local dates, weekdays, yesterday, the fourth of March.

day = ISO date | d.m.[y] | d/m/y | d month [y] | month d [y] | ["last"] weekday
    | today | yesterday | day before yesterday | tomorrow | this morning ...
"""

from __future__ import annotations

from datetime import date, datetime, timedelta

from core.message.clockwords import part_of_day
from core.message.timeparts import DIGITS, Parts, number, word_at
from core.message.tokens import Token

WEEKDAYS = {"mon": 0, "tue": 1, "wed": 2, "thu": 3, "fri": 4, "sat": 5, "sun": 6}


_DAYS_BACK = {"yesterday": 1, "before_yesterday": 2, "tomorrow": -1}


_VAGUE = {"last_week": 7, "last_month": 30}
"""Days back that are meant at most by and large: which day it was is asked."""


_MIDDLE = 15
"""The day that stands for a month without one, until the keeper says which it was."""
_BEFORE_MONTH = frozenset({"in", "last"})
"""Words behind which a month alone is a time: `kh 6 in january`."""


PARTS = {
    "morning": (0, "morning"),
    "afternoon": (0, "afternoon"),
    "evening": (0, "evening"),
    "last_night": (1, "night"),
    "yesterday_morning": (1, "morning"),
    "yesterday_evening": (1, "evening"),
}
"""Words for a part of a day: days back, and which part it is."""


_ORDINALS = frozenset({"st", "nd", "rd", "th"})
BETWEEN = frozenset({".", "of", "de", "st", "nd", "rd", "th"})
"""What may stand between the day and the month."""


def day_part(tokens: list[Token], place: int, parts: Parts, local: datetime) -> int:
    """How many tokens a day takes from `place` (0: none is there); it goes into `parts`."""
    used = _day(tokens, place, parts, local)
    if used and not parts.part:
        parts.part, more = part_of_day(tokens, place + used, of_day=True)  # "sunday evening"
        parts.now = parts.now and not more
        return used + more
    return used


def _day(tokens: list[Token], place: int, parts: Parts, local: datetime) -> int:
    token = tokens[place]
    kind = token.kind
    if kind == "time":
        return _named_day(tokens, place, parts, local)
    if kind == "iso":
        parts.day = _date(parts, *(int(run) for run in DIGITS.findall(token.text)))
        return 1
    if kind == "dotted":
        day, month, *year = DIGITS.findall(token.text)
        parts.day = _dated(parts, int(month), int(day), _full_years(year), local)
        return 1
    if kind == "slashed":
        return _slashed(token, parts, local)
    return _day_of_month(tokens, place, parts, local)


def _named_day(tokens: list[Token], place: int, parts: Parts, local: datetime) -> int:
    word = str(tokens[place].value)
    used = 1
    if word == "last" and word_at(tokens, place + 1) in WEEKDAYS:
        word = word_at(tokens, place + 1)
        used = 2
    if word == "now":
        parts.now = True
    elif word == "today":
        parts.day, parts.now = local.date(), True
    elif word in _VAGUE:
        parts.vague = local.date() - timedelta(days=_VAGUE[word])
    elif word in _DAYS_BACK:
        parts.day = local.date() - timedelta(days=_DAYS_BACK[word])
    elif word in WEEKDAYS:
        back = (local.weekday() - WEEKDAYS[word]) % 7
        parts.day = local.date() - timedelta(days=back or (7 if used == 2 else 0))
    elif word in PARTS:
        back, parts.part = PARTS[word]
        parts.day = local.date() - timedelta(days=back)
    elif word.startswith("month") and word != "month":
        return _month_first(tokens, place, parts, local)
    else:
        return 0
    return used


def _month_first(tokens: list[Token], place: int, parts: Parts, local: datetime) -> int:
    month = int(str(tokens[place].value)[5:])
    day = number(tokens[place + 1]) if place + 1 < len(tokens) else None
    if day is None or day != int(day) or not 1 <= day <= 31:
        if not place or tokens[place - 1].value not in _BEFORE_MONTH:
            return 0
        middle = latest(month, _MIDDLE, local)
        parts.vague = local.date() if month == local.month else middle
        return 1
    used = 3 if place + 2 < len(tokens) and tokens[place + 2].text in _ORDINALS else 2
    year, more = _year(tokens, place + used)
    parts.day = _dated(parts, month, int(day), year, local)
    return used + more


def _day_of_month(tokens: list[Token], place: int, parts: Parts, local: datetime) -> int:
    """D ["." | "of"] month [year]."""
    day = number(tokens[place])
    if day is None or day != int(day) or not 1 <= day <= 99:
        return 0
    used = 1
    while place + used < len(tokens) and used < 3 and tokens[place + used].text in BETWEEN:
        used += 1
    word = word_at(tokens, place + used)
    if not word.startswith("month") or not word[5:]:
        return _ordinal(tokens, place, int(day), parts, local) if day <= 31 else 0
    if day > 31 and place and tokens[place - 1].kind not in {"nl", "tank"}:
        return 0  # "no3 40 feb 3": a value before a date
    used += 1
    year, more = _year(tokens, place + used)
    parts.day = _dated(parts, int(word[5:]), int(day), year, local)
    return used + more


def _ordinal(tokens: list[Token], place: int, day: int, parts: Parts, local: datetime) -> int:
    """`the 8th`: the latest day of a month with that number."""
    behind = tokens[place + 1] if place + 1 < len(tokens) else None
    if behind is None or behind.text not in _ORDINALS or behind.start != tokens[place].end:
        return 0
    if day > local.day:
        local = local.replace(day=1) - timedelta(days=1)
    parts.day = _date(parts, local.year, local.month, day)
    return 2


def _year(tokens: list[Token], place: int) -> tuple[list[int], int]:
    if place < len(tokens) and tokens[place].kind == "number":
        text = tokens[place].text
        if len(text) == 4 and text.isdigit() and text.startswith("20"):
            return [int(text)], 1
    return [], 0


def _slashed(token: Token, parts: Parts, local: datetime) -> int:
    fields = DIGITS.findall(token.text)
    first, second, year = int(fields[0]), int(fields[1]), _full_years(fields[2:])
    orders = {(second, first), (first, second)}
    days = sorted(
        {found for month, day in orders if (found := _try(month, day, year, local)) is not None}
    )
    if not days:
        if not year:
            return 0
        parts.bad = True
    elif len(days) == 1:
        parts.day = days[0]
    else:
        parts.days = tuple(days)
    return 1


def _try(month: int, day: int, year: list[int], local: datetime) -> date | None:
    scratch = Parts()
    return _dated(scratch, month, day, year, local)


def _full_years(written: list[str]) -> list[int]:
    """A year of two digits is of this century."""
    return [int(run) + (2000 if len(run) == 2 else 0) for run in written]


def _dated(parts: Parts, month: int, day: int, year: list[int], local: datetime) -> date | None:
    """A date; without a year the latest one that is not in the future."""
    if year:
        return _date(parts, year[0], month, day)
    found = _date(parts, local.year, month, day)
    if found is not None and found > local.date():
        parts.rolled = True
        return _date(parts, local.year - 1, month, day)
    return found


def latest(month: int, day: int, local: datetime) -> date | None:
    """The latest such day that is not to come; None for one that no year near has."""
    return _dated(Parts(), month, day, [], local)


def _date(parts: Parts, year: int, month: int, day: int) -> date | None:
    try:
        found = date(year, month, day)
    except ValueError:
        found = None
    if found is None or year < 1900:
        parts.bad = True
        return None
    return found
