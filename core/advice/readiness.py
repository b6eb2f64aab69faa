"""Whether a tank's filter is ready for (more) animals, from its ammonia and nitrite over time."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import datetime, timedelta
from typing import Final, Literal

from core.advice import limits
from core.advice.findings import DEEDS, NEW, Finding, find, stands
from core.advice.state import State
from core.advice.stock import COMING

POISONS: Final[Mapping[str, str]] = {
    "ammonia": "ammonia",
    "ammonia_without_ph": "ammonia",
    "nitrite": "nitrite",
    "nitrite_with_chloride": "nitrite",
    "copper": "copper",
    "chlorine": "total_chlorine",
}
"""Findings that speak against new animals, with what was measured."""
DIED: Final = timedelta(days=3)
"""So long after a death its cause is looked for before others come; common practice."""
AMMONIA_SEEN: Final = 0.25
"""Ammonia that a kit surely sees; common practice. [mg/L]"""
STAGES: Final = frozenset({"cycling_ammonia", "cycling_nitrite"})
"""Findings of a filter that is still growing."""

Verdict = Literal["poison", "cycling", "unmeasured", "unproven", "cycled", "settled"]


@dataclass(frozen=True, slots=True)
class Readiness:
    """How a filter stands.

    `finding` is what speaks against animals, `missing` what to measure, `came` what was seen to
    come and go, though that proves nothing yet. `young` is a tank known to be new.
    """

    verdict: Verdict
    finding: Finding | None = None
    missing: tuple[str, ...] = field(default=())
    came: tuple[str, ...] = field(default=())
    young: bool = False

    @property
    def stands_first(self) -> bool:
        """Whether it goes before anything that speaks for new animals."""
        growing = self.verdict in {"unproven", "unmeasured"} and self.young
        return self.verdict == "cycling" or growing


def poison(state: State) -> Finding | None:
    """The worst that stands against new animals: a young reading, or what was put in untested."""
    found = stands(state, frozenset({*POISONS.values(), "chlorine"}))
    return next((f for f in found if f.id in DEEDS or _is_measured(f, state)), None)


def deaths(state: State) -> bool:
    """Whether animals died so lately that the cause may still be there."""
    return any(
        event.what.kind == "lost" and state.now - DIED < event.at <= state.now
        for event in state.events or ()
    )


def _is_measured(finding: Finding, state: State) -> bool:
    told = POISONS.get(finding.id)
    either = ("chlorine", "total_chlorine") if told == "total_chlorine" else (told or "",)
    return any(state.fresh(name) is not None for name in either)


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
    young = state.began is not None and state.now - state.began <= NEW
    if missing:
        young = young and "cycling_done" not in stages
        return Readiness("unmeasured", missing=missing, young=young)
    if "cycling_done" in stages:
        return Readiness("cycled")
    if not young and state.tank.stock:
        return Readiness("settled")
    after = state.now - NEW if came is None else max(came, state.now - NEW)
    gone = tuple(each for each in ("ammonia", "nitrite") if _came(state, each, after))
    return Readiness("unproven", came=gone, young=young)


def _came(state: State, analyte: str, after: datetime) -> bool:
    """Whether it was surely seen within the weeks of a new tank, before it read 0."""
    least = {"ammonia": AMMONIA_SEEN, "nitrite": limits.NITRITE_WARN}[analyte]
    return any(each.low >= least for each in state.past.between(analyte, after, state.now))


def _tested(state: State, analyte: str, since: datetime | None) -> bool:
    """Whether a reading is young enough, and newer than the last animals that came."""
    reading = state.fresh(analyte)
    return reading is not None and (since is None or reading.at > since)
