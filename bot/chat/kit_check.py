"""``is my kh kit right``: water of a known value, and what the kit shows of it.

Nothing of it is a reading: the numbers are of the kit, or of what is in the jug.
"""

from __future__ import annotations

from dataclasses import asdict, replace
from typing import Final

from bot.chat.model import Reply
from bot.chat.patience import GROUP_PATIENCE, PATIENCE
from bot.chat.turn import Turn
from bot.chat.words import kit_check as words
from core.advice.reference_water import Reference, off_by, reference
from core.message.kit_check import KitAsked, kit_asked, shown

MADE: Final = "reference"
"""Of an offer's context: the water that a kit is to be tested on."""


async def answer(turn: Turn) -> list[Reply] | None:
    """Answer what is asked of a kit, or told of the reference water; None where nothing is."""
    if not turn.incoming.addressed:
        return None
    text = turn.incoming.text
    told = shown(text)
    made = None if told is None else await _made(turn)
    if told is not None and made is not None and told.analyte in {None, made.analyte}:
        return [await _judged(turn, made, told)]
    found = kit_asked(text)
    if found is None:
        return None
    told_of = None if found.read or told else await _of_reading(turn, found)
    if told_of is not None and turn.typed is not None:
        turn.incoming = replace(turn.incoming, text=f"is {told_of} ok")
        return await turn.typed(turn)  # is 5 drops ok, right behind 5 drops: of the tank
    if found.analyte in {"ph", "other"}:
        return [await turn.reply(words.no_recipe(found.analyte == "ph"))]
    analyte = found.analyte or ("kh" if found.value is not None or found.litres is not None else "")
    if not analyte:
        return [await turn.reply(words.which())]
    water = reference(analyte, found.value, found.litres)
    lines = words.recipe(water, found.value if found.read else None)
    if found.value is not None and water.value != found.value:
        lines.insert(1, words.out_of_reach())
    facts = asdict(water)
    return [await turn.reply(lines, facts={MADE: facts}, context={MADE: facts}, expects="followup")]


async def _made(turn: Turn) -> Reference | None:
    """The reference water, where nothing was spoken of since."""
    patience = GROUP_PATIENCE if turn.incoming.group else PATIENCE
    newest = await turn.uow.offers.latest(turn.chat.id, 1)
    if not newest or turn.now - newest[0].made_at > patience or MADE not in newest[0].context:
        return None
    return Reference(**newest[0].context[MADE])


async def _of_reading(turn: Turn, asked: KitAsked) -> str | None:
    """The reading that the message before told, where its number is asked about; else None."""
    newest = await turn.uow.offers.latest(turn.chat.id, 1)
    patience = GROUP_PATIENCE if turn.incoming.group else PATIENCE
    if asked.value is None or not newest or turn.now - newest[0].made_at > patience:
        return None
    if newest[0].entry_id is None:
        return None
    entry = await turn.uow.log.current(turn.chat.id, newest[0].entry_id)
    for value in [] if entry is None else [each.what for each in entry.readings]:
        same = value.value == asked.value and asked.analyte in {None, value.analyte}
        if same and value.analyte in {"kh", "gh"} and isinstance(value.canonical, float | int):
            return f"{value.analyte} {value.canonical:.10g}"
    return None


async def _judged(turn: Turn, made: Reference, told: KitAsked) -> Reply:
    """What a kit shows, beside what it should."""
    if told.value is None:
        raise ValueError(told)
    by = off_by(made, told.value)
    lines = words.off(made, told.value, by) if by else words.within(made, told.value)
    facts = {MADE: asdict(made), "shown": told.value, "off": by}
    return await turn.reply(lines, facts=facts, context={MADE: asdict(made)}, expects="followup")
