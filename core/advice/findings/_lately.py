"""What was put in of late and not tested since: old readings say nothing of the water after it."""

from __future__ import annotations

from dataclasses import replace
from datetime import timedelta
from typing import Final

from core.advice.findings._model import CHANGE, DOSE, RANK, Finding
from core.advice.findings._rules import find
from core.advice.state import State

LOOKED_BACK: Final = timedelta(days=3)
"""An untested deed is spoken of so long; common practice."""

DEEDS: Final = frozenset(
    {
        "overdose",
        "large_change",
        "acid_dosed",
        "caustic_dosed",
        "medicine_dosed",
        "tap_in_sea",
        "pure_in",
    }
)
"""Deeds whose harm goes on until the water was tested."""

TESTED_BY: Final = ("ph", "kh", "gh", "salinity", "copper")
"""A reading of one of them after a deed shows the water as it is now."""


def stands(state: State, told: frozenset[str]) -> list[Finding]:
    """Say what stands of a tank: by its readings, and by what was put in since.

    Parameters
    ----------
    state : State
        The tank, its newest readings and what was done.
    told : frozenset of str
        The analytes to speak of, as for `find`.

    Returns
    -------
    list of Finding
        Worst first. A steady tank is not said to be so after a deed that nothing was tested after.
    """
    late = _untested(state)
    found = find(state, told)
    if not late:
        return found
    kept = [finding for finding in found if finding.id != "steady"]
    return sorted([*late, *kept], key=lambda finding: RANK[finding.severity])


def _untested(state: State) -> list[Finding]:
    newest = max((r.at for name in TESTED_BY if (r := state.last(name)) is not None), default=None)
    found: dict[str, Finding] = {}
    for event in state.events or ():
        over = newest is not None and newest > event.at
        if over or not event.at <= state.now < event.at + LOOKED_BACK:
            continue
        if event.what.kind not in {DOSE, CHANGE}:
            continue
        for finding in find(replace(state, now=event.at), frozenset({event.what.kind})):
            if finding.id in DEEDS and finding.severity != "note":
                found[finding.id] = finding
    return list(found.values())
