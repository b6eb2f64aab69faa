"""What was done since a tank was tested, and made its readings tell of another water."""

from __future__ import annotations

from collections.abc import Collection
from datetime import timedelta
from typing import Final

from core.advice.recent_change import OUTDATES
from core.advice.state import Happening, Measured, State
from core.message.model import Event
from core.water.substances import SUBSTANCES

CROWD: Final = 10
"""So many new animals load the filter of any tank; common practice, no source."""


def since(state: State, readings: Collection[Measured]) -> list[Happening]:
    """What was done since the newest of some readings that none of them can show, oldest first.

    A change of a quarter and more or of untold share, a salt or an acid, deaths, many new animals,
    a cleaned filter, and sea water in the place of fresh. Common practice, no source.
    """
    if not readings:
        return []
    newest = max(readings, key=lambda reading: (reading.at, reading.order))
    done = [each for each in state.events or () if each.is_after(newest)]
    judged = {reading.analyte for reading in readings}
    matter = (each for each in done if _matters(each.what, state, judged))
    return sorted(matter, key=lambda each: (each.at, each.order))


LOOKED_FOR: Final = ("ammonia", "nitrite", "ph", "temperature")
"""What kills soonest, and is read first where animals died; common practice."""


def losses(state: State) -> tuple[list[Happening], list[str]]:
    """Deaths of two days, oldest first, and what of the usual causes was not read after them.

    Neither where all of these were read since.
    """
    lost = [
        each
        for each in state.events or ()
        if each.what.kind == "lost" and timedelta() <= state.now - each.at < LOST_LATELY
    ]
    lost.sort(key=lambda each: (each.at, each.order))
    if not lost:
        return [], []
    read = {name: state.last(name) for name in LOOKED_FOR}
    missing = [n for n, found in read.items() if found is None or lost[-1].is_after(found)]
    return (lost, missing) if missing else ([], [])


LOST_LATELY: Final = timedelta(days=2)
"""A cause may so long still be there; common practice."""


def _matters(what: Event, state: State, judged: set[str]) -> bool:
    if what.kind == "water_change":
        share = what.percent
        if share is None and what.litres and state.tank.volume_l:
            share = 100.0 * what.litres / state.tank.volume_l
        return share is None or share >= 100.0 * OUTDATES
    if what.kind == "dose":
        return not judged.isdisjoint(_moved_by(what.substance or ""))
    if what.kind == "added":
        return (what.count or 0) >= CROWD
    if what.kind == "top_up":
        return "sal" in (what.substance or "").casefold()
    return what.kind in {"lost", "filter"}


def _moved_by(name: str) -> set[str]:
    """What a substance that was put in may have moved, whatever it is for."""
    substance = SUBSTANCES.get(name)
    if substance is None:
        return set()
    moved = {"conductivity", "tds", "salinity", *substance.ions}
    if substance.alkalinity:
        moved |= {"kh", "ph", "ammonia"}  # a higher pH makes more of it poison
    return moved | {"gh"} if {"calcium", "magnesium"} & moved else moved
