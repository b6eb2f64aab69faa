"""Who suits whom: kinds of other water, and kinds that eat or fight each other."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from typing import Final

from core.advice._livestock_names import species
from core.advice._livestock_table import RANGES, Species
from core.tank import Tank

__all__ = ["Conflict", "foreign_water", "is_mouthful", "species", "together"]

SWALLOWED: Final = 1.0 / 3.0
"""A hunter may swallow what is under this share of its length; common practice, no source."""

ORDER: Final = (
    "water", "salinity", "ph", "gh", "temperature", "kh", "eats", "preys", "fights", "picks",
)  # fmt: skip
"""Reasons against a pair, the worst first."""

MILD: Final = frozenset({"fights", "picks"})
"""Reasons that ask for care only."""


@dataclass(frozen=True, slots=True)
class Conflict:
    """Why two kinds do not suit each other.

    Attributes
    ----------
    one, other : Species
        The two; of the reasons of company, `one` is who does it.
    reason : str
        "water" (fresh, brackish, marine), an analyte id (ranges that do not meet), "eats" (by
        size), "preys" (by habit), "picks" (may eat) or "fights".
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
    return sorted(found, key=lambda c: ORDER.index(c.reason))


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
    lengths = {"length": one.length or 0.0, "length_2": other.length or 0.0}
    if other.prey in one.eats:
        return [Conflict(one, other, "preys", {})]
    if one.hunts and other.prey in {None, "shrimps"} and is_mouthful(one, other):
        return [Conflict(one, other, "eats", lengths)]
    if other.prey in one.picks:
        return [Conflict(one, other, "picks", {})]
    if one.fights and other.being == "fish" and one.group != "rift lakes" and not other.fights:
        return [Conflict(one, other, "fights", {})]
    return []


def is_mouthful(one: Species, other: Species) -> bool:
    """Whether a grown animal could swallow another by their lengths."""
    if one.length is None or other.length is None:
        return False
    return other.length <= one.length * SWALLOWED


KIND_SALT: Final[Mapping[str, tuple[float, float]]] = {
    "fresh": (0.0, 0.0),
    "pond": (0.0, 0.0),
    "brackish": (5.0, 20.0),
    "marine": (30.0, 36.0),
}
"""How salty a tank of a kind is where nobody measured; common practice. [g/kg]"""


def foreign_water(kept: Species, tank: Tank, salinity: float | None = None) -> bool:
    """Whether a kind lives in other water than a tank holds: fresh, brackish or the sea's.

    Parameters
    ----------
    kept : Species
        The animal or plant.
    tank : Tank
        Its kind stands for its salt.
    salinity : float, optional
        What was measured of it: within the range of the kind nothing is foreign. [g/kg]

    Examples
    --------
    >>> reef, bowl = Tank("reef", "marine"), Tank("bowl")
    >>> foreign_water(species("clownfish"), bowl), foreign_water(species("clownfish"), reef)
    (True, False)
    >>> foreign_water(species("molly"), Tank("marsh", "brackish"))
    False
    """
    span = kept.ranges.get("salinity")
    if span is None or (salinity is not None and span.low <= salinity <= span.high):
        return False
    low, high = KIND_SALT[tank.kind]
    return high < span.low or low > span.high
