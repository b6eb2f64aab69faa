"""Single moments, the end of a holiday, quiet hours. It is Wednesday, 4 March 2026, 15:00."""

from datetime import UTC, datetime, time, timedelta
from zoneinfo import ZoneInfo

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from core.schedule import (
    BadRule,
    NaiveTime,
    Problem,
    Quiet,
    parse_moment,
    parse_quiet,
    parse_until,
)
from tests.core.schedule import strategies as our

BERLIN = ZoneInfo("Europe/Berlin")
NOW = datetime(2026, 3, 4, 15, tzinfo=BERLIN)


def local(moment):
    return moment.astimezone(BERLIN).strftime("%Y-%m-%d %H:%M")


@pytest.mark.parametrize(
    ("text", "moment"),
    [
        ("in 1 hour", "2026-03-04 16:00"),
        ("in an hour", "2026-03-04 16:00"),
        ("this evening", "2026-03-04 19:00"),
        ("tonight", "2026-03-04 19:00"),
        ("tomorrow", "2026-03-05 09:00"),
        ("tomorrow 20:00", "2026-03-05 20:00"),
        ("tomorrow morning", "2026-03-05 09:00"),
        ("on friday at 8", "2026-03-06 08:00"),
        ("friday", "2026-03-06 09:00"),
        ("4 May 10:00", "2026-05-04 10:00"),
        ("in 2 days at 7pm", "2026-03-06 19:00"),
        ("at 19:00.", "2026-03-04 19:00"),
    ],
)
def test_moment(text, moment):
    found = parse_moment(text, NOW, BERLIN)
    assert local(found) == moment
    assert found.tzinfo is UTC


@pytest.mark.parametrize(
    ("text", "reason"),
    [
        ("", "no_time"),
        ("when I can", "no_time"),
        ("feed tomorrow", "no_time"),
        ("every 7 days", "unclear"),
        ("today at 14:00", "past"),
        ("at 25:00", "impossible"),
        ("on 4/5", "ambiguous"),
        ("in 9999999 hours", "too_far"),
    ],
)
def test_no_moment(text, reason):
    found = parse_moment(text, NOW, BERLIN)
    assert isinstance(found, Problem)
    assert found.reason == reason


@pytest.mark.parametrize("hour", [19, 20, 22, 23])
def test_this_evening_is_always_to_come(hour):
    """The button of that name works at any hour: an hour from now once the evening has begun."""
    now = datetime(2026, 3, 4, hour, 5, tzinfo=BERLIN)
    assert parse_moment("this evening", now, BERLIN) == now + timedelta(hours=1)


@pytest.mark.parametrize(
    ("text", "moment"),
    [
        ("until 4 May", "2026-05-04 00:00"),
        ("4 May", "2026-05-04 00:00"),
        ("until friday", "2026-03-06 00:00"),
        ("until wednesday", "2026-03-11 00:00"),
        ("until tomorrow", "2026-03-05 00:00"),
        ("for 2 weeks", "2026-03-18 00:00"),
        ("2 weeks", "2026-03-18 00:00"),
        ("for a month", "2026-04-04 00:00"),
        ("until 2026-05-04", "2026-05-04 00:00"),
        ("until 4 May at 18:00", "2026-05-04 18:00"),
        ("for 5 hours", "2026-03-04 20:00"),
        ("till the 15th", "2026-03-15 00:00"),
        ("until next week", "2026-03-11 00:00"),
    ],
)
def test_until(text, moment):
    """Contract: a holiday ends as that day begins."""
    assert local(parse_until(text, NOW, BERLIN)) == moment


@pytest.mark.parametrize(
    ("text", "reason"),
    [
        ("", "no_time"),
        ("until", "no_time"),
        ("until I am back", "no_time"),
        ("until today", "past"),
        ("until 4 May 2025", "past"),
        ("until 31 feb", "impossible"),
        ("until 4/5", "ambiguous"),
        ("for 0 days", "impossible"),
        ("for 30 years", "too_far"),
        ("until every monday", "unclear"),
    ],
)
def test_no_until(text, reason):
    found = parse_until(text, NOW, BERLIN)
    assert isinstance(found, Problem)
    assert found.reason == reason


def test_a_day_that_begins_in_a_gap_begins_after_it():
    """asia, Rule Lebanon (tz database 2025b): 29 March 2026 begins at 01:00 in Beirut."""
    beirut = ZoneInfo("Asia/Beirut")
    found = parse_until("until 29 march", NOW, beirut)
    assert found == datetime(2026, 3, 29, 1, tzinfo=beirut)


@pytest.mark.parametrize(
    ("text", "quiet"),
    [
        ("22:00-07:00", "22:00-07:00"),
        ("quiet hours 22:00-07:00", "22:00-07:00"),
        ("22:00 – 07:00", "22:00-07:00"),
        ("22-7", "22:00-07:00"),
        ("from 10pm to 7am", "22:00-07:00"),
        ("10:30 pm until 7 am", "22:30-07:00"),
        ("between 22:00 and 07:00", "22:00-07:00"),
        ("22.30-6.15", "22:30-06:15"),
        ("13:00 to 15:00", "13:00-15:00"),
        ("midnight to 7:00", "00:00-07:00"),
        ("22h to 7h", "22:00-07:00"),
    ],
)
def test_quiet_hours(text, quiet):
    assert str(parse_quiet(text)) == quiet


@pytest.mark.parametrize(
    ("text", "reason"),
    [
        ("", "unclear"),
        ("off", "unclear"),
        ("22:00", "unclear"),
        ("22:00-", "unclear"),
        ("at night", "unclear"),
        ("22:00-07:00-09:00", "unclear"),
        ("25:00-07:00", "impossible"),
        ("22:00-22:00", "impossible"),
    ],
)
def test_no_quiet_hours(text, reason):
    found = parse_quiet(text)
    assert isinstance(found, Problem)
    assert found.reason == reason
    assert isinstance(parse_quiet(found.suggestion), Quiet)


NIGHT = Quiet(time(22), time(7))


@pytest.mark.parametrize(
    ("zone", "moment", "release", "why"),
    [
        ("Europe/Berlin", "2026-03-04T21:59", "2026-03-04T21:59", "before"),
        ("Europe/Berlin", "2026-03-04T22:00", "2026-03-05T07:00", "the start is quiet"),
        ("Europe/Berlin", "2026-03-04T23:30", "2026-03-05T07:00", "before midnight"),
        ("Europe/Berlin", "2026-03-05T00:00", "2026-03-05T07:00", "midnight"),
        ("Europe/Berlin", "2026-03-05T06:59", "2026-03-05T07:00", "after midnight"),
        ("Europe/Berlin", "2026-03-05T07:00", "2026-03-05T07:00", "the end is not"),
        ("Europe/Berlin", "2026-03-28T23:30", "2026-03-29T07:00", "a short night"),
        ("Europe/Berlin", "2026-10-24T23:30", "2026-10-25T07:00", "a long night"),
        ("Pacific/Apia", "2011-12-29T23:00", "2011-12-31T07:00", "no 30th: 22:00 of it is 00:00"),
    ],
)
def test_release(zone, moment, release, why):
    """The contract's quiet hours; tz database 2025b for the nights."""
    place = ZoneInfo(zone)
    due = datetime.fromisoformat(moment).replace(tzinfo=place)
    expected = datetime.fromisoformat(release).replace(tzinfo=place)
    assert NIGHT.release(due, place) == expected.astimezone(UTC), why


def test_release_at_an_end_in_a_gap_and_at_an_end_that_comes_twice():
    """europe, Rule EU: 02:30 is 03:00 on 29 March 2026 and comes twice on 25 October."""
    early = Quiet(time(22), time(2, 30))
    spring = datetime(2026, 3, 28, 23, tzinfo=BERLIN)
    autumn = datetime(2026, 10, 24, 23, tzinfo=BERLIN)
    assert early.release(spring, BERLIN) == datetime(2026, 3, 29, 1, tzinfo=UTC)
    assert early.release(autumn, BERLIN) == datetime(2026, 10, 25, 0, 30, tzinfo=UTC)
    between = datetime(2026, 10, 25, 1, 0, tzinfo=UTC)  # 02:00 for the second time
    assert early.release(between, BERLIN) == between


def test_by_day():
    siesta = Quiet(time(13), time(15))
    assert siesta.release(NOW.replace(hour=14), BERLIN) == NOW.astimezone(UTC)
    assert siesta.release(NOW, BERLIN) == NOW


def test_hours_that_may_be_spoken_in_and_fall_into_a_gap_are_none():
    """southamerica, Rule Chile: 00:00 is 01:00 on 12 October 2008, so 00:00 to 00:01 is not."""
    zone = ZoneInfo("America/Santiago")
    most = Quiet(time(0, 1), time(0, 0))
    due = datetime(2008, 10, 11, 12, tzinfo=UTC)
    assert most.release(due, zone) == datetime(2008, 10, 13, 3, tzinfo=UTC)


@given(our.any_clock, our.any_clock, our.moments, our.zones)
@settings(max_examples=100)
def test_what_is_released_may_be_said(start, end, moment, zone):
    if start == end:
        with pytest.raises(BadRule):
            Quiet(start, end)
        return
    quiet = Quiet(start, end)
    said = quiet.release(moment, zone)
    assert moment <= said <= moment + timedelta(days=2)
    assert quiet.release(said, zone) == said


def test_a_moment_without_a_zone_is_refused():
    naive = datetime(2026, 3, 4, 15)  # noqa: DTZ001
    for act in (
        lambda: NIGHT.release(naive, BERLIN),
        lambda: parse_moment("tomorrow", naive, BERLIN),
        lambda: parse_until("tomorrow", naive, BERLIN),
    ):
        with pytest.raises(NaiveTime):
            act()


@given(st.text(max_size=40))
@settings(max_examples=100)
def test_anything_may_be_said(text):
    assert isinstance(parse_moment(text, NOW, BERLIN), datetime | Problem)
    assert isinstance(parse_until(text, NOW, BERLIN), datetime | Problem)
    assert isinstance(parse_quiet(text), Quiet | Problem)
