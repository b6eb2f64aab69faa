"""Single moments in words: "in 1 hour", "this evening", "until 4 May"; and quiet hours."""

from __future__ import annotations

from datetime import datetime, time, timedelta, tzinfo

from core.schedule.grammar import clock
from core.schedule.grammar.scan import scan
from core.schedule.grammar.spans import amounts, so_many_times
from core.schedule.meaning import single_moment
from core.schedule.model import Problem
from core.schedule.pieces import Clock, End, Flaw, Found, Piece, Span
from core.schedule.problems import flaw_in, unclear_problem
from core.schedule.quiet import Quiet
from core.schedule.rules import aware
from core.schedule.said import Said, Unclear, gather, time_of_day
from core.schedule.tokens import Line
from core.schedule.words import languages
from core.schedule.words.vocabulary import Vocabulary

LONGEST_TEXT = 200
"""Characters that are read."""


def parse_moment(text: str, now: datetime, zone: tzinfo) -> datetime | Problem:
    """Read one moment to come.

    Parameters
    ----------
    text : str
        "in 1 hour", "this evening", "tomorrow", "on friday at 8", "4 May 10:00".
    now : datetime
        The present moment; aware.
    zone : tzinfo
        The zone whose days and clocks are meant.

    Returns
    -------
    datetime or Problem
        In UTC. A named day without a time of day means 09:00; an evening that has begun means an
        hour from now.

    Raises
    ------
    NaiveTime
        If `now` has no zone.

    Examples
    --------
    >>> from datetime import UTC
    >>> parse_moment("this evening", datetime(2026, 3, 1, 10, tzinfo=UTC), UTC).isoformat()
    '2026-03-01T19:00:00+00:00'
    """
    now = aware(now, "now")
    return _in_any_language(text, now, zone, until=False)


def parse_until(text: str, now: datetime, zone: tzinfo) -> datetime | Problem:
    """Read when a holiday ends.

    Parameters
    ----------
    text : str
        "until 4 May", "until friday", "4 May", "for 2 weeks".
    now : datetime
        The present moment; aware.
    zone : tzinfo
        The zone whose days are meant.

    Returns
    -------
    datetime or Problem
        In UTC: the moment at which that day begins, or the time of day that was said.

    Raises
    ------
    NaiveTime
        If `now` has no zone.

    Examples
    --------
    >>> from datetime import UTC
    >>> parse_until("until 4 May", datetime(2026, 3, 1, 10, tzinfo=UTC), UTC).isoformat()
    '2026-05-04T00:00:00+00:00'
    """
    now = aware(now, "now")
    return _in_any_language(text, now, zone, until=True)


def tells_span(text: str) -> bool:
    """Tell whether a text is nothing but how long: `2 weeks`, `for 10 days`, `für 2 wochen`.

    Examples
    --------
    >>> tells_span("for 2 weeks"), tells_span("5 march")
    (True, False)
    """
    for vocabulary in languages():
        line = Line(text[:LONGEST_TEXT], vocabulary)
        span = amounts(line, line.skip(0, "until", "lasting"))
        if span is not None and line.at_end(span[1]):
            return True
    return False


def parse_times(text: str) -> int | None:
    """How many times a rhythm is to come, where its end tells that; else None.

    Examples
    --------
    >>> parse_times("10 times"), parse_times("for ten times"), parse_times("for 10 days")
    (10, 10, None)
    """
    for vocabulary in languages():
        line = Line(f", {text[:LONGEST_TEXT]}", vocabulary)
        found = so_many_times(line, 1)
        if found is not None and line.at_end(found[1]):
            return found[0]
    return None


def parse_end(text: str, now: datetime, zone: tzinfo) -> datetime | None:
    """When a rhythm is over: a span from now on, else the end of the day that is said.

    Examples
    --------
    >>> from datetime import UTC
    >>> now = datetime(2026, 3, 2, 18, tzinfo=UTC)
    >>> parse_end("for 3 days", now, UTC).isoformat(), parse_end("until friday", now, UTC).day
    ('2026-03-05T18:00:00+00:00', 7)
    """
    now = aware(now, "now")
    for vocabulary in languages():
        line = Line(text[:LONGEST_TEXT], vocabulary)
        span = amounts(line, line.skip(0, "until", "lasting"))
        if span is not None and isinstance(span[0], Span) and line.at_end(span[1]):
            return single_moment(Said(span=span[0]), now, zone)
    until = parse_until(text, now, zone)
    if not isinstance(until, datetime):
        return None
    midnight = until.astimezone(zone).time() == time()
    return until + timedelta(days=1) if midnight else until


def _in_any_language(text: str, now: datetime, zone: tzinfo, *, until: bool) -> datetime | Problem:
    for vocabulary in languages():
        found = _in_language(text, vocabulary, now, zone, until=until)
        if found is not None:
            return found
    return Problem("no_time", text, 0, len(text))


def _in_language(
    text: str, vocabulary: Vocabulary, now: datetime, zone: tzinfo, *, until: bool
) -> datetime | Problem | None:
    """The moment in one language; None where the text is not all words of time in it."""
    line = Line(text[:LONGEST_TEXT], vocabulary)
    founds = _all_of_it(line, until=until)
    if founds is None:
        return None
    flawed = flaw_in(line, founds)
    if flawed is not None:
        return flawed
    pieces = tuple(p for found in founds for p in found.pieces if not isinstance(p, End))
    try:
        said = gather(pieces)
        return _end_of(said, now, zone) if until else single_moment(said, now, zone)
    except Unclear as unclear:
        return unclear_problem(line, founds, unclear.flaw, "")
    except OverflowError:
        return unclear_problem(line, founds, Flaw("too_far"), "")


def _all_of_it(line: Line, *, until: bool) -> list[Found] | None:
    """The phrases, if nothing but them stands in the line."""
    begin = line.skip(0, "until", "lasting") if until else 0
    span = amounts(line, begin) if until else None
    if span is not None and line.at_end(span[1]):
        return [Found((span[0],), begin, span[1], strong=True)]
    runs = scan(line)
    founds = [found for run in runs for found in run]
    if not founds or not line.at_end(founds[-1].end):
        return None
    covered = {k for found in founds for k in range(found.start, found.end)}
    rest = [token.text for k, token in enumerate(line.tokens) if k not in covered and k >= begin]
    return founds if all(word in ",.;:!?" for word in rest) else None


def _end_of(said: Said, now: datetime, zone: tzinfo) -> datetime:
    """The moment itself where a clock or hours were said, else the beginning of its day."""
    elapsed = said.span is not None and said.span.elapsed
    if elapsed or said.exact is not None or time_of_day(said) is not None:
        return single_moment(said, now, zone)
    said.clock = Clock(0)
    return single_moment(said, now, zone)


def parse_quiet(text: str) -> Quiet | Problem:
    """Read quiet hours.

    Parameters
    ----------
    text : str
        "22:00-07:00", "22-7", "from 10pm to 7am", with or without "quiet hours" before.

    Returns
    -------
    Quiet or Problem
        The span of the day; a problem where it is not two times of day that differ.

    Examples
    --------
    >>> str(parse_quiet("10pm to 7am"))
    '22:00-07:00'
    """
    for vocabulary in languages():
        found = _quiet_in(Line(text[:LONGEST_TEXT], vocabulary))
        if found is not None:
            return found
    return Problem("unclear", text, 0, len(text), "22:00-07:00", ("22:00-07:00",))


def parse_clock(text: str) -> time | None:
    """The time of day that a text is; None where it is more than one, or something else.

    Examples
    --------
    >>> parse_clock("9"), parse_clock("10pm"), parse_clock("9 fish")
    (datetime.time(9, 0), datetime.time(22, 0), None)
    """
    for vocabulary in languages():
        line = Line(text[:LONGEST_TEXT], vocabulary)
        found = _clock_like(line, line.skip(0, "at"))
        if found is not None and line.at_end(found[1]) and not isinstance(found[0], Flaw):
            return time_of_day(gather((found[0],)))
    return None


def _quiet_in(line: Line) -> Quiet | Problem | None:
    """quiet := words [START] clock (THROUGH | UNTIL | AND) clock, to the end of the text."""
    begin = next((k for k in range(len(line)) if _clock_like(line, k) is not None), len(line))
    first = _clock_like(line, begin)
    if first is None or any(token.text.isdigit() for token in line.tokens[:begin]):
        return None
    between = line.skip(first[1], "through", "until", "and")
    second = _clock_like(line, line.skip(between, "at"))
    if between == first[1] or second is None or not line.at_end(second[1]):
        return None
    return _span_of_day(line, begin, second[1], first[0], second[0])


def _clock_like(line: Line, i: int) -> tuple[Piece, int] | None:
    found = clock.clock(line, i) or clock.dotted(line, i) or clock.bare_hour(line, i)
    return None if found is None else (found[0], line.skip(found[1], "oclock"))


def _span_of_day(line: Line, begin: int, end: int, first: Piece, second: Piece) -> Quiet | Problem:
    start, stop = line.span(begin, end)
    problem = Problem(
        "impossible", line.text[start:stop], start, stop, "22:00-07:00", ("22:00-07:00",)
    )
    if isinstance(first, Flaw) or isinstance(second, Flaw):
        return problem
    times = [time_of_day(gather((piece,))) for piece in (first, second)]
    if times[0] is None or times[1] is None or times[0] == times[1]:
        return problem
    return Quiet(times[0], times[1])
