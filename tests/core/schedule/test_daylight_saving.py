"""Dated cases of changing clocks.

Source of every row: the tz database of IANA, release 2025b, the file and the rule or zone line
named above the rows. The lines of the main zones and of the odd ones among them were read in its
`tzdata.zi` (grade A); the rest, Cuba among them, were named from memory (grade M). Dates like
'last Sunday' follow from the calendar.
"""

from datetime import UTC, date, datetime, time, timedelta
from zoneinfo import ZoneInfo

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from core.schedule import NaiveTime, from_text, moment_at, next_after
from core.schedule.localtime import is_skipped
from tests.core.schedule import strategies as our

# of each zone: rule | after | due | why
TABLE = """
# europe, Rule EU: 01:00 UTC on the last Sundays of March and October
Europe/Berlin
    every day at 02:30 | 2026-03-28T02:30+01:00 | 2026-03-29T03:00+02:00 | gap
    every day at 02:30 | 2026-03-29T03:00+02:00 | 2026-03-30T02:30+02:00 | after
    every day at 02:00 | 2026-03-28T12:00+01:00 | 2026-03-29T03:00+02:00 | edge
    every day at 03:00 | 2026-03-28T12:00+01:00 | 2026-03-29T03:00+02:00 | end
    every day at 01:59 | 2026-03-28T12:00+01:00 | 2026-03-29T01:59+01:00 | before
    every sunday at 02:15 | 2026-10-24T12:00+02:00 | 2026-10-25T02:15+02:00 | fold
    every day at 02:15 | 2026-10-25T02:15+02:00 | 2026-10-26T02:15+01:00 | once
    every day at 02:15 | 2026-10-25T02:20+02:00 | 2026-10-26T02:15+01:00 | between
    every 7 days at 19:00 | 2026-03-22T19:00+01:00 | 2026-03-29T19:00+02:00 | wall
    every 24 hours | 2026-03-28T12:00+01:00 | 2026-03-29T13:00+02:00 | elapsed
    every 24 hours | 2026-10-24T12:00+02:00 | 2026-10-25T11:00+01:00 | elapsed
    day 31 of every month at 02:30 | 2026-02-28T02:30+01:00 | 2026-03-31T02:30+02:00 | 31st
# europe, Zone Europe/Dublin: standard time in summer, 'daylight saving' of -1 h in winter
Europe/Dublin
    every day at 01:30 | 2026-03-28T12:00+00:00 | 2026-03-29T02:00+01:00 | gap
    every day at 01:30 | 2026-10-24T12:00+01:00 | 2026-10-25T01:30+01:00 | fold
# europe, Zone Atlantic/Azores: Rule EU at 00:00 and 01:00 local
Atlantic/Azores
    every day at 00:15 | 2026-03-28T12:00-01:00 | 2026-03-29T01:00+00:00 | gap
    every day at 00:15 | 2026-10-24T12:00+00:00 | 2026-10-25T00:15+00:00 | fold
# northamerica, Rule US: 02:00 on the second Sunday of March and the first of November
America/New_York
    every day at 02:01 | 2026-03-07T12:00-05:00 | 2026-03-08T03:00-04:00 | gap
    every 3 days at 02:30 | 2026-03-05T09:00-05:00 | 2026-03-08T03:00-04:00 | gap
    every sunday at 01:30 | 2026-10-31T12:00-04:00 | 2026-11-01T01:30-04:00 | fold
    every sunday at 01:30 | 2026-11-01T01:30-04:00 | 2026-11-08T01:30-05:00 | once
    first sunday of every month at 01:30 | 2026-10-31T12:00-04:00 | 2026-11-01T01:30-04:00 | fold
# northamerica, Rule Cuba: 0:00s, so that midnight jumps in March and 00:00 to 01:00 comes twice
America/Havana
    every day at 00:00 | 2026-03-07T12:00-05:00 | 2026-03-08T01:00-04:00 | midnight
    every day at 00:30 | 2026-10-31T12:00-04:00 | 2026-11-01T00:30-04:00 | fold
    every day at 00:30 | 2026-11-01T00:30-04:00 | 2026-11-02T00:30-05:00 | once
# australasia, Rule LH: half an hour, 02:00 on the first Sundays of October and April
Australia/Lord_Howe
    every day at 02:00 | 2026-10-03T12:00+10:30 | 2026-10-04T02:30+11:00 | half
    every day at 02:15 | 2026-10-03T12:00+10:30 | 2026-10-04T02:30+11:00 | half
    every day at 02:30 | 2026-10-03T12:00+10:30 | 2026-10-04T02:30+11:00 | end
    every day at 01:45 | 2026-04-04T12:00+11:00 | 2026-04-05T01:45+11:00 | fold
    every day at 01:45 | 2026-04-05T01:45+11:00 | 2026-04-06T01:45+10:30 | once
    every day at 01:15 | 2026-04-04T12:00+11:00 | 2026-04-05T01:15+11:00 | before
# africa, Rule Egypt: 0:00 on the last Friday of April, 24:00 on the last Thursday of October
Africa/Cairo
    every day at 00:00 | 2026-04-23T12:00+02:00 | 2026-04-24T01:00+03:00 | midnight
    every friday at 00:30 | 2026-04-23T12:00+02:00 | 2026-04-24T01:00+03:00 | midnight
    every day at 00:30 | 2026-04-24T01:00+03:00 | 2026-04-25T00:30+03:00 | after
    every day at 23:30 | 2026-10-28T23:30+03:00 | 2026-10-29T23:30+03:00 | fold
    every day at 23:30 | 2026-10-29T23:30+03:00 | 2026-10-30T23:30+02:00 | once
    every day at 00:00 | 2026-10-29T12:00+03:00 | 2026-10-30T00:00+02:00 | midnight once
# asia, Rule Lebanon: 0:00 on the last Sundays of March and October
Asia/Beirut
    every day at 00:15 | 2026-03-28T12:00+02:00 | 2026-03-29T01:00+03:00 | midnight
    every sunday at 00:00 | 2026-03-28T12:00+02:00 | 2026-03-29T01:00+03:00 | midnight
    every day at 23:15 | 2026-10-24T12:00+03:00 | 2026-10-24T23:15+03:00 | fold
    every day at 23:15 | 2026-10-24T23:15+03:00 | 2026-10-25T23:15+02:00 | once
# australasia, Zone Pacific/Apia: 2011 Dec 29 24:00, from -10 to +14; no 30 December
Pacific/Apia
    every day at 10:00 | 2011-12-29T10:00-10:00 | 2011-12-31T10:00+14:00 | skipped
    every friday at 10:00 | 2011-12-29T12:00-10:00 | 2011-12-31T00:00+14:00 | made up
    every friday at 10:00 | 2011-12-31T00:00+14:00 | 2012-01-06T10:00+14:00 | after
    every 2 days at 18:00 | 2011-12-28T09:00-10:00 | 2011-12-31T00:00+14:00 | made up
    day 30 of every month at 08:00 | 2011-12-01T00:00-10:00 | 2011-12-31T00:00+14:00 | made up
    every 24 hours | 2011-12-29T12:00-10:00 | 2011-12-31T12:00+14:00 | elapsed
# australasia, Zone Pacific/Kwajalein: 1993 Aug 20 24:00, from -12 to +12; no 21 August
Pacific/Kwajalein
    every saturday at 10:00 | 1993-08-20T12:00-12:00 | 1993-08-22T00:00+12:00 | made up
    every day at 00:00 | 1993-08-20T12:00-12:00 | 1993-08-22T00:00+12:00 | skipped
# africa, Rule Morocco: -1 h in the month of fasting, 2024 Mar 10 3:00 to Apr 14 2:00
Africa/Casablanca
    every day at 02:30 | 2024-03-09T12:00+01:00 | 2024-03-10T02:30+01:00 | fold
    every day at 02:30 | 2024-03-10T02:30+01:00 | 2024-03-11T02:30+00:00 | once
    every day at 02:30 | 2024-04-13T12:00+00:00 | 2024-04-14T03:00+01:00 | gap
    every day at 12:00 | 2024-04-13T12:00+00:00 | 2024-04-14T12:00+01:00 | wall
# asia, Zone Asia/Kathmandu: 1986, from +5:30 to +5:45; no clock changes since
Asia/Kathmandu
    every day at 00:05 | 1985-12-31T12:00+05:30 | 1986-01-01T00:15+05:45 | quarter
    every day at 07:00 | 2026-03-28T12:00+05:45 | 2026-03-29T07:00+05:45 | none
# australasia, Rule Chatham: 2:45s on the last Sunday of September and the first of April
Pacific/Chatham
    every day at 03:00 | 2026-09-26T12:00+12:45 | 2026-09-27T03:45+13:45 | gap
    every day at 02:44 | 2026-09-26T12:00+12:45 | 2026-09-27T02:44+12:45 | before
    every day at 03:00 | 2026-04-04T12:00+13:45 | 2026-04-05T03:00+13:45 | fold
    every day at 03:00 | 2026-04-05T03:00+13:45 | 2026-04-06T03:00+12:45 | once
# southamerica, Rule Brazil: 2018 Nov Sun>=1 0:00, until 2019 Feb Sun>=15 0:00; none since
America/Sao_Paulo
    every day at 00:30 | 2018-11-03T12:00-03:00 | 2018-11-04T01:00-02:00 | midnight
    every day at 23:30 | 2019-02-16T12:00-02:00 | 2019-02-16T23:30-02:00 | fold
    every day at 23:30 | 2019-02-16T23:30-02:00 | 2019-02-17T23:30-03:00 | once
# southamerica, Rule Chile: Sep Sun>=2 4:00u, Apr Sun>=2 3:00u
America/Santiago
    every day at 00:00 | 2026-09-05T12:00-04:00 | 2026-09-06T01:00-03:00 | midnight
    every day at 23:45 | 2026-04-04T23:45-03:00 | 2026-04-05T23:45-04:00 | once
# europe, Zone America/Nuuk: -2 with Rule EU at 01:00u, so that 23:00 becomes midnight
America/Nuuk
    every saturday at 23:30 | 2024-03-30T12:00-02:00 | 2024-03-31T00:00-01:00 | to midnight
    every day at 23:30 | 2024-03-31T00:00-01:00 | 2024-03-31T23:30-01:00 | own day
    every day at 23:30 | 2024-10-26T12:00-01:00 | 2024-10-26T23:30-01:00 | fold
# asia, Zone Asia/Pyongyang: 2018 May 4 23:30, from +8:30 to +9
Asia/Pyongyang
    every friday at 23:45 | 2018-05-04T12:00+08:30 | 2018-05-05T00:00+09:00 | to midnight
# southamerica, Zone America/Caracas: 2016 May 1 2:30, from -4:30 to -4; no daylight saving
America/Caracas
    every day at 02:45 | 2016-04-30T12:00-04:30 | 2016-05-01T03:00-04:00 | half
"""


def _cases():
    """Rows of the table; a line that begins with '#' names the source of what follows."""
    zone = ""
    for line in TABLE.strip().splitlines():
        if line.startswith(" "):
            yield (zone, *map(str.strip, line.split("|")))
        elif not line.startswith("#"):
            zone = line


CASES = list(_cases())


def test_the_table_is_as_wide_as_it_claims():
    assert len(CASES) >= 60
    assert len({zone for zone, *_ in CASES}) >= 12


@pytest.mark.parametrize(
    ("zone", "rule", "after", "due"),
    [case[:4] for case in CASES],
    ids=[f"{zone}-{rule}-{why}" for zone, rule, _, _, why in CASES],
)
def test_due(zone, rule, after, due):
    place = ZoneInfo(zone)
    start = datetime.fromisoformat(after)
    expected = datetime.fromisoformat(due)
    assert start.astimezone(place).utcoffset() == start.utcoffset(), "the row's own offset"
    assert expected.astimezone(place).utcoffset() == expected.utcoffset(), "the row's own offset"
    assert next_after(from_text(rule), start, place) == expected.astimezone(UTC)


def test_a_zone_that_never_had_a_date_has_no_minute_of_it():
    apia = ZoneInfo("Pacific/Apia")
    assert is_skipped(date(2011, 12, 30), apia)
    assert not is_skipped(date(2011, 12, 29), apia)
    assert not is_skipped(date(2011, 12, 31), apia)


def test_a_gap_at_midnight_is_no_skipped_date():
    assert not is_skipped(date(2026, 4, 24), ZoneInfo("Africa/Cairo"))


def test_a_gap_ends_on_a_whole_minute_even_where_local_mean_time_had_seconds():
    """europe, Zone Europe/Amsterdam: 1937 Jul 1, from +1:19:32 to +1:20, a jump of 28 seconds."""
    place = ZoneInfo("Europe/Amsterdam")
    moment = moment_at(date(1937, 7, 1), time(0, 0, 10), place)
    local = moment.astimezone(place)
    assert (local.second, local.microsecond) == (0, 0)
    assert local.replace(tzinfo=None) >= datetime(1937, 7, 1, 0, 0, 28)  # noqa: DTZ001


def test_the_anchor_lends_its_time_of_day_to_an_interval_without_one():
    place = ZoneInfo("Europe/Berlin")
    anchor = datetime(2026, 3, 24, 18, 42, tzinfo=place)
    due = next_after(from_text("every 10 days"), anchor, place, anchor)
    assert due == datetime(2026, 4, 3, 18, 42, tzinfo=place)
    assert due - anchor.astimezone(UTC) == timedelta(days=10, hours=-1)


def test_no_zone_is_refused():
    naive = datetime(2026, 3, 24, 18, 42)  # noqa: DTZ001
    with pytest.raises(NaiveTime, match="after must be aware"):
        next_after(from_text("every 10 days"), naive, UTC)
    with pytest.raises(NaiveTime, match="anchor must be aware"):
        next_after(from_text("every 10 days"), datetime.now(UTC), UTC, naive)


def _days_of_change(name):
    """The local dates, and the ones before, on which a zone's offset changed since 1990."""
    place = ZoneInfo(name)
    found = []
    noon = datetime(1990, 1, 1, 12, tzinfo=UTC)
    for _ in range(365 * 40):
        later = noon + timedelta(days=1)
        if noon.astimezone(place).utcoffset() != later.astimezone(place).utcoffset():
            day = noon.astimezone(place).date()
            found += [day, day + timedelta(days=1)]
        noon = later
    return found


def _first_minute_that_shows(day, at, place):
    """By looking at the clock each minute: the first that shows this time of day or a later one."""
    target = datetime.combine(day, at)
    minute = target.replace(tzinfo=UTC) - timedelta(hours=16)
    while minute.astimezone(place).replace(tzinfo=None) < target:
        minute += timedelta(minutes=1)
    return minute


CHANGES = [(name, day) for name in our.ZONES for day in _days_of_change(name)]


@given(st.sampled_from(CHANGES), our.any_clock)
@settings(max_examples=150)
def test_as_someone_who_watches_the_clock(change, at):
    """Brute force as the oracle, on the days on which clocks change."""
    name, day = change
    place = ZoneInfo(name)
    assert moment_at(day, at, place) == _first_minute_that_shows(day, at, place)
