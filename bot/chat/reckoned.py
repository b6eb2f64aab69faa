"""``what should kh be now``, ``how much did that raise it``: reckoned from what is on record."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

from bot.chat import after_dose, doubts
from bot.chat.model import Reply
from bot.chat.state import state_of
from bot.chat.supply import Supply
from bot.chat.turn import Turn
from bot.chat.waters import Waters
from bot.chat.words import past as past_words
from bot.chat.words import reckoned as words
from bot.store.tanks import StoredTank
from core.advice.reckoned import RECKONED, Deed, reckoned
from core.advice.scheduling import per_gram
from core.advice.since import share_of
from core.advice.state import Happening, Measured, State
from core.message.model import Event, Parsed
from core.message.now_asked import now_asked
from core.message.past import asked as past_asked
from core.water.substances import SUBSTANCES

MOVING: Final = frozenset({"water_change", "dose"})
"""Deeds that move what is dissolved."""

SHOWN: Final = ("kh", "gh", "nitrate", "salinity", "calcium", "magnesium", "phosphate")
"""What is told where nothing is named."""


@dataclass(frozen=True, slots=True)
class Found:
    """What an analyte should be by now.

    Attributes
    ----------
    reading : Measured
        The last one.
    since : tuple of Happening
        What was done since, the oldest first.
    value : float or None
        None where it cannot be reckoned.
    """

    reading: Measured
    since: tuple[Happening, ...]
    value: float | None


async def answer(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """Answer what a tank should have by now; None where that is not asked."""
    stored = turn.current_tank
    told = parsed.command is not None or parsed.values or parsed.events
    if not turn.incoming.addressed or stored is None or told:
        return None
    asked = now_asked(turn.incoming.text)
    names = [tank.name for tank in turn.tanks]
    if asked is None or (asked.asks == "now" and past_asked(turn.incoming.text, names)):
        return None  # that asks for the record, where the sum stands beside it
    if asked.asks == "change":
        return await doubts.say(turn, asked.change or "", turn.now)
    if asked.asks == "rise":
        did = await after_dose.last_did(turn)
        return None if did is None else [did]
    state = await state_of(turn, stored, turn.now)
    wanted = asked.analytes or SHOWN
    found = {name: each for name in wanted if (each := await by_now(turn, stored, state, name))}
    if not found and not asked.analytes:
        return None
    moved = {name: each for name, each in found.items() if each.since}
    known = {name: each.value for name, each in moved.items() if each.value is not None}
    facts: dict[str, object] = {"tank": stored.name}
    if moved and not known:
        since = _told(turn, next(iter(moved.values())).since)
        lines = words.not_reckoned(stored.name, list(moved), since)
        if set(moved) == {"nitrate"}:
            before = moved["nitrate"].reading.value
            least = at_best(state, moved["nitrate"].since, before)
            lines += [] if least is None else [words.at_best("nitrate", before, least)]
            facts |= {} if least is None else {"before": {"nitrate": before}}
            facts |= {} if least is None else {"least": {"nitrate": least}}
        return [await turn.reply(lines, facts=facts)]
    if known:
        since = _told(turn, max((each.since for each in moved.values()), key=len))
        lines = words.estimate(stored.name, known, since)
        return [await turn.reply(lines, facts=facts | {"reckoned": known})]
    if not found:
        return None
    values = {name: each.reading.value for name, each in found.items()}
    lines = words.nothing_since(stored.name, values)
    return [await turn.reply(lines, facts=facts | {"readings": values})]


async def by_now(turn: Turn, stored: StoredTank, state: State, analyte: str) -> Found | None:
    """What an analyte should be by now; None where it was never measured."""
    reading = state.last(analyte)
    if reading is None:
        return None
    newest_first = [e for e in state.events or () if reading.at <= e.at <= state.now]
    done = sorted(
        (each for each in reversed(newest_first) if _moves(each, analyte)),
        key=lambda each: each.at,
    )
    held = await Waters.of(turn)
    deeds = [await _deed(held, stored, state, each, analyte) for each in done]
    value = reckoned(reading, deeds, stored.tank.volume_l) if done else None
    return Found(reading, tuple(done), value)


def _moves(event: Happening, analyte: str) -> bool:
    """Whether a deed may move an analyte; a dose of what is known to hold none of it does not."""
    if event.what.kind not in MOVING:
        return False
    known = event.what.kind == "dose" and event.what.substance in SUBSTANCES
    return not known or analyte not in RECKONED or per_gram(str(event.what.substance), analyte) > 0


def at_best(state: State, since: Sequence[Happening], before: float) -> float | None:
    """What is left of a value at best, with new water that has none of it. [as `before`]"""
    shares = [share_of(state, each) for each in since]
    if any(each.what.kind != "water_change" for each in since):
        return None
    for share in shares:
        if share is None or not 0.0 < share <= 1.0:
            return None
        before *= 1.0 - share
    return before


async def _deed(
    held: Waters, stored: StoredTank, state: State, event: Happening, analyte: str
) -> Deed:
    """A deed as the sum wants it."""
    what = event.what
    if what.kind == "top_up":
        return Deed()  # of how much, and how much had evaporated, nobody knows
    if what.kind == "dose":
        grams = what.grams if what.litres is None else None  # of a bucket it is no tank's
        return Deed(substance=what.substance or "", grams=grams)
    supply = await _new_water(held, stored, what)
    new = None if supply is None else supply.state.last(analyte)
    share = share_of(state, event)
    if share is not None and not 0.0 < share <= 1.0:
        share = None
    return Deed(share=share, new=None if new is None or new.is_limit else new.value)


async def _new_water(held: Waters, stored: StoredTank, change: Event) -> Supply | None:
    """The water that went in: as it was named, else the one that the tank is filled from."""
    if change.substance is not None:
        named = await held.asked(None, f"with {change.substance}", stored)
        return named if isinstance(named, Supply) else None
    source = held.default_for(stored)
    return None if source is None else await held.supply(source)


def _told(turn: Turn, since: Sequence[Happening]) -> str:
    return "; ".join(past_words.deed(e.what, e.at, turn.local_now) for e in since[-3:])
