"""When: relative times, weekdays, clock times and dates in the chat's zone.

moment   = [ "at" ] part { [ "at" | "," ] part }          each part at most once
part     = day | clock | ago
day      = ISO date | d.m.[y] | d/m/y | d month [y] | month d [y] | ["last"] weekday
         | today | yesterday | day before yesterday | tomorrow
clock    = h:mm [am | pm] | h am | h pm | "at" h "o'clock" | noon | midnight | this morning ...
ago      = number unit "ago" | "ago" number unit          (the second in languages that say so)
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from datetime import UTC, date, datetime, time, timedelta, tzinfo

from core.message import doubts
from core.message.model import Context
from core.message.numbers import Number
from core.message.tokens import Token

_WEEKDAYS = {"mon": 0, "tue": 1, "wed": 2, "thu": 3, "fri": 4, "sat": 5, "sun": 6}
_DAYS_BACK = {"yesterday": 1, "before_yesterday": 2, "tomorrow": -1}
_PARTS = {
    # A part of the day is an hour that people mean by it (common practice, no source).
    "morning": (0, 8),
    "afternoon": (0, 15),
    "evening": (0, 20),
    "last_night": (1, 22),
    "yesterday_morning": (1, 8),
    "yesterday_evening": (1, 20),
}
_UNITS = {
    "minute": timedelta(minutes=1),
    "hour": timedelta(hours=1),
    "day": timedelta(days=1),
    "week": timedelta(weeks=1),
    "month": timedelta(days=30),
    "oclock": timedelta(hours=1),
}
_NUMBERS = re.compile(r"\d+")


@dataclass(slots=True)
class Moment:
    """A time found in a message.

    `at` is aware and in the chat's zone, None for now. `problem` is an id of
    `core.message.doubts` where the time must be asked about; `choices` are then the texts of
    what it may be. `end` is the index of the token after it.
    """

    end: int
    at: datetime | None = None
    problem: str | None = None
    choices: tuple[str, ...] = ()
    start_char: int = 0
    end_char: int = 0


@dataclass(slots=True)
class _Parts:
    day: date | None = None
    clock: time | None = None
    offset: tzinfo | None = None
    back: timedelta | None = None
    now: bool = False
    bad: bool = False
    days: tuple[date, ...] = ()
    hours: tuple[int, ...] = ()


def find(tokens: list[Token], index: int, context: Context) -> Moment | None:
    """The moment that begins at `index`, or None where no time begins there."""
    zone = context.zone or context.now.tzinfo or UTC
    local = context.now.astimezone(zone)
    parts = _Parts()
    place = index
    last = index
    while place < len(tokens):
        token = tokens[place]
        if (
            _is_at(token)
            or (place > index and token.value == "at_to")
            or (place > last and token.text == ",")
        ):
            place += 1
            continue
        used = _part(tokens, place, parts, local)
        if not used:
            break
        place += used
        last = place
    if last == index:
        return None
    moment = _resolve(parts, local, zone, context.now)
    moment.end = last
    moment.start_char = tokens[index].start
    moment.end_char = tokens[last - 1].end
    return moment


def _is_at(token: Token) -> bool:
    return token.kind == "time" and token.value in {"at", "at_hour"}


def _part(tokens: list[Token], place: int, parts: _Parts, local: datetime) -> int:
    """How many tokens one part takes from `place`; what it says goes into `parts`."""
    if parts.back is None and (parts.day is None and parts.clock is None):
        used = _ago(tokens, place, parts)
        if used:
            return used
    if parts.day is None and not parts.days and parts.back is None and not parts.now:
        used = _day(tokens, place, parts, local)
        if used:
            return used
    if parts.clock is None and parts.back is None:
        return _clock(tokens, place, parts)
    return 0


def _number(token: Token) -> float | None:
    if token.kind == "number" and isinstance(token.value, Number) and not token.value.problem:
        return token.value.value
    return None


def _time(tokens: list[Token], place: int) -> str:
    if place < len(tokens) and tokens[place].kind == "time":
        return str(tokens[place].value)
    return ""


def _ago(tokens: list[Token], place: int, parts: _Parts) -> int:
    """Ago = [ago] (number | "a" | half) unit [ago], with the word on one side."""
    start = place
    before = _time(tokens, place) == "ago"
    if before:
        place += 1
    amount, used = _amount(tokens, place)
    unit = _UNITS.get(_time(tokens, place + used))
    if amount is None or unit is None:
        return 0
    place += used + 1
    if before and _time(tokens, place) == "ago":
        place += 1
    if not before:
        if _time(tokens, place) != "ago":
            return 0
        place += 1
    if amount > 5000:
        parts.bad = True
    else:
        parts.back = unit * amount
    return place - start


def _amount(tokens: list[Token], place: int) -> tuple[float | None, int]:
    if place >= len(tokens):
        return None, 0
    token = tokens[place]
    if token.kind == "time" and token.value == "one":
        return 1.0, 1
    if token.kind == "fraction" and isinstance(token.value, float):
        return token.value, 1
    if token.kind == "mark" and token.value == "half":
        return 0.5, 2 if _time(tokens, place + 1) == "one" else 1
    return _number(token), 1


def _day(tokens: list[Token], place: int, parts: _Parts, local: datetime) -> int:
    token = tokens[place]
    kind = token.kind
    if kind == "time":
        return _named_day(tokens, place, parts, local)
    if kind == "iso":
        year, month, day = (int(run) for run in _NUMBERS.findall(token.text))
        parts.day = _date(parts, year, month, day)
        return 1
    if kind == "dotted":
        day, month, *year = _NUMBERS.findall(token.text)
        parts.day = _dated(parts, int(month), int(day), _full_years(year), local)
        return 1
    if kind == "slashed":
        return _slashed(token, parts, local)
    return _day_of_month(tokens, place, parts, local)


def _named_day(tokens: list[Token], place: int, parts: _Parts, local: datetime) -> int:
    word = str(tokens[place].value)
    used = 1
    if word == "last" and _time(tokens, place + 1) in _WEEKDAYS:
        word = _time(tokens, place + 1)
        used = 2
    if word == "now":
        parts.now = True
    elif word == "today":
        parts.day, parts.now = local.date(), True
    elif word in _DAYS_BACK:
        parts.day = local.date() - timedelta(days=_DAYS_BACK[word])
    elif word in _WEEKDAYS:
        back = (local.weekday() - _WEEKDAYS[word]) % 7
        parts.day = local.date() - timedelta(days=back or (7 if used == 2 else 0))
    elif word in _PARTS and parts.clock is None:
        back, hour = _PARTS[word]
        parts.day = local.date() - timedelta(days=back)
        parts.clock = time(hour)
        if _time(tokens, place + 1) == "at" or _clock_follows(tokens, place + 1):
            parts.clock = None
    elif word.startswith("month") and word != "month":
        return _month_first(tokens, place, parts, local)
    else:
        return 0
    return used


def _clock_follows(tokens: list[Token], place: int) -> bool:
    return place < len(tokens) and (
        tokens[place].kind == "clock" or bool(_clock(tokens, place, _Parts()))
    )


def _month_first(tokens: list[Token], place: int, parts: _Parts, local: datetime) -> int:
    month = int(str(tokens[place].value)[5:])
    if place + 1 >= len(tokens):
        return 0
    day = _number(tokens[place + 1])
    if day is None or day != int(day) or not 1 <= day <= 31:
        return 0
    used = 2
    year, more = _year(tokens, place + used)
    parts.day = _dated(parts, month, int(day), year, local)
    return used + more


def _day_of_month(tokens: list[Token], place: int, parts: _Parts, local: datetime) -> int:
    """D ["." | "of"] month [year]."""
    day = _number(tokens[place])
    if day is None or day != int(day) or not 1 <= day <= 31:
        return 0
    used = 1
    while place + used < len(tokens) and used < 3 and tokens[place + used].text in BETWEEN:
        used += 1
    word = _time(tokens, place + used)
    if not word.startswith("month") or not word[5:]:
        return 0
    used += 1
    year, more = _year(tokens, place + used)
    parts.day = _dated(parts, int(word[5:]), int(day), year, local)
    return used + more


BETWEEN = frozenset({".", "of", "de", "st", "nd", "rd", "th"})
"""What may stand between the day and the month."""


def _year(tokens: list[Token], place: int) -> tuple[list[int], int]:
    if place < len(tokens) and tokens[place].kind == "number":
        text = tokens[place].text
        if len(text) == 4 and text.isdigit() and text.startswith("20"):
            return [int(text)], 1
    return [], 0


def _slashed(token: Token, parts: _Parts, local: datetime) -> int:
    fields = _NUMBERS.findall(token.text)
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
    scratch = _Parts()
    return _dated(scratch, month, day, year, local)


def _full_years(written: list[str]) -> list[int]:
    """A year of two digits is of this century."""
    return [int(run) + (2000 if len(run) == 2 else 0) for run in written]


def _dated(parts: _Parts, month: int, day: int, year: list[int], local: datetime) -> date | None:
    """A date; without a year the latest one that is not in the future."""
    if year:
        return _date(parts, year[0], month, day)
    found = _date(parts, local.year, month, day)
    if found is not None and found > local.date():
        return _date(parts, local.year - 1, month, day)
    return found


def _date(parts: _Parts, year: int, month: int, day: int) -> date | None:
    try:
        found = date(year, month, day)
    except ValueError:
        found = None
    if found is None or year < 1900:
        parts.bad = True
        return None
    return found


def _clock(tokens: list[Token], place: int, parts: _Parts) -> int:
    """h:mm [am|pm], h am|pm, h "o'clock", h "h" [mm], noon, midnight."""
    if place >= len(tokens):
        return 0
    token = tokens[place]
    if token.kind == "time" and token.value in {"noon", "midnight"}:
        parts.clock = time(12 if token.value == "noon" else 0)
        return 1
    if token.kind == "clock":
        hour, minute = (int(run) for run in _NUMBERS.findall(token.text)[:2])
        half = _time(tokens, place + 1)
        used = 2 if half in {"am", "pm"} else 1
        _set_clock(parts, hour, minute, half if used == 2 else "")
        _set_offset(parts, token.text)
        return used
    hour_number = _number(token)
    if hour_number is None or not (0 <= hour_number <= 24) or hour_number != int(hour_number):
        return 0
    word = _time(tokens, place + 1)
    if _bare_hour(tokens, place, hour_number, word, parts):
        return 1
    named = place > 0 and _time(tokens, place - 1) == "at_hour" and "." not in token.text
    if word not in {"am", "pm", "oclock"} and named:
        _set_clock(parts, int(hour_number), 0, "")
        return 1
    if word == "hour" and parts.day is not None and tokens[place + 1].text == "h":
        if not _glued_minutes(tokens, place + 2):
            _set_clock(parts, int(hour_number), 0, "")
            return 2
    if word in {"am", "pm", "oclock"}:
        _set_clock(parts, int(hour_number), 0, word)
        used = 2
        if word == "oclock" and _glued_minutes(tokens, place + 2):
            _set_clock(parts, int(hour_number), int(tokens[place + 2].text), "")
            used = 3
        return used
    if word == "hour" and tokens[place + 1].text == "h" and _glued_minutes(tokens, place + 2):
        _set_clock(parts, int(hour_number), int(tokens[place + 2].text), "")
        return 3
    return 0


def _bare_hour(tokens: list[Token], place: int, hour: float, word: str, parts: _Parts) -> bool:
    """ "at" hour behind a day; up to twelve it may be morning or evening, which is asked."""
    at = place > 0 and _time(tokens, place - 1) == "at" and tokens[place - 1].text != "@"
    if not at or parts.day is None or word or "." in tokens[place].text:
        return False
    following = tokens[place + 1].kind if place + 1 < len(tokens) else ""
    if following == "unit":
        return False
    if following == "analyte" and not (
        place + 2 < len(tokens) and tokens[place + 2].kind == "number"
    ):
        return False
    if 1 <= hour <= 12:
        parts.hours = (int(hour) % 12, int(hour) % 12 + 12)
    else:
        _set_clock(parts, int(hour), 0, "")
    return True


def _glued_minutes(tokens: list[Token], place: int) -> bool:
    return (
        place < len(tokens)
        and tokens[place].kind == "number"
        and len(tokens[place].text) == 2
        and tokens[place].text.isdigit()
        and tokens[place].start == tokens[place - 1].end
    )


def _set_clock(parts: _Parts, hour: int, minute: int, half: str) -> None:
    if half in {"am", "pm"}:
        if not 1 <= hour <= 12:
            parts.bad = True
            return
        hour = hour % 12 + (12 if half == "pm" else 0)
    if hour > 23 or minute > 59:
        parts.bad = True
    else:
        parts.clock = time(hour, minute)


def _set_offset(parts: _Parts, text: str) -> None:
    if text.endswith("z"):
        parts.offset = UTC
    elif len(text) > 6 and text[-6] in "+-":
        try:
            parts.offset = datetime.fromisoformat(f"2000-01-01T00:00{text[-6:]}").tzinfo
        except ValueError:
            parts.bad = True


def _resolve(parts: _Parts, local: datetime, zone: tzinfo, now: datetime) -> Moment:
    if parts.bad:
        return Moment(0, problem=doubts.BAD_TIME)
    if parts.days:
        return Moment(
            0,
            problem=doubts.AMBIGUOUS_DATE,
            choices=tuple(day.isoformat() for day in parts.days),
        )
    if parts.hours and parts.day is not None:
        return _either_hour(parts.day, parts.hours, local)
    if parts.back is not None:
        if parts.back > timedelta(days=36500):
            return Moment(0, problem=doubts.BAD_TIME)
        return Moment(0, at=(now.astimezone(UTC) - parts.back).astimezone(zone))
    if parts.clock is None:
        return _whole_day(parts, local)
    day = parts.day or local.date()
    at = datetime.combine(day, parts.clock, tzinfo=parts.offset or zone).astimezone(zone)
    if at.astimezone(UTC) > now.astimezone(UTC) + timedelta(minutes=1):
        text = at.strftime("%H:%M")
        earlier = (f"yesterday {text}",) if parts.day is None else ()
        return Moment(0, problem=doubts.FUTURE, choices=earlier)
    return Moment(0, at=at)


def _either_hour(day: date, hours: tuple[int, ...], local: datetime) -> Moment:
    """Morning or evening; what is still to come is not offered."""
    past = [
        hour for hour in hours if datetime.combine(day, time(hour), tzinfo=local.tzinfo) <= local
    ]
    return Moment(
        0,
        problem=doubts.AMBIGUOUS_DATE if past else doubts.FUTURE,
        choices=tuple(f"{day.isoformat()} {hour:02d}:00" for hour in past),
    )


def _whole_day(parts: _Parts, local: datetime) -> Moment:
    """A day without an hour is 12:00, or now where that is still to come; "today" is now."""
    if parts.day is None or parts.now:
        return Moment(0)
    if parts.day > local.date():
        return Moment(0, problem=doubts.FUTURE)
    noon = datetime.combine(parts.day, time(12), tzinfo=local.tzinfo)
    return Moment(0, at=min(noon, local))
