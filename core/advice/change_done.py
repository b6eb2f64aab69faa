"""A change of water that was made: what limit it went past, judged by the water before it."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

from core.advice import limits
from core.advice.by_now import by_now
from core.advice.change_limits import broken
from core.advice.changes import mixed, salinity_unknown, waters_of
from core.advice.danger import is_emergency
from core.advice.scheduling import conflict
from core.advice.state import State
from core.errors import CoreError

_GUESSED: Final = frozenset({"minerals", "conductivity"})
"""Limits that stand in where a hardness is not known: nothing to be told of what is done."""

_DEADLY: Final = frozenset({"ammonia", "copper", "nitrite"})


@dataclass(frozen=True, slots=True)
class Overdone:
    """A change that went past a limit.

    Attributes
    ----------
    share : float
        New water, over 0 up to 1.
    broken : frozenset of str
        Ids of limits, as in `core.advice.change_plan.ChangePlan`.
    ph_jump : float
        How far pH moved at once, either way.
    danger : bool
        True where it can kill: poison, or a jump of pH over `limits.PH_DANGER`.
    """

    share: float
    broken: frozenset[str]
    ph_jump: float
    danger: bool


def is_known(before: State, source: State) -> bool:
    """Whether enough is known of both waters to say that a change kept to every limit."""
    tank = by_now(before)
    if conflict(tank) is not None or salinity_unknown(tank):
        return False
    try:
        waters = waters_of(tank, source)
    except CoreError:
        return False
    temperatures = (tank.fresh("temperature"), source.fresh("temperature"))
    hardness = (tank.fresh("gh"), source.fresh("gh"))
    return waters is not None and None not in (*temperatures, *hardness)


def overdone(before: State, source: State, share: float) -> Overdone | None:
    """Judge a change that was made; None where it kept to every limit, or too little is known.

    Parameters
    ----------
    before : State
        The tank as it was right before.
    source : State
        The new water's readings.
    share : float
        New water, over 0 up to 1.
    """
    tank = by_now(before)
    if conflict(tank) is not None or salinity_unknown(tank):
        return None
    try:
        waters = waters_of(tank, source)
        if waters is None:
            return None
        after = mixed(waters, share)
        over = broken(waters, after, emergency=is_emergency(tank))
    except CoreError:
        return None
    found = frozenset(name for name, past in over.items() if past) - _GUESSED
    jump = abs(float(after.at_once) - waters.tank.ph_now)
    if not found:
        return None
    deadly = bool(found & _DEADLY) or ("ph" in found and jump > limits.PH_DANGER)
    return Overdone(share, found, jump, deadly)
