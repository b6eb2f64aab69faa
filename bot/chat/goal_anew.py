"""A plan shall end elsewhere: `only to 5`, said behind the next test as well.

There a bare number would put the test right, which these words do not.
"""

from __future__ import annotations

from dataclasses import replace

from bot.chat.given_plan import last_in, running
from bot.chat.model import Reply
from bot.chat.state import state_of
from bot.chat.turn import Turn
from bot.chat.words.numbers import plain
from core.message.goal_anew import goal_anew
from core.message.model import Parsed, Question


async def answer(turn: Turn, _parsed: Parsed) -> list[Reply] | None:
    """Plan what is left up to the value that is told; None where none is, or no plan."""
    goal = goal_anew(turn.incoming.text) if turn.incoming.addressed else None
    plan = None if goal is None else await running(turn)
    tank = None if plan is None else turn.tank_by_id(plan.tank_id)
    if goal is None or plan is None or tank is None or turn.route is None:
        return None
    target = plan.facts.get("to")
    if len(plan.analytes) != 1 or target is None:
        return None
    if not goal.plain and await last_in(turn, plan) is None:
        return None  # of a plan that is not begun a number alone is heard elsewhere
    analyte = plan.analytes[0]
    held = (await state_of(turn, tank, turn.now)).last(analyte)
    reached = 0.0 if held is None else held.value
    if not goal.value < target or not (goal.plain or reached < goal.value):
        return None
    ask = f"dose {analyte} {plain(goal.value, 2)}"
    asked = Question("dose", tank=tank.name, analyte=analyte, target=goal.value, text=ask)
    turn.incoming = replace(turn.incoming, text=ask)  # what was said is read already
    return await turn.route(turn, Parsed("question", question=asked))
