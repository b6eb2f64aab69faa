"""Whether poison in a tank is a greater danger than a quick change of its water."""

from __future__ import annotations

from dataclasses import replace
from datetime import timedelta
from typing import Final

from core.advice.changes import Waters
from core.advice.findings import DOSE, MUCH, OVERDOSES, TESTED_BY, Finding, find, stands
from core.advice.scheduling import steps_of
from core.advice.state import Happening, State
from core.message.model import Event
from core.water import Water, mix

POISONS: Final = frozenset({"ammonia", "nitrite", "chlorine", "total_chlorine"})
NEUTRAL: Final = 7.0
"""Under this pH ammonia is nearly all ammonium, and a change that lifts pH frees the poison."""


def poison_in(state: State) -> str | None:
    """Name the poison that is at its alarm by a fresh reading: ammonia, nitrite or chlorine."""
    fresh = {name: r for name, r in state.readings.items() if r.is_fresh(state.now)}
    for finding in find(replace(state, readings=fresh), POISONS):
        if finding.severity == "alarm" and finding.id in POISONS:
            return finding.id
    return None


def is_emergency(state: State) -> bool:
    """Whether poison, or an overdose of the last day, is a greater danger than a quick change."""
    return poison_in(state) is not None or overdosed(state)


def overdosed(state: State) -> bool:
    """Whether far too much went in within a day, and is still there as far as anybody knows.

    Where the water was tested since, it is gone once it is less than an alarm's days of steps from
    where it was before.
    """
    late = [e for e in state.events or () if state.now - ACUTE < e.at <= state.now]
    untested = stands(replace(state, events=tuple(late)), frozenset())
    if any(_is_alarm(finding) for finding in untested):
        return True
    return any(_still_far(state, event) for event in late if event.what.kind == "dose")


def told_after_test(state: State) -> bool:
    """Whether too much for a day is told to be in since before the newest test, but only after it.

    A test that was on record before may be of the water before it, whatever hour is named.
    """
    tests = [each for name in TESTED_BY if (each := state.last(name)) is not None]
    newest = max((each.order for each in tests), default=0)
    read = max((each.at for each in tests), default=None)
    return read is not None and any(
        event.what.kind == DOSE
        and event.order > newest
        and state.now - UNTESTED < event.at < read
        and any(each.id in OVERDOSES for each in find(replace(state, now=event.at), _DOSE))
        for event in state.events or ()
    )


def would_be_too_much(state: State, substance: str, grams: float) -> bool:
    """Whether so much of a substance, put in now, would be far too much for a day. [g]"""
    dosed = Happening(state.now, Event("dose", substance=substance, grams=grams))
    then = replace(state, events=(*(state.events or ()), dosed))
    return any(map(_is_alarm, find(then, frozenset({DOSE}))))


def _is_alarm(finding: Finding) -> bool:
    """Whether a finding is of so much; of a small dose that ammonia forbade it is not."""
    much = float(finding.facts.get("days", MUCH)) >= MUCH
    return finding.id in OVERDOSES and finding.severity == "alarm" and much


def _still_far(state: State, event: Happening) -> bool:
    """Whether what an overdose moved was read since, and is still far from where it was."""
    then = replace(state, now=event.at)
    found = next((f for f in find(then, frozenset({DOSE})) if f.id == "overdose"), None)
    if found is None or not _is_alarm(found):
        return False
    for analyte, step in steps_of(state.tank).items():
        now, before = state.last(analyte), state.past.between(analyte, event.at - ACUTE, event.at)
        if analyte not in found.facts or now is None or now.at <= event.at:
            continue
        start = before[-1].value if before else now.value - float(found.facts[analyte])
        if now.value - start >= MUCH * step:
            return True
    return False


UNTESTED: Final = timedelta(days=3)
"""So long what was told after a test waits for the next one: then the water has moved on; ours."""

_DOSE: Final = frozenset({DOSE})

ACUTE: Final = timedelta(days=1)
"""After so long animals have met what went in, and a quick way back is a second shock; common
practice."""


def holds_chlorine(state: State) -> bool:
    """Whether chlorine was read in the tank lately, which only a dechlorinator takes out."""
    chlorine = frozenset({"chlorine", "total_chlorine"})
    return any(finding.id == "chlorine" for finding in find(state, chlorine))


def is_acid(waters: Waters) -> bool:
    """Whether the tank's pH is under 7, where what lifts it frees ammonia."""
    return waters.tank.ph is not None and waters.tank.ph < NEUTRAL


def cut_to_kh(waters: Waters) -> tuple[Waters, float]:
    """Cut the new water with pure water down to the tank's KH.

    Returns
    -------
    tuple of Waters and float
        The waters, and the share of pure water in the new one; 0 where it stays as it is, since
        it has no more KH than the tank, or the tank is salty.
    """
    tank, source = waters.tank, waters.source
    if waters.is_salty or source.kh <= tank.water.kh or source.kh <= 0.0:
        return waters, 0.0
    share = 1.0 - tank.water.kh / source.kh
    cut = mix([(source, 1.0 - share), (Water(source.temperature), share)])
    return replace(waters, source=cut, source_n=waters.source_n * (1.0 - share)), share
