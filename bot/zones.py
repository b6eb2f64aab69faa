"""Time zones by the names that people and machines give them."""

from __future__ import annotations

import os
from datetime import UTC, tzinfo
from zoneinfo import ZoneInfo, ZoneInfoNotFoundError, available_timezones


class UnknownZone(ValueError):
    """No time zone has this name; `suggestion` is the nearest name that one has, or None."""

    def __init__(self, name: str, suggestion: str | None) -> None:
        self.name = name
        self.suggestion = suggestion
        hint = "" if suggestion is None else f", perhaps {suggestion}"
        super().__init__(f"no time zone is called {name!r}{hint}")


def zone_named(name: str) -> ZoneInfo:
    """Find the zone of an IANA name such as ``Europe/Lisbon``.

    Raises
    ------
    UnknownZone
        If there is none, with the nearest name.
    """
    try:
        return ZoneInfo(name)
    except (ZoneInfoNotFoundError, ValueError, OSError):  # OSError: "Europe" is a folder
        raise UnknownZone(name, _nearest(name)) from None


def machine_zone() -> str | None:
    """Give the name of the machine's own zone; None where it has none that we know.

    A ``TZ`` that is a rule, such as ``CET-1CEST``, or misspelt, has no name: a guess would be
    an hour off, so the chat asks.
    """
    import tzlocal  # only a chat without --timezone needs it

    said = os.environ.get("TZ", "").removeprefix(":")
    try:
        name = said if said and not said.startswith("/") else tzlocal.get_localzone_name()
        return zone_named(name).key if name else None
    except (ValueError, LookupError):  # LookupError is tzlocal's, of a file without a name
        return None


def local_zone() -> tzinfo:
    """Give the machine's own zone; UTC where it has none that we know."""
    name = machine_zone()
    return zone_named(name) if name else UTC


def _nearest(name: str) -> str | None:
    import difflib  # only a mistake needs it

    folded = {zone.casefold(): zone for zone in available_timezones()}
    wanted = name.strip().casefold().replace(" ", "_")
    for folded_name, zone in sorted(folded.items()):
        if folded_name.rpartition("/")[2] == wanted:  # "lisbon" for Europe/Lisbon
            return zone
    near = difflib.get_close_matches(wanted, folded, n=1, cutoff=0.7)
    return folded[near[0]] if near else None
