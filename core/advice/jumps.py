"""Values that left their place although nothing was done: to be read again before any dose."""

from __future__ import annotations

from datetime import timedelta
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

PH_JUMP: Final = 0.5
PH_JUMP_INJECTED: Final = 1.0
PH_AT_ONCE: Final = timedelta(hours=1)
"""pH swings over a day, but hardly so far within an hour; where carbon dioxide is let in and shut
off, it may by half of that and more. Common practice, no source."""

A_DAY: Final = timedelta(days=1)

JUMPING: Final = (*JUMPS, "conductivity", "ph")
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
        days apart (of pH, more than an hour), or the water was touched between them.
    """
    now = state.last(analyte)
    if state.events is None or now is None or now.is_limit or analyte not in JUMPING:
        return None
    if analyte == "temperature" and (state.tank.kind == "pond" or _unheated(state)):
        return None  # a pond follows the weather
    before = _before(state, now)
    if before is None or (analyte == "ph" and not _ph_jumped(state, before, now)):
        return None
    return before if _jumped(before, now) and not _touched(state, before, now) else None


def _ph_jumped(state: State, before: Measured, now: Measured) -> bool:
    if now.value > before.value and co2_leaves(state):
        return False
    most = PH_JUMP_INJECTED if state.injected else PH_JUMP
    return now.at - before.at <= PH_AT_ONCE and abs(now.value - before.value) >= most - 1e-9


CO2_OFF: Final = "CO2 off"
"""The note that CO2 was shut off."""


def co2_leaves(state: State) -> bool:
    """Whether CO2 was shut off, or called too much, within the day: then pH rises by itself."""
    noted = [e.at for e in state.events or () if e.what.kind == "note" and e.what.text == CO2_OFF]
    late = any(state.now - at <= A_DAY for at in noted)
    return late or "co2_high" in state.called


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
    return now.analyte == "ph" or change >= JUMPS[now.analyte]


def _touched(state: State, before: Measured, now: Measured) -> bool:
    return any(e.disturbs and before.at <= e.at <= now.at for e in state.events or ())
