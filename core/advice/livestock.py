"""Animals and plants: what suits them, who suits whom, and what could live in a water.

The table stands in ``livestock.toml``, with a source for every value. Ranges tell what suits by
the sources and the trade's habit; an animal just outside of one is not in danger for it, and a
steady water is worth more than the middle of a range.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from typing import Final

from core.advice._livestock_kept import Kept, kept_in
from core.advice._livestock_names import MOST_OFFERED, Found, lookup, name_at, named_in, species
from core.advice._livestock_table import (
    RANGES,
    SENSITIVITIES,
    UNSOURCED,
    Sensitivity,
    Span,
    Species,
    table,
)
from core.advice.state import Measured, State
from core.tank import Tank

__all__ = [
    "RANGES",
    "SENSITIVITIES",
    "UNSOURCED",
    "Conflict",
    "Found",
    "Kept",
    "Misfit",
    "Sensitivity",
    "Span",
    "Species",
    "Suited",
    "could_live",
    "fits",
    "is_tender",
    "kept_in",
    "least_volume",
    "likeliest",
    "lookup",
    "name_at",
    "named_in",
    "nitrate_limit",
    "source_text",
    "species",
    "table",
    "together",
]

Readings = Mapping[str, Measured] | Mapping[str, float]

SWALLOWED: Final = 1.0 / 3.0
"""A hunter may swallow what is under this share of its length; common practice, no source."""


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
class Conflict:
    """Why two kinds do not suit each other.

    Attributes
    ----------
    one, other : Species
        The two; of "eats" and "fights", `one` is who does it.
    reason : str
        "water" (fresh, brackish, marine), an analyte id (ranges that do not meet), "eats" or
        "fights".
    facts : mapping
        The ends of the two ranges, or the lengths.
    """

    one: Species
    other: Species
    reason: str
    facts: Mapping[str, float | str]


def together(kept: Iterable[Species]) -> list[Conflict]:
    """What stands against keeping kinds together, the worst reason of each pair first.

    Parameters
    ----------
    kept : iterable of Species
        Each kind once.

    Examples
    --------
    >>> [c.reason for c in together([species("neon tetra"), species("tropheus")])][:1]
    ['ph']
    """
    kinds = list({row.scientific: row for row in kept}.values())
    found: list[Conflict] = []
    for i, one in enumerate(kinds):
        for other in kinds[i + 1 :]:
            found += _water_conflicts(one, other)
            found += _company_conflicts(one, other) + _company_conflicts(other, one)
    order = {"water": 0, "salinity": 1, "ph": 2, "gh": 3, "temperature": 4, "kh": 5, "eats": 6}
    return sorted(found, key=lambda c: order.get(c.reason, 9))


def _water_conflicts(one: Species, other: Species) -> list[Conflict]:
    both = [(of, one.ranges[of], other.ranges[of]) for of in RANGES if of in one.ranges.keys()
            & other.ranges.keys()]  # fmt: skip
    parted = [
        Conflict(one, other, of, {"low": a.low, "high": a.high, "low_2": b.low, "high_2": b.high})
        for of, a, b in both
        if a.overlap(b) is None
    ]
    if any(conflict.reason == "salinity" for conflict in parted):
        # Fresh against salt water says it all: pH and hardness follow from it.
        return [Conflict(one, other, "water", {"water": one.water, "water_2": other.water})]
    return parted


def _company_conflicts(one: Species, other: Species) -> list[Conflict]:
    if not other.is_animal or not one.is_animal:
        return []
    if one.hunts and one.length and other.length and other.length <= one.length * SWALLOWED:
        return [Conflict(one, other, "eats", {"length": one.length, "length_2": other.length})]
    if one.fights and other.being == "fish" and one.group != "rift lakes" and not other.fights:
        return [Conflict(one, other, "fights", {})]
    return []


@dataclass(frozen=True, slots=True)
class Suited:
    """A species that a water suits; `room` is how far from an end of a range it lies, 0 to 0.5."""

    species: Species
    room: float


PH_OF_SOURCE_SLACK: Final = 0.5
"""pH of a water fresh from the tap changes on standing; GH and KH decide. Common practice."""

DECIDE: Final = ("gh", "kh", "salinity")


def could_live(source: Readings) -> list[Suited]:
    """What could live in a source water as it is, the best suited first.

    Parameters
    ----------
    source : mapping of analyte to Measured or float
        The source's readings. GH, KH and salinity decide; pH may be half a unit off, since a
        water fresh from the tap still changes; temperature is the heater's affair.

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
    suited = [Suited(row, room) for row, room in rooms if room is not None]
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


LITRES_PER_LENGTH: Final = 0.25
"""Under so much water for the square of its grown length a fish is cramped for sure: a lenient
bound of our own, far under what the trade recommends. Common practice. [L/cm²]"""

SHORTEST_JUDGED: Final = 10.0
"""Of smaller fish the number decides, which is not judged. [cm]"""

SHOAL: Final = 6
"""Fewer than so many of a kind that lives in groups are uneasy; common practice."""


def least_volume(kept: Species) -> float | None:
    """Water under which a grown fish is cramped for sure; None where that is not judged. [L]

    Examples
    --------
    >>> least_volume(species("oscar")), least_volume(species("neon tetra"))
    (256.0, None)
    """
    if kept.being != "fish" or kept.length is None or kept.length < SHORTEST_JUDGED:
        return None
    return LITRES_PER_LENGTH * kept.length**2


def likeliest(found: Found, tank: Tank) -> tuple[Species, ...]:
    """The candidates of a name in the order in which a tank makes them likely, the best few."""
    kept = {row.scientific for row in kept_in(tank).kinds}
    water = "fresh" if tank.kind == "pond" else tank.kind
    ordered = sorted(found.candidates, key=lambda r: (r.scientific not in kept, r.water != water))
    return tuple(ordered[:MOST_OFFERED])


def is_tender(tank: Tank) -> bool:
    """Whether a tank holds animals that bear less ammonia: the stricter gate counts then.

    Marine tanks, and any with shrimps, snails, mussels or another kind marked so in the table.
    """
    if tank.is_sea:
        return True
    return any(row.is_invertebrate or row.level("ammonia") == "high" for row in kept_in(tank).kinds)


def nitrate_limit(tank: Tank) -> tuple[float, str] | None:
    """The lowest nitrate that harms a kind on record, with its source's id. [mg/L NO3]"""
    limits = [row.nitrate_limit for row in kept_in(tank).kinds if row.nitrate_limit is not None]
    least = min(limits, key=lambda span: span.high, default=None)
    return None if least is None else (least.high, least.source)
