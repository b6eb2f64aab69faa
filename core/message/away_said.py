"""Being away, and reminders that are to pause: `im away 5 to 12 march`, `pause reminders`.

said = { away | pause reminders | light } [ [from day] to day | from day for a span | until day
         | a span | then ]

A text with any other word says more, and is none.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from datetime import datetime, timedelta, tzinfo
from functools import cache
from typing import Final

from core.message.fold import fold
from core.message.waters import one_of
from core.message.wordfile import spelt
from core.schedule import Problem, names_weekday, parse_until, tells_span

FILE: Final = "away_said.txt"

LONGEST: Final = 100
"""A longer text says more. [characters]"""

A_WEEK: Final = timedelta(weeks=1)
A_DAY: Final = timedelta(days=1)
"""Everything is off for less than this: hardly reminders."""


@dataclass(frozen=True, slots=True)
class Away:
    """A time without reminders.

    Attributes
    ----------
    until : datetime or None
        When they go on, in UTC; None where that is unsaid.
    since : datetime or None
        When it begins, in UTC, where that is still to come.
    then : bool
        True where it is the time that was spoken of before: `mute everything then`.
    """

    until: datetime | None = None
    since: datetime | None = None
    then: bool = False


def away(text: str, now: datetime, zone: tzinfo) -> Away | None:
    """What a text tells of a time without reminders; None where it tells none.

    Parameters
    ----------
    now : datetime
        The present moment; aware.
    zone : tzinfo
        The zone whose days are meant.

    Examples
    --------
    >>> from datetime import UTC
    >>> now = datetime(2026, 3, 2, 18, tzinfo=UTC)
    >>> told = away("im away 5 to 12 march", now, UTC)
    >>> f"{told.since:%d} {told.until:%d}", away("pause reminders", now, UTC).until
    ('05 12', None)
    >>> away("im away, who feeds them", now, UTC) is None
    True
    """
    if len(text) > LONGEST or "\n" in text.strip() or "?" in text:
        return None
    rest = " ".join(fold(text).replace("!", " ").split())
    has: set[str] = set()
    for name in ("away", "noun", "pause", "all"):
        rest, found = _cut(name, rest)
        has |= {name} if found else set()
    if "noun" in has or "all" in has:
        rest, found = _cut("stop", rest)
        has |= {"stop"} if found else set()
    named = "away" in has or ("noun" in has and has & {"pause", "stop"})
    if not named and not ("all" in has and has & {"pause", "stop"}):
        return None
    rest, then = _cut("then", rest)
    if then and not _edges(rest) and has & {"pause", "stop"}:
        return Away(then=True)
    told = None if then else _when(_edges(rest), now, zone)
    if told is None:
        return None
    if told.until is None:
        plain = "away" in has or {"noun", "pause"} <= has
        return told if plain else None
    return told if named or told.until - now >= A_DAY else None


def home_again(text: str) -> bool:
    """Whether a text tells nothing but to be back from a time away.

    Examples
    --------
    >>> home_again("back early, got home today"), home_again("i'm back on friday")
    (True, False)
    >>> home_again("back on 7 march"), home_again("im back, ph 7")
    (False, False)
    """
    if len(text) > LONGEST or "\n" in text.strip() or "?" in text:
        return False
    rest, home = _cut("home", " ".join(fold(text).replace("!", " ").split()))
    return home and not _edges(_cut("home_light", rest)[0])


def end_of(
    text: str, now: datetime, zone: tzinfo, since: datetime | None = None
) -> datetime | None:
    """When it is over, in plain words of time: `friday`, `until 4 may`, `2 weeks`; else None.

    How long, or a day, is counted from when it begins.
    """
    rest, _found = _cut("back", fold(text).strip(" .!"))
    return _after(_edges(rest), now if since is None else max(now, since), now, zone)


def _after(text: str, since: datetime, now: datetime, zone: tzinfo) -> datetime | None:
    """The end that words of time tell of what begins at a moment; None where they tell none."""
    found = _until(text, since if tells_span(text) else now, zone)
    if isinstance(found, datetime) and found <= since:
        found = _until(text, since.astimezone(zone), zone)
    return found if isinstance(found, datetime) and found > since else None


_NTH: Final = re.compile(r"(?:the )?(\d{1,2})(?:st|nd|rd|th)")
"""A day of the month by its number alone."""


def _until(text: str, now: datetime, zone: tzinfo) -> datetime | Problem:
    """When words of time begin, as of a pause; a day by its number alone is of the next such."""
    found = parse_until(text, now, zone)
    nth = _NTH.fullmatch(text.strip(" ."))
    return found if nth is None else parse_until(f"on the {nth[1]}th", now, zone)


def _when(rest: str, now: datetime, zone: tzinfo) -> Away | None:
    if not rest:
        return Away()
    timed, back = _cut("back", rest)
    timed = _edges(timed)
    if (lasting := _lasting(timed, now, zone)) is not None:
        return lasting
    until = _until(timed, now, zone)
    if isinstance(until, datetime):
        begins = re.match(rf"(?:{one_of(_ways()['to'])})(?!\w)", timed) is not None
        if back or begins or tells_span(timed):
            return Away(until)
        return Away(since=until)
    return _between(timed, now, zone)


def _lasting(rest: str, now: datetime, zone: tzinfo) -> Away | None:
    """From a day on for so long: `from friday for a week`, `for a week from friday`."""
    word = re.compile(rf"(?:{one_of(_ways()['from'])})(?!\w)\s*")
    words = rest.split()
    for place in range(1, len(words)):
        parts = " ".join(words[:place]), " ".join(words[place:])
        for span, day in (parts[::-1], parts):
            begins = word.match(day)
            if not tells_span(span) or tells_span(day) or (day == parts[1] and begins is None):
                continue
            since = _begin(day if begins is None else day[begins.end() :], now, zone)
            end = _after(span, since, now, zone) if isinstance(since, datetime) else None
            if isinstance(since, datetime) and end is not None:
                return Away(end, since)
    return None


def _begin(day: str, now: datetime, zone: tzinfo) -> datetime | Problem:
    """When a time begins; on the day itself its name is of today."""
    since = _until(day, now, zone)
    plain = isinstance(since, datetime) and names_weekday(day) and " " not in day.strip()
    if isinstance(since, datetime) and plain and since - now > A_WEEK - A_DAY:
        return since - A_WEEK
    return since


def _between(rest: str, now: datetime, zone: tzinfo) -> Away | None:
    """From one day to another; the first may leave out its month."""
    begun = re.sub(rf"^(?:{one_of(_ways()['from'])})(?!\w)\s*", "", rest)
    for joint in re.finditer(rf"\s+(?:{one_of(_ways()['to'])})\s+|\s*[-–]\s*", begun):
        first, last = begun[: joint.start()].strip(" ."), begun[joint.end() :].strip()
        if first.isdecimal():
            first += re.sub(r"^\d+", "", last)
        since = _begin(first, now, zone)
        if not isinstance(since, datetime):
            until = _until(last, now, zone)
            if since.reason != "past" or not isinstance(until, datetime):
                continue
            return Away(until)
        if (end := _after(last, since, now, zone)) is not None:
            return Away(end, since)
    if begun != rest:
        since = _until(begun, now, zone)
        return Away(since=since) if isinstance(since, datetime) else None
    return None


def _cut(name: str, text: str) -> tuple[str, bool]:
    """The text without the words of a class, and whether it had any."""
    left = _pattern(name).sub(" ", text)
    return " ".join(left.split()), left != text


def _edges(text: str) -> str:
    """The text without light words and signs at its ends."""
    light = one_of(_ways()["light"])
    front = re.compile(rf"^(?:[\s,.;:]+|(?:{light})(?![\w']))")
    back = re.compile(rf"(?:[\s,.;:]+|(?<![\w'])(?:{light}))$")
    while (found := front.search(text) or back.search(text)) is not None:
        text = text[: found.start()] + text[found.end() :]
    return text


@cache
def _ways() -> dict[str, set[str]]:
    found: dict[str, set[str]] = {}
    for _section, meaning, ways in spelt(FILE):
        found.setdefault(meaning, set()).update(ways)
    return found


@cache
def _pattern(name: str) -> re.Pattern[str]:
    return re.compile(rf"(?<![\w'])(?:{one_of(_ways()[name])})(?![\w'])")
