"""``/source``: the waters that tanks are filled from, kept from the same short messages."""

from __future__ import annotations

from typing import Any

from bot.chat.model import Reply
from bot.chat.tank_words import name_problem
from bot.chat.told import Told, entry_of, summary, values_json
from bot.chat.turn import Turn
from bot.chat.words import buttons
from bot.chat.words import readings as reading_words
from bot.chat.words import sources as words
from bot.store.log import Stored
from bot.store.offers import Choice
from bot.store.tanks import StoredTank
from core.message import parse
from core.message.model import Command, Parsed
from core.message.tanks import match
from core.tank import Tank

LONGEST = 4
"""Most words that a source's name may have."""


async def command(turn: Turn, command: Command, _parsed: Parsed) -> list[Reply]:
    """``/source`` lists, ``/source tap ph 7.6 kh 8`` keeps, ``/source tap for fern`` chooses."""
    said = command.arguments.strip()
    sources = await turn.uow.tanks.sources_of_chat(turn.chat.id)
    if not said:
        return [await _list(turn, sources)]
    name, parsed = _split(turn, said)
    if parsed is not None:
        return await _keep(turn, sources, name, parsed)
    chosen, _, tank_name = said.partition(" for ")
    source = _named(sources, chosen)
    if source is None:
        return [await turn.reply(words.unknown(said, [each.name for each in sources]))]
    if tank_name:
        return [await _choose(turn, source, tank_name)]
    return [await _show(turn, source)]


def _split(turn: Turn, said: str) -> tuple[str, Parsed | None]:
    """Part a name from the readings after it: the shortest name that leaves only readings."""
    parts = said.split()
    for cut in range(1, min(len(parts), LONGEST + 1)):
        parsed = parse(" ".join(parts[cut:]), turn.context())
        if parsed.values and parsed.intent == "reading" and not parsed.events:
            return " ".join(parts[:cut]), parsed
    return said, None


async def _keep(turn: Turn, sources: list[StoredTank], name: str, parsed: Parsed) -> list[Reply]:
    """Put a source's readings on record; what is doubtful is not taken and said."""
    source = _named(sources, name)
    if source is None:
        if name_problem(name) is not None:
            return [await turn.reply(words.how())]
        source = await turn.uow.tanks.add(turn.chat.id, Tank(name), turn.now, role="source")
    at = parsed.at or turn.now
    told = Told(source, tuple(Stored(value, source.id, at) for value in parsed.values), ())
    entry_id = await turn.uow.log.add(turn.chat.id, entry_of(turn, [told]))
    lines = [summary(turn, told)]
    lines += [reading_words.doubt([each.text], each.reason) for each in parsed.doubts[:3]]
    return [
        await turn.reply(
            lines,
            choices=[Choice(buttons.undo(), "undo", "undo", {"entry_id": entry_id})],
            facts={"source": source.name, "values": values_json(told)},
            entry_id=entry_id,
        )
    ]


async def _choose(turn: Turn, source: StoredTank, tank_name: str) -> Reply:
    found = match(tank_name, [tank.name for tank in turn.tanks])
    tank = turn.tank_named(found.name) if found.name is not None else None
    if tank is None:
        return await turn.reply(words.no_such_tank(tank_name))
    await turn.change_tank(tank, source_id=source.id)
    return await turn.reply(words.chosen(source.name, tank.name))


async def _show(turn: Turn, source: StoredTank) -> Reply:
    held = await turn.uow.log.readings(source.id, limit=40)
    latest: dict[str, Stored[Any]] = {}
    for reading in held:
        latest.setdefault(reading.what.analyte, reading)
    if not latest:
        return await turn.reply(words.empty(source.name))
    told = Told(source, tuple(latest.values()), ())
    return await turn.reply([summary(turn, told)])


async def _list(turn: Turn, sources: list[StoredTank]) -> Reply:
    if not sources:
        return await turn.reply(words.none_yet())
    shown = [await _show(turn, source) for source in sources]
    return await turn.reply([line for reply in shown for line in reply.lines])


def _named(sources: list[StoredTank], name: str) -> StoredTank | None:
    found = match(name, [source.name for source in sources])
    return next((source for source in sources if source.name == found.name), None)
