"""What only shows over time: a tank that was neglected, a new one, trends, drift, steadiness."""

from __future__ import annotations

import math
from collections.abc import Callable
from datetime import timedelta
from statistics import median
from typing import Final

from core.advice import limits
from core.advice.change_plan import first_safe_share
from core.advice.changes import waters_of
from core.advice.findings._animals import misfits
from core.advice.findings._buffer import low_kh_limit
from core.advice.findings._model import Facts, Finding, seen, upper
from core.advice.findings._poisons import AMMONIA_SEEN, LOOKED_AFTER, limit_of_nitrate
from core.advice.livestock import kept_in
from core.advice.nobodys import is_nobodys
from core.advice.state import Measured, State, ammonia_as_n, nitrite_as_no2
from core.advice.tapped import softened
from core.advice.trends import Course, Trend, drift_from_source, kit_step
from core.advice.used_up import acid_of_nitrate
from core.errors import CoreError

PH_UNDER_SOURCE: Final = 1.0
"""So far under its source's pH a tank has used up what held it; common practice."""

KH_SPENT: Final = 1.0 / 3.0
"""Of the source's KH left: spent; common practice."""

SHARES: Final = (0.25, 0.2, 0.15, 0.1, 0.05, limits.LEAST_SHARE)
"""Of a change after neglect: a keeper measures a bucket, not a percent. The first is the most,
whatever the readings allow; common practice."""


def neglected(state: State) -> Finding | None:
    """Nitrate high, KH spent, pH far under the source's: old-tank water.

    The way back is a small change a day, each within the step limits; one large change would be
    a shock, and would turn ammonium into ammonia.
    """
    nitrate, kh = state.last("nitrate"), state.last("kh")
    limit = limit_of_nitrate(state) or limits.NITRATE_FRESH
    if nitrate is None or kh is None or kh.qualifier == ">" or state.tank.is_sea:
        return None
    if nitrate.qualifier == "<" or nitrate.value <= limit:
        return None
    if max(nitrate.age(state.now), kh.age(state.now)) > LOOKED_AFTER:
        return None
    source_kh, source_ph = state.source.get("kh"), state.source.get("ph")
    if softened(state.source) is not None:
        source_kh = None  # no water to change with
    ph = state.last("ph")
    if source_kh is not None:
        spent = kh.value <= KH_SPENT * source_kh.value
    else:
        spent = kh.value <= limits.KH_SOFT and not state.tank.soft
    acid = _acid(ph, source_ph)
    if not spent or not acid:
        return None
    facts: Facts = {"nitrate": nitrate.value, "kh": kh.value}
    if ph is not None:
        facts["ph"] = ph.value
    ammonia = state.fresh("ammonia")
    if ammonia is None:
        facts["ammonia"] = "unknown"
    elif seen(ammonia) is not None:
        facts["ammonia"] = "present"
    if source_kh is not None:
        facts["source_kh"] = source_kh.value
        if facts.get("ammonia") != "present":  # else the change itself is reckoned first
            share = safe_share(state)
            facts |= {} if share is None else {"share": share}
    return Finding("neglected", "warn", facts)


def _acid(ph: Measured | None, source: Measured | None) -> bool:
    if ph is None:
        return False
    return source.value - ph.value >= PH_UNDER_SOURCE if source is not None else ph.high < 6.8


def safe_share(state: State) -> float | None:
    """The largest round daily change that keeps every step limit, as the change planner has them.

    None where it is under the least share that is worth a bucket, or cannot be reckoned.
    """
    try:
        waters = waters_of(state, State(state.tank, state.now, state.source))
        return None if waters is None else first_safe_share(waters, SHARES)
    except CoreError:
        return None


# A new tank -----------------------------------------------------------------------------------

NEW: Final = timedelta(days=60)
"""A tank younger than this may still be cycling; common practice."""


def cycling(state: State) -> Finding | None:
    """Which stage a new tank's filter is at, from ammonia and nitrite over time."""
    ammonia, nitrite = _as_judged(state, "ammonia"), _as_judged(state, "nitrite")
    if not (ammonia or nitrite) or not _is_new(state, ammonia, nitrite):
        return None
    ammonia_now = bool(ammonia) and ammonia[-1] >= AMMONIA_SEEN
    nitrite_now = bool(nitrite) and nitrite[-1] >= limits.NITRITE_WARN
    nitrite_ever = any(value >= limits.NITRITE_WARN for value in nitrite)
    animals = "yes" if kept_in(state.tank).kinds or state.tank.stock else "no"
    animals = "none" if is_nobodys(state) else animals
    if nitrite_now:
        return Finding("cycling_nitrite", "note", {"stage": 2.0, "animals": animals})
    if ammonia_now:
        facts: Facts = {"stage": 1.0, "animals": animals}
        return Finding("cycling_ammonia", "note", facts if nitrite else facts | _UNTESTED)
    if nitrite_ever and ammonia and _twice_clear(ammonia, nitrite):
        return Finding("cycling_done", "note", {"stage": 3.0, "animals": animals})
    return None


_UNTESTED: Final[Facts] = {"nitrite": "untested"}


def _as_judged(state: State, analyte: str) -> list[float]:
    """Readings of the last weeks in order, as they are judged; 0 for what the kit cannot see."""
    kept = state.past.between(analyte, state.now - NEW, state.now)
    convert = ammonia_as_n if analyte == "ammonia" else nitrite_as_no2
    return [convert(upper(r), r.basis) if seen(r) is not None else 0.0 for r in kept]


def _twice_clear(ammonia: list[float], nitrite: list[float]) -> bool:
    clear_ammonia = len(ammonia) >= 2 and max(ammonia[-2:]) < AMMONIA_SEEN
    return clear_ammonia and len(nitrite) >= 2 and max(nitrite[-2:]) < limits.NITRITE_WARN


def _is_new(state: State, ammonia: list[float], nitrite: list[float]) -> bool:
    """Whether the tank is young: by its date, else by a peak in records that begin lately."""
    if state.began is not None:
        return timedelta() <= state.now - state.began <= NEW
    first = state.past.first
    peak = max([*ammonia, 0.0]) >= AMMONIA_SEEN or max([*nitrite, 0.0]) >= limits.NITRITE_WARN
    return first is not None and peak and state.now - first <= NEW


# Trends ---------------------------------------------------------------------------------------

SOON: Final = 7.0
AHEAD: Final = 30.0
"""Days to a limit within which a trend is warned of, and told at all; common practice."""


def heading(analyte: str) -> Callable[[State], Finding | None]:
    """Make the rule that tells when an analyte on the move will reach a limit."""

    def judge(state: State) -> Finding | None:
        reading = state.last(analyte)
        if reading is None or analyte not in state.history:
            return None
        course = Course(state, analyte)
        return _to_limit(state, course.since_disturbed(sure=True), "heading") or _to_limit(
            state, course.season(sure=True), "drifting"
        )

    return judge


def _to_limit(state: State, found: Trend | None, id_: str) -> Finding | None:
    if found is None or not found.is_sure:
        return None
    limit = limit_ahead(state, found.analyte, rising=found.per_day > 0.0)
    days = None if limit is None else found.days_to(limit)
    if limit is None or days is None or days[0] > AHEAD:
        return None
    facts: Facts = {
        "analyte": found.analyte,
        "per_day": found.per_day,
        "slowest": min(found.low, found.high, key=abs),
        "fastest": max(found.low, found.high, key=abs),
        "limit": limit,
        "days": days[0],
        "soonest": days[1],
        "count": float(found.count),
    }
    if math.isfinite(days[2]):
        facts["latest"] = days[2]
    if found.analyte == "kh" and found.per_day < 0.0:
        explained = acid_of_nitrate(state)
        facts |= {} if explained is None else {"kh_to_nitrate_per_day": explained}
    return Finding(id_, "warn" if days[0] <= SOON and id_ == "heading" else "note", facts)


def limit_ahead(state: State, analyte: str, *, rising: bool) -> float | None:
    """The limit that a value will meet on its way: the water's own, else that of the animals."""
    if analyte == "nitrate":
        return limit_of_nitrate(state) if rising else None
    spans = [row.ranges[analyte] for row in kept_in(state.tank).kinds if analyte in row.ranges]
    ends = [span.high if rising else span.low for span in spans]
    if analyte == "kh" and not rising:
        ends.append(low_kh_limit(state))
    if analyte == "gh" and not rising:
        ends.append(limits.GH_LOWEST)
    if not ends:
        return None
    return min(ends) if rising else max(ends)


# Drift from the source, and steadiness -----------------------------------------------------------

KH_UNDER_SOURCE: Final = 3.0
GH_OVER_SOURCE: Final = 4.0
GH_OVER_SOURCE_FACTOR: Final = 1.5
"""So far from the source is worth a word; common practice. [°dH]"""


def away_from_source(state: State) -> Finding | None:
    """KH used up, or GH piled up, beside the water that the tank is filled from.

    Water of a softener is nothing to go back to.
    """
    if softened(state.source) is not None:
        return None
    kh = drift_from_source(state, "kh")
    if kh is not None and kh.away <= -KH_UNDER_SOURCE and kh.tank < kh.source / 2.0:
        return Finding("kh_under_source", "note", {"kh": kh.tank, "source": kh.source})
    gh = drift_from_source(state, "gh")
    if gh is None or gh.source < SOURCE_WITH_SALTS:
        return None
    if gh.away < GH_OVER_SOURCE or gh.tank < GH_OVER_SOURCE_FACTOR * gh.source:
        return None
    kinds = kept_in(state.tank).kinds
    on_purpose = bool(kinds) and not any(m.analyte == "gh" for m in misfits(state))
    if on_purpose or state.tank.is_sea:
        return None
    return Finding("gh_over_source", "note", {"gh": gh.tank, "source": gh.source})


SOURCE_WITH_SALTS: Final = 2.0
"""GH under which a source is demineralised and hardened on purpose; common practice. [°dH]"""

STEADY_OF: Final = ("ph", "kh", "gh", "nitrate")
STEADY_FOR: Final = timedelta(days=21)
STEADY_READINGS: Final = 3
STEADY_LOOKED_BACK: Final = timedelta(days=365)


def steady(state: State) -> Finding | None:
    """Give the full answer to good water: it is steady and suits them, change nothing.

    Only where it is known: three readings of pH and KH over three weeks, no sure trend of any
    of the main analytes nor any that went its way by more than a step of the kit, animals on
    record that the table knows, and nothing off for them.
    """
    kept = kept_in(state.tank)
    if not kept.kinds or kept.unknown or misfits(state):
        return None
    spans = [_known_for(state, analyte) for analyte in ("ph", "kh")]
    if min(spans) < STEADY_FOR:
        return None
    moving = (Course(state, analyte).season(sure=True) for analyte in STEADY_OF)
    if any(found is not None and found.is_sure for found in moving):
        return None
    if any(_wandered(state, analyte, min(spans)) for analyte in STEADY_OF):
        return None
    weeks = math.floor(min(spans) / timedelta(days=7))
    facts: Facts = {"weeks": float(weeks), "kinds": float(len(kept.kinds))}
    for analyte in STEADY_OF:
        reading = state.last(analyte)
        if reading is not None and not reading.is_limit:
            facts[analyte] = reading.value
    return Finding("steady", "note", facts)


def _wandered(state: State, analyte: str, span: timedelta) -> bool:
    """Whether the later half of the readings lies off the earlier half: not steady."""
    told = [reading.value for reading in state.past.between(analyte, state.now - span, state.now)]
    half = len(told) // 2
    if not half:
        return False
    away = abs(median(told[-half:]) - median(told[:half]))
    return away > kit_step(analyte, state.history[analyte]) * (1.0 + 1e-9)


def _known_for(state: State, analyte: str) -> timedelta:
    """How long an analyte has been followed without a long gap, up to a fresh reading."""
    told = state.past.between(analyte, state.now - STEADY_LOOKED_BACK, state.now)
    at = [reading.at for reading in told]
    if len(at) < STEADY_READINGS or state.now - at[-1] > limits.STALE:
        return timedelta()
    first = at[-1]
    for moment in reversed(at):
        if first - moment > STEADY_FOR:
            break
        first = moment
    return at[-1] - first
