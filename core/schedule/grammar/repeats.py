"""Rhythms: every 7 days, every other Sunday, daily, every month on the 31st, twice a week."""

from __future__ import annotations

from fractions import Fraction

from core.schedule.grammar.clock import part
from core.schedule.grammar.dates import date_piece, is_bare_number, ordinal_day
from core.schedule.grammar.days import day_list, month_word, weekday_list
from core.schedule.grammar.spans import quantity
from core.schedule.notation import WEEKDAYS, listed
from core.schedule.pieces import (
    Dated,
    DayPart,
    Except,
    Flaw,
    Interval,
    MonthDays,
    Piece,
    Weekdays,
)
from core.schedule.rules import LONGEST
from core.schedule.tokens import Line, Parsed, first_of

Pieces = tuple[Piece, ...]


def repeat(line: Line, i: int) -> Parsed[Pieces]:
    """repeat := vague | [ONCE] often | [ONCE] every | [ONCE | n TIMES] per_unit."""
    found = first_of(line, i, vague, n_times, nightly)
    if found is not None:
        return found
    return first_of(line, line.skip(i, "once"), often, every) or once_per(line, i)


def vague(line: Line, i: int) -> Parsed[Pieces]:
    """vague := VAGUE [weekday_list]: no rhythm, or two; the vocabulary knows what may be meant.

    As many days behind it as it says are the rhythm.
    """
    found = line.word(i, "vague")
    if found is None:
        return None
    option = Line(found[0][0] if found[0] else "", line.vocabulary)
    count = sum(option.word(at, "weekday") is not None for at in range(len(option)))
    return _on_days(line, found[1], count) or ((Flaw("ambiguous", found[0]),), found[1])


def _on_days(line: Line, i: int, count: int) -> Parsed[Pieces]:
    """on_days := [":" | "," | "("] [ON] weekday_list of so many days, after how often a week."""
    mark = line.sign(i, ":", ",", "(", "-")
    start = line.skip(i if mark is None else mark[1], "on", "every")
    named: tuple[int, ...] = ()
    while (days := weekday_list(line, start)) is not None:
        named, start = named + days[0].days, days[1]
    if count < 2 or len(named) != count or len(set(named)) != count:
        return None
    return (Weekdays(named, repeats=True),), start


def nightly(line: Line, i: int) -> Parsed[Pieces]:
    """nightly := NEAR_PART that is every day's."""
    found = line.word(i, "near_part")
    if found is None or found[0][0] is not None:
        return None
    return (Interval(1, "days", numbered=False), DayPart(found[0][1])), found[1]


def often(line: Line, i: int) -> Parsed[Pieces]:
    """often := OFTEN."""
    found = line.word(i, "often")
    if found is None:
        return None
    count, unit = found[0]
    return (Interval(count, unit, numbered=False),), found[1]


def once_per(line: Line, i: int) -> Parsed[Pieces]:
    """once_per := ONCE (ARTICLE | OF | EVERY) unit."""
    once = line.word(i, "once")
    per = None if once is None else line.skip(once[1], "article", "of", "every")
    unit = None if per is None else line.word(per, "unit")
    if once is None or unit is None or per == once[1]:
        return None
    return (interval_of(Fraction(1), unit[0], numbered=False),), unit[1]


def n_times(line: Line, i: int) -> Parsed[Pieces]:
    """n_times := number TIMES (ARTICLE | OF | EVERY) unit [weekday_list].

    Asked back, with days to choose, unless as many are told.
    """
    count = line.integer(i) or line.word(i, "number")
    times = None if count is None else line.word(count[1], "times")
    per = None if times is None else line.skip(times[1], "article", "of", "every")
    unit = None if per is None else line.word(per, "unit")
    if count is None or unit is None:
        return None
    told = _on_days(line, unit[1], count[0]) if unit[0] == "weeks" else None
    return told or ((Flaw("ambiguous", _spread(count[0], unit[0])),), unit[1])


def _spread(count: int, unit: str) -> tuple[str, ...]:
    """Rhythms that come near so many times a unit."""
    if unit == "weeks" and 1 <= count <= 6:
        days = listed([WEEKDAYS[7 * each // count] for each in range(count)])
        return f"every {days}", f"every {max(1, round(7 / count))} days"
    if unit == "days" and 2 <= count <= 24:
        return (f"every {round(24 / count)} hours",)
    if unit == "months" and 1 <= count <= 15:
        return (f"every {round(30 / count)} days",)
    if unit == "years" and 1 <= count <= 12:
        return (f"every {round(12 / count)} months",)
    return ()


def every(line: Line, i: int) -> Parsed[Pieces]:
    """every := EVERY (either | interval | nth_unit | weekdays | month_days | date | part)."""
    start = line.word(i, "every")
    if start is None:
        return None
    return first_of(
        line,
        line.skip(start[1], "the"),
        _either,
        _interval,
        _nth_unit,
        _nth_weekday,
        _weekdays,
        _month_days,
        _date,
        _part,
    )


def _either(line: Line, i: int) -> Parsed[Pieces]:
    """either := number ("-" | THROUGH | "or") number unit: asked back."""
    low = line.integer(i)
    mark = None if low is None else line.word(low[1], "through") or line.sign(low[1], "-", "/")
    high = None if mark is None else line.integer(mark[1])
    unit = None if high is None else line.word(high[1], "unit")
    if low is None or high is None or unit is None:
        return None
    options = tuple(f"every {count[0]} {unit[0]}" for count in (high, low))
    return (Flaw("ambiguous", options),), unit[1]


def _interval(line: Line, i: int) -> Parsed[Pieces]:
    """interval := [quantity ["-"]] unit [FROM_NOW]."""
    count = quantity(line, i)
    after = i if count is None else count[1]
    dash = None if count is None else line.sign(after, "-", glued=True)
    unit = line.word(after if dash is None else dash[1], "unit")
    if unit is None:
        return None
    number = Fraction(1) if count is None else count[0]
    end = line.skip(unit[1], "from_now")
    return (interval_of(number, unit[0], numbered=count is not None),), end


def _nth_unit(line: Line, i: int) -> Parsed[Pieces]:
    """nth_unit := (OTHER | ORDINAL) unit: every other day, every third week."""
    nth = line.word(i, "other") or line.word(i, "ordinal") or ordinal_day(line, i)
    unit = None if nth is None else line.word(nth[1], "unit")
    if nth is None or unit is None or nth[0] < 1 or month_word(line, unit[1]) is not None:
        return None
    return (interval_of(Fraction(nth[0]), unit[0], numbered=True),), unit[1]


def interval_of(count: Fraction, unit: str, *, numbered: bool) -> Piece:
    """An interval in units that rules count, or why there is none of that length."""
    count *= {"fortnights": 2, "years": 12}.get(unit, 1)
    unit = {"fortnights": "weeks", "years": "months"}.get(unit, unit)
    smaller: dict[str, tuple[int, str]] = {"days": (24, "hours"), "weeks": (7, "days")}
    if unit == "minutes":
        count, unit = count / 60, "hours"
    if count <= 0:
        return Flaw("impossible")
    if unit == "hours" and count < 1:
        return Flaw("too_often", ("every hour",))
    while count.denominator != 1 and unit in smaller:
        factor, unit = smaller[unit]
        count *= factor
    return _checked(count, unit, numbered=numbered)


def _checked(count: Fraction, unit: str, *, numbered: bool) -> Piece:
    if count.denominator != 1:
        below = int(count)
        return Flaw("ambiguous", tuple(f"every {n} {unit}" for n in (below, below + 1) if n))
    for known in LONGEST:
        if known == unit:
            fits = count <= LONGEST[known]
            return Interval(int(count), known, numbered) if fits else Flaw("too_far")
    return Flaw("unclear")


def _nth_weekday(line: Line, i: int) -> Parsed[Pieces]:
    """nth_weekday := (OTHER | ORDINAL) weekday_list [month_word].

    'Every second Sunday' is every other one unless a month is named; 'every third Sunday' is
    asked back, for it may be of the month.
    """
    other = line.word(i, "other")
    nth = other or line.word(i, "ordinal") or ordinal_day(line, i)
    days = None if nth is None else weekday_list(line, nth[1])
    if nth is None or days is None:
        return None
    month = None if other else month_word(line, days[1])
    if month is not None or (other is None and nth[0] in (1, -1)):
        return _of_month(nth[0], days[0].days, days[1] if month is None else month[1])
    if nth[0] == 2:
        return (Weekdays(days[0].days, repeats=True, every=2),), days[1]
    return (_weeks_or_month(nth[0], days[0].days),), days[1]


def _of_month(nth: int, days: tuple[int, ...], end: int) -> Parsed[Pieces]:
    if nth not in (-1, 1, 2, 3, 4) or len(days) != 1:
        return (Flaw("unclear"),), end
    return (Weekdays(days, repeats=True, nth=nth),), end


def _weeks_or_month(nth: int, days: tuple[int, ...]) -> Flaw:
    names = listed([WEEKDAYS[day] for day in days])
    options = [f"every {nth} weeks on {names}"]
    if nth in (3, 4) and len(days) == 1:
        options.append(f"{ {3: 'third', 4: 'fourth'}[nth] } {names} of every month".strip())
    return Flaw("ambiguous", tuple(options))


def _weekdays(line: Line, i: int) -> Parsed[Pieces]:
    """weekdays := weekday_list | WEEKEND, after EVERY."""
    found = weekday_list(line, i)
    if found is not None:
        return (Weekdays(found[0].days, repeats=True),), found[1]
    end = line.word(i, "weekend")
    return None if end is None else ((Weekdays((5,), repeats=True),), end[1])


def _month_days(line: Line, i: int) -> Parsed[Pieces]:
    """month_days := day_list [month_word], after EVERY: every 1st, every 15th of the month."""
    days = day_list(line, i)
    if days is None or is_bare_number(line, days[1]):
        return None
    if line.word(days[1], "month") or line.word(line.skip(days[1], "of"), "month"):
        return None
    if not all(1 <= day <= 31 for day in days[0]):
        return (Flaw("impossible"),), days[1]
    month = month_word(line, days[1])
    if month is None:
        return (MonthDays(days[0], repeats=True),), days[1]
    return (MonthDays(days[0], repeats=True, every=month[0].every),), month[1]


def _date(line: Line, i: int) -> Parsed[Pieces]:
    """date := a day and month, after EVERY: each year."""
    found = date_piece(line, i)
    if found is None or not isinstance(found[0], Dated):
        return None
    return (Dated(found[0].month, found[0].day, None, repeats=True),), found[1]


def _part(line: Line, i: int) -> Parsed[Pieces]:
    """part := PART, after EVERY: each day at that time."""
    found = part(line, i)
    if found is None:
        return None
    return (Interval(1, "days", numbered=False), found[0]), found[1]


def exception(line: Line, i: int) -> Parsed[Pieces]:
    """exception := EXCEPT (weekday_list | [AT | IN] [THE] part): no rule leaves out an hour."""
    start = line.word(i, "except")
    if start is None:
        return None
    days = weekday_list(line, start[1])
    if days is not None:
        return (Except(days[0].days),), days[1]
    hours = part(line, line.skip(line.skip(start[1], "at", "in", "on"), "the"))
    near = line.word(start[1], "near_part")
    end = hours[1] if hours is not None else None if near is None else near[1]
    return None if end is None else ((Flaw("unclear"),), end)
