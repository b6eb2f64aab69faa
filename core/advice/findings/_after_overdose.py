"""Nothing more goes in after too much: no finding asks for a dose while it may be there."""

from __future__ import annotations

from dataclasses import replace
from datetime import datetime, timedelta
from typing import Final

from core.advice.findings import _deeds
from core.advice.findings._model import DOSE, Facts, Finding
from core.advice.since import dosed_since
from core.advice.state import Happening, State

WAITS: Final = timedelta(days=1)
"""So long no dose is asked for after too much, whatever was read since; common practice."""

LOOKED_BACK: Final = timedelta(days=3)
"""An untested deed is spoken of so long; common practice."""

TESTED_BY: Final = ("ph", "kh", "gh", "salinity", "copper")
"""A reading of one of them after a deed shows the water as it is now."""

CALLED: Final = frozenset(
    {"overdose", "contaminated", "bleach", "chlorine", "copper", "gasping", "general"}
)
"""Calls of what went in, or of animals that suffer, after which no dose is asked for."""

_DOSES_ASKED: Final = frozenset({"heading", "drifting"})
"""Findings that ask for buffer where KH falls, beside the low KH itself."""


def without_doses(found: list[Finding], state: State) -> list[Finding]:
    """Ask for no dose where too much of something stands, as logged or as it was called out.

    A KH read before a dose that raised it says nothing of the water now: it is left out where that
    was too much, and said to be of before it else. After too much of another thing, or one that is
    on no record, it is to be read again before any buffer.
    """
    if not any(each.id == "low_kh" or _is_falling_kh(each) for each in found):
        return found
    found = _before_dose(found, state)
    overdosed = [event for event in state.events or () if _stands(event.at, state)]
    moves = [(event, _too_much(event, state)) for event in overdosed]
    told = [(event.at, "kh" in finding.facts) for event, finding in moves if finding is not None]
    open_ = CALLED & state.called.keys() - state.called_over
    called = max((state.called[each] for each in open_), default=None)
    if called is not None and _stands(called, state):
        told.append((called, False))
    if state.went_in is not None:
        told.append((state.now, False))
    if not told:
        return found
    kh = state.last("kh")
    outdated = kh is not None and any(raised and kh.at <= at for at, raised in told)
    kept = [each for each in found if not _is_falling_kh(each)]
    if outdated:
        return [each for each in kept if each.id != "low_kh"]
    return [
        Finding(each.id, each.severity, {**each.facts, "retest_first": 1.0})
        if each.id == "low_kh"
        else each
        for each in kept
    ]


def _before_dose(found: list[Finding], state: State) -> list[Finding]:
    """Say of a KH read before what raises it that it was so, and ask for no more of it."""
    kh = state.last("kh")
    since = None if kh is None else dosed_since(state, kh)
    if since is None:
        return found
    dosed: Facts = {"substance": since.facts["substance"]}
    return [
        Finding(each.id, each.severity, {**each.facts, **dosed}) if each.id == "low_kh" else each
        for each in found
        if not _is_falling_kh(each)
    ]


def newest_test(state: State) -> datetime | None:
    """When the water was read last, by what shows what went in; None where it never was."""
    return max((r.at for name in TESTED_BY if (r := state.last(name)) is not None), default=None)


def _stands(at: datetime, state: State) -> bool:
    tested = newest_test(state)
    untested = tested is None or tested <= at
    return at <= state.now < at + (LOOKED_BACK if untested else WAITS)


def _too_much(event: Happening, state: State) -> Finding | None:
    """What makes a dose too much, judged at its moment; None where nothing does."""
    if event.what.kind != DOSE:
        return None
    then = replace(state, now=event.at)
    wrong = (each for each in _deeds.wrong_thing(then) if each.severity == "alarm")
    return _deeds.overdose(then) or next(wrong, None)


def _is_falling_kh(finding: Finding) -> bool:
    return finding.id in _DOSES_ASKED and finding.facts.get("analyte") == "kh"
