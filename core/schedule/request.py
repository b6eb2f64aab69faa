"""What is asked for after "remind me to"."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace
from datetime import datetime, timedelta, tzinfo

from core.schedule.grammar.scan import time_runs
from core.schedule.halves import either_half, half_doubted
from core.schedule.model import Problem, Request
from core.schedule.pieces import Found, Interval, Near
from core.schedule.problems import end_in, flaw_in, loose_end, pieces_of, unclear_problem
from core.schedule.rhythm import Plan, plan
from core.schedule.rules import Every, aware
from core.schedule.said import Said, Unclear, gather
from core.schedule.tasks import kind_of
from core.schedule.tokens import Line, tokens_of
from core.schedule.words import languages, tasks

LONGEST_TEXT = 500
"""Characters that are read; a reminder's words beyond them are part of its task."""

ENGLISH = frozenset({"do", "so"})
"""Weekdays of German and Dutch that are English words in front of a task."""

_OUTER = " \t\r\n,:;.!-–—"
_LEAD = re.compile(
    rf"^(?:(?:(?:{'|'.join(re.escape(word) for word in tasks.LEADS)})\b(?!['’])|[dj]['’])[\s,:]*)+",
    re.IGNORECASE,
)
_TRAIL = re.compile(
    r"[\s,]+(?:please|pls|thanks|thank you|or so|then|and|und|et|och|for|für|pour|para|per|voor)$",
    re.IGNORECASE,
)
_EMPTY = re.compile(r"\(\s*\)|\[\s*\]|\"\s*\"")
_COUNT_FROM_DONE = ("test", "change")
_BEGUN = timedelta(hours=1)
"""An evening that has begun means so long from now."""


def parse_request(text: str, now: datetime, zone: tzinfo) -> Request | Problem:
    """Read the words that follow "remind me to".

    Words of time may stand first, last or between; what is left is the task. Of the languages
    of `core.schedule.words` the one is read whose words of time cover most of the text.

    Parameters
    ----------
    text : str
        Anything at all.
    now : datetime
        The present moment; aware.
    zone : tzinfo
        The zone whose days and clocks are meant.

    Returns
    -------
    Request or Problem
        The reminder, or why there is none. A problem's suggestions are whole texts that can be
        given here instead.

    Raises
    ------
    NaiveTime
        If `now` has no zone.

    Notes
    -----
    A named day without a time of day means 09:00. An interval in days, weeks or months without
    one keeps the time of day at which it was asked for. 'Every day at nine' keeps to the clock,
    'every 7 days at 19:00' is due for the first time in seven days.

    Examples
    --------
    >>> from datetime import UTC
    >>> now = datetime(2026, 3, 1, tzinfo=UTC)
    >>> asked = parse_request("test fern every 7 days at 19:00", now, UTC)
    >>> asked.what, asked.kind, asked.counts_from_done, asked.first.isoformat()
    ('test fern', 'test', True, '2026-03-08T19:00:00+00:00')
    """
    now = aware(now, "now").replace(microsecond=0)
    line, founds = best_language(text)
    return _understood(text, line, founds, now, zone) if founds else _no_time(text)


def parse_anew(texts: Sequence[str], now: datetime, zone: tzinfo) -> Request | Problem | None:
    """A request whose time is told anew: the words of the first, then of each change of it.

    A change is words of time and nothing else. A day or a rhythm takes the place of the one before,
    a time of day that of the one before; what a change leaves out stays.

    Parameters
    ----------
    texts : sequence of str
        What was asked for, as for `parse_request`, and the changes in order.

    Returns
    -------
    Request or Problem or None
        None where one of them is no such text.

    Examples
    --------
    >>> from datetime import UTC
    >>> now = datetime(2026, 3, 1, tzinfo=UTC)
    >>> asked = parse_anew(["test fern every friday at 19:00", "saturday"], now, UTC)
    >>> asked.what, asked.rule.days, asked.first.isoformat()
    ('test fern', (5,), '2026-03-07T19:00:00+00:00')
    """
    now = aware(now, "now").replace(microsecond=0)
    said, what = Said(), ""
    for place, text in enumerate(texts):
        line, founds = best_language(text)
        task = task_of(text, spans(line, founds)) if founds else text
        if not founds or (place and task):
            return None
        what = what or task
        if (flawed := flaw_in(line, founds) or end_in(line, founds)) is not None:
            return flawed
        try:
            said = said.changed(gathered(line, founds))
            planned = plan(said, now, zone)
        except Unclear as unclear:
            return unclear_problem(line, founds, unclear.flaw, what)
        if what and (halves := either_half(line, founds, None, now, zone)) is not None:
            return halves
    return request_of(what, planned, said.needs_zone) if what else None


def is_to_come(text: str, now: datetime, zone: tzinfo) -> bool:
    """Tell whether words of time cannot be about what is over: a rhythm, a span, tomorrow.

    A bare weekday, date or clock time may be the last as well as the next.

    Examples
    --------
    >>> from datetime import UTC
    >>> now = datetime(2026, 3, 1, tzinfo=UTC)
    >>> [is_to_come(f"change water {when}", now, UTC) for when in ("tomorrow", "on friday")]
    [True, False]
    """
    _, founds = best_language(text)
    try:
        said = gather(pieces_of(founds))
        planned = plan(said, now, zone) if founds else None
    except Unclear:
        return False
    if planned is None:
        return False
    ahead = said.near is not None and said.near.days > 0
    tonight = said.near == Near(0) and said.part is not None
    later = said.weekdays is not None and said.weekdays.later
    soon = tonight and planned.first >= now + _BEGUN
    return bool(said.repeats or said.span or said.exact or ahead or later or soon)


def tells_rhythm(text: str) -> bool:
    """Tell whether a text says how often, even if it is unclear when.

    Examples
    --------
    >>> tells_rhythm("daily: feed, weekly: change water"), tells_rhythm("fed at 8")
    (True, False)
    """
    _, founds = best_language(text)
    return any(isinstance(piece, Interval) for piece in pieces_of(founds))


def best_language(text: str) -> tuple[Line, list[Found]]:
    """The phrases in the language that knows most letters of the words of time, or the first.

    Figures count for no language, so that "19:00" is read by the words beside it.
    """
    text = text[:LONGEST_TEXT]
    tokens = tokens_of(text)
    words = {token.folded for token in tokens}
    readings: list[tuple[Line, list[Found]]] = []
    for vocabulary in languages():
        if readings and words.isdisjoint(vocabulary.phrases):
            continue  # knows no more than figures, which the first reads as well
        line = Line(text, vocabulary, tokens)
        readings.append((line, [found for run in time_runs(line) for found in run]))
    best = max(readings, key=lambda reading: _known_letters(*reading))
    return readings[0] if _is_a_verb(*best, readings[0][1]) else best


def _is_a_verb(line: Line, founds: list[Found], english: list[Found]) -> bool:
    """Whether English reads all but a weekday in front of a task, which it has as do or so."""
    if not founds or line.vocabulary.language == "en":
        return False
    first, rest = founds[0], founds[1:]
    short = first.start == 0 and first.end == 1 and line.tokens[0].folded in ENGLISH
    alike = [(each.start, each.end) for each in rest] == [(e.start, e.end) for e in english]
    return short and alike and len(line) > 1


def _known_letters(line: Line, founds: list[Found]) -> int:
    tokens = (token for found in founds for token in line.tokens[found.start : found.end])
    return sum(len(token.text) for token in tokens if token.text.isalpha())


def _understood(
    text: str, line: Line, founds: list[Found], now: datetime, zone: tzinfo
) -> Request | Problem:
    """The request that the phrases make, or why they make none."""
    what = task_of(text, spans(line, founds))
    flawed = flaw_in(line, founds)
    if flawed is not None:
        return flawed
    ended = end_in(line, founds)
    if ended is not None:
        return ended
    doubted = half_doubted(line, founds, now, zone)
    if what and doubted is not None:
        return doubted
    try:
        said = gathered(line, founds)
        planned = plan(said, now, zone)
    except Unclear as unclear:
        return unclear_problem(line, founds, unclear.flaw, what)
    loose = loose_end(line, founds)
    if loose is not None:
        return loose
    if not what:
        return Problem("no_what", text, len(text), len(text))
    halves = either_half(line, founds, planned.first, now, zone)
    if halves is not None:
        return halves
    return request_of(what, planned, said.needs_zone)


def gathered(line: Line, founds: list[Found]) -> Said:
    """The pieces by what they say; a bare hour is of 24 where a language's clocks have as many.

    Of today it may still be the hour of the evening.

    Raises
    ------
    Unclear
        At a flaw, or where two of a kind do not go together.
    """
    said = gather(pieces_of(founds))
    halves = line.vocabulary.language == "en" or said.part is not None or said.near == Near(0)
    if said.clock is None or halves:
        return said
    return replace(said, clock=replace(said.clock, bare=False))


def request_of(what: str, planned: Plan, clock_time_said: bool) -> Request:
    """The request for a task at the times of a plan."""
    kind = kind_of(what)
    counts = isinstance(planned.rule, Every) and kind in _COUNT_FROM_DONE
    return Request(what, planned.rule, kind, counts, clock_time_said, planned.anchor, planned.first)


def spans(line: Line, founds: list[Found]) -> list[tuple[int, int]]:
    """The places of the phrases, with an 'and' that joins two of them."""
    ends = [*(found.start for found in founds[1:]), len(line)]
    return [
        line.span(found.start, following if line.skip(found.end, "and") == following else found.end)
        for found, following in zip(founds, ends, strict=True)
    ]


def task_of(text: str, places: list[tuple[int, int]]) -> str:
    """The words outside the spans, without the "to" and "please" around them."""
    kept, last = [], 0
    for start, end in (*places, (len(text), len(text))):
        kept.append(text[last:start].strip(_OUTER))
        last = end
    joined = _EMPTY.sub(" ", " ".join(filter(None, kept)))
    joined = " ".join(joined.split())
    if places and joined[:7].casefold() == "for to ":
        joined = joined[7:]  # a reminder for friday to test
    return _TRAIL.sub("", _LEAD.sub("", joined)).strip(_OUTER)


def _no_time(text: str) -> Problem:
    what = task_of(text, [])
    options = tuple(f"{what} {when}" for when in ("every 7 days at 19:00", "tomorrow at 19:00"))
    suggestions = options if what else ()
    return Problem(
        "no_time", text, len(text), len(text), next(iter(suggestions), None), suggestions
    )
