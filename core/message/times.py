"""When: relative times, weekdays, clock times and dates in the chat's zone.

moment = [ "at" ] part { [ "at" | "," ] part }          each part at most once
part   = day | clock | ago
ago    = number unit "ago" | "ago" number unit          (the second in languages that say so)
"""

from __future__ import annotations

from dataclasses import dataclass
from datetime import UTC, date, datetime, time, timedelta, tzinfo

from core.message import doubts
from core.message.clocks import clock_part
from core.message.days import day_part, latest
from core.message.model import Context
from core.message.timeparts import NO_DAY, Day, Parts, number, word_at
from core.message.tokens import Token

_UNITS = {
    "minute": timedelta(minutes=1),
    "hour": timedelta(hours=1),
    "day": timedelta(days=1),
    "week": timedelta(weeks=1),
    "month": timedelta(days=30),
    "oclock": timedelta(hours=1),
}


_LONG_AGO = timedelta(days=270)
"""A date without its year that is to come soon was hardly meant of last year: asked."""


_OLDEST = timedelta(days=3653)
"""Ten years: a day further back is a slip in its year, and is asked about."""


@dataclass(slots=True)
class Moment:
    """A time found in a message.

    `at` is aware and in the chat's zone, None for now. `problem` is an id of
    `core.message.doubts` where the time must be asked about; `choices` are then the texts of
    what it may be. `end` is the index of the token after it. `day` is the day that was said, for
    an hour behind it in the same line, `hour` whether one was said, `lent` whether the day was
    that of a moment before.
    """

    end: int
    at: datetime | None = None
    problem: str | None = None
    choices: tuple[str, ...] = ()
    start_char: int = 0
    end_char: int = 0
    day: Day = NO_DAY
    hour: bool = False
    lent: bool = False


def find(
    tokens: list[Token], index: int, context: Context, before: Moment | None = None
) -> Moment | None:
    """The moment that begins at `index`, or None where no time begins there.

    An hour that names no day is of the day of the moment `before` it.
    """
    zone = context.zone or context.now.tzinfo or UTC
    local = context.now.astimezone(zone)
    parts = Parts()
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
    lent = before is not None and parts.told == NO_DAY and parts.hour and before.day != NO_DAY
    if before is not None and lent:
        parts.day, parts.days, parts.vague, parts.rolled = before.day
    day, hour = parts.told, parts.hour
    moment = _resolve(parts, local, zone, context.now)
    moment.day, moment.hour, moment.lent = day, hour, lent
    moment.end = last
    moment.start_char = tokens[index].start
    moment.end_char = tokens[last - 1].end
    return moment


def _is_at(token: Token) -> bool:
    return token.kind == "time" and token.value in {"at", "at_hour"}


def _part(tokens: list[Token], place: int, parts: Parts, local: datetime) -> int:
    """How many tokens one part takes from `place`; what it says goes into `parts`."""
    if parts.back is None and parts.day is None and parts.clock is None:
        used = _ago(tokens, place, parts)
        if used:
            return used
    if parts.day is None and not parts.days and parts.back is None and not parts.now:
        used = day_part(tokens, place, parts, local)
        if used:
            return used
    if parts.clock is None and parts.back is None:
        return clock_part(tokens, place, parts)
    return 0


def _ago(tokens: list[Token], place: int, parts: Parts) -> int:
    """Ago = [ago] (number | "a" | half) unit [ago], with the word on one side."""
    start = place
    some = tokens[place - 1] if place and tokens[place - 1].value == "some" else None
    before = word_at(tokens, place) == "ago"
    if before:
        place += 1
    amount, used = _amount(tokens, place)
    if not before and word_at(tokens, place) in _UNITS:
        amount, used = 1.0, 0  # "hour ago"
        if some is not None and "couple" in some.text:
            amount = 2.0
        elif some is not None:
            parts.bad = True  # a few hours: how many is asked
    unit = _UNITS.get(word_at(tokens, place + used))
    if amount is None or unit is None:
        return 0
    place += used + 1
    if before and word_at(tokens, place) == "ago":
        place += 1
    if not before:
        if word_at(tokens, place) != "ago":
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
    if token.kind == "count":
        return float(str(token.value)), 1
    if token.kind == "fraction" and isinstance(token.value, float):
        return token.value, 1
    if token.kind == "mark" and token.value == "half":
        return 0.5, 2 if word_at(tokens, place + 1) == "one" else 1
    return number(token), 1


def _resolve(parts: Parts, local: datetime, zone: tzinfo, now: datetime) -> Moment:
    if parts.bad:
        return Moment(0, problem=doubts.BAD_TIME)
    if parts.days:
        past = [day for day in parts.days if day <= local.date()]  # what is to come is not offered
        return Moment(
            0,
            problem=doubts.AMBIGUOUS_DATE,
            choices=tuple(day.isoformat() for day in past),
        )
    if parts.vague is not None:
        return Moment(0, problem=doubts.AMBIGUOUS_DATE, choices=(parts.vague.isoformat(),))
    if parts.spoken is not None:
        either = _open_hour(parts, local, now)
        if either is not None:
            return either
    elif parts.part and parts.clock is not None:
        _afternoon(parts)
    if parts.rolled and parts.day is not None and local.date() - parts.day > _LONG_AGO:
        noon = datetime.combine(parts.day, parts.clock or time(12), tzinfo=local.tzinfo)
        choices = (parts.day.isoformat(),)
        return Moment(0, noon, doubts.AMBIGUOUS_DATE, choices)
    if parts.day is not None and local.date() - parts.day > _OLDEST:
        newest = latest(parts.day.month, parts.day.day, local)
        likely = () if newest is None else (newest.isoformat(),)
        return Moment(0, problem=doubts.AMBIGUOUS_DATE, choices=likely)
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


_USUAL = {"morning": time(8), "afternoon": time(15), "evening": time(20), "night": time(22)}
"""The hour that people mean by a part of the day (common practice, no source)."""
_LATE = 6
"""Hours of a night from here on are before midnight, those before it after."""


def _afternoon(parts: Parts) -> None:
    """The hour of the clock that a part of the day makes of one up to twelve."""
    clock = parts.clock
    if clock is None or clock.hour > 12 or (clock.hour == 12 and parts.part != "night"):
        return
    hour = clock.hour % 12
    if parts.part in {"afternoon", "evening"} or (parts.part == "night" and hour >= _LATE):
        parts.clock = clock.replace(hour=hour + 12)
    elif parts.part == "night":
        parts.clock = clock.replace(hour=hour)
        if parts.day is not None:
            parts.day += timedelta(days=1)  # two o'clock of Monday's night is Tuesday's


def _open_hour(parts: Parts, local: datetime, now: datetime) -> Moment | None:
    """An hour as spoken: which half of which day; None where the clock is then known.

    Without a day it is the latest that is past. Behind a day without its part both halves could
    be meant, and it is asked.
    """
    if parts.either is not None:
        texts = tuple(f"{each // 60:02d}:{each % 60:02d}" for each in _spoken(parts))
        return Moment(0, problem=doubts.AMBIGUOUS_DATE, choices=texts)
    minutes = parts.spoken or 0
    halves = (time(minutes // 60, minutes % 60), time(minutes // 60 + 12, minutes % 60))
    parts.clock = halves[0]
    if parts.part:
        _afternoon(parts)
        return None
    today = local.date()
    if parts.day not in {None, today}:
        hours = tuple(half.hour for half in halves)
        return _either_hour(parts.day or today, hours, local, minutes % 60)
    days = (today,) if parts.day else (today, today - timedelta(days=1))
    for day in days:
        for half in halves[::-1]:
            if datetime.combine(day, half, tzinfo=local.tzinfo) <= now.astimezone(local.tzinfo):
                parts.day, parts.clock = day, half
                return None
    return None


def _spoken(parts: Parts) -> tuple[int, ...]:
    return tuple(each for each in (parts.spoken, parts.either) if each is not None)


def _either_hour(day: date, hours: tuple[int, ...], local: datetime, minute: int = 0) -> Moment:
    """Morning or evening; what is still to come is not offered."""
    past = [
        hour
        for hour in hours
        if datetime.combine(day, time(hour, minute), tzinfo=local.tzinfo) <= local
    ]
    return Moment(
        0,
        problem=doubts.AMBIGUOUS_DATE if past else doubts.FUTURE,
        choices=tuple(f"{day.isoformat()} {hour:02d}:{minute:02d}" for hour in past),
    )


def _whole_day(parts: Parts, local: datetime) -> Moment:
    """A day without an hour is 12:00, or now where that is still to come; "today" is now."""
    if parts.day is None or parts.now:
        return Moment(0)
    if parts.day > local.date():
        return Moment(0, problem=doubts.FUTURE)
    hour = _USUAL.get(parts.part, time(12))
    at = datetime.combine(parts.day, hour, tzinfo=local.tzinfo)
    if parts.part and at > local:
        evening = parts.part == "evening" and parts.day == local.date()
        return Moment(0, problem=doubts.FUTURE, choices=("yesterday evening",) if evening else ())
    return Moment(0, at=min(at, local))
