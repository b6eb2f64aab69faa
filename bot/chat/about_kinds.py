"""``how many neons do i have``, ``what does a betta need``: the record, the table of animals."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import replace
from typing import Any

from bot.chat import held as shown
from bot.chat.model import Reply
from bot.chat.turn import Turn
from bot.chat.words import about_kinds as words
from bot.chat.words.animals import living, which
from bot.store.offers import Choice
from core.advice.asked_kinds import Asked, asked_of
from core.advice.livestock import Found, least_volume, likeliest
from core.advice.stock import all_meant
from core.message.model import Parsed
from core.tank import Tank


async def answer(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """Answer what is asked of animals; None where it is anything else."""
    if parsed.values or parsed.events or parsed.doubts or parsed.command is not None:
        return None
    if not turn.incoming.addressed:
        return None
    asked = asked_of(turn.incoming.text, [tank.name for tank in turn.tanks])
    if asked is None:
        return None
    if asked.about == "record":
        return [await _record(turn, asked)] if turn.tanks else None
    said, found = asked.kinds[0]
    row = found.species
    if row is None:
        tank = turn.current_tank.tank if turn.current_tank is not None else Tank(name="")
        return [await _which(turn, said, replace(found, candidates=likeliest(found, tank)))]
    facts: dict[str, Any] = {"species": row.scientific}
    facts |= {} if row.length is None else {"length": row.length}
    facts |= {} if (least := least_volume(row)) is None else {"least_l": least}
    return [await turn.reply(words.needs(row, said, size=asked.about == "size"), facts=facts)]


async def _record(turn: Turn, asked: Asked) -> Reply:
    """The animals on record, of the kinds that are asked about; of all where none is named."""
    tanks = [tank for tank in turn.tanks if asked.tank in {None, tank.name}]
    held = {tank.name: await shown.held_in(turn, tank) for tank in tanks}
    if not asked.kinds:
        return await turn.reply(living(held), facts=shown.facts(held))
    names = [said for said, _found in asked.kinds]
    some = {tank: _of(stock, names) for tank, stock in held.items()}
    some = {tank: stock for tank, stock in some.items() if stock}
    lines = living(some) or [words.none(names, [tank.name for tank in tanks])]
    return await turn.reply(lines, facts=shown.facts(some))


def _of(stock: Mapping[str, int | None], names: list[str]) -> dict[str, int | None]:
    """What of a record the names can mean, the young with their kind."""
    least = {name: count or 1 for name, count in stock.items()}
    meant = {each for name in names for each in all_meant(least, name, every=True)}
    return {name: count for name, count in stock.items() if name in meant}


async def _which(turn: Turn, said: str, found: Found) -> Reply:
    again = re.compile(re.escape(said), re.IGNORECASE)
    names = [row.name_in(turn.chat.language) for row in found.candidates]
    choices = [
        Choice(name, "say_again", "", {"text": again.sub(name, turn.incoming.text, count=1)})
        for name in names
    ]
    return await turn.reply(which(said, found, turn.chat.language), choices=choices)
