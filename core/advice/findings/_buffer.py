"""KH and GH too low, and pH that left its place."""

from __future__ import annotations

from datetime import timedelta

from core.advice import limits
from core.advice.findings._model import Facts, Finding, Severity, hours_apart
from core.advice.jumps import co2_leaves
from core.advice.livestock import kept_in
from core.advice.state import Measured, State
from core.advice.tapped import softened

SWING_OVER = timedelta(days=14)
SOFT_WATER = "soft water"
"""The group of the animals' table whose kinds come from water with hardly any KH."""

FEWEST_FOR_SWING = 6
"""Readings that show a tank's own daily swing of pH; common practice."""


def low_kh_limit(state: State) -> float:
    """KH under which pH is not held, by the kind of water. [°dH]"""
    if state.tank.is_sea:
        return limits.KH_LOW_MARINE
    return limits.KH_SOFT if is_kept_soft(state) else limits.KH_LOW_FRESH


def is_kept_soft(state: State) -> bool:
    """Whether water is soft on purpose, holds a kind that bears no more, or only soft-water fish.

    Crystal red shrimp bear no more; neons and discus are at home in it.
    """
    kinds = [row for row in kept_in(state.tank).kinds if row.is_animal]
    spans = (row.ranges.get("kh") for row in kinds)
    bears_no_more = any(span is not None and span.high < limits.KH_LOW_FRESH for span in spans)
    at_home = bool(kinds) and all(row.group == SOFT_WATER for row in kinds)
    return state.tank.soft or bears_no_more or at_home


def low_kh(state: State) -> Finding | None:
    """Buffer too thin to hold pH, by the kind of water."""
    kh = state.last("kh")
    if kh is None or kh.qualifier == ">":
        return None
    limit = low_kh_limit(state)
    if kh.value >= limit:
        return None
    severity: Severity = (
        "alarm" if kh.value < limits.KH_SOFT and not is_kept_soft(state) else "warn"
    )
    facts: Facts = {"kh": kh.value, "limit": limit}
    source = state.source.get("kh")
    fit = source is not None and source.low >= limit and softened(state.source) is None
    if source is not None and fit and not state.tank.is_sea:
        facts["source_kh"] = source.value  # its own water brings it back, and takes nitrate away
    return Finding("low_kh", severity, facts)


def ph_extreme(state: State) -> Finding | None:
    """A pH that kills most fish, if it is true: too low or too high, by a fresh reading."""
    reading = state.fresh("ph")
    if reading is None:
        return None
    ranges = [row.ranges["ph"].low for row in kept_in(state.tank).kinds if "ph" in row.ranges]
    acid = state.tank.soft or any(low < limits.PH_DEADLY_LOW for low in ranges)
    low = limits.PH_BLACKWATER if acid else limits.PH_DEADLY_LOW
    if low <= reading.value <= limits.PH_DEADLY_HIGH:
        return None
    limit = low if reading.value < low else limits.PH_DEADLY_HIGH
    return Finding("ph_extreme", "alarm", {"ph": reading.value, "limit": limit})


def high_ph(state: State) -> Finding | None:
    """A pH over what fish of fresh water bear for long, where no animal of it is known."""
    reading = state.fresh("ph")
    if reading is None or state.tank.is_sea or kept_in(state.tank).kinds:
        return None
    if not limits.PH_HIGH < reading.value <= limits.PH_DEADLY_HIGH:
        return None
    return Finding("high_ph", "warn", {"ph": reading.value, "limit": limits.PH_HIGH})


def low_ph(state: State) -> Finding | None:
    """A pH under what most fish of fresh water bear for long, where no animal of it is known.

    Where water is soft on purpose it may be so.
    """
    reading = state.fresh("ph")
    if reading is None or state.tank.is_sea or state.tank.soft or kept_in(state.tank).kinds:
        return None
    if not limits.PH_DEADLY_LOW <= reading.value < limits.PH_LOW:
        return None
    return Finding("low_ph", "warn", {"ph": reading.value, "limit": limits.PH_LOW})


def low_gh(state: State) -> Finding | None:
    """Water without minerals, which suits no animal."""
    gh = state.last("gh")
    if gh is None or gh.qualifier == ">" or gh.value >= limits.GH_LOWEST:
        return None
    return Finding("low_gh", "warn", {"gh": gh.value, "limit": limits.GH_LOWEST})


def ph_moved(state: State) -> Finding | None:
    """pH that left where it was, compared only with a reading of the same hour.

    Where the earlier reading is of another hour the daily swing may be all there is to it, and
    the finding says so. A pond, a reef or a tank with carbon dioxide is held against its own
    swing, once that is known.
    """
    now = state.last("ph")
    if now is None:
        return None
    swing = own_swing(state)
    if swing is not None:
        return _outside(now, swing)
    past = [p for p in state.earlier if now.at - p.at <= limits.STALE and now.at > p.at]
    same_hour = [p for p in past if hours_apart(now, p) <= limits.SAME_HOUR.total_seconds()]
    for then in same_hour[:1] or past[:1]:
        change = now.value - then.value
        if abs(change) < limits.PH_MOVED - 1e-9 or (change > 0.0 and co2_leaves(state)):
            return None
        facts = {"ph": now.value, "was": then.value, "change": change}
        if same_hour:
            return Finding("ph_moved", "warn", facts)
        return Finding("ph_moved_other_hour", "note", facts)
    return None


def own_swing(state: State) -> tuple[float, float] | None:
    """The lowest and highest pH of the last two weeks, of a tank that swings by nature."""
    swings = state.injected or state.tank.kind in {"pond", "marine"}
    now = state.last("ph")
    if not swings or now is None:
        return None
    told = state.past.between("ph", now.at - SWING_OVER, now.at)
    past = [reading.value for reading in told if reading.at < now.at and not reading.is_limit]
    return (min(past), max(past)) if len(past) >= FEWEST_FOR_SWING else None


def _outside(now: Measured, swing: tuple[float, float]) -> Finding | None:
    low, high = swing
    was = high if now.value > high else low
    change = now.value - was
    if low <= now.value <= high or abs(change) < limits.PH_MOVED - 1e-9:
        return None
    return Finding("ph_moved", "warn", {"ph": now.value, "was": was, "change": change})
