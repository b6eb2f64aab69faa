"""A marine tank against the sea: its calcium and magnesium, and its water where nobody is known."""

from __future__ import annotations

from collections.abc import Callable
from typing import Final

from core.advice import limits
from core.advice.findings._model import Facts, Finding, Severity
from core.advice.livestock import kept_in
from core.advice.state import State
from core.water import substance

LOW_BY: Final = 0.12
HIGH_BY: Final = 0.2
"""Shares that no reef kit mistakes and corals feel; a little more than the sea holds is usual and
does no harm. Common practice, no source."""

OF_SEA_WATER: Final = 35.0
"""Salinity taken where none was measured. [g/kg]"""


def ion(analyte: str) -> Callable[[State], Finding | None]:
    """Make the rule for one ion of the sea, "calcium" or "magnesium"."""
    per_gram = substance("sea salt").milligrams_per_gram(analyte)

    def judge(state: State) -> Finding | None:
        reading = state.last(analyte)
        if reading is None or not state.tank.is_sea or reading.is_limit:
            return None
        natural = per_gram * (state.salinity or OF_SEA_WATER)
        low, high = natural * (1.0 - LOW_BY), natural * (1.0 + HIGH_BY)
        if low <= reading.value <= high:
            return None
        side = "sea_ion_low" if reading.value < low else "sea_ion_high"
        return Finding(
            side, "warn", {"analyte": analyte, "value": reading.value, "natural": natural}
        )

    return judge


def high_kh(state: State) -> Finding | None:
    """More buffer than a sea holds: lime falls out of it."""
    kh = state.last("kh")
    if kh is None or not state.tank.is_sea or kh.qualifier == "<":
        return None
    if kh.value <= limits.KH_HIGH_MARINE:
        return None
    return Finding("sea_kh_high", "warn", {"kh": kh.value, "limit": limits.KH_HIGH_MARINE})


WARM_SEA: Final = {"salinity": (32.0, 37.0), "temperature": (22.0, 29.0), "ph": (7.6, 8.6)}
"""What most animals of warm seas bear, corals among them. The sea's mean is 35 g/kg (Boyd, "Typical
chemical characteristics of full-strength seawater"); the margins, the warmth and pH are common
practice, no source. [canonical unit]"""

LOWEST_FISH_ONLY: Final = 28.0
"""Fish alone are kept in thinner sea water as well; common practice, no source. [g/kg]"""


def salt_in_fresh(state: State) -> Finding | None:
    """More salt than fresh water has or is treated with, in a tank that is down as fresh.

    Animals that the table knows are judged by their own ranges.
    """
    reading = state.fresh("salinity")
    if reading is None or state.tank.kind not in FRESH or kept_in(state.tank).kinds:
        return None
    if reading.qualifier == "<" or reading.value <= limits.SALT_ENOUGH:
        return None
    facts: Facts = {"analyte": "salinity", "value": reading.value, "high": limits.SALT_ENOUGH}
    return Finding("salt_in_fresh", "warn", facts)


FRESH: Final = frozenset({"fresh", "pond"})
"""Kinds of tanks whose water is fresh."""

DEADLY: Final = {"salinity": 5.0, "temperature": 4.0, "ph": 0.6}
"""So far outside is an emergency for whatever lives there; common practice. [canonical unit]"""


def water(analyte: str) -> Callable[[State], Finding | None]:
    """Make the rule for "salinity", "temperature" or "ph" of a sea of which no animal is known.

    Animals that the table knows are judged by their own ranges. A limit such as ``>`` is judged
    by its number.
    """

    def judge(state: State) -> Finding | None:
        reading = state.fresh(analyte)
        if reading is None or not state.tank.is_sea or kept_in(state.tank).kinds:
            return None
        low, high = WARM_SEA[analyte]
        if analyte == "salinity" and state.tank.setup == "fish_only":
            low = LOWEST_FISH_ONLY
        off = max(low - reading.value, reading.value - high)
        if off <= 0.0:
            return None
        severity: Severity = "alarm" if off >= DEADLY[analyte] else "warn"
        facts: Facts = {"analyte": analyte, "value": reading.value, "low": low, "high": high}
        return Finding("unlike_the_sea", severity, facts)

    return judge
