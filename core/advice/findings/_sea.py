"""Calcium and magnesium of a marine tank against the sea's own."""

from __future__ import annotations

from collections.abc import Callable
from typing import Final

from core.advice.findings._model import Finding
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
