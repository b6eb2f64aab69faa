"""The way of several water changes: the tank before each of them, and what each makes of it."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Final

from core.advice.change_plan import rested
from core.advice.changes import Mixed, Waters, with_ammonia_of
from core.advice.livestock import kept_in
from core.advice.state import State
from core.analytes import ANALYTES

MANY: Final = 12
"""More changes, one a day, are no plan that a person carries out; our judgement."""

EVERY_DAYS: Final = 3
"""Of a routine in the place of so many: twice a week, and time to test between; our judgement."""


@dataclass(frozen=True, slots=True)
class Stop:
    """One change of several: both waters before it, and what it makes of the tank."""

    waters: Waters
    after: Mixed


def course(waters: Waters, afters: Sequence[Mixed]) -> tuple[Stop, Stop]:
    """Follow changes a day apart; the first and the last of them.

    Parameters
    ----------
    waters : Waters
        Both waters before the first.
    afters : sequence of Mixed
        What each change makes of the tank, as a plan has it; one at least.
    """
    stops = []
    for after in afters:
        stops.append(Stop(waters, with_ammonia_of(after, waters)))
        waters = rested(waters, stops[-1].after)
    return stops[0], stops[-1]


def weeks_of(count: int) -> int:
    """How long so many changes take as a routine, a week at least. [weeks]"""
    return max(1, round(count * EVERY_DAYS / 7))


@dataclass(frozen=True, slots=True)
class Unsuited:
    """An end that an animal on record does not suit; `low` and `high` are its range."""

    species: str
    analyte: str
    end: float
    low: float
    high: float


def unsuited(state: State, ends: Mapping[str, float]) -> Unsuited | None:
    """Find the animal that the end of a change suits least, and no better than the water now.

    Parameters
    ----------
    state : State
        The tank with its animals and readings.
    ends : mapping of str to float
        What each analyte ends at, canonical units. A step of the usual kit is let pass.
    """
    kept = kept_in(state.tank)
    worst: tuple[float, Unsuited] | None = None
    for analyte, end in ends.items():
        for kind in kept.kinds:
            if analyte not in kind.ranges:
                continue
            span = kind.ranges[analyte]
            past = _past(end, span.low, span.high)
            now = state.last(analyte)
            if past <= ANALYTES[analyte].resolution:
                continue
            if now is not None and past <= _past(now.value, span.low, span.high):
                continue
            by = past / max(span.high - span.low, 1e-9)
            if worst is None or by > worst[0]:
                name = kept.name_of(kind)
                worst = by, Unsuited(name, analyte, end, span.low, span.high)
    return None if worst is None else worst[1]


def _past(number: float, low: float, high: float) -> float:
    return max(low - number, number - high, 0.0)
