"""What readings mean: a table of rules, each a pure function of the state of a tank.

A rule gives at most one finding. `find` runs them all, worst first; the chat words what it
shows and keeps the rest under "more".
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from typing import Final, Literal

from core.advice import limits
from core.advice.state import (
    Measured,
    State,
    ammonia_as_n,
    nitrite_as_no2,
)
from core.water.ammonia import acute_criterion, chronic_criterion, un_ionised_fraction

Severity = Literal["alarm", "warn", "note"]
RANK: Final[Mapping[Severity, int]] = {"alarm": 0, "warn": 1, "note": 2}

NIGHT = frozenset({22, 23, 0, 1, 2, 3, 4, 5, 6})
"""Local hours in which nothing grows; common practice."""


@dataclass(frozen=True, slots=True)
class Finding:
    """Something that a reading means: which rule says it, how bad it is, and its numbers."""

    id: str
    severity: Severity
    facts: Mapping[str, float | str] = field(default_factory=dict)


Rule = Callable[[State], Finding | None]


def find(state: State, told: frozenset[str]) -> list[Finding]:
    """Say what the state of a tank means, worst first.

    Parameters
    ----------
    state : State
        The tank and its newest readings.
    told : frozenset of str
        The analytes just told: a rule speaks when one that it needs is among them.
    """
    found = (rule(state) for needs, rule in RULES if needs & told)
    return sorted((f for f in found if f is not None), key=lambda f: RANK[f.severity])


def ammonia(state: State) -> Finding | None:
    """Poisonous ammonia, and ammonium over the EPA 2013 criteria (fresh water).

    Un-ionised share by Emerson et al. 1975, with salinity by Clegg & Whitfield 1995. A result
    under the kit's scale ("<") is no finding: the kit cannot see it.
    """
    total = state.last("ammonia")
    if total is None or total.qualifier == "<" or total.value == 0.0:
        return None
    total_n = ammonia_as_n(_upper(total), total.basis)
    ph = state.fresh("ph")
    if ph is None:
        return Finding("ammonia_without_ph", "warn", {"total_n": total_n})
    known = state.fresh("temperature")
    temperature = _within(known.value if known else limits.WARMEST_ASSUMED, 0.0, 50.0)
    acidity = _within(ph.value, 2.0, 12.0)
    nh3_n = total_n * un_ionised_fraction(acidity, temperature, _within(state.salinity, 0.0, 60.0))
    facts: dict[str, float | str] = {"total_n": total_n, "nh3_n": nh3_n, "ph": ph.value}
    facts["temperature" if known else "temperature_assumed"] = temperature
    chronic = acute = float("inf")
    if not state.tank.is_sea:
        chronic = chronic_criterion(acidity, temperature)
        acute = acute_criterion(acidity, temperature)
        facts |= {"chronic_n": chronic, "acute_n": acute}
    if nh3_n >= limits.NH3_ALARM or total_n > acute:
        return Finding("ammonia", "alarm", facts)
    if nh3_n > limits.NH3_WARN or total_n > chronic:
        return Finding("ammonia", "warn", facts)
    return None


def nitrite(state: State) -> Finding | None:
    """Nitrite against chloride; in the sea a sign of cycling, not a poison at kit levels."""
    reading = state.last("nitrite")
    if reading is None or reading.qualifier == "<":
        return None
    no2 = nitrite_as_no2(_upper(reading), reading.basis)
    facts: dict[str, float | str] = {"nitrite": no2}
    if no2 < limits.NITRITE_WARN:
        return None
    if state.tank.is_sea or (state.tank.kind == "brackish" and state.salinity > 5.0):
        return Finding("nitrite_in_salt_water", "note", facts)
    chloride = state.last("chloride")
    if chloride is not None and chloride.low >= limits.CHLORIDE_PER_NITRITE * no2:
        return Finding("nitrite_with_chloride", "warn", facts | {"chloride": chloride.low})
    return Finding("nitrite", "alarm" if no2 >= limits.NITRITE_ALARM else "warn", facts)


def nitrate(state: State) -> Finding | None:
    """Nitrate over what harms sensitive fresh-water animals in the long run."""
    reading = state.last("nitrate")
    if reading is None or reading.qualifier == "<" or state.tank.is_sea:
        return None
    if reading.value <= limits.NITRATE_FRESH:
        return None
    return Finding("nitrate", "warn", {"nitrate": reading.value, "limit": limits.NITRATE_FRESH})


def low_kh(state: State) -> Finding | None:
    """Buffer too thin to hold pH, by the kind of water."""
    kh = state.last("kh")
    if kh is None or kh.qualifier == ">":
        return None
    if state.tank.is_sea:
        limit = limits.KH_LOW_MARINE
    else:
        limit = limits.KH_SOFT if state.tank.soft else limits.KH_LOW_FRESH
    if kh.value >= limit:
        return None
    severity: Severity = "alarm" if kh.value < limits.KH_SOFT and not state.tank.soft else "warn"
    return Finding("low_kh", severity, {"kh": kh.value, "limit": limit})


def low_gh(state: State) -> Finding | None:
    """Water without minerals, which suits no animal."""
    gh = state.last("gh")
    if gh is None or gh.qualifier == ">" or gh.value >= limits.GH_LOWEST:
        return None
    return Finding("low_gh", "warn", {"gh": gh.value, "limit": limits.GH_LOWEST})


def ph_moved(state: State) -> Finding | None:
    """pH that left where it was, compared only with a reading of the same hour.

    Where the earlier reading is of another hour the daily swing may be all there is to it, and
    the finding says so.
    """
    now = state.last("ph")
    if now is None:
        return None
    past = [p for p in state.earlier if now.at - p.at <= limits.STALE and now.at > p.at]
    same_hour = [p for p in past if _hours_apart(now, p) <= limits.SAME_HOUR.total_seconds()]
    for then in same_hour[:1] or past[:1]:
        change = now.value - then.value
        if abs(change) < limits.PH_MOVED - 1e-9:
            return None
        facts = {"ph": now.value, "was": then.value, "change": change}
        if same_hour:
            return Finding("ph_moved", "warn", facts)
        return Finding("ph_moved_other_hour", "note", facts)
    return None


def co2_span(ph: Measured, kh: Measured) -> tuple[float, float]:
    """Carbon dioxide that a pH and a KH imply, from the least to the most the kits allow. [mg/L]

    The rule ``3 · KH · 10^(7 − pH)`` is common practice: low by 4 to 12 % at 25 °C, which is far
    within what the kits leave open.
    """
    least = 3.0 * kh.low * 10.0 ** (7.0 - ph.high)
    most = 3.0 * kh.high * 10.0 ** (7.0 - ph.low)
    return least, most


def contradiction(state: State) -> Finding | None:
    """A pH and a KH that cannot both be true of this water, whatever the kits' doubt."""
    kh, ph = state.fresh("kh"), state.fresh("ph")
    if kh is None or ph is None or kh.is_limit or ph.is_limit or state.tank.is_sea:
        return None
    if abs(kh.at - ph.at) > limits.SAME_HOUR:
        return None
    facts: dict[str, float | str] = {"ph": ph.value, "kh": kh.value}
    if not 4.0 <= ph.value <= 10.5:
        return Finding("contradiction", "alarm", facts)
    least, most = co2_span(ph, kh)
    if least > limits.CO2_CONTRADICTION:
        return Finding("contradiction", "warn", facts | {"co2_mg_l": least})
    if most < limits.CO2_TOO_LITTLE and ph.at.hour in NIGHT:
        return Finding("contradiction_low", "warn", facts | {"co2_mg_l": most})
    return None


def oxygen(state: State) -> Finding | None:
    """Too little dissolved oxygen."""
    reading = state.last("oxygen")
    if reading is None or reading.value >= limits.OXYGEN_WARN:
        return None
    severity: Severity = "alarm" if reading.value < limits.OXYGEN_ALARM else "warn"
    return Finding("low_oxygen", severity, {"oxygen": reading.value})


def chlorine(state: State) -> Finding | None:
    """Chlorine or chloramine left in the water."""
    for analyte in ("total_chlorine", "chlorine"):
        reading = state.last(analyte)
        if (
            reading is not None
            and reading.qualifier != "<"
            and reading.value > (limits.CHLORINE_WARN)
        ):
            return Finding("chlorine", "alarm", {"chlorine": reading.value})
    return None


RULES: Final[tuple[tuple[frozenset[str], Rule], ...]] = (
    (frozenset({"ammonia", "ph", "temperature"}), ammonia),
    (frozenset({"chlorine", "total_chlorine"}), chlorine),
    (frozenset({"oxygen"}), oxygen),
    (frozenset({"nitrite", "chloride"}), nitrite),
    (frozenset({"kh", "ph"}), contradiction),
    (frozenset({"kh"}), low_kh),
    (frozenset({"ph"}), ph_moved),
    (frozenset({"nitrate"}), nitrate),
    (frozenset({"gh"}), low_gh),
)
"""Each rule with the analytes that wake it; among equals the earlier one is the worse."""


def _upper(reading: Measured) -> float:
    """The end of a colour step that counts for a poison: the upper one, as far as it is said."""
    return reading.high if reading.high != float("inf") else reading.value


def _within(number: float, low: float, high: float) -> float:
    return min(max(number, low), high)


def _hours_apart(one: Measured, other: Measured) -> float:
    """Seconds between two times of day, the short way round the clock."""
    day = 86_400.0
    apart = abs((one.at - other.at).total_seconds()) % day
    return min(apart, day - apart)
