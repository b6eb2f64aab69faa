"""Where a local date and time of day lies in UTC, through daylight saving and moved date lines.

The rules, each with a test of its own:

- **gap**: a time of day that the clocks jump over means the first valid minute after the gap
  (02:30 on the morning of a jump from 02:00 to 03:00 is 03:00);
- **fold**: a time of day that comes twice means the first of the two only;
- a gap may reach midnight (Nuuk goes from 23:00 to 00:00) or span a day (Apia had no 30 December
  2011); the first valid minute then bears the next day's date.
"""

from __future__ import annotations

from datetime import UTC, date, datetime, time, timedelta, tzinfo

_SECOND = timedelta(seconds=1)
_MINUTE = timedelta(minutes=1)


def moment_at(day: date, at: time, zone: tzinfo) -> datetime:
    """The moment in UTC at which the clocks of a zone show a date and time of day.

    Parameters
    ----------
    day : date
        The local date.
    at : time
        The local time of day, without a zone.
    zone : tzinfo
        The zone; a fixed offset has neither gaps nor folds.

    Returns
    -------
    datetime
        In UTC: the first of two in a fold, the first valid minute after a gap.

    Raises
    ------
    OverflowError
        Within a day of the ends of the calendar, year 1 and year 9999.

    Examples
    --------
    >>> from zoneinfo import ZoneInfo
    >>> moment_at(date(2026, 3, 29), time(2, 30), ZoneInfo("Europe/Berlin")).isoformat()
    '2026-03-29T01:00:00+00:00'
    """
    local = datetime.combine(day, at.replace(fold=0), tzinfo=zone)
    moment = local.astimezone(UTC)
    if moment.astimezone(zone).replace(tzinfo=None) == local.replace(tzinfo=None):
        return moment
    return _end_of_gap(local, zone)


def is_skipped(day: date, zone: tzinfo) -> bool:
    """True where the zone never had this date, as when a date line was moved."""
    return moment_at(day, time(0), zone).astimezone(zone).date() != day


def _end_of_gap(local: datetime, zone: tzinfo) -> datetime:
    """The first whole minute that the clocks show after the gap that `local` lies in.

    The jump lies after the moment that the later offset gives and not after the one that the
    earlier offset gives (PEP 495: fold 1 and fold 0 in a gap); halving finds its second.
    """
    earliest = local.replace(fold=1, microsecond=0).astimezone(UTC)
    old_offset = earliest.astimezone(zone).utcoffset()
    before, after = 0, _ceil_seconds(local.astimezone(UTC) - earliest)
    while after - before > 1:
        middle = (before + after) // 2
        if (earliest + middle * _SECOND).astimezone(zone).utcoffset() == old_offset:
            before = middle
        else:
            after = middle
    return _next_whole_minute(earliest + after * _SECOND, zone)


def _ceil_seconds(span: timedelta) -> int:
    return -(-span // _SECOND)


def _next_whole_minute(moment: datetime, zone: tzinfo) -> datetime:
    local = moment.astimezone(zone)
    odd = timedelta(seconds=local.second, microseconds=local.microsecond)
    return moment - odd + _MINUTE if odd else moment
