"""Which zone a clock on the wall may belong to.

A keeper who says "it is 19:40 here" gives an offset from UTC; the zones that have it at present
are offered, those of most people first. What they do at the next change of the clocks may differ,
so the answer is a choice and never taken silently.
"""

from __future__ import annotations

from datetime import datetime, time, timedelta
from functools import cache
from zoneinfo import ZoneInfo, ZoneInfoNotFoundError

from core.schedule.errors import NaiveTime
from core.schedule.rules import aware

_QUARTER = 15
_DAY = 24 * 60
_LEAST, _MOST = -12 * 60, 14 * 60
"""The offsets in use, from Etc/GMT+12 to Pacific/Kiritimati. [min]"""


def _names(text: str) -> tuple[str, ...]:
    return tuple(text.split())


COMMON = _names(
    """
    Europe/London Europe/Berlin Europe/Paris Europe/Madrid Europe/Rome Europe/Warsaw
    Europe/Amsterdam Europe/Stockholm Europe/Lisbon Europe/Dublin Europe/Zurich Europe/Vienna
    Europe/Brussels Europe/Prague Europe/Copenhagen Europe/Oslo Europe/Budapest Europe/Athens
    Europe/Bucharest Europe/Helsinki Europe/Kyiv Europe/Istanbul Europe/Moscow
    America/New_York America/Chicago America/Denver America/Phoenix America/Los_Angeles
    America/Toronto America/Halifax America/St_Johns America/Anchorage Pacific/Honolulu
    America/Mexico_City America/Bogota America/Lima America/Caracas America/Santiago
    America/Sao_Paulo America/Argentina/Buenos_Aires America/Montevideo America/Havana
    America/Puerto_Rico America/Nuuk America/Noronha Atlantic/Azores Atlantic/Cape_Verde
    Atlantic/Reykjavik
    Asia/Kolkata Asia/Shanghai Asia/Tokyo Asia/Jakarta Asia/Manila Asia/Singapore Asia/Bangkok
    Asia/Ho_Chi_Minh Asia/Hong_Kong Asia/Taipei Asia/Seoul Asia/Kuala_Lumpur Asia/Karachi
    Asia/Dhaka Asia/Dubai Asia/Tehran Asia/Baghdad Asia/Riyadh Asia/Jerusalem Asia/Beirut
    Asia/Kabul Asia/Kathmandu Asia/Colombo Asia/Yangon Asia/Tashkent Asia/Almaty
    Asia/Yekaterinburg Asia/Omsk Asia/Novosibirsk Asia/Krasnoyarsk Asia/Irkutsk Asia/Yakutsk
    Asia/Vladivostok Asia/Magadan Asia/Kamchatka Europe/Samara Asia/Baku Asia/Tbilisi
    Africa/Lagos Africa/Cairo Africa/Johannesburg Africa/Nairobi Africa/Casablanca Africa/Algiers
    Africa/Accra Africa/Addis_Ababa
    Australia/Sydney Australia/Melbourne Australia/Brisbane Australia/Perth Australia/Adelaide
    Australia/Darwin Australia/Eucla Australia/Lord_Howe
    Pacific/Auckland Pacific/Chatham Pacific/Fiji Pacific/Guam Pacific/Port_Moresby
    Pacific/Noumea Pacific/Tongatapu Pacific/Apia Pacific/Kiritimati Pacific/Pago_Pago
    Pacific/Tahiti Pacific/Marquesas Pacific/Gambier Pacific/Norfolk Etc/GMT+12
    """
)
"""Zones by how likely a keeper lives there; the order is a guess of ours."""


def offsets_of(local: time, now: datetime) -> list[timedelta]:
    """The offsets, to the nearest quarter of an hour, at which clocks show this time now.

    Parameters
    ----------
    local : time
        What the clock shows.
    now : datetime
        The present moment; aware.

    Returns
    -------
    list of timedelta
        One, or two where the date may differ by a day (+13 h and -11 h); the one nearer to UTC
        first.

    Examples
    --------
    >>> from datetime import UTC
    >>> offsets_of(time(19, 40), datetime(2026, 3, 1, 18, 42, tzinfo=UTC))
    [datetime.timedelta(seconds=3600)]
    """
    if local.tzinfo is not None:
        raise NaiveTime("now, and local without a zone,")
    utc = aware(now, "now")
    ahead = local.hour * 60 + local.minute - (utc.hour * 60 + utc.minute + utc.second / 60)
    nearest = round(ahead / _QUARTER) * _QUARTER
    fitting = [nearest + days * _DAY for days in (-1, 0, 1)]
    inside = [minutes for minutes in fitting if _LEAST <= minutes <= _MOST]
    return [timedelta(minutes=minutes) for minutes in sorted(inside, key=abs)]


def zone_guess(local: time, now: datetime) -> list[str]:
    """Name the zones whose clocks show this time now.

    Parameters
    ----------
    local : time
        What the clock on the wall shows, right to seven minutes.
    now : datetime
        The present moment; aware.

    Returns
    -------
    list of str
        IANA names, the commonest first; empty where no zone has such an offset.

    Examples
    --------
    >>> from datetime import UTC
    >>> zone_guess(time(0, 25), datetime(2026, 3, 1, 18, 40, tzinfo=UTC))
    ['Asia/Kathmandu']
    """
    moment = aware(now, "now")
    offsets = offsets_of(local, now)
    return [
        name for name, zone in _zones().items() if moment.astimezone(zone).utcoffset() in offsets
    ]


@cache
def _zones() -> dict[str, ZoneInfo]:
    """The zones that this machine's database has."""
    known: dict[str, ZoneInfo] = {}
    for name in COMMON:
        try:
            known[name] = ZoneInfo(name)
        except ZoneInfoNotFoundError:
            continue  # an old database lacks new names, such as Europe/Kyiv
    return known
