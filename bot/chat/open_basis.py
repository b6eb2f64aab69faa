"""A dose that rests on a value while another one of it waits for an answer says so.

`ca dropped to 400, is it the soda?` is asked about; a dose right after it is from the value on
record. An ammonia that was asked about and not answered counts as if it were so: with it no buffer
may go in.
"""

from __future__ import annotations

from dataclasses import replace
from typing import Final

from bot.chat import dosing, still_in, unheard
from bot.chat.model import Line, Reply
from bot.chat.state import state_of
from bot.chat.turn import Turn
from bot.chat.words import standing as words
from core.message.model import Parsed, Question


async def dose(turn: Turn, question: Question, parsed: Parsed) -> list[Reply]:
    """The answer of `bot.chat.dosing.dose`, with the number of the same value that is open."""
    ammonia = await _ammonia(turn, question)
    if ammonia is not None:
        told = ammonia.values["ammonia"]
        question = replace(question, premises={**question.premises, "ammonia": told})
    replies = await dosing.dose(turn, question, parsed)
    if ammonia is not None and replies and "refused" in replies[0].facts:
        line = Line(words.doubted(ammonia.text, kit=False))
        return [replace(replies[0], lines=(*replies[0].lines, line)), *replies[1:]]
    if (went_in := await _told_of_no_tank(turn, replies)) is not None:
        replies = [replace(replies[0], lines=(Line(went_in), *replies[0].lines)), *replies[1:]]
    if not replies or question.start_value is not None:
        return replies
    first, *others = replies
    stored = turn.tank_named(str(first.facts.get("tank") or ""))
    if stored is None and "refused" in first.facts and question.volume_l is None:
        stored = turn.tank_named(question.tank) if question.tank else turn.current_tank
    if stored is None or not _OF_VALUE & set(first.facts):
        return replies
    left = await unheard.left(turn, stored)
    waits = () if left is None else (left, *left.others)
    analyte = question.analyte or "kh"
    found = next((each for each in waits if analyte in each.values and not each.kit), None)
    if found is None:
        return replies
    lines = (*first.lines[:1], Line(words.doubted(found.text, kit=False)), *first.lines[1:])
    facts = {**first.facts, "open": {analyte: found.values[analyte]}}
    return [replace(first, lines=lines, facts=facts), *others]


_OF_VALUE: Final = frozenset({"grams", "goals", "refused"})
"""What of an answer rests on the value that stands."""


async def _told_of_no_tank(turn: Turn, replies: list[Reply]) -> str | None:
    """What went in, before an amount for litres that may be of a tank without a name yet."""
    stored = turn.current_tank
    if not replies or "grams" not in replies[0].facts or "tank" in replies[0].facts:
        return None
    if stored is None or stored.tank.named or len(turn.tanks) > 1:
        return None
    return still_in.untested(stored, await state_of(turn, stored, turn.now))


async def _ammonia(turn: Turn, question: Question) -> unheard.Left | None:
    """The most ammonia that waits for an answer in the water that is asked about."""
    named = turn.tank_named(question.tank) if question.tank else None
    stored = named or turn.current_tank
    if stored is None or "ammonia" in question.premises or question.volume_l is not None:
        return None
    return await unheard.ammonia(turn, stored)
