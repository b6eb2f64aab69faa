"""Which country a time zone lies in, by the table that comes with the zones (IANA, zone.tab)."""

from __future__ import annotations

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
    return _countries().get(zone)


@cache
def _countries() -> Mapping[str, str]:
    table = resources.files("tzdata.zoneinfo").joinpath("zone.tab").read_text("utf-8")
    rows = (line.split("\t") for line in table.splitlines() if line and not line.startswith("#"))
    return {row[2]: row[0] for row in rows}
