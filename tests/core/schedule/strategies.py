"""Rules, zones and moments for the property tests."""

from datetime import UTC, datetime, time
from zoneinfo import ZoneInfo

from hypothesis import strategies as st

from core.schedule import Every, Monthly, NthWeekday, Weekly, Yearly
from core.schedule.rules import days_in_month

ZONES = (
    "UTC",
    "Europe/Berlin",
    "America/New_York",
    "Australia/Lord_Howe",
    "Africa/Cairo",
    "Asia/Beirut",
    "Pacific/Apia",
    "Africa/Casablanca",
    "Asia/Kathmandu",
    "Pacific/Chatham",
    "America/Sao_Paulo",
    "America/Santiago",
    "America/Havana",
    "America/Nuuk",
    "Pacific/Kwajalein",
)

zones = st.sampled_from(ZONES).map(ZoneInfo)
clocks = st.builds(time, st.integers(0, 23), st.integers(0, 59))
changes = st.sampled_from([time(h, m) for h in (0, 1, 2, 3, 23) for m in (0, 15, 30, 45)])
"""Times of day at which clocks are changed somewhere."""
any_clock = st.one_of(clocks, changes)
weekdays = st.sets(st.integers(0, 6), min_size=1).map(lambda days: tuple(sorted(days)))
month_days = st.sets(st.integers(1, 31), min_size=1, max_size=4).map(lambda d: tuple(sorted(d)))

elapsed = st.builds(Every, st.integers(1, 8784), st.just("hours"))
counting = st.one_of(
    st.builds(Every, st.integers(1, 400), st.just("days"), st.none() | any_clock),
    st.builds(Every, st.integers(1, 100), st.just("weeks"), st.none() | any_clock),
    st.builds(Every, st.integers(1, 30), st.just("months"), st.none() | any_clock),
)
weekly = st.builds(Weekly, weekdays, any_clock, st.integers(1, 8))
monthly = st.builds(Monthly, month_days, any_clock, st.integers(1, 14))
nth = st.builds(NthWeekday, st.sampled_from([1, 2, 3, 4, -1]), st.integers(0, 6), any_clock)
yearly = st.integers(1, 12).flatmap(
    lambda month: st.builds(
        Yearly, st.just(month), st.integers(1, days_in_month(2024, month)), any_clock
    )
)
by_days = st.one_of(counting, weekly, monthly, nth, yearly)
repeating = st.one_of(elapsed, by_days)

moments = st.datetimes(datetime(1985, 1, 1), datetime(2037, 1, 1), timezones=st.just(UTC))  # noqa: DTZ001
