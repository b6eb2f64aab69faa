"""The highest pH of a day: what it was this morning it will be again."""

from __future__ import annotations

from datetime import timedelta
from typing import Final

from core.advice import limits
from core.advice.state import Measured, State

A_DAY: Final = timedelta(hours=24)
"""So long pH swings there and back; what was read before comes again."""


def highest_ph(state: State, newest: Measured) -> Measured:
    """The pH that ammonia is judged by: the highest of a day, where it was clearly higher.

    A change of water or a dose since, which may have moved it for good, leaves what was read
    before it out.
    """
    moved = [at for at in state.disturbances if at <= newest.at]
    since = max([newest.at - A_DAY, *moved[-1:]])
    told = [each for each in state.past.between("ph", since, newest.at) if not each.is_limit]
    highest = max(told, key=lambda each: each.value, default=newest)
    return highest if highest.value > newest.value + limits.PH_RESOLUTION + 1e-9 else newest


def daily_rise(state: State) -> float:
    """How far pH may rise above the newest reading within the day, as it did before; 0 or more."""
    newest = state.fresh("ph")
    return 0.0 if newest is None else highest_ph(state, newest).value - newest.value
