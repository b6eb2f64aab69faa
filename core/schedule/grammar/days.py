"""Days without a month's name: monday, mondays and thursdays, the 1st, tomorrow, next week."""

from __future__ import annotations

from typing import NamedTuple

from core.schedule.grammar.dates import is_bare_number, ordinal_day
from core.schedule.pieces import DayPart, Flaw, MonthDays, Near, Piece, Span, Weekdays
from core.schedule.tokens import Line, Parsed, first_of

Pieces = tuple[Piece, ...]


def weekday_list(line: Line, i: int) -> Parsed[Weekdays]:
    """weekday_list := one (THROUGH one | ((AND | ",")* one)*); a plural anywhere repeats."""
    first = _one_day(line, i)
    if first is None:
        return None
    through = line.word(first[1], "through")
    last = None if through is None else _one_day(line, through[1])
    if last is not None and len(first[0].days) == len(last[0].days) == 1:
        start, stop = first[0].days[0], last[0].days[0]
        days = tuple((start + step) % 7 for step in range((stop - start) % 7 + 1))
        return Weekdays(days, repeats=True), last[1]
    return _more_days(line, first)


def _more_days(line: Line, first: tuple[Weekdays, int]) -> tuple[Weekdays, int]:
    days, repeats, end = first[0].days, first[0].repeats, first[1]
    while True:
        gap = _gap(line, end)
        following = None if gap == end else _one_day(line, line.skip(gap, "on"))
        if following is None:
            return Weekdays(days, repeats), end
        days += following[0].days
        repeats = repeats or following[0].repeats
        end = following[1]


def _gap(line: Line, i: int) -> int:
    """The index after commas and 'and', '/' too."""
    while True:
        slash = line.sign(i, ",", "/")
        after = line.skip(i, "and") if slash is None else slash[1]
        if after == i:
            return i
        i = after


def _one_day(line: Line, i: int) -> Parsed[Weekdays]:
    """one := WEEKDAYS | WEEKDAY ["."]."""
    several = line.word(i, "weekdays")
    if several is not None:
        return Weekdays(several[0], repeats=True), several[1]
    one = line.word(i, "weekday")
    return None if one is None else (Weekdays((one[0],)), one[1])


def on_weekday(line: Line, i: int) -> Parsed[Pieces]:
    """on_weekday := [BOTH] [ON | AT] [ARTICLE | THE] [NEXT | THIS] weekday_list [THE the_day]."""
    start = line.skip(line.skip(line.skip(i, "on"), "both"), "on", "at")
    start = line.skip(start, "article")
    after = line.word(start, "next")
    i = after[1] if after else line.skip(line.skip(start, "the"), "this", "next")
    found = weekday_list(line, i)
    if found is None:
        return None
    days = Weekdays(found[0].days, found[0].repeats, later=after is not None)
    comma = line.sign(found[1], ",")
    named = line.word(found[1] if comma is None else comma[1], "the")
    day = None if named is None or days.repeats else the_day(line, named[1])
    return ((days,), found[1]) if day is None else ((days, *day[0]), day[1])


def nth_weekday(line: Line, i: int) -> Parsed[Pieces]:
    """nth_weekday := [ON] [THE] ORDINAL weekday [month_word]; without the month it may be once."""
    nth = _nth(line, line.skip(line.skip(i, "on"), "the"))
    day = None if nth is None else line.word(nth[1], "weekday")
    if nth is None or day is None:
        return None
    month = month_word(line, day[1])
    end = day[1] if month is None else month[1]
    if nth[0] not in (-1, 1, 2, 3, 4) or (month is not None and month[0].every > 1):
        return (Flaw("unclear"),), end
    return (Weekdays((day[0],), repeats=month is not None, nth=nth[0]),), end


def _nth(line: Line, i: int) -> Parsed[int]:
    return line.word(i, "ordinal") or ordinal_day(line, i)


class Month(NamedTuple):
    """A month by a word: `one` for this or the next, `following` for the next, `every` for more."""

    one: bool
    following: bool
    every: int


def month_word(line: Line, i: int) -> Parsed[Month]:
    """month_word := [OF] [THE] [NEXT | THIS | EVERY [number | OTHER]] "month"."""
    i = line.skip(line.skip(i, "of"), "the")
    following = line.word(i, "next") is not None
    start = line.skip(i, "next", "this")
    every = line.word(start, "every")
    count = None
    if every is not None or _ends_with_every(line, start):
        named = start if every is None else every[1]
        count = line.integer(named) or line.word(named, "other")
        start = named if count is None else count[1]
    unit = line.word(start, "unit")
    if unit is None or unit[0] != "months":
        return None
    return Month(following or line.skip(i, "this") != i, following, count[0] if count else 1), unit[
        1
    ]


def _ends_with_every(line: Line, i: int) -> bool:
    """True where the phrase before was 'of every', one phrase in the vocabulary."""
    return i > 0 and line.word(i - 1, "every") is not None


def month_days(line: Line, i: int) -> Parsed[Pieces]:
    """month_days := [ON] [THE | DAY_WORD] (day_list | LAST_DAY) month_word | ON [THE] day_list."""
    start = line.skip(i, "on")
    named = line.skip(start, "the", "day_word")
    last = line.word(named, "last_day")
    days = day_list(line, named) if last is None else ((31,), last[1])
    if days is None:
        return None
    month = month_word(line, days[1])
    if month is not None:
        return (_in_month(days[0], month[0]),), month[1]
    by_word = line.skip(start, "day_word") != start
    is_ordinal = by_word or not is_bare_number(line, days[1])
    if start == i or not (is_ordinal or last):
        return None
    return (_in_month(days[0], Month(one=True, following=False, every=1)),), days[1]


def the_day(line: Line, i: int) -> Parsed[Pieces]:
    """the_day := [THE] day_list, where a day must stand: until the 15th."""
    days = day_list(line, line.skip(i, "the"))
    if days is None or is_bare_number(line, days[1]):
        return None
    return (_in_month(days[0], Month(one=True, following=False, every=1)),), days[1]


def month_end(line: Line, i: int) -> Parsed[Pieces]:
    """month_end := [AT | ON] [THE] (MONTH_END | MONTH_START) month_word."""
    place = line.skip(line.skip(i, "at", "on", "in"), "the")
    end, day = line.word(place, "month_end"), 31
    if end is None:
        end = line.word(place, "month_start")
        day = 1 if end is None else end[0]
    month = None if end is None else month_word(line, end[1])
    if end is None or month is None:
        return None
    repeats = any(line.word(k, "every") for k in range(end[1], month[1]))
    return (MonthDays((day,), repeats, month[0].following, month[0].every),), month[1]


def day_list(line: Line, i: int) -> Parsed[tuple[int, ...]]:
    """day_list := day ((AND | ",") [THE] day)*, where each is an ordinal or a bare number."""
    first = ordinal_day(line, i)
    if first is None:
        return None
    days: tuple[int, ...] = (first[0],)
    end = first[1]
    while True:
        gap = _gap(line, end)
        following = None if gap == end else ordinal_day(line, line.skip(gap, "the"))
        if following is None:
            return days, end
        days, end = (*days, following[0]), following[1]


def _in_month(days: tuple[int, ...], month: Month) -> Piece:
    if not all(1 <= day <= 31 for day in days):
        return Flaw("impossible")
    return MonthDays(days, not month.one, month.following, month.every)


def near(line: Line, i: int) -> Parsed[Pieces]:
    """near := [AT] (NEAR_PART | NEAR) | next_unit | weekend."""
    here, i = i, line.skip(i, "at")
    both = line.word(i, "near_part")
    if both is not None and both[0][0] is not None:
        return (Near(both[0][0]), DayPart(both[0][1])), both[1]
    day = line.word(i, "near")
    if day is not None:
        return (Near(day[0]),), day[1]
    return first_of(line, here, _next_unit, _weekend)


def _next_unit(line: Line, i: int) -> Parsed[Pieces]:
    """next_unit := NEXT unit: the same day of the week or month, one later."""
    after = line.word(i, "next")
    unit = None if after is None else line.word(after[1], "unit")
    lengths = {
        "days": Span(days=1),
        "weeks": Span(days=7),
        "months": Span(months=1),
        "years": Span(months=12),
    }
    if unit is None or unit[0] not in lengths:
        return None
    return (lengths[unit[0]],), unit[1]


def _weekend(line: Line, i: int) -> Parsed[Pieces]:
    """weekend := [ON | AT] [THE] [NEXT | THIS] WEEKEND: its Saturday; never alone."""
    start = line.skip(line.skip(line.skip(i, "on", "at"), "the"), "next", "this")
    end = line.word(start, "weekend")
    return None if end is None or start == i else ((Weekdays((5,)),), end[1])
