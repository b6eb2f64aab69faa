"""A reminder that stands, moved: `to friday`, `to 20:00`, `every 5 days`."""

from __future__ import annotations

from dataclasses import replace
from datetime import datetime, time, tzinfo

from core.schedule.halves import at_half_hours, with_each
from core.schedule.localtime import moment_at
from core.schedule.meaning import single_moment
from core.schedule.pieces import Clock, DayPart, Weekdays
from core.schedule.problems import flaw_in, pieces_of
from core.schedule.recurrence import next_after
from core.schedule.request import best_language, spans, task_of
from core.schedule.rhythm import Plan, from_start, plan, rule_of
from core.schedule.rules import Every, Once, Rule, Weekly, aware
from core.schedule.said import Said, Unclear, gather, time_of_day


def split_time(text: str) -> tuple[str, str] | None:
    """The words of a text outside and inside of its words of time; None where it has none.

    Examples
    --------
    >>> split_time("the filter one to friday"), split_time("the filter one")
    (('the filter one to', 'friday'), None)
    """
    line, founds = best_language(text)
    if not founds:
        return None
    places = spans(line, founds)
    return task_of(text, places), " ".join(line.text[start:end] for start, end in places)


def names_weekday(text: str) -> bool:
    """Tell whether a text is a day of the week, or an hour of one, and nothing else.

    Examples
    --------
    >>> names_weekday("sunday"), names_weekday("at 9"), names_weekday("every sunday")
    (True, False, False)
    """
    line, founds = best_language(text)
    try:
        said = gather(pieces_of(founds)) if founds else None
    except Unclear:
        return False
    none = said is None or said.weekdays is None or said.repeats
    return not none and not task_of(text, spans(line, founds))


def names_weekdays(text: str) -> bool:
    """Tell whether a text is one or more days of the week, perhaps at an hour, and nothing else.

    Examples
    --------
    >>> names_weekdays("mon wed fri"), names_weekdays("on weekends"), names_weekdays("tomorrow")
    (True, True, False)
    """
    line, founds = best_language(text)
    told = any(isinstance(piece, Weekdays) for piece in pieces_of(founds))
    return told and not task_of(text, spans(line, founds))


def weekdays_of(text: str) -> tuple[int, ...]:
    """The days of the week that a text names in the plural, and nothing else; else none.

    Examples
    --------
    >>> weekdays_of("sundays"), weekdays_of("on weekends"), weekdays_of("sunday")
    ((6,), (5, 6), ())
    """
    line, founds = best_language(text)
    pieces = pieces_of(founds)
    days = [piece for piece in pieces if isinstance(piece, Weekdays) and piece.repeats]
    alone = len(days) == len(pieces) == 1 and not task_of(text, spans(line, founds))
    return days[0].days if alone and days[0].nth is None else ()


def two_hours(when: str) -> tuple[str, ...]:
    """Words of time at each of the two hours that a bare one in them may be; else none.

    Examples
    --------
    >>> two_hours("tomorrow at 5"), two_hours("tomorrow at 5pm"), two_hours("tomorrow at 8")
    (('tomorrow at 05:00', 'tomorrow at 17:00'), (), ())
    """
    return with_each(*best_language(when))


def is_midnight(when: str) -> bool:
    """Tell whether words of time are midnight and nothing else, of which no day is told.

    Examples
    --------
    >>> is_midnight("midnight"), is_midnight("tomorrow at midnight"), is_midnight("at 0:00")
    (True, False, False)
    """
    pieces = pieces_of(best_language(when)[1])
    return pieces == (DayPart("midnight"),)


def two_half_hours(when: str, *, late: bool) -> tuple[str, ...]:
    """Words of time at half before the hour and half behind it, where both may be meant.

    Examples
    --------
    >>> two_half_hours("friday at half seven", late=True), two_half_hours("half 7pm", late=True)
    (('friday at 18:30', 'friday at 19:30'), ())
    """
    return at_half_hours(*best_language(when), late=late)


def moved(
    rule: Rule, due: datetime, anchor: datetime, text: str, now: datetime, zone: tzinfo
) -> Plan | None:
    """A rule at the time that a text says; None where the text is unclear, over or says more.

    A rhythm takes the place of the one before. A time of day alone changes only that. A day is
    when an interval goes on from, and of a weekly rule on one day the day that it has from now on;
    of all others it moves one time only. What is not said stays.

    Parameters
    ----------
    due, anchor : datetime
        When the rule is due next, and what it counts from.

    Examples
    --------
    >>> from datetime import UTC
    >>> now = datetime(2026, 3, 2, 18, tzinfo=UTC)
    >>> at = moved(Every(14, "days"), now, now, "friday", now, UTC)
    >>> at.rule, at.first.isoformat()
    (Every(count=14, unit='days', at=None), '2026-03-06T18:00:00+00:00')
    """
    now = aware(now, "now").replace(microsecond=0)
    line, founds = best_language(text)
    if not founds or flaw_in(line, founds) is not None or task_of(text, spans(line, founds)):
        return None
    try:
        said = gather(pieces_of(founds))
        if said.without or (said.start is not None and not said.repeats):
            return None
        return _moved(rule, due, anchor, said, now, zone)
    except Unclear:
        return None


def _moved(
    rule: Rule, due: datetime, anchor: datetime, said: Said, now: datetime, zone: tzinfo
) -> Plan | None:
    said = said.at_its_days(repeats=not isinstance(rule, Once))
    usual = None if isinstance(rule, Once) else getattr(rule, "at", None)
    if said.repeats:
        if isinstance(rule, Once) and said.counts_days and due > now:
            at = due.astimezone(zone).time().replace(second=0, microsecond=0)
            return from_start(rule_of(_timed(said, at)), due, zone)
        return plan(_timed(said, usual), now, zone)
    if not said.names_day:
        return _at(rule, due, anchor, time_of_day(said), now, zone)
    elapsed = said.span is not None and not said.span.days and not said.span.months
    kept = said if elapsed else _timed(said, usual or due.astimezone(zone).time())
    moment = single_moment(kept, now, zone)
    local = moment.astimezone(zone)
    at = local.time().replace(second=0, microsecond=0)
    if isinstance(rule, Once):
        return Plan(Once(local), now, moment)
    if isinstance(rule, Every):
        timed = rule if rule.at is None else replace(rule, at=at)
        return from_start(timed, moment, zone)
    if isinstance(rule, Weekly) and len(rule.days) == 1 and said.weekdays is not None:
        return Plan(replace(rule, days=(local.weekday(),), at=at), now, moment)
    return Plan(rule, anchor, moment)


def _timed(said: Said, at: time | None) -> Said:
    """What was said, at the time of day that stood where none was said."""
    if at is None or said.clock is not None or said.part is not None:
        return said
    return replace(said, clock=Clock(at.hour, at.minute))


def _at(
    rule: Rule, due: datetime, anchor: datetime, at: time | None, now: datetime, zone: tzinfo
) -> Plan | None:
    """The same rule at another time of day."""
    if at is None or (isinstance(rule, Every) and rule.unit == "hours"):
        return None
    if isinstance(rule, Once):
        moment = moment_at(due.astimezone(zone).date(), at, zone)
        return Plan(Once(moment.astimezone(zone)), now, moment) if moment > now else None
    timed = replace(rule, at=at)
    first = next_after(timed, now, zone, anchor)
    return None if first is None else Plan(timed, anchor, first)
