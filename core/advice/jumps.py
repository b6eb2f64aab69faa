"""Values that left their place although nothing was done: to be read again before any dose."""

from __future__ import annotations

import math
from datetime import timedelta
from typing import Final

from core.advice import limits
from core.advice.calls import HEATED
from core.advice.mixed_in import reach
from core.advice.scheduling import per_gram
from core.advice.state import Happening, Measured, State
from core.water.substances import SUBSTANCES

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

AMMONIA_GONE: Final = 0.5
"""Total ammonia that no filter takes away within an hour; common practice, no source. [mg/L]"""

JUMPING: Final = (*JUMPS, "conductivity", "ph", "ammonia")
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
    if state.events is None or now is None or analyte not in JUMPING:
        return None
    if analyte == "ammonia":
        return _gone_at_once(state, now)
    if now.is_limit:
        return None
    if analyte == "temperature" and state.tank.kind == "pond":
        return None  # a pond follows the weather
    before = _before(state, now)
    if before is None or (analyte == "ph" and not _ph_jumped(state, before, now)):
        return None
    if analyte == "temperature" and unheated(state):
        return before if is_too_fast(state, before, now) else None
    ends = _explained(state, before, now)
    return before if ends is not None and _jumped(before, now, ends) else None


def _gone_at_once(state: State, now: Measured) -> Measured | None:
    """The ammonia that was read within the hour before a 0, with nothing done in between."""
    before = state.past.previous(now)
    if before is None or now.at - before.at > PH_AT_ONCE or _done(state, before, now):
        return None
    is_gone = now.value <= 0.0 or now.qualifier == "<"
    was_there = before.qualifier != "<" and before.value >= AMMONIA_GONE
    return before if is_gone and was_there else None


AN_HOUR: Final = timedelta(hours=1)

AN_HOUR_MOST: Final = 1.0
"""By so much water with animals is warmed or cooled in an hour; common practice. [°C]"""

OF_THERMOMETERS: Final = 1.0
"""By so much two readings of a thermometer may be off: half a degree each. [°C]"""


def is_too_fast(state: State, before: Measured, now: Measured) -> bool:
    """Whether water out of its warmth is led back faster than it may be: 1 °C an hour.

    After a heater that failed it is warmed, after one that stuck it is cooled; the other way it
    goes by itself.
    """
    warmed = now.value - before.value
    moved = -warmed if "heater_hot" in state.called else warmed
    return moved > AN_HOUR_MOST * ((now.at - before.at) / AN_HOUR) + OF_THERMOMETERS


def between(state: State, before: Measured, now: Measured) -> list[Happening]:
    """The water changes that may have been made between two readings, in order."""
    made = [e for e in _done(state, before, now) if e.what.kind == "water_change"]
    return sorted(made, key=lambda each: (each.at, each.order))


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


def unheated(state: State) -> bool:
    """Whether it was called out within the day that a heater, or the current, failed."""
    return any(danger in state.called for danger in {*HEATED, "power"})


def _before(state: State, now: Measured) -> Measured | None:
    """The reading before, if at most three days before and told alike."""
    before = state.past.previous(now)
    if before is None or before.is_limit or before.basis != now.basis:
        return None
    return before if now.at - before.at <= limits.STALE else None


def _jumped(before: Measured, now: Measured, ends: tuple[float, float]) -> bool:
    """Whether a value left the ends that the reading before, and changes since, lead it to."""
    low, high = ends
    if low <= now.high and now.low <= high:
        return False
    held = before.value if ends == (before.low, before.high) else min(max(now.value, low), high)
    change = abs(now.value - held)
    if now.analyte == "conductivity":
        return change > CONDUCTIVITY_JUMP * before.value
    return now.analyte == "ph" or change >= JUMPS[now.analyte]


def _explained(state: State, before: Measured, now: Measured) -> tuple[float, float] | None:
    """The ends that a value may lie between by what was done; None where that cannot be said."""
    done = _done(state, before, now)
    if not done:
        return before.low, before.high
    doses = [each for each in done if each.what.kind == "dose"]
    others = any(each.what.kind not in {"water_change", "dose"} for each in done)
    if others or (doses and (now.value < before.value or now.analyte not in BROUGHT)):
        return None
    rises = [brought(state, now.analyte, each) for each in doses]
    if any(rise is None for rise in rises):
        return None
    ends = reach(state, before, changes) if (changes := between(state, before, now)) else None
    if changes and ends is None:
        return None
    low, high = ends or (before.low, before.high)
    return low, high + math.fsum(rise or 0.0 for rise in rises)


def brought(state: State, analyte: str, dose: Happening) -> float | None:
    """What a dose brought of an analyte; None where salt, grams or litres are unknown.

    In the analyte's canonical unit.
    """
    salt, volume = dose.what.substance or "", state.tank.volume_l
    if salt not in SUBSTANCES or not dose.what.grams or not volume:
        return None
    return max(0.0, dose.what.grams * per_gram(salt, analyte) / volume)


def doses_between(state: State, before: Measured, now: Measured) -> list[Happening]:
    """The doses that were told between two readings."""
    return [each for each in _done(state, before, now) if each.what.kind == "dose"]


BROUGHT: Final = frozenset({"kh", "gh", "calcium", "magnesium", "nitrate", "phosphate"})
"""What a dose of a known salt moves by its mass alone."""


def _done(state: State, before: Measured, now: Measured) -> list[Happening]:
    return [e for e in state.events or () if e.disturbs and before.at <= e.at <= now.at]
