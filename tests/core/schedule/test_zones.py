"""From a clock on the wall to zones; offsets as in the tz database, release 2025b."""

from datetime import UTC, datetime, time, timedelta
from zoneinfo import ZoneInfo

import pytest

from core.schedule import NaiveTime, zone_guess
from core.schedule.zones import COMMON, offsets_of

WINTER = datetime(2026, 1, 15, 18, 40, tzinfo=UTC)
SUMMER = datetime(2026, 7, 15, 18, 40, tzinfo=UTC)


@pytest.mark.parametrize(
    ("local", "now", "first", "also"),
    [
        (time(19, 40), WINTER, "Europe/Berlin", "Africa/Lagos"),
        (time(20, 40), SUMMER, "Europe/Berlin", "Africa/Johannesburg"),
        (time(18, 40), WINTER, "Europe/London", "Europe/Lisbon"),
        (time(19, 40), SUMMER, "Europe/London", "Europe/Lisbon"),
        (time(13, 40), WINTER, "America/New_York", "America/Bogota"),
        (time(0, 10), WINTER, "Asia/Kolkata", "Asia/Colombo"),
        (time(0, 25), WINTER, "Asia/Kathmandu", "Asia/Kathmandu"),
        (time(7, 40), WINTER, "Pacific/Auckland", "Pacific/Tongatapu"),
        (time(19, 37), WINTER, "Europe/Berlin", "Europe/Madrid"),  # a clock three minutes slow
        (time(19, 46), WINTER, "Europe/Berlin", "Europe/Madrid"),  # six minutes fast
    ],
)
def test_guess(local, now, first, also):
    zones = zone_guess(local, now)
    assert zones[0] == first
    assert also in zones


def test_no_zone_has_such_an_offset():
    assert zone_guess(time(19, 10), WINTER) == []  # half an hour east of Greenwich


def test_the_date_may_differ_by_a_day():
    """+13 h and -11 h show the same clock."""
    assert offsets_of(time(7, 40), WINTER) == [timedelta(hours=-11), timedelta(hours=13)]
    zones = zone_guess(time(7, 40), WINTER)
    assert {"Pacific/Pago_Pago", "Pacific/Auckland"} <= set(zones)


@pytest.mark.parametrize("now", [WINTER, SUMMER])
def test_each_zone_is_found_by_its_own_clock(now):
    clocks = {name: now.astimezone(ZoneInfo(name)).time() for name in COMMON}
    assert [name for name in COMMON if name not in zone_guess(clocks[name], now)] == []


def test_zones_are_named_once():
    assert len(set(COMMON)) == len(COMMON)


def test_a_clock_has_no_zone_and_now_has_one():
    with pytest.raises(NaiveTime):
        zone_guess(time(19, 40), WINTER.replace(tzinfo=None))
    with pytest.raises(NaiveTime):
        zone_guess(time(19, 40, tzinfo=UTC), WINTER)
