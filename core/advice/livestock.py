"""Animals and plants: what suits them, who suits whom, and what could live in a water.

The table stands in ``livestock.toml``, with a source for every value. Ranges tell what suits by
the sources and the trade's habit; an animal just outside of one is not in danger for it, and a
steady water is worth more than the middle of a range.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Final

from core.advice._livestock_company import MILD, Conflict, foreign_water, together
from core.advice._livestock_kept import Kept, kept_in, may_live_in
from core.advice._livestock_names import (
    MOST_OFFERED,
    Found,
    is_head,
    lookup,
    may_name,
    name_at,
    named_in,
    species,
    spelt_like,
)
from core.advice._livestock_room import (
    NOBODY_TOLD,
    SHOAL,
    Rivalry,
    Sex,
    Sexes,
    least_volume,
    rival_of,
    volume_for,
)
from core.advice._livestock_table import (
    RANGES,
    SENSITIVITIES,
    UNSOURCED,
    Sensitivity,
    Span,
    Species,
    table,
)
from core.advice._livestock_words import plain_name, sex_of, sexed, sexes_in, without_sex
from core.advice.state import Measured, State
from core.tank import Tank

__all__ = [
    "MILD",
    "NOBODY_TOLD",
    "RANGES",
    "SENSITIVITIES",
    "SHOAL",
    "UNSOURCED",
    "Conflict",
    "Found",
    "Kept",
    "Misfit",
    "Rivalry",
    "Sensitivity",
    "Sex",
    "Sexes",
    "Span",
    "Species",
    "Suited",
    "by_water",
    "could_live",
    "fits",
    "foreign_water",
    "is_head",
    "is_tender",
    "kept_in",
    "least_volume",
    "likeliest",
    "lookup",
    "may_live_in",
    "may_name",
    "name_at",
    "named_in",
    "nitrate_limit",
    "plain_name",
    "rival_of",
    "sex_of",
    "sexed",
    "sexes_in",
    "source_text",
    "species",
    "spelt_like",
    "table",
    "together",
    "volume_for",
    "without_sex",
]

Readings = Mapping[str, Measured] | Mapping[str, float]


def source_text(source: str) -> str:
    """The source behind an id of the table, in words."""
    return table().sources[source]


@dataclass(frozen=True, slots=True)
class Misfit:
    """A reading outside of what suits an animal.

    Attributes
    ----------
    species : Species
        Whom it does not suit.
    analyte : str
        What is off.
    value : float
        The reading. [canonical unit]
    span : Span
        What suits, with its source.
    certain : bool
        True where the whole doubt of the kit lies outside; else a retest decides.
    """

    species: Species
    analyte: str
    value: float
    span: Span
    certain: bool

    @property
    def too_high(self) -> bool:
        """Whether the reading is over the range; else it is under."""
        return self.value > self.span.high

    @property
    def excess(self) -> float:
        """How far outside, as a share of the range's width."""
        width = max(self.span.high - self.span.low, 1e-9)
        over = self.value - self.span.high if self.too_high else self.span.low - self.value
        return over / width


def fits(kept: Species, readings: State | Readings) -> list[Misfit]:
    """What of a water does not suit an animal, the worst first.

    Parameters
    ----------
    kept : Species
        The animal or plant.
    readings : State or mapping of analyte to Measured or float
        The water; a plain number is taken as exact. What was not measured is not judged.

    Examples
    --------
    >>> [m.analyte for m in fits(species("neon tetra"), {"gh": 20.0, "temperature": 24.0})]
    ['gh']
    """
    held = readings.readings if isinstance(readings, State) else readings
    found = (
        _misfit(kept, analyte, span, held[analyte])
        for analyte, span in kept.ranges.items()
        if analyte in held
    )
    return sorted((m for m in found if m is not None), key=lambda m: -m.excess)


def _misfit(kept: Species, analyte: str, span: Span, given: Measured | float) -> Misfit | None:
    value, low, high = _ends(given)
    if span.low - 1e-9 <= value <= span.high + 1e-9:
        return None
    if isinstance(given, Measured):
        # "under 3" may be anything less, "over 20" anything more: only a surely wrong one counts.
        off_scale_inside = (given.qualifier == "<" and value >= span.low) or (
            given.qualifier == ">" and value <= span.high
        )
        if off_scale_inside:
            return None
    certain = low > span.high + 1e-9 or high < span.low - 1e-9
    return Misfit(kept, analyte, value, span, certain)


def _ends(given: Measured | float) -> tuple[float, float, float]:
    if isinstance(given, Measured):
        return given.value, given.low, given.high
    return float(given), float(given), float(given)


@dataclass(frozen=True, slots=True)
class Suited:
    """A species that a water suits; `room` is how far from an end of a range it lies, 0 to 0.5."""

    species: Species
    room: float


PH_OF_SOURCE_SLACK: Final = 0.5
"""pH of a water fresh from the tap changes on standing; GH and KH decide. Common practice."""

DECIDE: Final = ("gh", "kh", "salinity")


def could_live(source: Readings, volume_l: float | None = None) -> list[Suited]:
    """What could live in a source water as it is, the best suited first.

    Parameters
    ----------
    source : mapping of analyte to Measured or float
        The source's readings. GH, KH and salinity decide; pH may be half a unit off, since a
        water fresh from the tap still changes; temperature is the heater's affair.
    volume_l : float, optional
        What they would live in: fish that are cramped there for sure are left out. [L]

    Returns
    -------
    list of Suited
        Fresh-water kinds unless a salinity was measured; empty without GH and KH and salinity.
    """
    values = {of: _ends(given)[0] for of, given in source.items()}
    if not any(of in values for of in DECIDE):
        return []
    water = {"salinity": 0.0, **values}
    rooms = ((row, _room(row, water)) for row in table().species)
    most = volume_l or float("inf")
    suited = [
        Suited(row, room)
        for row, room in rooms
        if room is not None and (least_volume(row) or 0.0) <= most
    ]
    return sorted(suited, key=lambda s: (-s.room, s.species.scientific))


def _room(row: Species, water: Mapping[str, float]) -> float | None:
    """The least distance from the ends of the deciding ranges; None where one is left."""
    ph, span = water.get("ph"), row.ranges.get("ph")
    if ph is not None and span is not None:
        slack = PH_OF_SOURCE_SLACK
        if not span.low - slack <= ph <= span.high + slack:
            return None
    least = 0.5
    for of in DECIDE:
        held = row.ranges.get(of)
        if held is None or of not in water:
            continue
        if not held.low <= water[of] <= held.high:
            return None
        if of != "salinity":
            width = max(held.high - held.low, 1e-9)
            least = min(least, (water[of] - held.low) / width, (held.high - water[of]) / width)
    return least


def likeliest(found: Found, tank: Tank) -> tuple[Species, ...]:
    """The candidates of a name in the order in which a tank makes them likely, the best few."""
    kept = {row.scientific for row in kept_in(tank).kinds}
    water = "fresh" if tank.kind == "pond" else tank.kind
    ordered = sorted(found.candidates, key=lambda r: (r.scientific not in kept, r.water != water))
    return tuple(ordered[:MOST_OFFERED])


def by_water(found: Found, tank: Tank, company: Sequence[tuple[str, Found]] = ()) -> Found:
    """The one kind of a shared name that is on record, or else lives in the water meant.

    The water is that of the `company` that is named beside it, else that of the tank. The name
    stays shared where that leaves none, or several.
    """
    kept = [row for row in kept_in(tank).kinds if row in found.candidates]
    if found.shared and len(kept) == 1:
        return Found(kept[0])
    waters = {other.species.water for _said, other in company if other.species is not None}
    waters = waters or {"fresh" if tank.kind == "pond" else tank.kind}
    able = [row for row in found.candidates if row.water in waters]
    return Found(able[0]) if found.shared and len(able) == 1 else found


def is_tender(tank: Tank) -> bool:
    """Whether a tank holds animals that bear less ammonia: the stricter gate counts then.

    Marine tanks, and any with shrimps, snails, mussels or another kind marked so in the table; a
    name that several such kinds share (shrimp, snails) as well.
    """
    kept = kept_in(tank)
    if tank.is_sea or kept.invertebrates:
        return True
    return any(row.level("ammonia") == "high" for row in kept.kinds)


def nitrate_limit(tank: Tank) -> tuple[float, str] | None:
    """The lowest nitrate that harms a kind on record, with its source's id. [mg/L NO3]"""
    limits = [row.nitrate_limit for row in kept_in(tank).kinds if row.nitrate_limit is not None]
    least = min(limits, key=lambda span: span.high, default=None)
    return None if least is None else (least.high, least.source)
