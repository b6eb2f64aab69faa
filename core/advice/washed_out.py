"""When a poison that no kit shows is taken to be out of the water: by changes and carbon."""

from __future__ import annotations

from datetime import datetime, timedelta
from typing import Final

from core.advice.state import Happening, State

UNTESTED: Final = frozenset({"contaminated"})
"""Calls of what no kit shows."""

WELL_AFTER: Final = timedelta(days=3)
"""So long after it animals that are well tell that it is gone; common practice."""

ENOUGH: Final = 0.5
"""Share of the water that is new at least, in one change or several; common practice."""


def washed_out(state: State, since: datetime) -> bool:
    """Whether so much of the water was changed since, with carbon in the filter.

    Parameters
    ----------
    state : State
        The tank and what was done to it.
    since : datetime
        When the poison was called out.
    """
    done = [each for each in state.events or () if since <= each.at <= state.now]
    carbon = any(
        each.what.kind == "media" and "carbon" in (each.what.substance or "") for each in done
    )
    left = 1.0
    for each in done:
        left *= 1.0 - _share(each, state.tank.volume_l)
    return carbon and left <= 1.0 - ENOUGH + 1e-9


def _share(done: Happening, volume_l: float | None) -> float:
    """The share of the water that a deed changed; 0 where it is none, or was not told."""
    what = done.what
    if what.kind != "water_change":
        return 0.0
    if what.percent is not None:
        return min(what.percent / 100.0, 1.0)
    if what.litres is not None and volume_l:
        return min(what.litres / volume_l, 1.0)
    return 0.0
