"""``if its 8.1 and i want 9 whats the dose``: of the one value on record that is so high.

Where none is, or two are, the question which one it is stays. Nothing is stored. And ``how much
powder`` behind a plan is of its salt.
"""

from __future__ import annotations

from dataclasses import replace
from typing import Final

from bot.chat.given_plan import running
from bot.chat.model import Reply
from bot.chat.state import state_of
from bot.chat.turn import Turn
from core.message import parse
from core.message.model import Parsed
from core.message.wish_supposed import wish_supposed

SAME: Final = 0.005
"""So near a value told is the one on record. [its unit]"""

POWDERS: Final = frozenset({"powder", "pulver", "poudre", "polvo", "po", "polvere", "poeder"})
"""What a salt is called whose name goes without saying."""


async def answer(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """Answer it as the question that it is; None where nothing is supposed so."""
    if not turn.incoming.addressed or parsed.values or parsed.events or parsed.command:
        return None
    if (powder := await _powder(turn, parsed)) is not None:
        return powder
    said = wish_supposed(turn.incoming.text)
    if said is None or turn.route is None:
        return None
    names: list[str] = []
    if turn.current_tank is not None:
        state = await state_of(turn, turn.current_tank, turn.now)
        read = state.readings.values()
        names = [each.analyte for each in read if abs(each.value - said.start) <= SAME]
    name = names[0].replace("_", " ") if len(names) == 1 else None
    text = said.asked_as(name)
    turn.incoming = replace(turn.incoming, text=text)
    return await turn.route(turn, parse(text, turn.context()))


async def _powder(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """`if i wanted kh 4 how much powder` behind a plan for KH: the salt of that plan."""
    asked = parsed.question
    if asked is None or asked.kind != "dose" or asked.substance not in POWDERS:
        return None
    plan = await running(turn)
    if plan is None or len(plan.salts) != 1 or turn.route is None or turn.products:
        return None
    stored = turn.tank_by_id(plan.tank_id)
    elsewhere = asked.tank is not None and (stored is None or asked.tank != stored.name)
    if elsewhere or asked.analyte not in plan.analytes or asked.target is None:
        return None
    question = replace(asked, substance=plan.salts[0][0])
    text = f"how much {question.substance} for {question.analyte} {question.target:.10g}"
    turn.incoming = replace(turn.incoming, text=text)
    return await turn.route(turn, replace(parsed, question=question))
