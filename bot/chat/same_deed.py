"""``bedroom too 10 l``, ``same for the cube`` right after what was told of one tank.

A tank and an amount alone may be its volume as well: which of both is asked, and a volume on record
stays until it is answered.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from typing import Any, Final

from bot.chat import readings
from bot.chat.model import Reply
from bot.chat.patience import GROUP_PATIENCE, PATIENCE
from bot.chat.tank_by_tank import apart
from bot.chat.tank_volumes import ask_volume_or_change, facts
from bot.chat.turn import Turn
from bot.chat.words import same_deed as words
from bot.store.log import Entry
from bot.store.offers import Choice
from bot.store.tanks import StoredTank
from core.message import parse
from core.message.model import Event, Parsed
from core.message.same_deed import SameDeed, as_typed, same_deed
from core.message.tank_by_tank import pieces

_WATER: Final = frozenset({"litres", "percent"})
_AMOUNTS: Final = {
    "water_change": _WATER,
    "top_up": frozenset({"litres"}),
    "dose": frozenset({"grams", "millilitres"}),
    "filter": frozenset[str](),
    "fed": frozenset[str](),
}
"""Deeds that are done in one tank after the other, and how much of each is told."""


async def answer(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """Keep the same of the tank that is named; None where nothing was just told, or more is."""
    if (both := await _in_one(turn, parsed)) is not None:
        return both
    more = parsed.values or parsed.events or parsed.question is not None
    if more or parsed.command is not None or not turn.incoming.addressed:
        return None
    names = [tank.name for tank in turn.tanks]
    said = same_deed(turn.incoming.text, names, us_gallons=turn.chat.us_gallons)
    entry = None if said is None else await _just_told(turn)
    if said is None or entry is None:
        return None
    kept = {each.tank_id for each in entry.readings} | {each.tank_id for each in entry.events}
    of = [turn.tank_by_id(each) for each in kept]
    stored = turn.tank_named(said.tank) if said.tank else of[0] if len(of) == 1 else None
    if stored is None or (said.tank is None and not entry.events):
        return None
    if entry.events:
        last = entry.events[-1]
        return await _deed(turn, said, last.what, last.tank_id, stored)
    if said.amount or stored.id in kept or len(kept) != 1:
        return None
    values = tuple(replace(each.what, tank=stored.name, at=None) for each in entry.readings)
    return await readings.keep(turn, Parsed("reading", values=values))


async def _in_one(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """``changed kitchen 50 l, bedroom 10 l``: a deed of each, told once."""
    if len(turn.tanks) < 2 or parsed.question is not None or parsed.command is not None:
        return None
    first, *others = pieces(turn.incoming.text)
    names = [tank.name for tank in turn.tanks]
    read = [same_deed(each, names, us_gallons=turn.chat.us_gallons) for each in others]
    rest = [each for each in read if each is not None and each.tank and each.amount]
    if not rest or len(rest) < len(others):
        return None
    told = parse(first, turn.context())
    if told.doubts or told.values or told.question is not None or len(told.events) != 1:
        return None
    (done,) = told.events
    in_each = {done.tank or told.tank, *(each.tank for each in rest)}
    if None in in_each or len(in_each) <= len(rest) or done.kind not in _AMOUNTS:
        return None
    if any(not each.amount.keys() <= _AMOUNTS[done.kind] for each in rest):
        return None
    done = replace(done, tank=done.tank or told.tank)
    events = [done, *(_anew(done, each.tank or "", each.amount) for each in rest)]
    if done.kind == "dose":
        return await apart(turn, [replace(told, events=(each,)) for each in events])
    return await readings.keep(turn, replace(told, tank=None, events=tuple(events)))


def _anew(done: Event, tank: str, amount: Mapping[str, float]) -> Event:
    """The same deed of another tank, with its own amount where one is told."""
    event = replace(done, tank=tank, origin=None)
    if not amount:
        return event
    told: dict[str, Any] = dict.fromkeys(_AMOUNTS[done.kind])
    return replace(event, **{**told, "spoons": None, **amount})


async def _just_told(turn: Turn) -> Entry | None:
    """The entry told right before: values, or deeds of one kind; None where it is too long ago."""
    latest = await turn.uow.offers.latest(turn.chat.id, 1)
    patience = GROUP_PATIENCE if turn.incoming.group else PATIENCE
    if not latest or latest[0].entry_id is None or turn.now - latest[0].made_at > patience:
        return None
    entry = await turn.uow.log.current(turn.chat.id, latest[0].entry_id)
    if entry is None or bool(entry.readings) == bool(entry.events):
        return None
    done = {each.what.kind for each in entry.events}
    return entry if len(done) <= 1 and done <= _AMOUNTS.keys() else None


async def _deed(
    turn: Turn, said: SameDeed, done: Event, done_in: int, stored: StoredTank
) -> list[Reply] | None:
    """The same deed of a tank, with its own amount or with the one told before."""
    own = said.amount
    if not own.keys() <= _AMOUNTS[done.kind]:
        return None
    if said.tank is not None and not own and stored.id == done_in:
        return None  # of the tank that it was told of: nothing new is said
    if not said.sure and "litres" in own:
        return [await ask_volume_or_change(turn, stored, own["litres"])]
    if not own and done.litres is not None and said.tank is not None:
        return [await _how_much(turn, stored, done)]
    event = replace(_anew(done, stored.name, own), at=None)
    return await readings.keep(turn, Parsed("event", events=(event,)))


async def _how_much(turn: Turn, stored: StoredTank, done: Event) -> Reply:
    """Litres of one tank are another share of the next: it is asked how many they were there."""
    litres, held = done.litres or 0.0, stored.tank.volume_l
    fits = held is None or litres <= held
    text = as_typed(stored.name, done.kind, litres)
    return await turn.reply(
        words.how_much(stored.name, litres, fits=fits),
        choices=[Choice(words.so_much(stored.name, litres), "say_again", "yes", {"text": text})]
        if fits
        else [],
        facts=facts(stored) | {"litres": litres},
    )
