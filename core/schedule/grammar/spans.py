"""How long: in 24 h, in an hour and a half, 3 days from now, in 1h30."""

from __future__ import annotations

from datetime import timedelta
from fractions import Fraction

from core.schedule.pieces import Flaw, Piece, Span
from core.schedule.tokens import Line, Parsed

Pieces = tuple[Piece, ...]
MOST = 100_000
"""A count beyond this lies more than ten years off in any unit but minutes and hours."""
TEN_YEARS = timedelta(days=3653)


def in_span(line: Line, i: int) -> Parsed[Pieces]:
    """in_span := IN amounts | amounts FROM_NOW."""
    before = line.word(i, "in")
    if before is not None:
        found = amounts(line, before[1])
        return None if found is None else ((found[0],), line.skip(found[1], "from_now"))
    found = amounts(line, i)
    after = None if found is None else line.word(found[1], "from_now")
    return None if found is None or after is None else ((found[0],), after[1])


def so_many_times(line: Line, i: int) -> Parsed[int]:
    """so_many_times := (LASTING | a comma before) count TIMES, and no unit behind: 10 times."""
    lasting = line.word(i, "lasting")
    start = i if lasting is None else lasting[1]
    if lasting is None and (i == 0 or line.tokens[i - 1].text != ","):
        return None
    count = line.integer(start) or line.word(start, "number")
    times = None if count is None else line.word(count[1], "times")
    if count is None or times is None:
        return None
    per = line.skip(times[1], "article", "of", "every")
    unit = line.word(per, "unit")
    return None if per != times[1] or unit is not None else (count[0], times[1])


def amounts(line: Line, i: int) -> Parsed[Span | Flaw]:
    """amounts := amount ([AND] amount)*, added up; "1h30" is an hour and thirty minutes."""
    total, end = Span(), i
    while True:
        found = amount(line, end if end == i else line.skip(end, "and"))
        if found is None:
            return None if end == i else (total, end)
        if isinstance(found[0], Flaw):
            return found[0], found[1]
        total, end = _added(total, found[0]), found[1]
        minutes = line.digits(end) if line.is_glued(end) else None
        if minutes is not None and len(minutes[0]) == 2 and total.elapsed:
            total, end = _added(total, Span(timedelta(minutes=int(minutes[0])))), minutes[1]
        half = line.word(line.skip(line.skip(end, "and"), "article"), "half")
        if half is not None and end != line.skip(end, "and"):
            total, end = _added(total, _half(found[0])), half[1]


def amount(line: Line, i: int) -> Parsed[Span | Flaw]:
    """amount := quantity unit | HALF [ARTICLE] unit."""
    half = line.word(i, "half")
    count = (Fraction(1, 2), line.skip(half[1], "article")) if half else quantity(line, i)
    unit = None if count is None else line.word(count[1], "unit")
    if count is None or unit is None:
        return None
    return span_of(count[0], unit[0]), unit[1]


def quantity(line: Line, i: int) -> Parsed[Fraction]:
    """quantity := [digits] fraction | digits ["." digits] | NUMBER | ARTICLE; or a comma."""
    part = _fraction(line, i)
    if part is not None:
        return part
    whole = line.integer(i)
    if whole is None:
        word = line.word(i, "number") or line.word(i, "article")
        return None if word is None else (Fraction(word[0]), word[1])
    more = None if line.is_glued(whole[1]) else _fraction(line, whole[1])
    if more is not None:
        return whole[0] + more[0], more[1]
    point = line.sign(whole[1], ".", ",", glued=True)
    digits = None if point is None else line.digits(point[1])
    if digits is None or len(digits[0]) > 3:
        return Fraction(whole[0]), whole[1]
    return Fraction(f"{whole[0]}.{digits[0]}"), digits[1]


def _fraction(line: Line, i: int) -> Parsed[Fraction]:
    """fraction := digits "/" digits, less than one."""
    top = line.integer(i)
    slash = None if top is None else line.sign(top[1], "/", glued=True)
    bottom = None if slash is None else line.integer(slash[1])
    if top is None or bottom is None or not 0 < top[0] < bottom[0] <= 12:
        return None
    return Fraction(top[0], bottom[0]), bottom[1]


def span_of(count: Fraction, unit: str) -> Span | Flaw:
    """So many units from now: minutes and hours elapse, days and months are the calendar's."""
    if count <= 0:
        return Flaw("impossible")
    if count > MOST:
        return Flaw("too_far")
    if unit in ("minutes", "hours"):
        elapsed = timedelta(minutes=float(count * (60 if unit == "hours" else 1)))
        return Span(elapsed) if elapsed <= TEN_YEARS else Flaw("too_far")
    if unit in ("months", "years"):
        months = count * (12 if unit == "years" else 1)
        return Span(months=int(months)) if months.denominator == 1 else Span(days=int(months * 30))
    days = count * {"days": 1, "weeks": 7, "fortnights": 14}[unit]
    if days > TEN_YEARS.days:
        return Flaw("too_far")
    return Span(timedelta(hours=float(days % 1 * 24)), int(days))


def _half(span: Span) -> Span:
    """Half of the unit that was counted last, for 'an hour and a half'."""
    if span.months:
        return Span(days=15)
    if span.days:
        unit = 7 if span.days % 7 == 0 else 1
        return Span(timedelta(hours=unit * 12))
    return Span(timedelta(minutes=30))


def _added(one: Span, other: Span) -> Span:
    return Span(one.elapsed + other.elapsed, one.days + other.days, one.months + other.months)
