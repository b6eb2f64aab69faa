"""Values that left their place although nothing was done: to be read again before any dose."""

from __future__ import annotations

from typing import Final

from core.advice import limits
from core.advice.calls import HEATED
from core.advice.state import Measured, State

JUMPS: Final = {
    "kh": 2.0,
    "gh": 3.0,
    "temperature": 3.0,
    "salinity": 2.0,
    "calcium": 40.0,
    "magnesium": 100.0,
    "nitrate": 40.0,
    "phosphate": 1.0,
}
"""What hardly happens by itself within three days; common practice. [canonical unit]"""

CONDUCTIVITY_JUMP: Final = 0.15
"""Likewise, as a share."""

JUMPING: Final = (*JUMPS, "conductivity")
"""The analytes that are looked at."""


def jumped_from(state: State, analyte: str) -> Measured | None:
    """The reading before the last, where the value left it with nothing done in between.

    Parameters
    ----------
    state : State
        With its events; where those are unknown nothing can be said.
    analyte : str
        One of `JUMPING`.

    Returns
    -------
    Measured or None
        None where nothing jumped: the readings agree within the kit's steps, lie more than three
        days apart, or the water was touched between them.
    """
    now = state.last(analyte)
    if state.events is None or now is None or now.is_limit or analyte not in JUMPING:
        return None
    if analyte == "temperature" and (state.tank.kind == "pond" or _unheated(state)):
        return None  # a pond follows the weather
    before = _before(state, now)
    jumped = before is not None and _jumped(before, now) and not _touched(state, before, now)
    return before if jumped else None


def _unheated(state: State) -> bool:
    """Whether it was called out within the day that a heater, or the current, failed."""
    return any(danger in state.called for danger in {*HEATED, "power"})


def _before(state: State, now: Measured) -> Measured | None:
    """The reading before, if at most three days before and told alike."""
    before = state.past.previous(now)
    if before is None or before.is_limit or before.basis != now.basis:
        return None
    return before if now.at - before.at <= limits.STALE else None


def _jumped(before: Measured, now: Measured) -> bool:
    if before.low <= now.high and now.low <= before.high:
        return False
    change = abs(now.value - before.value)
    if now.analyte == "conductivity":
        return change > CONDUCTIVITY_JUMP * before.value
    return change >= JUMPS[now.analyte]


def _touched(state: State, before: Measured, now: Measured) -> bool:
    return any(e.disturbs and before.at <= e.at <= now.at for e in state.events or ())
