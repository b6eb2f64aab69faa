"""Animals that left or died, where only the records tell how many, and out of which tank.

All of a kind, a kind without its number, a kind that no tank has.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace

from bot.chat import how_many
from bot.chat.model import Reply
from bot.chat.turn import Turn
from bot.chat.words import moves as words
from bot.store.offers import Choice
from bot.store.tanks import StoredTank
from core.advice.stock import all_meant, tally
from core.message.animal_events import ALL, ALL_BUT, HALF, SOME
from core.message.model import Event

LEAVING = frozenset({"lost", "moved", "moved_out"})


async def held(turn: Turn, tank: StoredTank, event: Event) -> dict[str, int]:
    """What a tank has on record of the animals that an event is about."""
    stock = tally(await turn.uow.log.stock(tank.id, until=event.at or turn.now))
    return {name: stock[name] for name in all_meant(stock, event.species, every=True)}


async def whence(turn: Turn, event: Event, default: StoredTank) -> list[StoredTank]:
    """The tanks that animals given away can have been in: the one named, else those with such.

    Where the tank in use has such animals, it is that one.
    """
    named = turn.tank_named(event.tank) if event.tank else None
    if named is not None:
        return [named]
    having = [tank for tank in turn.tanks if await held(turn, tank, event)]
    return [default] if default in having else having


async def none_there(turn: Turn, event: Event) -> Reply:
    """Answer that nobody knows of such animals, so that none can be taken off."""
    tanks = [tank.name for tank in turn.tanks]
    return await turn.reply(words.none_on_record(event.species, tanks))


async def counted(
    turn: Turn, events: Sequence[Event], default: StoredTank
) -> tuple[list[Event], list[Reply]]:
    """Put numbers to what left without one, by the records; ask where these do not tell it."""
    out: list[Event] = []
    for event in events:
        part = event.kind == "lost" and event.text in {ALL_BUT, HALF}
        if event.kind not in LEAVING or (event.count is not None and not part):
            out.append(event)
            continue
        if event.kind == "lost" and event.text not in {ALL, SOME} and not part:
            out.append(event)
            continue
        tank = turn.tank_named(event.origin or event.tank or "") or default
        there = await held(turn, tank, event)
        if part:
            dead = _part_of(event, there)
            if dead is None:
                return out, [await _ask_part(turn, event, tank, sum(there.values()))]
            out.append(replace(event, species=next(iter(there)), count=dead, text=None))
        elif event.text == ALL and (there or event.kind == "lost"):
            numbered = [replace(event, species=k, count=n, text=None) for k, n in there.items()]
            out += numbered or [replace(event, text=None)]
        elif sum(there.values()) == 1:
            out.append(replace(event, species=next(iter(there)), count=1, text=None))
        elif there:
            return out, [await _ask(turn, event, tank, sum(there.values()))]
        elif event.kind == "lost":
            out.append(replace(event, text=None))
        elif turn.incoming.addressed:
            return out, [await none_there(turn, event)]
    return out, []


def _part_of(event: Event, there: Mapping[str, int]) -> int | None:
    """How many died of the one kind on record: all but some, or half of an even number."""
    if len(there) != 1:
        return None
    held_now = next(iter(there.values()))
    if event.text == HALF:
        return None if held_now % 2 else held_now // 2
    dead = held_now - (event.count or 0)
    return dead if dead > 0 else None


async def _ask_part(turn: Turn, event: Event, tank: StoredTank, most: int) -> Reply:
    """Ask how many died where the record does not tell it; nothing is stored."""
    name = event.species or "fish"
    lines = words.how_many_died(name, tank.name, most)
    context = {"text": f"lost {name}", "name": name}
    return await turn.reply(lines, expects=how_many.COUNT, context=context)


async def _ask(turn: Turn, event: Event, tank: StoredTank, most: int) -> Reply:
    said = turn.incoming.text[event.start : event.end]
    name = next((w for w in (event.species, said) if w and w in turn.incoming.text), "")
    text = turn.incoming.text
    choices = [
        Choice(words.all_of_them(most), "say_again", "", {"text": how_many.told(text, name, most)})
    ]
    lines = words.how_many_left(event.species or "", tank.name, most)
    return await turn.reply(
        lines, choices=choices, expects=how_many.COUNT, context={"text": text, "name": name}
    )
