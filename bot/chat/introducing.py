"""Tanks introduced with who lives there: `got a 120l community tank, tetras and corys`.

The tank is made with its volume and water, its animals are kept as kinds, with a number where one
was told; a further tank beside those on record is asked about unless the words say that it is one.
"""

from __future__ import annotations

from dataclasses import replace
from datetime import timedelta
from typing import Any, Final

from bot.chat import held as shown
from bot.chat import inhabitants, introduced, readings, tank_words
from bot.chat.asking import as_name
from bot.chat.introduction_read import Told, has_volume, told_in
from bot.chat.introduction_undo import MADE
from bot.chat.model import Reply
from bot.chat.tank_volumes import ask_volume, facts
from bot.chat.turn import Turn
from bot.chat.words import buttons, general
from bot.chat.words import first_evening as evening_words
from bot.chat.words import introducing as words
from bot.chat.words import tanks as tank_said
from bot.chat.words import traits as trait_words
from bot.chat.words.names import first_tank
from bot.store.offers import Choice, Offer
from bot.store.tanks import StoredTank
from core.advice import limits
from core.advice.asked_company import ASKING
from core.advice.inhabitants import is_animal, listed_in
from core.advice.introduction_parts import plainly
from core.advice.introductions import Animal, Home, living_there
from core.advice.livestock import lookup, plain_name
from core.advice.stock import meant
from core.message import described, parse
from core.message.model import Event, Parsed
from core.tank import Tank

APART: Final = 1.25
"""Of two tanks told at once the larger one is called the big one from so many times the other."""


async def told(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """Make the tanks of a message and keep who lives in them; None where it introduces none."""
    if turn.incoming.group:
        return None
    homes, beside = said = _as_on_record(turn, told_in(turn))
    if parsed.question is not None and not any(home.name for home in homes):
        return None  # salt for a 60 l tank
    if not homes:
        return await _inside(turn, parsed)
    if len(homes) == 1 and _is_read_elsewhere(turn, said):
        return None
    if beside is not None and _is_on_record(turn, parsed, homes[0]):
        return None  # my 20 l betta tank, ph 7
    for home in homes:
        volume = home.volume_l or 0.0
        if not limits.VOLUME_SMALLEST <= volume <= limits.VOLUME_LARGEST:
            return [await turn.reply(tank_said.volume_implausible(volume))]
    held = _same(turn, homes[0]) if len(homes) == 1 else None
    known = held is not None or all(_named(turn, home) for home in homes)
    if not known and turn.tanks and not _is_further(homes):
        return [await _ask_whether(turn, homes)]
    return await _keep_all(turn, said, held)


async def _keep_all(turn: Turn, said: Told, held: StoredTank | None = None) -> list[Reply]:
    replies: list[Reply] = []
    names = _names(turn, said.homes)
    before = [held or _named(turn, home) for home in said.homes]
    whole = turn.incoming
    for number, (home, name) in enumerate(zip(said.homes, names, strict=True)):
        if number:  # entries of one message: each needs an id of its own
            turn.incoming = replace(whole, update_id=f"{whole.update_id}:{number}")
        replies += await _keep(turn, home, before[number], name, said.beside)
    turn.incoming = whole
    if len(said.homes) > 1:
        await turn.change_chat(tank_id=None)  # of which the next reading is, nobody said
    return replies


def _is_read_elsewhere(turn: Turn, said: Told) -> bool:
    """Whether older looks read all of it: one tank, all animals with their numbers."""
    home = said.homes[0]
    if not home.animals and said.beside is None and not home.loosely:
        text, gallons = turn.incoming.text, turn.chat.us_gallons
        if home.co2 and home.name is None:
            return False  # 60 litre planted tank with co2
        if home.name is None and plainly(text) != text.strip():
            return False  # reef tank, 300 litres with the sump
        return home.name is None or tank_words.whole(text, us_gallons=gallons) is not None
    if any(each.many is None for each in home.animals) or home.further or home.days_ago is not None:
        return False
    if home.loosely and home.name is not None:
        return False  # school tank 90 l ph 7: beside a tank without a name it is asked
    return introduced.reads_whole(turn)


def _is_on_record(turn: Turn, parsed: Parsed, home: Home) -> bool:
    """Whether readings beside a tank are of one that is on record: by its name or its volume."""
    same = any(each.tank.volume_l == home.volume_l for each in turn.tanks)
    of = turn.tank_named(parsed.tank or "")
    only_noun = of is not None and not of.tank.named and home.name is not None
    return (parsed.tank is not None and not only_noun) or (same and not home.animals)


def _named(turn: Turn, home: Home) -> StoredTank | None:
    """The tank on record of that name, be it with the word for a tank: B, of Tank B."""
    if home.name is None or (named := turn.tank_named(home.name)) is not None:
        return None if home.name is None else named
    nouns = described.ways()["noun"]
    return next(filter(None, (turn.tank_named(f"{noun} {home.name}") for noun in nouns)), None)


def _is_further(homes: tuple[Home, ...]) -> bool:
    """Whether the words say for sure that it is one more."""
    if any(home.loosely for home in homes):
        return False
    return len(homes) > 1 or homes[0].further or homes[0].name is not None


def _same(turn: Turn, home: Home) -> StoredTank | None:
    """The tank on record that is told of: by its name, or the only one that may be it."""
    if (named := _named(turn, home)) is not None:
        return named
    if len(turn.tanks) != 1 or home.further:
        return None
    held = turn.tanks[0]
    if not held.tank.named and (not home.loosely or held.tank.volume_l in {None, home.volume_l}):
        return held
    return held if home.name is None and held.tank.volume_l in {None, home.volume_l} else None


def _names(turn: Turn, homes: tuple[Home, ...]) -> list[str]:
    """A name for each tank: its own, else the word that tells it, else by its size, or a usual one.

    No two tanks get the same one.
    """
    volumes = sorted(home.volume_l or 0.0 for home in homes)
    sized = len(homes) == 2 and volumes[1] >= APART * volumes[0]
    words_told = _telling(homes)
    names: list[str] = []
    for home, word in zip(homes, words_told, strict=True):
        trait = ("big" if home.volume_l == volumes[1] else "small") if sized else "second"
        called = sized or (len(homes) < 3 and bool(turn.tanks or names))
        usual = evening_words.called(trait) if called else first_tank()
        name = home.name or (as_name(word) if word else usual)
        names.append(name if _named(turn, home) is not None else turn.free_name(name, names))
    return names


def _as_on_record(turn: Turn, said: Told) -> Told:
    """Homes told by a word as the tanks on record that were called by it, of the same volume."""
    homes: list[Home] = []
    for home, word in zip(said.homes, _telling(said.homes), strict=True):
        held = turn.tank_named(as_name(word)) if word and home.name is None else None
        same = held is not None and held.tank.volume_l == home.volume_l
        homes.append(replace(home, name=held.name) if held is not None and same else home)
    return said._replace(homes=tuple(homes))


def _telling(homes: tuple[Home, ...]) -> list[str | None]:
    """The word that tells each of several tanks; None where another is told by the same."""
    each_own = len(homes) > 1 and all(home.told_by or home.holds for home in homes)
    said = [
        home.told_by or (home.holds if len(homes) > 2 or each_own else None)
        if len(homes) > 1
        else None
        for home in homes
    ]
    plain = [None if word is None else plain_name(word) for word in said]
    return [
        word if plain.count(each) == 1 else None for word, each in zip(said, plain, strict=True)
    ]


async def _keep(
    turn: Turn, home: Home, held: StoredTank | None, name: str, beside: Parsed | None
) -> list[Reply]:
    """Put one tank on record, then who lives in it and what was measured."""
    traits: dict[str, Any] = {"volume_l": home.volume_l, "kind": home.kind, "setup": home.setup}
    known = {of: value for of, value in traits.items() if value is not None}
    known |= {"co2": True} if home.co2 else {}
    if home.days_ago is not None:
        known["set_up_at"] = turn.now - timedelta(days=home.days_ago)
    of_message = turn.incoming.update_id.partition(":")[0]
    undo: dict[str, Any]
    if held is not None:
        if home.name is not None and not held.tank.named:
            known |= {"name": home.name, "named": True}
        before = {of: getattr(held.tank, of) for of in known if of != "set_up_at"}
        stored = await turn.change_tank(held, **known)
        lines = [tank_said.changed(stored.tank)[0]]
        if held.tank.volume_l not in {None, stored.tank.volume_l}:
            lines.append(tank_said.until_now(held.tank.volume_l or 0.0))
        undo = {"tank_id": stored.id, "before": before, "update_id": of_message}
        await turn.use_tank(stored)
    else:
        named = home.name is not None or bool(turn.tanks) or name != first_tank()
        tank = Tank(name, kind=home.kind or "fresh", volume_l=home.volume_l, named=named)
        tank = replace(tank, setup=home.setup, co2=home.co2, set_up=known.get("set_up_at"))
        stored = await turn.add_tank(tank)
        lines = tank_said.made(stored.tank, adopted=False)
        undo = {"tank_id": stored.id, "update_id": of_message}
    told_facts = facts(stored)
    if (first := known.get("set_up_at")) is not None:
        day = first.astimezone(turn.chat.zone).date()
        lines += trait_words.set_up(stored.name, day, turn.local_now.date())
        told_facts["set_up"] = day.isoformat()
    choices = [Choice(words.take_back(), "unmake_tank", "", undo)]
    replies = [
        await turn.reply(lines, choices=choices, facts=told_facts, context={MADE: dict(undo)})
    ]
    beside, left = _measured(turn, home.left, beside)
    replies += await _animals(turn, stored, home.animals, beside)
    if left:
        replies.append(await turn.reply(tank_said.told_apart(left)))
    return replies


def _measured(
    turn: Turn, left: tuple[str, ...], beside: Parsed | None
) -> tuple[Parsed | None, list[str]]:
    """Readings among the words that are left of a tank (29 degrees), and those that are none."""
    rest: list[str] = []
    for each in left:
        read = parse(f"tank {each}", turn.context())
        if read.intent != "reading" or read.doubts or read.events:
            rest.append(each)
            continue
        told = beside or Parsed("event")
        own = [replace(value, tank=None) for value in read.values]
        beside = replace(told, values=(*told.values, *own))
    return beside, rest


async def _animals(
    turn: Turn, stored: StoredTank, animals: tuple[Animal, ...], beside: Parsed | None = None
) -> list[Reply]:
    """Keep kinds in a tank, and readings; kinds without a number are asked for one, once.

    Of a kind that is on record already nothing is kept twice: how many of it there are is asked.
    """
    held = {name: many or 1 for name, many in (await shown.held_in(turn, stored)).items()}
    known = [each for each in animals if meant(held, each.said) is not None]
    new = [each for each in animals if each not in known]
    came = tuple(Event("added", count=each.many, species=each.said) for each in new)
    told = Parsed("event") if beside is None else beside
    kept: list[Reply] = []
    if came or told.values or told.doubts:
        kept = await readings.keep(turn, replace(told, events=came), stored)
    if counted := [f"{each.many} {each.said}" for each in known if each.many is not None]:
        whole = turn.incoming
        turn.incoming = replace(whole, text=", ".join(counted))
        kept += await inhabitants.told(turn) or []
        turn.incoming = whole
    untold = [each.said for each in new if each.many is None and not _is_coral(each)]
    return [*kept, await turn.reply(words.how_many(untold))] if untold else kept


def _is_coral(animal: Animal) -> bool:
    """Whether a kind is one that nobody counts."""
    found = lookup(animal.said)
    rows = [row for row in (found.species, *found.candidates) if row is not None]
    return bool(rows) and all(row.being == "coral" for row in rows)


async def _first_animals(turn: Turn, animals: tuple[Animal, ...]) -> list[Reply] | None:
    """Who lives in a tank that nothing was told of yet: kept, and its volume asked for."""
    text = turn.incoming.text
    if not animals:
        if plain_name(text).partition(" ")[0] in ASKING or (listed := listed_in(text)) is None:
            return None
        if has_volume(text) or not all(is_animal(lookup(each.said)) for each in listed.kinds):
            return None  # tanganyika tank 240 l
        animals = tuple(Animal(each.said, each.many) for each in listed.kinds)
    stored = await turn.add_tank(Tank(first_tank(), named=False))
    kept = await _animals(turn, stored, animals)
    return [*kept, await ask_volume(turn, stored, tank_said.send_litres())]


async def _inside(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """`neocaridina in there`: they live in the tank that is spoken of."""
    animals = living_there(turn.incoming.text)
    stored = turn.current_tank
    is_talk = parsed.values or parsed.events or parsed.command is not None
    if stored is None and not turn.tanks and turn.incoming.addressed and not is_talk:
        return await _first_animals(turn, animals)
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
    return await _keep_all(turn, told_in(turn))
