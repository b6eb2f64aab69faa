"""What was put in of late and not tested since: old readings say nothing of the water after it."""

from __future__ import annotations

from dataclasses import replace
from typing import Final

from core.advice.alarm_words import named
from core.advice.findings._after_overdose import LOOKED_BACK, newest_test
from core.advice.findings._model import CHANGE, DOSE, RANK, Finding, Severity
from core.advice.findings._nutrients import is_much, level
from core.advice.findings._rules import find
from core.advice.iron_salts import FORMS
from core.advice.state import State
from core.water import SUBSTANCES

NUTRIENT: Final = "nutrient_overdose"

OVERDOSES: Final = frozenset({"overdose", NUTRIENT})
"""Too much of something that is known."""

DEEDS: Final = frozenset(
    {
        "overdose",
        NUTRIENT,
        "large_change",
        "acid_dosed",
        "caustic_dosed",
        "medicine_dosed",
        "tap_in_sea",
        "pure_in",
    }
)
"""Deeds whose harm goes on until the water was tested."""

SAID_OF_POTASSIUM: Final = frozenset({"potassium_sum", "potassium_high", "potassium_with_mussels"})
"""What the dose itself tells, with how much it brought."""


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
    known = {finding.facts.get("analyte") for finding in late}
    said = SAID_OF_POTASSIUM if "potassium" in known else frozenset[str]()
    kept = [each for each in found if each.id != "steady" and each.id not in said]
    return sorted([*late, *kept], key=lambda finding: RANK[finding.severity])


def _untested(state: State) -> list[Finding]:
    newest = newest_test(state)
    found: dict[tuple[str, str], Finding] = {}
    for event in state.events or ():
        if not event.at <= state.now < event.at + LOOKED_BACK:
            continue
        if event.what.kind not in {DOSE, CHANGE}:
            continue
        tested = newest is not None and newest > event.at
        for finding in find(replace(state, now=event.at), frozenset({event.what.kind})):
            if finding.id not in DEEDS or finding.severity == "note":
                continue
            key = (finding.id, str(finding.facts.get("analyte", "")))
            if finding.id == NUTRIENT:
                if (still := _still_there(finding, state)) is not None:
                    found[key] = still
            elif not tested:
                found[key] = finding
    return list(found.values())


def _still_there(finding: Finding, state: State) -> Finding | None:
    """What was put in too much of, as it is by now: tested since, or taken out by changes."""
    analyte = str(finding.facts["analyte"])
    if analyte == "iron":
        return finding
    there = level(state, analyte)
    if there <= float(finding.facts.get("limit", 0.0)):
        return None
    severity: Severity = (
        "alarm" if finding.severity == "alarm" and is_much(finding, there) else "warn"
    )
    return Finding(finding.id, severity, {**finding.facts, "total": there})


def unknown_in(state: State) -> str | None:
    """Name the newest thing put in and not tested after of which nobody knows what it moves."""
    newest = newest_test(state)
    for event in sorted(state.events or (), key=lambda each: each.at, reverse=True):
        late = event.at <= state.now < event.at + LOOKED_BACK
        if event.what.kind != DOSE or not late or (newest is not None and newest > event.at):
            continue
        name = event.what.substance or ""
        known = name in SUBSTANCES or name in FORMS
        if name and not known and "dechlorinated" not in named(name).get("deed", ()):
            return name
    return None
