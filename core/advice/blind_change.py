"""A change between waters of which a KH is unknown: how much may go in until it is measured."""

from __future__ import annotations

from core.advice import limits
from core.advice.change_limits import BY_MASS
from core.advice.changes import source_ammonia
from core.advice.setup import holds_only_fish
from core.advice.state import Measured, State
from core.advice.tainted import taint_of


def largest_unmeasured(tank: State, source: State) -> float:
    """The largest share that may be changed in a day while the KH of one water is unknown.

    Never more than is changed where nothing tells how far the waters are apart
    (`limits.UNKNOWN_MINERALS_SHARE`), less where what was measured of both binds it; 0 where
    ammonia was found or would come in, since a rising pH makes it poisonous, where KH is nearly
    used up, and where the new water brings copper or nitrite that the tank must not hold.
    """
    kh = tank.last("kh")
    ammonia = _is_found(tank.last("ammonia")) or source_ammonia(source) > 0.0
    if ammonia or (kh is not None and kh.low < limits.KH_SOFT):
        return 0.0
    taint = taint_of(tank, source)
    most = limits.UNKNOWN_MINERALS_SHARE
    if any(over > 0.0 for over in taint.excesses(most).values()):
        return 0.0
    found = min([most, *(step / far for step, far in _moves(tank, source) if far > step)])
    return found if found >= limits.LEAST_SHARE else 0.0


def _is_found(total: Measured | None) -> bool:
    return total is not None and total.qualifier != "<" and total.value > 0.0


def _moves(tank: State, source: State) -> list[tuple[float, float]]:
    """Of what was measured: most that may move in a day, and how far the waters are apart."""
    falls = limits.SALINITY_DOWN if holds_only_fish(tank.tank) else limits.SALINITY_UP
    told = [each.value for water in (tank, source) if (each := water.last("kh")) is not None]
    moves = [(limits.KH_STEP, max(told, default=0.0))]  # the unknown one may hold none at all
    for name, step in (("gh", limits.GH_STEP), ("temperature", limits.TEMPERATURE_STEP)):
        now, new = tank.last(name), source.last(name)
        if now is not None and new is not None:
            moves.append((step, abs(new.value - now.value)))
    salt = source.last("salinity")
    apart = (0.0 if salt is None else salt.value) - tank.salinity
    moves.append((limits.SALINITY_UP if apart > 0.0 else falls, abs(apart) / BY_MASS))
    return moves
