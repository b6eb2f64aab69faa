"""Water that comes out of the pipe with carbon dioxide in it, and rises as it stands."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

from core.advice import limits
from core.advice.blending import USUAL_TEMPERATURE
from core.advice.changes import source_water
from core.advice.state import State
from core.errors import CoreError
from core.water import Water, in_air, solve

ROOM_AIR: Final = 1200.0
"""Carbon dioxide of a lived-in room, the upper end; common practice. [µatm]"""

OVER_AIR: Final = 3.0 * limits.STOCKED_AIR
"""Carbon dioxide from which it is worth a word: thrice a stocked tank's; our judgement. [µatm]"""

RISE: Final = 0.3
"""A rise in even such a room over which it is said: the most that a day may move pH."""


@dataclass(frozen=True, slots=True)
class Rising:
    """What a fresh water holds and comes to.

    Attributes
    ----------
    co2 : float
        Dissolved carbon dioxide as it comes out. [mg/L]
    low, high : float
        pH once it has stood: in a lived-in room, and in open air.
    """

    co2: float
    low: float
    high: float


def rising(source: State) -> Rising | None:
    """What a source rises to on standing; None where it holds little more than air gives.

    Parameters
    ----------
    source : State
        With its pH and KH as it comes out; without either nothing is told.
    """
    ph, kh = source.last("ph"), source.last("kh")
    if ph is None or kh is None or ph.is_limit or kh.is_limit or kh.value <= 0.0:
        return None
    water = source_water(source, Water(USUAL_TEMPERATURE))
    try:
        fresh = solve(water)
        if fresh.pco2 < OVER_AIR:
            return None
        low, high = in_air(water, ROOM_AIR).ph, in_air(water, limits.OPEN_AIR).ph
    except CoreError:
        return None
    if low - ph.value < RISE:
        return None
    return Rising(fresh.co2_mg_l, low, high)
