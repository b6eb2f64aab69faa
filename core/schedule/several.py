"""Several jobs in one breath, each with its own time: `saturday ferts and sunday water`.

several = job { joint job };  job = when task | task when

A job whose words of time stand within its task is none, so that `saturday ferts and plants and
sunday water` is two. What a later job leaves out, a time of day, the day of an hour, its task
(`and again at 20`), it has from the first.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from datetime import datetime, tzinfo
from itertools import combinations, pairwise
from typing import Final

from core.schedule.halves import either_half
from core.schedule.model import Problem, Request
from core.schedule.notation import to_text
from core.schedule.pieces import Clock, Found, Span, Weekdays
from core.schedule.problems import end_in, flaw_in, loose_end, unclear_problem
from core.schedule.request import best_language, gathered, request_of, spans, task_of
from core.schedule.rhythm import Plan, plan
from core.schedule.rules import Once, aware
from core.schedule.said import Said, Unclear
from core.schedule.tasks import is_again
from core.schedule.tokens import Line, tokens_of
from core.schedule.words import languages, tasks

LONGEST = 200
"""A longer text is no list of jobs. [characters]"""

MOST_JOINTS = 7
"""So many words that may join two jobs are looked at."""

_HOUR: Final = {
    "en": "at",
    "de": "um",
    "fr": "à",
    "es": "a las",
    "pt": "às",
    "it": "alle",
    "nl": "om",
    "pl": "o",
    "sv": "kl",
}
"""What each language puts before an hour."""


@dataclass(frozen=True, slots=True)
class _Job:
    """Words with their time at an edge; `leads` where it stands first, `ends` where last."""

    line: Line
    founds: list[Found]
    task: str
    leads: bool
    ends: bool


def parse_several(text: str, now: datetime, zone: tzinfo) -> list[tuple[str, Request]] | Problem:
    """The jobs of a text with two or more of them, each with the words that would tell it alone.

    Parameters
    ----------
    text, now, zone
        As for `parse_request`.

    Returns
    -------
    list of (str, Request), or Problem
        Empty where the text is one job; a problem where one of several cannot be set.

    Raises
    ------
    NaiveTime
        If `now` has no zone.

    Examples
    --------
    >>> from datetime import UTC
    >>> now = datetime(2026, 3, 2, 18, tzinfo=UTC)
    >>> jobs = parse_several("saturday ferts and sunday water", now, UTC)
    >>> [(job.what, job.first.isoformat()[:10]) for _said, job in jobs]
    [('ferts', '2026-03-07'), ('water', '2026-03-08')]
    >>> parse_several("feed on saturday and sunday", now, UTC)
    []
    """
    now = aware(now, "now").replace(microsecond=0)
    jobs = _jobs(text) if len(text) <= LONGEST else []
    return _planned(jobs, now, zone) if jobs else []


def _jobs(text: str) -> list[_Job]:
    """The jobs of the division into most of them, whose times do not touch where it can be."""
    joints = _joints(text)[:MOST_JOINTS]
    best: tuple[tuple[int, int], list[_Job]] | None = None
    for size in range(len(joints), 0, -1):
        for chosen in combinations(joints, size):
            jobs = _divided(text, chosen)
            if jobs is None:
                continue
            touching = sum(one.ends and two.leads for one, two in pairwise(jobs))
            rank = (size, -touching)
            if best is None or rank > best[0]:
                best = rank, jobs
        if best is not None:
            return best[1]
    return []


def _joints(text: str) -> list[tuple[int, int]]:
    """Where words stand that may join two jobs, several side by side as one."""
    lines = [Line(text, each, tokens_of(text)) for each in languages()]
    found: list[tuple[int, int]] = []
    for place in range(1, len(lines[0])):
        start, end = lines[0].span(place, place + 1)
        joins = text[start:end] in tasks.JOINT_SIGNS
        if not joins and all(line.word(place, "and") is None for line in lines):
            continue
        if text[start - 1 : start].isdigit() and text[end : end + 1].isdigit():  # 2,5 g
            continue
        if found and not text[found[-1][1] : start].strip():
            found[-1] = (found[-1][0], end)
        else:
            found.append((start, end))
    return found


def _divided(text: str, joints: Sequence[tuple[int, int]]) -> list[_Job] | None:
    begins = [0, *(end for _start, end in joints)]
    ends = [*(start for start, _end in joints), len(text)]
    jobs: list[_Job] = []
    for begin, end in zip(begins, ends, strict=True):
        job = _job(text[begin:end].strip(), again=bool(jobs))
        if job is None:
            return None
        jobs.append(job)
    return jobs


def _job(text: str, *, again: bool) -> _Job | None:
    line, founds = best_language(text)
    if not founds:
        return None
    places = spans(line, founds)
    edges = [0, *(place for span in places for place in span), len(text)]
    between = [task_of(text[a:b], []) for a, b in zip(edges[::2], edges[1::2], strict=True)]
    said = [place for place, words in enumerate(between) if words]
    if len(said) != 1:
        return None
    task = between[said[0]]
    if is_again(task):
        if not again:
            return None
        task = ""
    return _Job(line, founds, task, said[0] > 0, said[0] < len(between) - 1)


def _planned(
    jobs: Sequence[_Job], now: datetime, zone: tzinfo
) -> list[tuple[str, Request]] | Problem:
    made: list[tuple[str, Request]] = []
    first: Said | None = None
    for job in jobs:
        what = job.task or made[0][1].what
        flawed = flaw_in(job.line, job.founds) or end_in(job.line, job.founds)
        flawed = flawed or loose_end(job.line, job.founds)
        if flawed is not None:
            return _in_all(flawed, job, jobs)
        try:
            said = gathered(job.line, job.founds)
            since = now
            if first is None:
                first = said
            elif _is_after(job):
                since = made[-1][1].first
            else:
                said = _completed(first, said, both_lead=jobs[0].leads and job.leads)
            planned = plan(said, since, zone)
        except Unclear as unclear:
            return _in_all(unclear_problem(job.line, job.founds, unclear.flaw, what), job, jobs)
        sole = planned.first if job is jobs[0] else None
        if (halves := either_half(job.line, job.founds, sole, now, zone)) is not None:
            return _in_all(halves, job, jobs)
        alone = job is jobs[0] or (job.task and planned == _alone(job, now, zone))
        text = job.line.text if alone else f"{what} {_written(planned, zone)}"
        made.append((text, request_of(what, planned, said.needs_zone)))
    return made


def _alone(job: _Job, now: datetime, zone: tzinfo) -> Plan | None:
    """When a job would be due whose words stood alone."""
    try:
        return plan(gathered(job.line, job.founds), now, zone)
    except Unclear:
        return None


def _written(planned: Plan, zone: tzinfo) -> str:
    """Words of time that are read as what was planned."""
    if isinstance(planned.rule, Once):
        return f"{planned.first.astimezone(zone):%Y-%m-%d %H:%M}"
    return to_text(planned.rule)


def _in_all(problem: Problem, job: _Job, jobs: Sequence[_Job]) -> Problem:
    """A problem of one job, whose options are texts with all of them."""
    texts = [each.line.text for each in jobs]
    place = jobs.index(job)
    options = tuple(
        f" {tasks.JOINT} ".join([*texts[:place], option, *texts[place + 1 :]])
        for option in problem.options
    )
    return replace(problem, options=options, suggestion=next(iter(options), None))


def _is_after(job: _Job) -> bool:
    """Whether a job's time counts from the one before: `and 7 days later`."""
    last = job.founds[-1]
    word = job.line.tokens[last.end - 1].folded
    return isinstance(last.pieces[0], Span) and word in tasks.LATER


def _completed(first: Said, said: Said, *, both_lead: bool) -> Said:
    """A later job's time with what it leaves out; a day of an hour is of the same rhythm."""
    elapsed = first.span is not None and not first.span.days and not first.span.months
    if not (said.names_day or said.repeats):
        return said if elapsed else first.changed(said)
    timed = said
    if said.clock is None and said.part is None and said.exact is None and said.span is None:
        timed = replace(said, clock=first.clock, part=first.part)
    named = first.weekdays is not None and first.weekdays.repeats
    if both_lead and named and isinstance(said.weekdays, Weekdays) and not said.repeats:
        return replace(timed, weekdays=replace(said.weekdays, repeats=True))
    return timed


def bare_second(text: str) -> tuple[str, str] | None:
    """What `tomorrow at 8 feed and 20 lights` may mean as two jobs, and its last job's words.

    None where no hour may stand behind the joint, or none was said in front of it.

    Examples
    --------
    >>> bare_second("tomorrow at 8 feed and 20 lights")
    ('tomorrow at 8 feed and at 20 lights', '20 lights')
    >>> bare_second("tomorrow at 8 feed and 20 g soda") is None
    True
    """
    for start, end in _joints(text[:LONGEST]):
        first = _job(text[:start].strip(), again=False)
        rest = text[end:].strip()
        number, _space, task = rest.partition(" ")
        if first is None or not number.isdecimal() or not 0 <= int(number[:3]) <= 24:
            continue
        timed = any(isinstance(piece, Clock) for each in first.founds for piece in each.pieces)
        measured = not task or task.split()[0].casefold() in tasks.MEASURES
        if timed and not measured and _job(task, again=True) is None:
            at = _hour_word(first.line)
            return f"{text[:end]} {at} {rest}", rest
    return None


def _hour_word(line: Line) -> str:
    """How the language of a line puts a word before an hour."""
    return _HOUR[line.vocabulary.language]
