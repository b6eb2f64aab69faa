"""Animals that were moved between tanks: which tank they left, which they came to.

What is kept of one move are two events: `moved_out` with the tank they left, `moved_in` with the
one they are in now, of one entry, so that both are taken back together. The text of each is the
other tank's name.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from typing import Final

from bot.chat import leaving
from bot.chat.model import Reply
from bot.chat.turn import Turn
from bot.chat.words import moves as words
from bot.store.offers import Choice
from bot.store.tanks import StoredTank
from core.advice.stock import is_crowd, meant, tally
from core.message.amounts import volume_litres
from core.message.model import Event, Parsed
from core.message.moves import way


def named(turn: Turn, parsed: Parsed) -> Parsed:
    """Give each move its ends as far as the message tells them."""
    if not any(event.kind == "moved" for event in parsed.events):
        return parsed
    return replace(parsed, events=tuple(_named(turn, event) for event in parsed.events))


def _named(turn: Turn, event: Event) -> Event:
    if event.kind != "moved":
        return event
    found = way(turn.incoming.text, event, turn.context())
    if found.stranger is not None and (sized := _of_size(turn, found.stranger)) is not None:
        return replace(event, tank=sized, origin=found.origin)
    if found.stranger is not None:
        species = (event.species or "").removesuffix(found.stranger).strip()
        return replace(event, tank=found.stranger, origin=found.origin, species=species or None)
    return replace(event, tank=found.destination or found.origin, origin=found.origin)


SAME_SIZE: Final = 0.1
"""A tank is meant by its size where that is as near; the outer box holds more. [share]"""


def _of_size(turn: Turn, said: str) -> str | None:
    """The only tank of a size by which it is called: to the 20 gal."""
    volume = volume_litres(said, us_gallons=turn.chat.us_gallons)
    if volume is None:
        return None
    held = ((tank.name, tank.tank.volume_l) for tank in turn.tanks)
    alike = [name for name, own in held if own and abs(volume / own - 1.0) <= SAME_SIZE]
    return alike[0] if len(alike) == 1 else None


async def settle(
    turn: Turn, parsed: Parsed, default: StoredTank, *, anew: bool = False
) -> tuple[Parsed, list[Reply]]:
    """Find the tank that animals left, and how many, by the records; ask where these do not tell.

    `default` is the tank in use, or the one that was chosen when it was asked; `anew` tells that
    the animals were taken off the record before, by what is corrected now.
    """
    events: list[Event] = []
    for event in parsed.events:
        if event.kind == "moved_out":
            tanks = await leaving.whence(turn, event, default)
            if len(tanks) > 1:
                return parsed, [await _ask(turn, event)]
            if not tanks and not anew:
                if not turn.incoming.addressed:
                    continue  # people talk to each other
                return parsed, [await leaving.none_there(turn, event)]
            events.append(replace(event, tank=(tanks or [default])[0].name))
            continue
        if event.kind != "moved":
            events.append(event)
            continue
        if is_crowd(event.count or 1, _volume_of(turn, event, default)):
            return parsed, [await turn.reply(words.too_many(event.count or 1))]
        settled = await _settle(turn, event, default)
        if settled is None:
            return parsed, [await _ask(turn, event)]
        events.append(settled)
    told, asked = await leaving.counted(turn, events, default)
    return replace(parsed, events=tuple(told)), asked


def _volume_of(turn: Turn, event: Event, default: StoredTank) -> float | None:
    """The water of the tank that animals are moved to."""
    to = turn.tank_named(event.tank) if event.tank else None
    return (to or default).tank.volume_l


async def _settle(turn: Turn, event: Event, default: StoredTank) -> Event | None:
    """The move with the tank it began in, and the name its animals have there."""
    to = turn.tank_named(event.tank) if event.tank else None
    if event.origin is None and to is None:
        event = replace(event, origin=default.name, tank=default.name)  # given away
    held = {
        tank.name: name
        for tank in turn.tanks
        if (event.origin is None and tank is not to) or tank.name == event.origin
        if (name := await _name_in(turn, tank, event)) is not None
    }
    origin = event.origin
    if origin is None and to is not None:
        likely = list(held) or [tank.name for tank in turn.tanks if tank.id != to.id]
        used = turn.current_tank if default.id == to.id else default
        if used is None or used.name not in likely:
            if len(likely) > 1:
                return None
            origin = next(iter(likely), None)
        else:
            origin = used.name
    species = held.get(origin or "", event.species)
    return replace(event, origin=origin, species=species)


async def _name_in(turn: Turn, tank: StoredTank, event: Event) -> str | None:
    """What a tank's record calls the animals, if it has such."""
    return meant(
        tally(await turn.uow.log.stock(tank.id, until=event.at or turn.now)), event.species
    )


async def _ask(turn: Turn, event: Event) -> Reply:
    held = {"text": turn.incoming.text, "at": turn.now.isoformat()}
    tanks = [tank for tank in turn.tanks if tank.name != event.tank]
    choices = [
        Choice(tank.name, "for_tank", "", {**held, "tank_id": tank.id}) for tank in tanks[:8]
    ]
    return await turn.reply(words.whence([tank.name for tank in tanks]), choices=choices)


def parted(event: Event) -> Iterator[tuple[str | None, Event]]:
    """What is kept of an event, each with its tank's name: of a move, one for either end."""
    if event.kind != "moved":
        yield event.tank, event
        return
    to = None if event.tank == event.origin else event.tank
    if event.origin:
        yield event.origin, replace(event, kind="moved_out", tank=event.origin, text=to)
    if to is not None or not event.origin:
        yield event.tank, replace(event, kind="moved_in", text=event.origin or None)
