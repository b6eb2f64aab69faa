"""``each drop is 0.5``: how a kit is read, also of what was told in its drops just before."""

from __future__ import annotations

from dataclasses import replace
from typing import Final

from bot.chat import calls, corrections
from bot.chat.model import Reply
from bot.chat.turn import Turn
from bot.chat.words import drops as drop_words
from bot.chat.words import tanks as words
from bot.chat.words.names import first_tank
from bot.chat.words.nearest import restated
from bot.store.log import Entry
from bot.store.offers import Choice
from core.message import parse
from core.message.drop_told import colour_told, drop_told, drops_counted
from core.message.model import Kit, Parsed, Value
from core.tank import Tank

DROPS: Final = "drops"
OF_KIT: Final = frozenset({"kh", "gh"})
"""What is counted in drops."""


async def answer(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """Keep what a drop counts and read the drops anew; None where nothing of it is told.

    A number told beside it, never in drops before, may be either: it is asked.
    """
    said = turn.incoming
    regrets = parsed.command is not None and parsed.command.name == "correct"
    plain = parsed.command is None or regrets
    told = drop_told(said.text) if said.addressed and plain else None
    if told is None or parsed.question is not None or turn.route is None:
        return None
    rest = parse(told.rest, turn.context()) if told.rest else Parsed("none")
    values = [value for value in rest.values if value.analyte in OF_KIT]
    entry = await _in_drops(turn, values)
    before = [each.what for each in entry.readings if each.what.unit == DROPS] if entry else []
    analyte = next((each.analyte for each in (*values, *before)), None)
    if analyte is None:
        return [await turn.reply(words.kit_how())]
    stored = turn.tank_named(values[0].tank or "") if values else None
    stored = stored or (turn.tank_by_id(entry.readings[0].tank_id) if entry else turn.current_tank)
    if stored is None and turn.tanks:
        return [await turn.reply(words.which())]
    stored = stored or await turn.add_tank(Tank(first_tank(), named=False))
    await turn.uow.tanks.set_kit(stored.id, analyte, Kit(per_drop=told.per_drop))
    stored = await turn.reload_tank(stored)
    await turn.use_tank(stored)
    facts = {"tank": stored.name, "analyte": analyte}
    kept = await turn.reply(words.kit_set(stored.name, analyte, told.per_drop, None), facts=facts)
    bare = [value for value in values if value.unit != DROPS]
    if entry is not None and all(_is_told(value, before) for value in bare):
        return [kept, *await _anew(turn, entry, before)]
    if bare:
        return [kept, await _ask(turn, bare[0], told.per_drop)]
    turn.incoming = replace(said, text=told.rest)
    return [kept, *(await turn.route(turn, parse(told.rest, turn.context())) if values else ())]


async def colour(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """``kh test stays yellow after the first drop``: no number yet, and no animal."""
    said = turn.incoming
    told = colour_told(said.text) if said.addressed and parsed.command is None else None
    if parsed.values or calls.is_danger(turn, parsed):
        return None
    if told is None or parsed.events:
        return await _counted(turn, parsed)
    facts: dict[str, object] = {"analyte": told.analyte, "colour": told.colour}
    if told.drops is not None:
        facts["drops"] = told.drops
    lines = drop_words.by_colour(told.analyte, told.colour, told.drops)
    return [await turn.reply(lines, facts=facts)]


async def _counted(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """``my tap water is 7 drops``: asked what they are of; nothing is stored before."""
    said = turn.incoming
    found = drops_counted(said.text) if said.addressed and parsed.command is None else None
    if found is None or parsed.question is not None:
        return None
    water = "tap " if found.of_tap else ""
    texts = [f"{water}{each} {found.drops} drops" for each in found.analytes]
    meaning = "yes" if len(texts) == 1 else ""
    choices = [Choice(text, "say_again", meaning, {"text": text}) for text in texts]
    return [await turn.reply(restated(texts), choices=choices)]


async def _in_drops(turn: Turn, values: list[Value]) -> Entry | None:
    """The newest entry of late that tells drops, where a message tells no further ones."""
    if any(value.unit == DROPS for value in values):
        return None
    for entry in await turn.uow.log.newest(turn.chat.id, corrections.OF_LATE):
        if turn.now - entry.at > corrections.STILL_MEANT:
            return None
        if any(each.what.unit == DROPS for each in entry.readings):
            return entry
    return None


def _is_told(value: Value, before: list[Value]) -> bool:
    """Whether a number is that of the drops told before."""
    return any((each.analyte, each.value) == (value.analyte, value.value) for each in before)


async def _anew(turn: Turn, entry: Entry, drops: list[Value]) -> list[Reply]:
    """Read the drops of an entry again, as the kit counts them now."""
    text = ", ".join(f"{each.analyte} {each.value:.10g} drops" for each in drops)
    turn.incoming = replace(turn.incoming, text=text)
    return await corrections.told_anew(turn, entry, parse(text, turn.context()))


async def _ask(turn: Turn, value: Value, per_drop: float) -> Reply:
    """Ask whether a number is of drops or of degrees; nothing of it is stored before."""
    number = f"{value.value:.10g}"
    choices = [
        Choice(
            drop_words.drops(value.analyte, number),
            "say_again", "", {"text": f"{value.analyte} {number} drops"},
        ),
        Choice(
            drop_words.degrees(value.analyte, number),
            "say_again", "", {"text": f"{value.analyte} {number} dh"},
        ),
    ]  # fmt: skip
    lines = drop_words.which(value.analyte, number, per_drop)
    return await turn.reply(lines, choices=choices)
