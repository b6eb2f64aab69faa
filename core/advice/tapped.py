"""What of a source water is bad for animals or people as it comes, by its readings."""

from __future__ import annotations

from collections.abc import Collection, Mapping
from typing import Final

from core.advice import limits
from core.advice.state import Measured, State

MOST: Final = {
    "nitrate": 44.0,
    "nitrite": 0.5,
    "ammonia": 0.2,
    "copper": 0.03,
    "chlorine": limits.CHLORINE_WARN,
    "total_chlorine": limits.CHLORINE_WARN,
}
"""Over this a source is spoken of. Nitrate: the US drinking limit of 10 mg/L as N (via Camargo et
al. 2005, Chemosphere 58:1255, grade A). Nitrite: the drinking limit of the EU (2020/2184, from
memory). Ammonia as N: half of its limit of 0.5 mg/L as NH4, since each change brings it in (from
memory, the half is ours). Copper: what a kit can tell; it harms invertebrates (ours). [mg/L]"""

HIGHEST_PH: Final = 9.5
"""Of drinking water in the EU (Directive 2020/2184, from memory)."""

SOFTENED_GH: Final = 3.0
SOFTENED_KH: Final = 5.0
"""GH under and KH over which water went through a softener, likely; common practice. [°dH]"""


def looks_softened(kh: float, gh: float) -> bool:
    """Whether water has the hardness of one that went through a softener: sodium for calcium.

    Examples
    --------
    >>> looks_softened(kh=14.0, gh=1.0), looks_softened(kh=14.0, gh=16.0)
    (True, False)
    """
    return gh < SOFTENED_GH and kh >= SOFTENED_KH


def softened(readings: Mapping[str, Measured]) -> tuple[float, float] | None:
    """KH and GH of water that probably is softened tap, else None. [°dH]"""
    kh, gh = readings.get("kh"), readings.get("gh")
    if kh is None or gh is None or gh.qualifier == ">" or kh.low <= gh.high:
        return None
    return (kh.value, gh.value) if looks_softened(kh.value, gh.value) else None


def bad_in(state: State, told: Collection[str]) -> list[tuple[str, float]]:
    """What is bad of those that were told, with its value, in the order of danger."""
    found: list[tuple[str, float]] = []
    for name in ("chlorine", "total_chlorine", "copper", "ammonia", "nitrite", "ph", "nitrate"):
        reading = state.last(name) if name in told else None
        if reading is None:
            continue
        if reading.value > (HIGHEST_PH if name == "ph" else MOST[name]):
            found.append((name, reading.value))
    return found
