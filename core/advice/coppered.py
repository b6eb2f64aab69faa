"""What of copper stands against an invertebrate: what was dosed and not tested since, or measured.

Copper kills shrimps, snails, mussels and corals at what kits hardly see (common practice); so it
stands against them until a test reads 0.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from datetime import timedelta

from core.advice.findings import Finding
from core.advice.findings._deeds import copper_before
from core.advice.findings._poisons import copper
from core.advice.livestock import Species
from core.advice.state import State
from core.tank import Stock

_AFTER = timedelta(microseconds=1)


def against(state: State, kinds: Sequence[Species]) -> Finding | None:
    """What stands against kinds of which every one is an invertebrate; None for all others."""
    if not kinds or not all(kind.is_invertebrate for kind in kinds):
        return None
    stock = (*state.tank.stock, Stock(kinds[0].name, 1))
    joined = replace(state, tank=replace(state.tank, stock=stock))
    untested = copper_before(replace(joined, now=state.now + _AFTER))
    measured = state.last("copper")
    if untested is not None or measured is None:
        return untested
    return copper(replace(joined, now=measured.at))  # however long ago: only a 0 clears it
