"""Whether a tank's filter is ready for (more) animals, from its ammonia and nitrite over time."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import datetime
from typing import Final, Literal

from core.advice.findings import NEW, Finding, find
from core.advice.state import State
from core.advice.stock import COMING

POISONS: Final[Mapping[str, str]] = {
    "ammonia": "ammonia",
    "ammonia_without_ph": "ammonia",
    "nitrite": "nitrite",
    "nitrite_with_chloride": "nitrite",
}
"""Findings that speak against new animals, with what was measured."""
STAGES: Final = frozenset({"cycling_ammonia", "cycling_nitrite"})
"""Findings of a filter that is still growing."""

Verdict = Literal["poison", "cycling", "unmeasured", "unproven", "cycled", "settled"]


@dataclass(frozen=True, slots=True)
class Readiness:
    """How a filter stands; `finding` is what speaks against animals, `missing` what to measure."""

    verdict: Verdict
    finding: Finding | None = None
    missing: tuple[str, ...] = field(default=())


def poison(state: State) -> Finding | None:
    """The worst that stands against new animals by a reading that is young enough."""
    found = find(state, frozenset(POISONS.values()))
    return next(
        (f for f in found if f.id in POISONS and state.fresh(POISONS[f.id]) is not None), None
    )


def ready(state: State) -> Readiness:
    """Judge whether animals may come into a tank now.

    Two zeros prove nothing in a new tank: they are also what water reads before the filter has
    begun. Proof is a peak that came and went, or animals that live in it with both at zero
    (common practice, no source).

    Parameters
    ----------
    state : State
        The tank with its last readings, its history and its animals.

    Returns
    -------
    Readiness
        ``poison`` and ``cycling`` with their finding, ``unmeasured`` with what is missing or old,
        ``unproven`` for zeros without a peak in a tank that is new or has no animals, ``cycled``
        after the peak, ``settled`` for a tank with animals and both at zero.
    """
    if (poisonous := poison(state)) is not None:
        return Readiness("poison", poisonous)
    stages = {finding.id: finding for finding in find(state, frozenset(POISONS.values()))}
    for growing in STAGES & stages.keys():
        return Readiness("cycling", stages[growing])
    came = max((done.at for done in state.events or () if done.what.kind in COMING), default=None)
    missing = tuple(each for each in ("ammonia", "nitrite") if not _tested(state, each, came))
    if missing:
        return Readiness("unmeasured", missing=missing)
    if "cycling_done" in stages:
        return Readiness("cycled")
    young = state.began is not None and state.now - state.began <= NEW
    return Readiness("unproven" if young or not state.tank.stock else "settled")


def _tested(state: State, analyte: str, since: datetime | None) -> bool:
    """Whether a reading is young enough, and newer than the last animals that came."""
    reading = state.fresh(analyte)
    return reading is not None and (since is None or reading.at > since)
