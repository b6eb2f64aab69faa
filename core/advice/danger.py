"""Whether poison in a tank is a greater danger than a quick change of its water."""

from __future__ import annotations

from dataclasses import replace
from typing import Final

from core.advice.changes import Waters
from core.advice.findings import find
from core.advice.state import State
from core.water import Water, mix

POISONS: Final = frozenset({"ammonia", "nitrite", "chlorine", "total_chlorine"})
NEUTRAL: Final = 7.0
"""Under this pH ammonia is nearly all ammonium, and a change that lifts pH frees the poison."""


def poison_in(state: State) -> str | None:
    """Name the poison that is at its alarm by a fresh reading: ammonia, nitrite or chlorine."""
    fresh = {name: r for name, r in state.readings.items() if r.is_fresh(state.now)}
    for finding in find(replace(state, readings=fresh), POISONS):
        if finding.severity == "alarm" and finding.id in POISONS:
            return finding.id
    return None


def holds_chlorine(state: State) -> bool:
    """Whether chlorine was read in the tank lately, which only a dechlorinator takes out."""
    chlorine = frozenset({"chlorine", "total_chlorine"})
    return any(finding.id == "chlorine" for finding in find(state, chlorine))


def is_acid(waters: Waters) -> bool:
    """Whether the tank's pH is under 7, where what lifts it frees ammonia."""
    return waters.tank.ph is not None and waters.tank.ph < NEUTRAL


def cut_to_kh(waters: Waters) -> tuple[Waters, float]:
    """Cut the new water with pure water down to the tank's KH.

    Returns
    -------
    tuple of Waters and float
        The waters, and the share of pure water in the new one; 0 where it stays as it is, since
        it has no more KH than the tank, or the tank is salty.
    """
    tank, source = waters.tank, waters.source
    if waters.is_salty or source.kh <= tank.water.kh or source.kh <= 0.0:
        return waters, 0.0
    share = 1.0 - tank.water.kh / source.kh
    cut = mix([(source, 1.0 - share), (Water(source.temperature), share)])
    return replace(waters, source=cut, source_n=waters.source_n * (1.0 - share)), share
