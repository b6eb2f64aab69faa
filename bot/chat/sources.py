"""``/source``: the waters that tanks are filled from, kept from the same short messages."""

from __future__ import annotations

from collections.abc import Collection, Sequence
from dataclasses import replace
from typing import Any

from bot.chat import source_blends, source_filled, source_words
from bot.chat.model import Reply
from bot.chat.source_words import Heard
from bot.chat.supply import Supply
from bot.chat.tank_words import name_problem
from bot.chat.told import Told, entry_of, summary, values_json
from bot.chat.turn import Turn
from bot.chat.waters import FACETS, Waters
from bot.chat.words import buttons
from bot.chat.words import readings as reading_words
from bot.chat.words import sources as words
from bot.chat.words import waters as water_words
from bot.store.log import Stored
from bot.store.offers import Choice
from bot.store.tanks import StoredTank
from core.advice.gassing import rising
from core.advice.tapped import bad_in, softened
from core.message import facets
from core.message.doubts import OTHER_WATER
from core.message.model import Command, Doubt, Parsed, Value
from core.message.tanks import match
from core.tank import Tank


async def command(turn: Turn, command: Command, _parsed: Parsed) -> list[Reply]:
    """Answer a ``/source`` line.

    ``/source`` lists, ``/source tap ph 7.6 kh 8`` keeps, ``/source tap for fern`` chooses,
    ``/source mix 60% ro 40% tap`` blends.
    """
    said = command.arguments.strip()
    held = await Waters.of(turn)
    if not said:
        return [await _list(turn, held)]
    blend = source_blends.find(said, [source.name for source in held.sources])
    if blend is not None:
        return [await source_blends.keep(turn, held, *blend)]
    heard = source_words.split(turn, said, held.sources)
    if heard is not None:
        return await source_filled.going_on(turn, lambda: keep(turn, held, heard))
    chosen, _, tank_name = said.partition(" for ")
    source = _named(held.sources, chosen) or _named(held.sources, facets.strip(chosen))
    if source is None and (doubtful := source_words.doubtful(turn, said)):
        return [await turn.reply([*doubtful, *words.how(turn.example_tank)])]
    if source is None:
        known = [each.name for each in held.sources]
        return [await turn.reply(words.unknown(said, known, turn.example_tank))]
    if tank_name:
        return [await _choose(turn, source, tank_name)]
    return [await _show(turn, held, source)]


def may_be_told(parsed: Parsed) -> bool:
    """Whether a message may be all about a source: readings of another water, or its name."""
    if parsed.question is not None or parsed.events or parsed.values:
        return False
    apart = any(doubt.reason == OTHER_WATER for doubt in parsed.doubts)
    return apart or not parsed.doubts


async def spoken(turn: Turn) -> list[Reply] | None:
    """``tap ph 7 from the tap, 7.8 after a day standing``; None where it is not only a source's."""
    if turn.incoming.group and not turn.incoming.addressed:
        return None
    return await told(turn, turn.incoming.text)


async def told(turn: Turn, text: str) -> list[Reply] | None:
    """Keep what a text tells of a source from its beginning on; None where it does not."""
    held = await Waters.of(turn)
    if (name := source_words.alone(text, held)) is not None:
        source = held.named(name)
        return None if source is None else [await _show(turn, held, source)]
    if (blend := await source_blends.spoken(turn, held)) is not None:
        return [blend]
    opening = source_words.opening(text, held)
    if opening is None:
        rest = source_words.behind_names(text)
        return None if rest is None else await told(turn, rest)
    name, rest = opening
    heard = source_words.heard(turn, name, rest)
    if heard is None or any(parsed.doubts for _, parsed in heard.pieces):
        return None
    if any(value.tank for _, parsed in heard.pieces for value in parsed.values):
        return None
    return await source_filled.going_on(turn, lambda: keep(turn, held, heard))


async def keep(turn: Turn, held: Waters, heard: Heard) -> list[Reply]:
    """Put a source's readings on record; what is doubtful is not taken and said."""
    source = await named_or_new(turn, heard.name, held)
    if isinstance(source, Reply):
        return [source]
    source, told = await _told(turn, source, heard)
    doubts = [doubt for _, parsed in heard.pieces for doubt in parsed.doubts]
    return [await store(turn, source, told, doubts)]


async def named_or_new(turn: Turn, name: str, held: Waters | None = None) -> StoredTank | Reply:
    """The source of a name, made where it is new; else why it cannot hold readings."""
    held = held or await Waters.of(turn)
    source = _named(held.sources, name) or held.named(name)
    if source is not None and source.blend:
        return await turn.reply(words.is_blend(source.name))
    if source is None and name_problem(name) is not None:
        return await turn.reply(words.how(turn.example_tank))
    if source is None:
        source = await turn.uow.tanks.add(turn.chat.id, Tank(name), turn.now, role="source")
    return source


async def _told(turn: Turn, source: StoredTank, heard: Heard) -> tuple[StoredTank, list[Told]]:
    """What is told by the body of water that it is of; facets that are new are made."""
    told: list[Told] = []
    for facet, parsed in heard.pieces:
        body = source
        if facet is not None:
            body = await turn.uow.tanks.facet(source, facet, turn.now)
            source = replace(source, facets={**source.facets, facet: body})
        at = parsed.at or turn.now
        readings = tuple(Stored(v, body.id, v.at or at) for v in parsed.values)
        told += [Told(body, readings, ())] if readings else []
    return source, told


async def told_in(turn: Turn, command: Command) -> list[Told]:
    """What an edited ``/source`` line tells now of a source that there is; else nothing."""
    sources = await turn.uow.tanks.sources_of_chat(turn.chat.id)
    heard = source_words.split(turn, command.arguments.strip(), sources)
    source = None if heard is None else _named(sources, heard.name)
    if heard is None or source is None or source.blend:
        return []
    return (await _told(turn, source, heard))[1]


async def corrected(turn: Turn, told: Told, entry_id: int, lead: str) -> Reply:
    """Say what stands of a source after a correction."""
    choices = [Choice(buttons.undo(), "undo", "undo", {"entry_id": entry_id})]
    facts = {"source": told.tank.name, "values": values_json(told)}
    return await turn.reply([lead], choices=choices, facts=facts, entry_id=entry_id)


async def store(
    turn: Turn, source: StoredTank, told: Sequence[Told], doubts: Sequence[Doubt] = ()
) -> Reply:
    """Put what is told of one source on record in one entry, and say it back."""
    entry_id = await turn.uow.log.add(turn.chat.id, entry_of(turn, told))
    lines = [summary(turn, _as_said(source, each)) for each in told]
    lines += [reading_words.doubt([each.text], each.reason) for each in doubts[:3]]
    facts: dict[str, Any] = {"source": source.name, "values": [], "facets": {}}
    for each in told:
        if each.tank.facet is None:
            facts["values"] += values_json(each)
        else:
            facts["facets"].setdefault(each.tank.facet, []).extend(values_json(each))
    if not facts["facets"]:
        del facts["facets"]
    supply = await (await Waters.of(turn)).supply(await _again(turn, source))
    analytes = {reading.what.analyte for each in told for reading in each.readings}
    lines += _notes(supply, analytes, facts)
    return await turn.reply(
        lines,
        choices=[Choice(buttons.undo(), "undo", "undo", {"entry_id": entry_id})],
        facts=facts,
        entry_id=entry_id,
    )


def _notes(supply: Supply, told: Collection[str], facts: dict[str, Any]) -> list[str]:
    """What the readings of a source that are told call for: standing, and what is bad in it."""
    lines = []
    gassy = not facets.GASSES.isdisjoint(told) or "kh" in told
    found = rising(supply.state) if supply.stood is None and gassy else None
    if found is not None:
        facts["co2_mg_l"], facts["rises_to"] = found.co2, [found.low, found.high]
        lines.append(water_words.rises(supply.name, found.co2, found.low, found.high))
    if {"kh", "gh"} & set(told) and (hardness := softened(supply.state.readings)) is not None:
        lines.insert(0, words.softened(supply.name, *hardness))
    return [words.bad(name, value) for name, value in bad_in(supply.state, told)] + lines


async def _again(turn: Turn, source: StoredTank) -> StoredTank:
    """A source as the store has it now, with its facets."""
    sources = await turn.uow.tanks.sources_of_chat(turn.chat.id)
    return next(each for each in sources if each.id == source.id)


def _as_said(source: StoredTank, told: Told) -> Told:
    """The same with the facet's name in the keeper's language."""
    if told.tank.facet is None:
        return told
    name = words.facet(source.name, told.tank.facet)
    return replace(told, tank=replace(told.tank, tank=replace(told.tank.tank, name=name)))


async def _choose(turn: Turn, source: StoredTank, tank_name: str) -> Reply:
    found = match(tank_name, [tank.name for tank in turn.tanks])
    tank = turn.tank_named(found.name) if found.name is not None else None
    if tank is None:
        return await turn.reply(words.no_such_tank(tank_name))
    await turn.change_tank(tank, source_id=source.id)
    return await turn.reply(words.chosen(source.name, tank.name))


async def _show(turn: Turn, held: Waters, source: StoredTank) -> Reply:
    if source.blend:
        return await source_blends.show(turn, held, source)
    bodies = (source, *(source.facets[f] for f in FACETS if f in source.facets))
    told = [
        _as_said(source, Told(body, latest, ()))
        for body in bodies
        if (latest := await _latest(turn, body))
    ]
    if not told:
        return await turn.reply(words.empty(source.name))
    lines = [summary(turn, each) for each in told]
    supply = await held.supply(source)
    facts: dict[str, Any] = {"source": source.name, "values": values_json(told[0])}
    if supply.measured_at is not None:
        lines.append(water_words.old(source.name, supply.measured_at, turn.local_now))
        facts["measured_days"] = (turn.local_now - supply.measured_at).days
    return await turn.reply([*lines, *_notes(supply, supply.state.readings, facts)], facts=facts)


async def _latest(turn: Turn, body: StoredTank) -> tuple[Stored[Value], ...]:
    latest: dict[str, Stored[Value]] = {}
    for reading in await turn.uow.log.readings(body.id, limit=400):
        latest.setdefault(reading.what.analyte, reading)
    return tuple(latest.values())


async def _list(turn: Turn, held: Waters) -> Reply:
    if not held.sources:
        return await turn.reply(words.none_yet())
    shown = [await _show(turn, held, source) for source in held.sources]
    return await turn.reply([line for reply in shown for line in reply.lines])


def _named(sources: Sequence[StoredTank], name: str) -> StoredTank | None:
    found = match(name, [source.name for source in sources])
    return next((source for source in sources if source.name == found.name), None)
