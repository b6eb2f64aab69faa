"""Where a time zone lies, by the table that comes with the zones (IANA, zone.tab)."""

from __future__ import annotations

import re
from collections.abc import Mapping
from functools import cache
from importlib import resources


def country_of(zone: str) -> str | None:
    """The ISO 3166 code of a zone's country; None for a zone of none, such as UTC.

    Examples
    --------
    >>> country_of("Europe/Lisbon"), country_of("UTC")
    ('PT', None)
    """
    row = _rows().get(zone)
    return None if row is None else row[0]


def latitude_of(zone: str) -> float | None:
    """Latitude of a zone's chief place, north positive; None for a zone of none. [°]

    Examples
    --------
    >>> latitude_of("Australia/Hobart"), latitude_of("UTC")
    (-42.88, None)
    """
    row = _rows().get(zone)
    if row is None:
        return None
    found = _LATITUDE.match(row[1])
    if found is None:
        return None
    degrees = int(found["degrees"]) + int(found["minutes"]) / 60.0
    return round(degrees if found["sign"] == "+" else -degrees, 2)


_LATITUDE = re.compile(r"(?P<sign>[+-])(?P<degrees>\d{2})(?P<minutes>\d{2})")


@cache
def _rows() -> Mapping[str, tuple[str, str]]:
    """Country and coordinates of each zone."""
    table = resources.files("tzdata.zoneinfo").joinpath("zone.tab").read_text("utf-8")
    rows = (line.split("\t") for line in table.splitlines() if line and not line.startswith("#"))
    return {row[2]: (row[0], row[1]) for row in rows}
