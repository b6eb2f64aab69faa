"""How much water first aid may change: the largest share that does no harm itself."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import Final

from core.advice import limits
from core.advice.by_now import by_now
from core.advice.change_plan import largest_safe_share
from core.advice.changes import Waters, waters_of
from core.advice.danger import cut_to_kh, is_acid
from core.advice.findings import find
from core.advice.scheduling import conflict
from core.advice.state import State
from core.errors import CoreError
from core.water import ammonia_freed

NEGLECTED_MOST: Final = 0.1
"""Most of a long neglected tank at a time, poison or not; common practice."""

LEAST: Final = 0.05
"""A smaller change is no help; then other water is needed; common practice."""


ENOUGH: Final = 0.1
"""Where less than this is safe, water cut to the tank's KH is looked at too; common practice."""


@dataclass(frozen=True, slots=True)
class NewWater:
    """A water on record: its name, its readings, and whether it may hold chloramine unmeasured."""

    name: str
    state: State
    chlorinated: bool = True


@dataclass(frozen=True, slots=True)
class Share:
    """The largest safe change with a known water.

    Attributes
    ----------
    most : float
        Largest share; 0 where this water would do harm in any amount worth changing.
    source : str
        Name of the new water.
    ro_share : float
        Share of pure water in the new one, where its KH must be cut first.
    """

    most: float
    source: str
    ro_share: float = 0.0


def safe_share(tank: State, new: NewWater | None, *, poisoned: bool, most: float) -> Share | None:
    """The largest safe change, of what the new water is known to be.

    Parameters
    ----------
    tank : State
        The tank and its readings.
    new : NewWater or None
        The water that it is filled from.
    poisoned : bool
        True where poison is the greater danger and its limits bind.
    most : float
        No more than this, over 0 up to 1.

    Returns
    -------
    Share or None
        None where too little is known: a fresh pH and KH of the tank, pH and KH of the new water,
        in salt water its salinity.

    Notes
    -----
    First aid is given at the tank's own temperature, so warmth binds nothing here. Where little of
    the new water is safe as it is, it is cut with pure water to the tank's KH, as the limits have
    it for a tank under pH 7 with ammonia.
    """
    if new is None or not _is_known(tank, new.state):
        return None
    tank = by_now(tank)
    try:
        waters = waters_of(tank, new.state)
    except CoreError:
        return None
    if waters is None:
        return None
    waters = replace(
        waters, source=replace(waters.source, temperature=waters.tank.water.temperature)
    )
    if new.chlorinated and new.state.last("total_chlorine") is None:
        waters = replace(waters, source_n=waters.source_n + ammonia_freed(limits.CHLORINE_ASSUMED))
    if any(finding.id == "neglected" for finding in find(tank, frozenset(tank.readings))):
        most = min(most, NEGLECTED_MOST)
    plain = _largest(waters, poisoned=poisoned, most=most)
    matched, ro_share = cut_to_kh(waters)
    acid = is_acid(waters) and waters.total_n != 0.0
    if ro_share > 0.0 and (plain < min(most, ENOUGH) or (poisoned and acid)):
        cut = _largest(matched, poisoned=poisoned, most=most)
        if cut > plain or acid:
            return Share(cut, new.name, ro_share)
    return Share(plain, new.name)


def _largest(waters: Waters, *, poisoned: bool, most: float) -> float:
    largest = min(largest_safe_share(waters, emergency=poisoned), _by_salt(waters), most)
    return largest if largest >= LEAST else 0.0


def _is_known(tank: State, source: State) -> bool:
    if tank.fresh("ph") is None or tank.fresh("kh") is None or conflict(tank) is not None:
        return False
    if source.last("kh") is None or source.last("ph") is None:
        return False
    return tank.salinity <= limits.SALT_WATER or source.last("salinity") is not None


def _by_salt(waters: Waters) -> float:
    """The share that moves salinity by what a day allows, either way."""
    apart = abs(waters.source.salinity - waters.tank.water.salinity)
    return 1.0 if apart <= limits.SALINITY_UP else limits.SALINITY_UP / apart
