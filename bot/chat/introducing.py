"""Tanks introduced with who lives there: `got a 120l community tank, tetras and corys`.

The tank is made with its volume and water, its animals are kept as kinds, with a number where one
was told; a further tank beside those on record is asked about unless the words say that it is one.
"""

from __future__ import annotations

from dataclasses import replace
from typing import Any, Final

from bot.chat import introduced, readings, tank_words
from bot.chat.model import Reply
from bot.chat.tank_volumes import facts
from bot.chat.turn import Turn
from bot.chat.words import buttons, general
from bot.chat.words import first_evening as evening_words
from bot.chat.words import introducing as words
from bot.chat.words import tanks as tank_said
from bot.chat.words.names import first_tank
from bot.store.offers import Choice, Offer
from bot.store.tanks import StoredTank
from core.advice import limits
from core.advice.inhabitants import listed_in
from core.advice.introductions import Animal, Home, living_there
from core.advice.introductions import introduced as read
from core.message.model import Event, Parsed
from core.tank import Tank

APART: Final = 1.25
"""Of two tanks told at once the larger one is called the big one from so many times the other."""


async def told(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """Make the tanks of a message and keep who lives in them; None where it introduces none."""
    if turn.incoming.group:
        return None
    homes = read(turn.incoming.text, us_gallons=turn.chat.us_gallons)
    if parsed.question is not None and not any(home.name for home in homes):
        return None  # salt for a 60 l tank
    if not homes:
        return await _inside(turn)
    if len(homes) == 1 and _is_read_elsewhere(turn, homes[0]):
        return None
    for home in homes:
        volume = home.volume_l or 0.0
        if not limits.VOLUME_SMALLEST <= volume <= limits.VOLUME_LARGEST:
            return [await turn.reply(tank_said.volume_implausible(volume))]
    held = _same(turn, homes[0]) if len(homes) == 1 else None
    if held is None and any(each.tank.named for each in turn.tanks) and not _is_further(homes):
        return [await _ask_whether(turn, homes)]
    return await _keep_all(turn, homes, held)


async def _keep_all(
    turn: Turn, homes: tuple[Home, ...], held: StoredTank | None = None
) -> list[Reply]:
    replies: list[Reply] = []
    names = _names(turn, homes)
    for home, name in zip(homes, names, strict=True):
        replies += await _keep(turn, home, held, name)
    return replies


def _is_read_elsewhere(turn: Turn, home: Home) -> bool:
    """Whether older looks read all of it: one tank, all animals with their numbers."""
    if not home.animals:
        text, gallons = turn.incoming.text, turn.chat.us_gallons
        return home.name is None or tank_words.whole(text, us_gallons=gallons) is not None
    if any(each.many is None for each in home.animals) or home.further:
        return False
    return introduced.reads_whole(turn)


def _is_further(homes: tuple[Home, ...]) -> bool:
    return len(homes) > 1 or homes[0].further or homes[0].name is not None


def _same(turn: Turn, home: Home) -> StoredTank | None:
    """The tank on record that is told of: by its name, or the only one that may be it."""
    if home.name is not None and (named := turn.tank_named(home.name)) is not None:
        return named
    if len(turn.tanks) != 1 or home.further:
        return None
    held = turn.tanks[0]
    if not held.tank.named:
        return held
    return held if home.name is None and held.tank.volume_l in {None, home.volume_l} else None


def _names(turn: Turn, homes: tuple[Home, ...]) -> list[str]:
    """A name for each tank: its own, else by its size where two are told, else a usual one."""
    volumes = sorted(home.volume_l or 0.0 for home in homes)
    sized = len(homes) == 2 and volumes[1] >= APART * volumes[0]
    names: list[str] = []
    for home in homes:
        trait = ("big" if home.volume_l == volumes[1] else "small") if sized else "second"
        usual = evening_words.called(trait) if sized or turn.tanks or names else first_tank()
        name = home.name or usual
        names.append(turn.free_name(name) if home.name is None else name)
    return names


async def _keep(turn: Turn, home: Home, held: StoredTank | None, name: str) -> list[Reply]:
    """Put one tank on record, then who lives in it."""
    traits: dict[str, Any] = {"volume_l": home.volume_l, "kind": home.kind, "setup": home.setup}
    known = {of: value for of, value in traits.items() if value is not None}
    known |= {"co2": True} if home.co2 else {}
    choices: list[Choice] = []
    if held is not None:
        if home.name is not None and not held.tank.named:
            known |= {"name": home.name, "named": True}
        before = {of: getattr(held.tank, of) for of in known}
        stored = await turn.change_tank(held, **known)
        lines = [tank_said.changed(stored.tank)[0]]
        choices = [_undo({"tank_id": stored.id, "before": before})]
        await turn.use_tank(stored)
    else:
        named = home.name is not None or bool(turn.tanks) or name != first_tank()
        tank = Tank(name, kind=home.kind or "fresh", volume_l=home.volume_l, named=named)
        stored = await turn.add_tank(replace(tank, setup=home.setup, co2=home.co2))
        lines = tank_said.made(stored.tank, adopted=False)
        choices = [_undo({"tank_id": stored.id})]
    replies = [await turn.reply(lines, choices=choices, facts=facts(stored))]
    return [*replies, *await _animals(turn, stored, home.animals)]


def _undo(held: dict[str, Any]) -> Choice:
    return Choice(words.take_back(), "unmake_tank", "", held)


async def _animals(turn: Turn, stored: StoredTank, animals: tuple[Animal, ...]) -> list[Reply]:
    """Keep kinds in a tank; those without a number are asked for one, once."""
    if not animals:
        return []
    came = tuple(Event("added", count=each.many, species=each.said) for each in animals)
    kept = await readings.keep(turn, Parsed("event", events=came), stored)
    untold = [each.said for each in animals if each.many is None]
    return [*kept, await turn.reply(words.how_many(untold))] if untold else kept


async def _inside(turn: Turn) -> list[Reply] | None:
    """`neocaridina in there`: they live in the tank that is spoken of."""
    animals = living_there(turn.incoming.text)
    stored = turn.current_tank
    if not animals or stored is None or not turn.incoming.addressed:
        return None
    if listed_in(turn.incoming.text) is not None:
        return None  # 5 neons are in there: asked about as any list is
    return await _animals(turn, stored, animals)


async def _ask_whether(turn: Turn, homes: tuple[Home, ...]) -> Reply:
    """Ask whether a tank of another volume than those on record is one more; nothing is made."""
    volume, text = homes[0].volume_l or 0.0, turn.incoming.text
    choices = [
        Choice(words.another(), "another_tank", "yes", {"text": text}),
        Choice(buttons.no(), "leave_out", "no"),
    ]
    names = [tank.name for tank in turn.tanks]
    return await turn.reply(words.whether_another(volume, names), choices=choices)


async def press_another(turn: Turn, offer: Offer, choice: Choice) -> list[Reply]:
    """It is a further tank: make it, and keep who lives in it."""
    if not await turn.uow.offers.take(offer.id, choice.verb):
        return [await turn.reply(general.already())]
    turn.incoming = replace(turn.incoming, text=choice.arguments["text"], kind="message")
    homes = read(turn.incoming.text, us_gallons=turn.chat.us_gallons)
    return await _keep_all(turn, homes)


async def press_unmake(turn: Turn, offer: Offer, choice: Choice) -> list[Reply]:
    """Take an introduction back: the tank as it was before, or none; what was read in it stays."""
    stored = turn.tank_by_id(choice.arguments["tank_id"])
    if stored is None or not await turn.uow.offers.take(offer.id, choice.verb):
        return [await turn.reply(general.already())]
    before = choice.arguments.get("before")
    if before is not None:
        stored = await turn.change_tank(stored, **before)
        return [await turn.reply(tank_said.changed(stored.tank), facts=facts(stored))]
    await turn.change_tank(stored, deleted_at=turn.now)
    return [await turn.reply(tank_said.deleted(stored.name))]
