"""How far water changes between two readings may have moved a value, whatever went in."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from core.advice.state import Happening, Measured, State
from core.message.waters import kind_of

FRESH: Final = {
    "kh": (0.0, 25.0),
    "gh": (0.0, 35.0),
    "temperature": (10.0, 40.0),
    "salinity": (0.0, 1.0),
    "calcium": (0.0, 200.0),
    "magnesium": (0.0, 80.0),
    "nitrate": (0.0, 50.0),
    "phosphate": (0.0, 5.0),
    "conductivity": (0.0, 2500.0),
}
SALT: Final = {
    "kh": (5.0, 14.0),
    "gh": (250.0, 450.0),
    "temperature": (10.0, 40.0),
    "salinity": (30.0, 40.0),
    "calcium": (300.0, 550.0),
    "magnesium": (1000.0, 1600.0),
    "nitrate": (0.0, 50.0),
    "phosphate": (0.0, 5.0),
    "conductivity": (46_000.0, 60_000.0),
}
"""The least and most that water from a tap or a well, and newly mixed sea water, may hold; nitrate
by the limit for drinking water, the rest common practice, no source. [canonical unit]"""


def reach(
    state: State, before: Measured, changes: Sequence[Happening]
) -> tuple[float, float] | None:
    """Between which ends a value may lie after water changes that were made since a reading.

    Parameters
    ----------
    state : State
        The tank with its own source water.
    before : Measured
        The reading that was taken before the changes. [canonical unit]
    changes : sequence of Happening
        The changes in order.

    Returns
    -------
    tuple of float or None
        The lowest and the highest [canonical unit]; None where a share is unknown or the value is
        not mixed by shares, as pH.
    """
    low, high = before.low, before.high
    for change in changes:
        share, span = _share(state, change), _span(state, before.analyte, change)
        if share is None or span is None:
            return None
        low = (1.0 - share) * low + share * span[0]
        high = (1.0 - share) * high + share * span[1]
    return min(low, before.low), max(high, before.high)


def _share(state: State, change: Happening) -> float | None:
    share, litres = change.what.percent, change.what.litres
    if share is None and litres and state.tank.volume_l:
        share = 100.0 * litres / state.tank.volume_l
    return None if share is None else min(max(share / 100.0, 0.0), 1.0)


def _span(state: State, analyte: str, change: Happening) -> tuple[float, float] | None:
    """What the new water may hold of an analyte: as its source was read, else at the utmost."""
    named = (change.what.substance or "").casefold()
    source = state.source.get(analyte)
    if source is not None and not named and not source.is_limit and analyte != "temperature":
        return min(source.low, source.value), max(source.high, source.value)
    kind = kind_of(named) if named else None
    fresh, salt = FRESH.get(analyte), SALT.get(analyte)
    if fresh is None or salt is None:
        return None
    if state.tank.is_sea:
        return salt if kind is None else fresh
    if (named and kind is None) or state.tank.kind == "brackish":
        return min(fresh[0], salt[0]), max(fresh[1], salt[1])
    return fresh
