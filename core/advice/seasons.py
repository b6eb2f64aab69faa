"""A source water by the season: which of its profiles is in force, and whether it is too old."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from datetime import datetime, timedelta
from typing import Final, Literal

from core.advice.state import Measured, newest

Season = Literal["winter", "summer"]
SEASONS: Final[tuple[Season, Season]] = ("winter", "summer")

TROPIC: Final = 23.44
"""Latitude within which the months tell no winter from summer (obliquity, from memory). [°]"""

NORTHERN_SUMMER: Final = range(5, 11)
"""May to October; the ground follows the air late. Common practice, no source."""

OLD: Final = timedelta(days=183)
"""A supply's water is not the same after half a year; our judgement, no source."""

OLD_IN_OTHER: Final = timedelta(days=91)
"""Nor after a quarter of a year that lies in the other season."""


def season_at(moment: datetime, latitude: float | None) -> Season | None:
    """Which season a moment falls in; None in the tropics or where the place is not known.

    Examples
    --------
    >>> from datetime import UTC
    >>> moment = datetime(2026, 7, 1, tzinfo=UTC)
    >>> season_at(moment, 52.5), season_at(moment, -42.9), season_at(moment, 1.3)
    ('summer', 'winter', None)
    """
    if latitude is None or abs(latitude) < TROPIC:
        return None
    northern = moment.month in NORTHERN_SUMMER
    return "summer" if northern == (latitude > 0.0) else "winter"


@dataclass(frozen=True, slots=True)
class InForce:
    """The readings of a source that count now.

    Attributes
    ----------
    readings : mapping of analyte to Measured
        The newest that fit.
    season : Season or None
        The profile that they are of; None for a source without seasons.
    other : mapping of analyte to Measured
        The profile of the other season, where there is one too.
    certain : bool
        False where neither month nor place tells the season: then the last measured counts.
    """

    readings: Mapping[str, Measured]
    season: Season | None = None
    other: Mapping[str, Measured] = field(default_factory=dict)
    certain: bool = True


def in_force(
    plain: Iterable[Measured],
    profiles: Mapping[Season, Iterable[Measured]],
    now: datetime,
    latitude: float | None,
) -> InForce:
    """Choose among what was measured of a source in no named season, in winter and in summer.

    Parameters
    ----------
    plain : iterable of Measured
        Readings told without a season, in any order.
    profiles : mapping of season to readings
        Those told for one.
    now : datetime
        The moment that counts.
    latitude : float or None
        Of the place, north positive. [°]
    """
    told = list(plain)
    held = {season: newest(readings) for season, readings in profiles.items()}
    held = {season: readings for season, readings in held.items() if readings}
    if not held:
        return InForce(newest(told))
    expected = season_at(now, latitude)
    season = expected if expected in held else _last_measured(held)
    other: Season = "winter" if season == "summer" else "summer"
    return InForce(
        _with_plain(held[season], told, season, now, latitude),
        season,
        _with_plain(held[other], told, other, now, latitude) if other in held else {},
        certain=expected == season,
    )


def _last_measured(held: Mapping[Season, Mapping[str, Measured]]) -> Season:
    return max(held, key=lambda season: max(reading.at for reading in held[season].values()))


def _with_plain(
    held: Mapping[str, Measured],
    plain: Iterable[Measured],
    season: Season,
    now: datetime,
    latitude: float | None,
) -> dict[str, Measured]:
    """A profile, with what it lacks, and what was measured since in the same season."""
    found = newest(plain)
    recent = newest(
        reading
        for reading in plain
        if now - reading.at <= OLD and season_at(reading.at, latitude) in {season, None}
    )
    for analyte, reading in held.items():
        since = recent.get(analyte)
        found[analyte] = since if since is not None and since.at > reading.at else reading
    return found


DECIDING: Final = ("kh", "gh", "ph", "nitrate")
"""Whose age is the age of a source."""


def outdated(
    readings: Mapping[str, Measured], now: datetime, latitude: float | None
) -> datetime | None:
    """When a source was measured last, if that is too long ago to build on; None where not.

    Examples
    --------
    >>> from datetime import UTC
    >>> read = datetime(2026, 1, 10, tzinfo=UTC)
    >>> held = {"kh": Measured("kh", 4.0, 3.0, 4.0, read)}
    >>> outdated(held, datetime(2026, 3, 1, tzinfo=UTC), 52.5) is None
    True
    >>> outdated(held, datetime(2026, 6, 1, tzinfo=UTC), 52.5) == read
    True
    """
    dated = [readings[analyte].at for analyte in DECIDING if analyte in readings]
    if not dated:
        return None
    oldest = min(dated)
    most = OLD if season_at(oldest, latitude) == season_at(now, latitude) else OLD_IN_OTHER
    return oldest if now - oldest > most else None
