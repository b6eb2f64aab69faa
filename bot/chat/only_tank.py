"""``reef alk 7``, ``pond temp 4``, ``malawi kh 9``: a tank called by its water or its animals.

With one tank in a chat, or none, only that one can be meant, unless it is of another water or has
other animals. A first one is made with the water that its word tells. With several tanks see
`bot.chat.tank_by_kind`.
"""

from __future__ import annotations

import re
from dataclasses import replace
from typing import Final

from bot.chat import calls, held, other_tank
from bot.chat.model import Reply
from bot.chat.tank_words import KIND_WORDS, POND_WORDS, SETUP_WORDS
from bot.chat.turn import Turn
from bot.chat.words.names import first_tank
from core.advice.livestock import lookup
from core.advice.stock import all_meant
from core.advice.tank_by_kind import place
from core.message import parse
from core.message.fold import fold
from core.message.kinds import is_kind
from core.message.model import Parsed
from core.tank import Setup, Tank, TankKind

LONGEST: Final = 120
"""Longer texts tell more than of one tank. [characters]"""

_OPENS: Final = re.compile(r"\W*(?:(?:the|my|our|mein|mon|mi|mio|meu|mijn|moje|min) )?(\w+)\b")
_AMONG_OTHERS: Final = re.compile(r"\bone\b", re.IGNORECASE)
_TANK: Final = "tank"
"""The word for the own tank that stands in the place of what it is called by."""


async def answer(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """Read the message of the only tank; None where its first words call none."""
    said = turn.incoming
    if said.group or turn.route is None or len(turn.tanks) > 1 or len(said.text) > LONGEST:
        return None
    if parsed.command or calls.is_call(turn, parsed):
        return None
    told = parsed.values or parsed.events
    if told or any(doubt.value is not None for doubt in parsed.doubts):
        asked = await _of_another(turn, parsed)
        if told or asked is not None:
            return asked
    text = said.text
    if (water := _water(text)) is not None:
        start, end, kind, setup = water
        line = f"{text[:start]}{_TANK}{text[end:]}"
        fits = all(each.tank.kind == kind for each in turn.tanks)
    elif (animals := _animals(text)) is not None:
        start, end, animal = animals
        kind, setup = _kind_of(animal), None
        line = f"{text[:start]}{_TANK}{text[end:]}"
        fits = all([await _lives_in(turn, animal) for _each in turn.tanks])
    else:
        return None
    read = parse(line, turn.context())
    if not fits or not read.values or read.doubts or read.events or read.command:
        return None
    if not turn.tanks:
        turn.first = Tank(first_tank(), kind=kind, setup=setup, named=False)
    turn.incoming = replace(said, text=line)
    return await turn.route(turn, read)


async def _of_another(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """Ask which tank `the shrimp one in the kitchen, kh 3` tells of, where the only one has others.

    Of a tank in which nobody is on record only `one` tells that there are several.
    """
    said = turn.incoming
    found = place(said.text) if said.addressed and turn.tanks else None
    if found is None or not found.is_tank or turn.tank_named(found.kind) is not None:
        return None
    named = [parsed.tank, *(each.tank for each in parsed.values)]
    named += [each.tank for each in parsed.events]
    if (any(named) and turn.tanks[0].tank.named) or calls.is_danger(turn, parsed):
        return None
    stock = {name: many or 1 for name, many in (await held.held_in(turn, turn.tanks[0])).items()}
    among = _AMONG_OTHERS.search(said.text[found.start : found.end]) is not None
    if all_meant(stock, found.kind) if stock else not among:
        return None
    return await other_tank.ask(turn, found.start, found.end)


def _water(text: str) -> tuple[int, int, TankKind, Setup | None] | None:
    """Where the first word calls a tank by its water: its span and what it tells."""
    found = _OPENS.match(fold(text))
    if found is None or len(fold(text)) != len(text):
        return None
    word = found[1]
    kind = "pond" if word in POND_WORDS else KIND_WORDS.get(word)
    return None if kind is None else (*found.span(1), kind, SETUP_WORDS.get(word))


def _animals(text: str) -> tuple[int, int, str] | None:
    """Where words call a tank by its animals: their span and the kind.

    `the discus one` tells that there are others, and is none.
    """
    if _AMONG_OTHERS.search(text):
        return None
    if (found := place(text)) is not None and (found.is_tank or not text[: found.start].strip()):
        return found.start, found.end, found.kind
    opens = _OPENS.match(fold(text))
    if opens is None or len(fold(text)) != len(text) or not is_kind(opens[1]):
        return None
    return (*opens.span(1), opens[1])


def _kind_of(animal: str) -> TankKind:
    """The water of a tank that is called by an animal."""
    found = lookup(animal)
    rows = (found.species,) if found.species is not None else found.candidates
    return "marine" if rows and all(row.water == "marine" for row in rows if row) else "fresh"


async def _lives_in(turn: Turn, animal: str) -> bool:
    """Whether the only tank has such animals on record, or none at all."""
    stock = {name: many or 1 for name, many in (await held.held_in(turn, turn.tanks[0])).items()}
    return not stock or bool(all_meant(stock, animal))
