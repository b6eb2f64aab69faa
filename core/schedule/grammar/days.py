"""Days without a month's name: monday, mondays and thursdays, the 1st, tomorrow, next week."""

from __future__ import annotations

from core.schedule.grammar.dates import ordinal_day
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
    """on_weekday := [ON] [THE] [NEXT | THIS] weekday_list."""
    start = line.skip(i, "on")
    after = line.word(start, "next")
    i = after[1] if after else line.skip(line.skip(start, "the"), "this", "next")
    found = weekday_list(line, i)
    if found is None:
        return None
    days = found[0]
    return (Weekdays(days.days, days.repeats, later=after is not None),), found[1]


def nth_weekday(line: Line, i: int) -> Parsed[Pieces]:
    """nth_weekday := [ON] [THE] ORDINAL weekday [OF] month_word."""
    nth = _nth(line, line.skip(line.skip(i, "on"), "the"))
    day = None if nth is None else line.word(nth[1], "weekday")
    month = None if day is None else month_word(line, day[1])
    if nth is None or day is None or month is None:
        return None
    if nth[0] not in (-1, 1, 2, 3, 4):
        return (Flaw("unclear"),), month[1]
    return (Weekdays((day[0],), repeats=True, nth=nth[0]),), month[1]


def _nth(line: Line, i: int) -> Parsed[int]:
    return line.word(i, "ordinal") or ordinal_day(line, i)


def month_word(line: Line, i: int) -> Parsed[bool]:
    """month_word := [OF] [THE] [EVERY] [NEXT | THIS] "month"; True for this or the next one."""
    i = line.skip(i, "of")
    i = line.skip(i, "the")
    i = line.skip(i, "every")
    one = line.skip(i, "next", "this")
    unit = line.word(one, "unit")
    return None if unit is None or unit[0] != "months" else (one != i, unit[1])


def month_days(line: Line, i: int) -> Parsed[Pieces]:
    """month_days := [ON] [THE] (day_list | LAST_DAY) month_word, or ON THE day_list."""
    start = line.skip(i, "on")
    named = line.skip(start, "the")
    last = line.word(named, "last_day")
    days = _day_list(line, named) if last is None else ((31,), last[1])
    if days is None:
        return None
    month = month_word(line, days[1])
    if month is not None:
        in_one = month[0]
        following = in_one and _says_next(line, days[1], month[1])
        return (_checked(days[0], repeats=not in_one, next_month=following),), month[1]
    is_ordinal = line.tokens[days[1] - 1].text.isalpha()
    if start == i or named == start or last is not None or not is_ordinal:
        return None
    return (_checked(days[0], repeats=False),), days[1]


def month_end(line: Line, i: int) -> Parsed[Pieces]:
    """month_end := [AT | ON] [THE] MONTH_END month_word."""
    end = line.word(line.skip(line.skip(i, "at", "on"), "the"), "month_end")
    month = None if end is None else month_word(line, end[1])
    if end is None or month is None:
        return None
    repeats = any(line.word(k, "every") for k in range(end[1], month[1]))
    return (MonthDays((31,), repeats, _says_next(line, end[1], month[1])),), month[1]


def _says_next(line: Line, i: int, end: int) -> bool:
    return any(line.word(k, "next") for k in range(i, end))


def _day_list(line: Line, i: int) -> Parsed[tuple[int, ...]]:
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


def _checked(days: tuple[int, ...], *, repeats: bool, next_month: bool = False) -> Piece:
    if not all(1 <= day <= 31 for day in days):
        return Flaw("impossible")
    return MonthDays(days, repeats, next_month)


def near(line: Line, i: int) -> Parsed[Pieces]:
    """near := NEAR_PART | NEAR | [ON] (NEXT | THIS) (week | month | year | weekend)."""
    both = line.word(i, "near_part")
    if both is not None and both[0][0] is not None:
        return (Near(both[0][0]), DayPart(both[0][1])), both[1]
    day = line.word(i, "near")
    if day is not None:
        return (Near(day[0]),), day[1]
    return first_of(line, i, _next_unit, _weekend)


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
    """weekend := [ON | AT] [THE] (NEXT | THIS) "weekend": its Saturday."""
    i = line.skip(line.skip(i, "on", "at"), "the")
    after = line.word(i, "next") or line.word(i, "this")
    end = None if after is None else line.word(after[1], "weekend")
    return None if end is None else ((Weekdays((5,)),), end[1])
