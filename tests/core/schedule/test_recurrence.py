"""Properties of the next time, and libraries of others as oracles away from changing clocks."""

from datetime import UTC, datetime, time, timedelta
from itertools import pairwise
from zoneinfo import ZoneInfo

import pytest
from cronsim import CronSim
from dateutil import rrule
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from core.schedule import Every, Monthly, NthWeekday, Once, Weekly, Yearly, next_after, recurrence
from core.schedule.localtime import is_skipped
from tests.core.schedule import strategies as our

BERLIN = ZoneInfo("Europe/Berlin")
STEPS = 12


def steps(rule, start, zone, anchor, count=STEPS):
    found = []
    moment = start
    for _ in range(count):
        moment = next_after(rule, moment, zone, anchor)
        found.append(moment)
    return found


@given(our.repeating, our.moments, our.zones)
@settings(max_examples=120)
def test_strictly_increasing_and_after_the_moment(rule, start, zone):
    times = [start, *steps(rule, start, zone, start)]
    assert all(earlier < later for earlier, later in pairwise(times))
    assert all(moment.tzinfo is UTC for moment in times[1:])


def _date_it_stands_for(moment, zone):
    """The local date; midnight at the end of a gap stands for the date that the gap began in."""
    local = moment.astimezone(zone)
    a_minute_before = (moment - timedelta(minutes=1)).astimezone(zone)
    jumped = a_minute_before.utcoffset() != local.utcoffset()
    if local.time() == time(0) and jumped and a_minute_before.time() != time(23, 59):
        return a_minute_before.date()
    return local.date()


@given(our.by_days, our.moments, our.zones)
@settings(max_examples=120)
def test_never_twice_a_local_day(rule, start, zone):
    days = [_date_it_stands_for(moment, zone) for moment in steps(rule, start, zone, start)]
    assert len(set(days)) == len(days)


@pytest.mark.parametrize("zone", our.ZONES)
@pytest.mark.parametrize("year", [1993, 2011])  # the years of the skipped dates
def test_every_day_is_every_day_once(zone, year):
    """Each date that the zone had, none twice, for a time of day at which clocks change."""
    place = ZoneInfo(zone)
    start = datetime(year, 1, 1, 12, tzinfo=place)
    rule = Weekly((0, 1, 2, 3, 4, 5, 6), time(0, 15))
    times = steps(rule, start, place, start, 400)
    days = [moment.astimezone(place).date() for moment in times]
    span = (days[-1] - days[0]).days + 1
    had = [days[0] + timedelta(days=each) for each in range(span)]
    assert days == [day for day in had if not is_skipped(day, place)]


@given(our.repeating, our.moments, our.zones, st.integers(0, STEPS - 1), st.integers(0, 10**6))
@settings(max_examples=120)
def test_a_jump_over_missed_times_equals_stepping(rule, anchor, zone, missed, share):
    times = [anchor, *steps(rule, anchor, zone, anchor)]
    gap = times[missed + 1] - times[missed]
    inside = times[missed] + gap * share / (10**6 + 1)
    assert next_after(rule, inside, zone, anchor) == times[missed + 1]


counted = st.one_of(
    our.elapsed,
    st.builds(Every, st.integers(1, 400), st.sampled_from(["days", "weeks"]), our.clocks),
)


@given(counted, our.moments, our.zones)
@settings(max_examples=100)
def test_counting_goes_on_from_any_time_that_was_due(rule, anchor, zone):
    """An unanswered reminder is asked again by its rule, counted from when it was due."""
    first, second = steps(rule, anchor, zone, anchor, 2)
    first_day = first.astimezone(zone).date()
    assume(rule.unit == "hours" or first.astimezone(zone).time() == rule.at)  # no gap moved it
    assume(not is_skipped(first_day - timedelta(days=1), zone))
    assert next_after(rule, first, zone, first) == second


@pytest.mark.parametrize("years", [0, 1, 10, 1000])
@pytest.mark.parametrize(
    "rule",
    [
        Every(1, "hours"),
        Every(7, "days", time(19)),
        Every(3, "months", time(9)),
        Weekly((6,), time(10), 2),
        Monthly((31,), time(9), 3),
        NthWeekday(-1, 4, time(9)),
        Yearly(2, 29, time(9)),
    ],
)
def test_the_work_does_not_depend_on_how_much_was_missed(rule, years, monkeypatch):
    looked = []
    real = recurrence.moment_at
    monkeypatch.setattr(recurrence, "moment_at", lambda *args: looked.append(args) or real(*args))
    made = datetime(2026, 3, 4, 10, tzinfo=UTC)
    after = made.replace(year=2026 + years)
    due = next_after(rule, after, BERLIN, made)
    assert due is not None
    assert due > after
    assert len(looked) <= 8


def test_clocks_that_step():
    """Steps of -2 h, -5 min, +8 h and +10 years, and strobing: none repeated, none early."""
    rule, anchor = Every(1, "days", time(19)), datetime(2026, 3, 4, 10, tzinfo=UTC)
    wall, delivered, due = anchor, [], next_after(rule, anchor, UTC, anchor)
    strobe = [timedelta(hours=sign * 5) for sign in (1, -1) * 10]
    moves = [
        timedelta(hours=33, minutes=1),  # the 5th 19:01: due
        timedelta(hours=-2),
        timedelta(hours=2),  # the 5th 19:01 again: was said
        timedelta(minutes=-5),
        timedelta(hours=8),
        *strobe,
        timedelta(hours=15),  # the 6th 17:56
        *strobe,  # reaches 22:56 of the 6th: due
        timedelta(days=3653),  # ten years on: the one of the 7th is due, late
        timedelta(days=-3653),
        timedelta(days=3653, hours=3),  # the 6th of 2036 20:56: the next is due
    ]
    for move in moves:
        wall += move
        if due <= wall:
            delivered.append(due)
            due = next_after(rule, max(wall, due), UTC, anchor)
    days = [(2026, 3, 5), (2026, 3, 6), (2026, 3, 7), (2036, 3, 6)]
    assert delivered == [datetime(*day, 19, tzinfo=UTC) for day in days]


def test_set_back_before_the_anchor_the_first_time_stays_the_first():
    anchor = datetime(2026, 3, 4, 10, tzinfo=UTC)
    before = anchor - timedelta(days=30)
    for rule in (Every(5, "hours"), Every(7, "days", time(19)), Every(2, "months")):
        assert next_after(rule, before, UTC, anchor) == next_after(rule, anchor, UTC, anchor)


@given(our.by_days)
@settings(max_examples=60)
def test_the_end_of_the_calendar_is_an_end(rule):
    last = datetime(9989, 12, 31, 23, tzinfo=UTC)
    moment = next_after(rule, last, BERLIN, last)
    assert moment is None or moment > last
    assert next_after(rule, datetime(9995, 1, 1, tzinfo=UTC), BERLIN) is None


def test_once_is_due_once():
    at = datetime(2026, 3, 4, 19, 30, tzinfo=BERLIN)
    assert next_after(Once(at), at - timedelta(seconds=1), UTC) == at
    assert next_after(Once(at), at, UTC) is None


@pytest.mark.parametrize(
    ("rule", "anchor", "due", "why"),
    [
        (Every(7, "days", time(19)), "2026-03-04T10:00", "2026-03-11T19:00", "in seven days"),
        (Every(7, "days", time(19)), "2026-03-04T23:59", "2026-03-11T19:00", "by the date"),
        (Every(1, "months"), "2026-01-31T08:00", "2026-02-28T08:00", "clamped"),
        (Every(2, "months"), "2026-01-31T08:00", "2026-03-31T08:00", "does not drift"),
        (Monthly((31,), time(9)), "2026-02-01T08:00", "2026-02-28T09:00", "last day"),
        (Monthly((29,), time(9)), "2028-02-01T08:00", "2028-02-29T09:00", "leap year"),
        (Monthly((29, 30, 31), time(9)), "2026-02-28T09:00", "2026-03-29T09:00", "one, not three"),
        (Monthly((1,), time(9), 3), "2026-02-15T08:00", "2026-03-01T09:00", "first one next"),
        (Monthly((1,), time(9), 3), "2026-03-01T08:00", "2026-03-01T09:00", "first one today"),
        (Weekly((6,), time(10), 2), "2026-03-04T08:00", "2026-03-08T10:00", "first one next"),
        (Yearly(2, 29, time(9)), "2026-02-01T08:00", "2026-02-28T09:00", "common year"),
        (Yearly(2, 29, time(9)), "2028-02-01T08:00", "2028-02-29T09:00", "leap year"),
        (NthWeekday(-1, 4, time(9)), "2026-03-04T08:00", "2026-03-27T09:00", "last Friday"),
        (NthWeekday(1, 6, time(9)), "2026-03-04T08:00", "2026-04-05T09:00", "first Sunday"),
    ],
)
def test_first_time(rule, anchor, due, why):
    """The contract's meanings; the calendar is the source of the dates."""
    made = datetime.fromisoformat(anchor).replace(tzinfo=UTC)
    expected = datetime.fromisoformat(due).replace(tzinfo=UTC)
    assert next_after(rule, made, UTC, made) == expected, why


def _steady(zone, *moments):
    """Away from changes of the clocks by a day on either side."""
    offsets = set()
    for moment in moments:
        for hours in (-25, 0, 25):
            offsets.add((moment + timedelta(hours=hours)).astimezone(zone).utcoffset())
    return len(offsets) == 1


@given(our.weekdays, our.clocks, our.moments, our.zones)
@settings(max_examples=80)
def test_weekly_as_cronsim(days, at, start, zone):
    """Oracle: cronsim, away from changing clocks."""
    due = next_after(Weekly(days, at), start, zone)
    assume(_steady(zone, start, due))
    line = f"{at.minute} {at.hour} * * {','.join(str((day + 1) % 7) for day in days)}"
    assert next(CronSim(line, start.astimezone(zone))) == due


@given(st.integers(1, 28) | st.just(31), our.clocks, our.moments, our.zones)
@settings(max_examples=80)
def test_monthly_as_cronsim(day, at, start, zone):
    """Oracle: cronsim, whose 'L' is the last day of a month."""
    due = next_after(Monthly((day,), at), start, zone)
    assume(_steady(zone, start, due))
    line = f"{at.minute} {at.hour} {'L' if day == 31 else day} * *"
    assert next(CronSim(line, start.astimezone(zone))) == due


@given(st.sampled_from([1, 2, 3, 4, -1]), st.integers(0, 6), our.clocks, our.moments)
@settings(max_examples=100)
def test_nth_weekday_as_cronsim(nth, day, at, start):
    """Oracle: cronsim's 0#2 and 0L."""
    place = f"{(day + 1) % 7}L" if nth == -1 else f"{(day + 1) % 7}#{nth}"
    line = f"{at.minute} {at.hour} * * {place}"
    assert next(CronSim(line, start)) == next_after(NthWeekday(nth, day, at), start, UTC)


def _by_rrule(start, after, *args, **kwargs):
    """The first of an rrule after a moment; both naive, for UTC has no daylight saving."""
    rule = rrule.rrule(*args, dtstart=start.replace(tzinfo=None), **kwargs)
    return rule.after(after.replace(tzinfo=None)).replace(tzinfo=UTC)


@given(st.integers(1, 60), our.clocks, our.moments, st.integers(0, 3000))
@settings(max_examples=100)
def test_days_as_rrule(count, at, anchor, days_on):
    """Oracle: dateutil.rrule, DAILY."""
    anchor, after = anchor.replace(microsecond=0), anchor + timedelta(days=days_on)
    first = datetime.combine(anchor.date(), at) + timedelta(days=count)
    expected = _by_rrule(first, after, rrule.DAILY, interval=count)
    assert next_after(Every(count, "days", at), after, UTC, anchor) == expected


@given(st.integers(1, 24), our.clocks, our.moments, st.integers(0, 3000))
@settings(max_examples=100)
def test_months_as_rrule(count, at, anchor, days_on):
    """Oracle: dateutil.rrule, MONTHLY; BYSETPOS=-1 gives the last day where the day is missing."""
    after = anchor + timedelta(days=days_on)
    days = tuple(range(28, anchor.day + 1)) if anchor.day > 28 else (anchor.day,)
    expected = _by_rrule(
        datetime.combine(anchor.replace(day=1).date(), at),
        max(after, datetime.combine(anchor.date(), time(23, 59, 59), tzinfo=UTC)),
        rrule.MONTHLY,
        interval=count,
        bymonthday=days,
        bysetpos=-1,
    )
    assert next_after(Every(count, "months", at), after, UTC, anchor) == expected


@given(our.weekdays, st.integers(1, 8), our.clocks, our.moments, st.integers(0, 1000))
@settings(max_examples=100)
def test_every_nth_week_as_rrule(days, every, at, anchor, days_on):
    """Oracle: dateutil.rrule, WEEKLY with weeks that begin on Monday (RFC 5545, WKST)."""
    after = anchor + timedelta(days=days_on)
    first = next_after(Weekly(days, at), anchor, UTC)
    expected = _by_rrule(first, after, rrule.WEEKLY, interval=every, byweekday=days, wkst=rrule.MO)
    assert next_after(Weekly(days, at, every), after, UTC, anchor) == expected


@given(st.integers(1, 28), st.integers(1, 12), our.clocks, our.moments, st.integers(0, 1000))
@settings(max_examples=100)
def test_every_nth_month_as_rrule(day, every, at, anchor, days_on):
    """Oracle: dateutil.rrule, MONTHLY with BYMONTHDAY."""
    after = anchor + timedelta(days=days_on)
    first = next_after(Monthly((day,), at), anchor, UTC)
    expected = _by_rrule(first, after, rrule.MONTHLY, interval=every, bymonthday=day)
    assert next_after(Monthly((day,), at, every), after, UTC, anchor) == expected
