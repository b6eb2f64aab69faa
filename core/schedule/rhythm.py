"""From the pieces that words of time say to a rule that repeats, and where it starts."""

from __future__ import annotations

from dataclasses import dataclass, replace
from datetime import datetime, time, timedelta, tzinfo

from core.schedule.errors import BadRule
from core.schedule.localtime import moment_at
from core.schedule.meaning import DAY_BEGINS, TEN_YEARS, months_later, single_moment
from core.schedule.pieces import Flaw, Interval, Near, Weekdays
from core.schedule.recurrence import next_after
from core.schedule.rules import (
    EVERY_DAY,
    Every,
    Monthly,
    NthWeekday,
    Once,
    Rule,
    Weekly,
    Yearly,
)
from core.schedule.said import Said, Unclear, time_of_day

_MOMENT = timedelta(microseconds=1)


@dataclass(frozen=True, slots=True)
class Plan:
    """A rule, what it counts from, and when it is due for the first time, both in UTC."""

    rule: Rule
    anchor: datetime
    first: datetime


def plan(said: Said, now: datetime, zone: tzinfo) -> Plan:
    """The rule that the pieces mean.

    Raises
    ------
    Unclear
        Where they do not go together, or mean a moment that is over.
    """
    try:
        if not said.repeats:
            if said.start is not None or said.without:
                raise Unclear(Flaw("unclear"))
            moment = single_moment(said, now, zone)
            return Plan(Once(moment.astimezone(zone)), now, moment)
        return _repeated(said, now, zone)
    except BadRule as error:
        raise Unclear(Flaw("unclear")) from error
    except OverflowError as error:
        raise Unclear(Flaw("too_far")) from error


def _repeated(said: Said, now: datetime, zone: tzinfo) -> Plan:
    said, start = _start_apart(said, now, zone)
    rule = rule_of(said)
    if start is not None:
        return from_start(rule, start, zone)
    anchor = now
    if isinstance(rule, Every) and rule.unit == "hours" and (said.clock or said.part):
        begin = single_moment(Said(clock=said.clock, part=said.part), now, zone)
        anchor = begin - timedelta(hours=rule.count)
    return _with_first(rule, now, anchor, zone)


def _start_apart(said: Said, now: datetime, zone: tzinfo) -> tuple[Said, datetime | None]:
    """The pieces of the rhythm, and the moment at which it starts where one was said.

    A single day beside an interval is its start with or without the word: "every 7 days tomorrow".
    """
    begin = said.start
    if begin is None and said.interval is not None and _single_day(said):
        begin = Said(dated=said.dated, near=said.near, span=said.span, exact=said.exact)
        said = replace(said, dated=None, near=None, span=None, exact=None)
    if begin is None:
        return said, None
    clock, part = said.clock or begin.clock, said.part or begin.part
    said = replace(said, clock=clock, part=part, start=None)
    if begin.near == Near(0) and clock is None and part is None:
        return said, None
    try:
        return said, single_moment(replace(begin, clock=clock, part=part), now, zone)
    except Unclear as unclear:  # what it offers lacks the rhythm
        raise Unclear(Flaw(unclear.flaw.reason)) from unclear


def _single_day(said: Said) -> bool:
    yearly = said.dated is not None and said.interval is not None and _is_years(said.interval)
    return bool(said.near or said.span or said.exact or (said.dated and not yearly))


def _is_years(interval: Interval) -> bool:
    return interval.unit == "months" and interval.count == 12


def from_start(rule: Rule, start: datetime, zone: tzinfo) -> Plan:
    """A rule whose first time is its first on or after the start."""
    if not isinstance(rule, Every):
        return _with_first(rule, start - _MOMENT, start - _MOMENT, zone)
    if rule.unit == "hours":
        return Plan(rule, start - timedelta(hours=rule.count), start)
    local = start.astimezone(zone)
    if rule.unit == "months" and local.day > 28:
        fixed = Monthly(
            (local.day,), rule.at or local.time().replace(second=0, microsecond=0), rule.count
        )
        return _with_first(fixed, start - _MOMENT, start - _MOMENT, zone)
    day = local.date() - timedelta(days=rule.count * {"days": 1, "weeks": 7}.get(rule.unit, 0))
    if rule.unit == "months":
        day = months_later(day, -rule.count)
    anchor = moment_at(day, local.time(), zone)
    return _with_first(rule, start - _MOMENT, anchor, zone)


def _with_first(rule: Rule, after: datetime, anchor: datetime, zone: tzinfo) -> Plan:
    first = next_after(rule, after, zone, anchor)
    if first is None or first > after + TEN_YEARS + timedelta(days=1):
        raise Unclear(Flaw("too_far"))
    return Plan(rule, anchor, first)


def rule_of(said: Said) -> Rule:
    """The repeating rule, without its start."""
    at = time_of_day(said)
    if said.without:
        return _all_but(said, at)
    if said.near or said.span or said.exact:
        raise Unclear(Flaw("unclear"))
    if sum(map(bool, (said.weekdays, said.month_days, said.dated))) > 1:
        raise Unclear(Flaw("unclear"))
    if said.weekdays is not None:
        return _of_weekdays(said.weekdays, said.interval, at or DAY_BEGINS)
    if said.month_days is not None:
        every = max(said.month_days.every, _each(said.interval, "months"))
        return Monthly(said.month_days.days, at or DAY_BEGINS, every)
    if said.dated is not None:
        if said.interval is not None and not _is_years(said.interval):
            raise Unclear(Flaw("unclear"))
        return Yearly(said.dated.month, said.dated.day, at or DAY_BEGINS)
    if said.interval is None:
        return Weekly(EVERY_DAY, at or DAY_BEGINS)  # mornings, evenings
    return _of_interval(said.interval, at)


def _of_interval(interval: Interval, at: time | None) -> Rule:
    """Every day at nine keeps to the clock; every 7 days counts, for a number was said."""
    if interval.unit == "hours":
        return Every(interval.count, "hours")
    if interval == Interval(1, "days", numbered=False) and at is not None:
        return Weekly(EVERY_DAY, at)
    return Every(interval.count, interval.unit, at)


def _of_weekdays(weekdays: Weekdays, interval: Interval | None, at: time) -> Rule:
    if weekdays.nth is not None:
        if interval not in (None, Interval(1, "months", numbered=False)):
            raise Unclear(Flaw("unclear"))
        return NthWeekday(weekdays.nth, weekdays.days[0], at)
    return Weekly(weekdays.days, at, max(weekdays.every, _each(interval, "weeks")))


def _each(interval: Interval | None, unit: str) -> int:
    """How many of the unit lie between, where an interval stands beside named days."""
    if interval is None:
        return 1
    if interval.unit != unit:
        raise Unclear(Flaw("unclear"))
    return interval.count


def _all_but(said: Said, at: time | None) -> Rule:
    """Every day but some."""
    named = said.weekdays.days if said.weekdays else EVERY_DAY
    daily = said.interval is None or (said.interval.count, said.interval.unit) == (1, "days")
    left = tuple(day for day in named if day not in said.without)
    if not daily or not left or said.month_days or said.dated:
        raise Unclear(Flaw("unclear"))
    return Weekly(left, at or DAY_BEGINS)
