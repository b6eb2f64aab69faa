"""What went in of late, of which animals that suffer since may suffer."""

from __future__ import annotations

from datetime import timedelta
from typing import Final, NamedTuple

from core.advice.alarm_words import named
from core.advice.scheduling import steps_of
from core.advice.state import State
from core.message.model import Event

A_DAY: Final = timedelta(days=1)

SOME_DAYS: Final = timedelta(days=3)
"""So long after it a rise may still be what animals die of; our judgement."""

STEP_DOUBT: Final = 0.5
"""Half a drop of a kit. [°dH]"""


def dosed_lately(state: State) -> Event | None:
    """Give the last dose of the day before; None where none is on record.

    A dechlorinator is none: it is what helps.
    """
    late = [
        each
        for each in state.events or ()
        if each.what.kind == "dose"
        and each.what.substance
        and state.now - A_DAY < each.at <= state.now
        and "dechlorinated" not in named(each.what.substance).get("deed", ())
    ]
    newest = max(late, key=lambda each: (each.at, each.order), default=None)
    return None if newest is None else newest.what


class Rise(NamedTuple):
    """How far KH came up while doses went in, where that was faster than a day's step a day."""

    before: float
    """[°dH]"""
    now: float
    """[°dH]"""
    substance: str
    grams: float | None
    """Of it all, where each was weighed. [g]"""


def rose_by_doses(state: State) -> Rise | None:
    """Give the rise of KH over the last days' doses; None where it was slow, or of no dose."""
    late = [
        each
        for each in state.events or ()
        if each.what.kind == "dose"
        and each.what.substance
        and state.now - SOME_DAYS < each.at <= state.now
    ]
    read = state.last("kh")
    if not late or read is None:
        return None
    first = min(each.at for each in late)
    told = [*state.past.between("kh", first - SOME_DAYS, first)]
    if not told or read.at <= first:
        return None
    before = told[-1]
    days = max(1.0, (read.at - first) / A_DAY)
    step = steps_of(state.tank)["kh"]
    if read.value - before.value <= step * days + STEP_DOUBT:
        return None
    of = {each.what.substance for each in late}
    grams = [each.what.grams for each in late]
    whole = sum(each for each in grams if each is not None)
    weighed = None not in grams and len(of) == 1
    name = max(late, key=lambda each: (each.at, each.order)).what.substance or ""
    return Rise(before.value, read.value, name, whole if weighed else None)
