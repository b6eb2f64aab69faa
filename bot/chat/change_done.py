"""What is said of a change right after it was made, where it was more than the animals bear."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from datetime import timedelta
from typing import Final, Literal

from bot.chat import new_water
from bot.chat.state import state_of
from bot.chat.supply import Supply
from bot.chat.told import Told
from bot.chat.turn import Turn
from bot.chat.waters import Waters
from bot.chat.words import change_done as words
from bot.store.tanks import StoredTank
from core.advice.change_done import Overdone, is_known, overdone
from core.advice.emergencies import MOST_IN_DOUBT
from core.advice.findings import Finding, would_poison
from core.advice.since import share_of
from core.advice.state import Happening, State
from core.message.model import Event

LATELY: Final = timedelta(days=1)
"""What is longer ago has shown itself; common practice."""

TESTS: Final = frozenset({"ph", "kh", "temperature", "salinity"})
"""What was measured in the same breath tells more than a sum."""

SAID_SO: Final = frozenset({"tap_in_sea", "pure_in"})
POISONS: Final = frozenset({"ammonia", "copper", "nitrite"})
"""Findings that say what there is to say of such water, but of its poisons."""


async def lines(turn: Turn, told: Told, found: Sequence[Finding]) -> list[str]:
    """What to watch and to do after a change that went past a limit; nothing after another."""
    over = await overdone_of(turn, told, found)
    if over is not None:
        return words.overdone(told.tank.name, over)
    return await _freed(turn, told)


async def _freed(turn: Turn, told: Told) -> list[str]:
    """That ammonia was in the tank, where much water of nobody knows which pH went in."""
    changed = [event for event in told.events if event.what.kind == "water_change"]
    tested = any(reading.what.analyte in TESTS for reading in told.readings)
    if len(changed) != 1 or tested or turn.now - changed[0].at > LATELY:
        return []
    (event,) = changed
    before, supply, share = await _waters(turn, told.tank, Happening(event.at, event.what))
    ammonia = before.fresh("ammonia")
    known = supply is not None and is_known(before, supply.state)
    if known or share <= MOST_IN_DOUBT or ammonia is None or not would_poison(before):
        return []
    return words.may_free(told.tank.name, ammonia.value)


async def overdone_of(turn: Turn, told: Told, found: Sequence[Finding]) -> Overdone | None:
    """The change told of a tank that went past a limit, if it is of the last day."""
    changed = [event for event in told.events if event.what.kind == "water_change"]
    tested = any(reading.what.analyte in TESTS for reading in told.readings)
    if len(changed) != 1 or tested or turn.now - changed[0].at > LATELY:
        return None
    (event,) = changed
    before, supply, share = await _waters(turn, told.tank, Happening(event.at, event.what))
    over = None if supply is None else overdone(before, supply.state, share)
    said = any(each.id in SAID_SO for each in found)
    return None if over is None or (said and not over.broken & POISONS) else over


async def judged(
    turn: Turn, stored: StoredTank, change: Happening
) -> Overdone | Literal["within"] | None:
    """A change on record: past a limit, within all of them, or None where too little is known."""
    before, supply, share = await _waters(turn, stored, change)
    if supply is None:
        return None
    over = overdone(before, supply.state, share)
    if over is not None:
        return over
    return "within" if is_known(before, supply.state) else None


async def _waters(
    turn: Turn, stored: StoredTank, change: Happening
) -> tuple[State, Supply | None, float]:
    """The tank as it was before a change, the water that went in, if known, and its share."""
    before = _without(await state_of(turn, stored, change.at), change.what)
    share = share_of(before, change)
    supply = await _new_water(turn, stored, change.what, before) if share else None
    return before, supply, min(share or 0.0, 1.0)


def _without(state: State, change: Event) -> State:
    """A tank as it was before a change of this moment."""
    told = (change.kind, change.percent, change.litres, change.substance)
    others = (
        e
        for e in state.events or ()
        if e.at != state.now
        or told != (e.what.kind, e.what.percent, e.what.litres, e.what.substance)
    )
    return replace(state, events=tuple(others))


async def _new_water(turn: Turn, stored: StoredTank, change: Event, before: State) -> Supply | None:
    """The water that went in: as it was named, else the one that the tank is filled from."""
    held = (await Waters.of(turn)).as_warm_as(before.last("temperature"))
    if change.substance is not None:
        named = await held.asked(None, f"with {change.substance}", stored)
        return new_water.stricter(before, named) if isinstance(named, Supply) else None
    source = held.default_for(stored)
    return None if source is None else new_water.stricter(before, await held.supply(source))
