"""Finding the words of time in a text that also says what is to be done."""

from __future__ import annotations

from collections.abc import Callable, Iterator

from core.schedule.grammar import clock, dates, days, repeats, spans
from core.schedule.pieces import (
    Clock,
    Dated,
    DayPart,
    End,
    Exact,
    Found,
    Interval,
    MonthDays,
    Near,
    Piece,
    Span,
    Start,
    Weekdays,
)
from core.schedule.tokens import Line, Parsed
from core.schedule.words.tasks import ANALYTES, OF, TO, VERBS

Pieces = tuple[Piece, ...]
Rule = Callable[[Line, int], Parsed[Pieces]]
_NAMES_DAY = (Weekdays, MonthDays, Dated, Near, DayPart, Exact)


def _one(rule: Callable[[Line, int], Parsed[Piece]]) -> Rule:
    """A grammar function of one piece as one of several."""

    def pieces(line: Line, i: int) -> Parsed[Pieces]:
        found = rule(line, i)
        return None if found is None else ((found[0],), found[1])

    return pieces


def dated(line: Line, i: int) -> Parsed[Piece]:
    """dated := (ON | AT | ONCE) [THE] date_piece | IN MONTH."""
    start = line.skip(i, "on", "at", "once")
    if start != i:
        return dates.date_piece(line, line.skip(start, "the"))
    before = line.word(i, "in")
    month = None if before is None else line.word(before[1], "month")
    return None if month is None else (Dated(month[0], 1), month[1])


def weekday_with_word(line: Line, i: int) -> Parsed[Pieces]:
    """weekday_with_word := on_weekday that begins with ON, BOTH, AT, NEXT or THIS, or a plural."""
    found = days.on_weekday(line, i)
    if found is None:
        return None
    plural = isinstance(found[0][0], Weekdays) and found[0][0].repeats
    begun = line.skip(i, "on", "both", "at", "next", "this") != i
    return found if plural or begun else None


def day_for(line: Line, i: int) -> Parsed[Pieces]:
    """day_for := LASTING a day by its name, where a text begins: for friday to test."""
    lasting = line.word(i, "lasting") if line.vocabulary.language == "en" and not i else None
    return None if lasting is None else days.on_weekday(line, lasting[1])


def named_date(line: Line, i: int) -> Parsed[Piece]:
    """named_date := a date with its month's name, or an ISO date."""
    return dates.iso(line, i) or dates.day_month(line, i) or dates.month_day(line, i)


def bounds(line: Line, i: int) -> Parsed[Pieces]:
    """bounds := (START | UNTIL) day | UNTIL MONTH | LASTING amounts."""
    if (count := spans.so_many_times(line, i)) is not None:
        return (End(),), count[1]
    lasting = line.word(i, "lasting")
    span = None if lasting is None else spans.amounts(line, lasting[1])
    if span is not None:
        return (End(), span[0]), span[1]
    start, end = line.word(i, "start"), line.word(i, "until")
    mark = start or end
    if mark is None:
        return None
    day = longest(line, mark[1], (*_STRONG, *_WEAK, days.the_day))
    month = line.word(mark[1], "month")
    if day is None and end is not None and month is not None:
        return (End(), Dated(month[0], 1)), month[1]
    if day is None or not isinstance(day[0][0], (*_NAMES_DAY, Clock, Span)):
        return None
    return (Start() if start else End(), *day[0]), day[1]


_STRONG: tuple[Rule, ...] = (
    repeats.repeat,
    repeats.exception,
    spans.in_span,
    _one(clock.part_after_in),
    _one(clock.clock_after_at),
    _one(clock.hour_for),
    _one(clock.hour_in_front),
    days.near,
    days.nth_weekday,
    days.month_days,
    days.month_end,
    weekday_with_word,
    day_for,
    _one(dated),
    _one(named_date),
)
_WEAK: tuple[Rule, ...] = (
    days.on_weekday,
    _one(dates.date_piece),
    _one(clock.clock),
)


def longest(line: Line, i: int, rules: tuple[Rule, ...]) -> Parsed[Pieces]:
    """What the rule that takes most tokens gives; the first of those that take as many."""
    best: Parsed[Pieces] = None
    for rule in rules:
        found = rule(line, i)
        if found is not None and (best is None or found[1] > best[1]):
            best = found
    return best


def scan(line: Line) -> list[list[Found]]:
    """All runs of words of time, in order; words in a run stand side by side."""
    runs: list[list[Found]] = []
    for found in _all(line):
        if runs and _follows(line, runs[-1][-1].end, found.start):
            runs[-1].append(found)
        else:
            runs.append([found])
    return runs


def time_runs(line: Line) -> list[list[Found]]:
    """The runs that tell the time of a task, not part of it.

    A run counts where one of its phrases can mean nothing else, where it has several phrases, or
    where it stands at an edge of the text.
    """
    return [
        run
        for run in scan(line)
        if len(run) > 1 or run[0].strong or _at_edge(line, run[0].start, run[-1].end)
    ]


def _all(line: Line) -> Iterator[Found]:
    i, last = 0, None
    while i < len(line):
        may = line.may_begin(i) and not _of_analyte(line, i)
        found = _found_at(line, i, last) if may else None
        if found is None:
            i += 1
            continue
        yield found
        i, last = found.end, found


def _of_analyte(line: Line, i: int) -> bool:
    """True where a number is the end of a formula: no3, po4."""
    if i == 0 or not line.is_glued(i) or line.digits(i) is None:
        return False
    return line.tokens[i - 1].folded + line.tokens[i].text in ANALYTES


def _found_at(line: Line, i: int, last: Found | None) -> Found | None:
    strong = longest(line, i, (bounds, *_STRONG))
    weak = longest(line, i, _WEAK)
    if strong is not None and (weak is None or strong[1] >= weak[1]):
        return Found(strong[0], i, strong[1], strong=True)
    if weak is not None:
        return Found(weak[0], i, weak[1], strong=strong is not None)
    return _hour_after_day(line, i, last)


def _hour_after_day(line: Line, i: int, last: Found | None) -> Found | None:
    """hour_after_day := a bare hour right after a day, at the end or before IN THE PART or a task.

    An hour with its minutes apart (19 30) may stand before any words, and after a rhythm.
    """
    if last is None or last.end != i or not isinstance(last.pieces[-1], (*_NAMES_DAY, Interval)):
        return None
    spaced = clock.spaced(line, i)
    if spaced is not None and isinstance(spaced[0], Clock) and spaced[0].minute % 5 == 0:
        return Found((spaced[0],), i, spaced[1], strong=False)
    to = clock.minutes_to(line, i)
    if to is not None and isinstance(to[0], Clock) and _nothing_of_task(line, to[1]):
        return Found((to[0],), i, to[1], strong=False)
    hour = clock.bare_hour(line, i)
    joined = hour is not None and _task_begins(line, hour[1])
    in_part = hour is not None and clock.part_after_in(line, hour[1]) is not None
    if not isinstance(last.pieces[-1], _NAMES_DAY) and not joined and not in_part:
        return None
    counted = clock.oclock_after_day(line, i)
    if counted is not None and isinstance(counted[0], Clock):
        return Found((counted[0],), i, counted[1], strong=False)
    if hour is None or not isinstance(hour[0], Clock):
        return None
    if not joined and not in_part and not line.at_end(hour[1]):
        return None
    return Found((hour[0],), i, hour[1], strong=False)


def _nothing_of_task(line: Line, i: int) -> bool:
    """True at the end, and before IN THE PART."""
    return line.at_end(i) or clock.part_after_in(line, i) is not None


def _task_begins(line: Line, i: int) -> bool:
    """True where a task begins, so that a number before it is none of its own: `10 to feed`."""
    if i >= len(line) or line.digits(i - 1) is None or line.is_glued(i):
        return False
    word = line.tokens[i].folded
    following = line.tokens[i + 1].folded if i + 1 < len(line) else ""
    if word in TO:
        return following.isalpha()
    if word in OF:
        return following in VERBS
    return word in VERBS and not word.endswith("s")


def _follows(line: Line, end: int, start: int) -> bool:
    return all(token.text in ",;:" for token in line.tokens[end:start])


def _at_edge(line: Line, start: int, end: int) -> bool:
    before = 0
    while before < start and line.skip(before, "filler") != before:
        before = line.skip(before, "filler")
    return before >= start or line.at_end(end)
