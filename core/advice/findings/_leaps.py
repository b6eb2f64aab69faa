"""pH that fell or rose within a day by more than a day's swing: what it is, not a swing."""

from __future__ import annotations

from datetime import timedelta
from typing import Final

from core.advice import limits
from core.advice.findings._buffer import (
    FEWEST_FOR_SWING,
    SWING_OVER,
    is_kept_soft,
    low_kh_limit,
)
from core.advice.findings._model import Facts, Finding, Severity, hours_apart, seen
from core.advice.jumps import co2_leaves
from core.advice.state import Measured, State

DAY: Final = timedelta(days=1) + limits.SAME_HOUR
"""Readings so far apart are of one day and the same hour of the next."""

AN_HOUR: Final = timedelta(hours=1)


def ph_leapt(state: State) -> Finding | None:
    """pH that moved by one or more within a day, or since the reading before if that is older.

    A fall is a crash or much CO2, a rise a base.

    A pond swings so far with the sun, and so does a tank that was seen to do so before, or whose
    carbon dioxide goes off at night: there only the same hour, or what was never read, counts.
    """
    now = state.fresh("ph")
    if now is None or now.is_limit:
        return None
    past = [p for p in state.earlier if timedelta() < now.at - p.at <= limits.STALE]
    past = [p for p in past if not p.is_limit]
    told = [p for p in past if now.at - p.at <= DAY] or past[:1]
    if not told:
        return None
    highest, lowest = max(told, key=_value), min(told, key=_value)
    fell = highest.value - now.value >= _least(state, falls=True) - 1e-9
    then = highest if fell else lowest
    change = now.value - then.value
    if not fell and change < _least(state, falls=False) - 1e-9:
        return None
    if not fell and co2_leaves(state):
        return None
    if _swings(state, now, then):
        return None
    facts: Facts = {"ph": now.value, "was": then.value, "change": change}
    facts["hours"] = max(1.0, float(round((now.at - then.at) / AN_HOUR)))
    if any(then.at <= at <= now.at for at in state.disturbances):
        facts["touched"] = "yes"
    if state.injected:
        facts["injected"] = "yes"
    if seen(state.fresh("ammonia")) is not None:
        facts["ammonia"] = "present"
    if not fell:
        return Finding("ph_rose", "warn", facts)
    facts |= _buffer_of(state, now)
    crashed = now.value < limits.PH_CRASHED and not state.injected and not is_kept_soft(state)
    severity: Severity = "alarm" if crashed else "warn"
    return Finding("ph_fell", severity, facts)


def _value(reading: Measured) -> float:
    return reading.value


def _least(state: State, *, falls: bool) -> float:
    return limits.PH_LEAPT_INJECTED if falls and state.injected else limits.PH_LEAPT


def _swings(state: State, now: Measured, then: Measured) -> bool:
    """Whether a tank may swing so far by itself, or was seen to go so far before."""
    same_hour = hours_apart(now, then) <= limits.SAME_HOUR.total_seconds()
    by_day = state.tank.kind == "pond" or (state.injected and now.value > then.value)
    if by_day and not same_hour:
        return True
    told = state.past.between("ph", now.at - SWING_OVER, now.at)
    past = [reading.value for reading in told if reading.at < now.at and not reading.is_limit]
    if len(past) < FEWEST_FOR_SWING:
        return False
    if now.value < then.value:
        return min(past) <= now.value + limits.PH_RESOLUTION
    return max(past) >= now.value - limits.PH_RESOLUTION


def _buffer_of(state: State, now: Measured) -> Facts:
    """The KH that bears on a fall: read with it, or too little already before."""
    kh = state.fresh("kh")
    if kh is None or kh.qualifier == ">" or kh.at > now.at + limits.SAME_HOUR:
        return {}
    thin = kh.value < low_kh_limit(state)
    beside = now.at - kh.at <= limits.SAME_HOUR
    facts: Facts = {"kh": kh.value} if thin or (beside and not kh.is_limit) else {}
    return facts | ({"thin": "yes"} if thin else {})
