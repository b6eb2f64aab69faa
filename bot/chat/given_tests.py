"""What was tested since a plan was given: whether its goal is reached, or a part was in by then."""

from __future__ import annotations

from datetime import timedelta
from typing import Final

from bot.chat.given_plan import LOG_SOME, OF_PLAN, Given, last_dose
from bot.chat.model import Reply
from bot.chat.plan_figures import part_of
from bot.chat.turn import Turn
from bot.chat.words import given_parts as words
from bot.chat.words import names
from bot.chat.words.numbers import plain
from bot.store.log import Stored
from bot.store.offers import Choice
from core.message.model import Value

HALF: Final = 0.5
"""Of the way of a part: a test that shows as much of it shows the part."""


async def reached(turn: Turn, plan: Given) -> Reply | None:
    """That the goal of a plan is measured, where it is; then nothing more of it goes in."""
    target, test = plan.facts.get("to"), await tested(turn, plan)
    goals = plan.facts.get("goals")
    target = goals[0].get("to") if goals and len(goals) == 1 else target
    if test is None or not isinstance(target, float | int):
        return None
    if await last_dose(turn, plan) is not None and not await since_last(turn, plan):
        return None
    value = test.what.canonical
    if not isinstance(value, float | int) or value < target or test.what.qualifier == "<":
        return None
    goal = plan.analytes[0]
    lines = words.reached(names.analyte(goal), plain(float(value), 2))
    return await turn.reply(lines, facts={"to": target, "values": {goal: value}})


async def since_last(turn: Turn, plan: Given) -> bool:
    """Whether what a plan is to raise was tested after the last dose of it that is on record."""
    dosed, test = await last_dose(turn, plan), await tested(turn, plan)
    if dosed is None or test is None:
        return False
    return (test.at, test.entry_id) > (dosed.at, dosed.entry_id)


async def tested(turn: Turn, plan: Given) -> Stored[Value] | None:
    """The newest test of what a plan is to raise, where it was made since it was given."""
    if plan.tank_id is None or len(plan.analytes) > 1:
        return None
    found = await turn.uow.log.last_of_each(plan.tank_id, [plan.analytes[0]], until=turn.now)
    newest = next(iter(found), None)
    return newest if newest is not None and newest.at >= plan.offer.made_at else None


def shows_it(plan: Given, test: Stored[Value]) -> bool:
    """Whether a test is nearer to where a part leads than to where the water stood."""
    goals = plan.facts.get("goals") or [plan.facts]
    start, target, value = goals[0].get("from"), goals[0].get("to"), test.what.canonical
    numbers = (float, int)
    if not (isinstance(start, numbers) and isinstance(target, numbers)):
        return False
    if not isinstance(value, numbers) or plan.count < 1:
        return False
    return value >= start + HALF * (target - start) / plan.count > start


async def before_test(turn: Turn, plan: Given, test: Stored[Value]) -> Reply:
    """Ask whether a part that is told now was in when a test was made that shows it."""
    goal, value = plan.analytes[0], test.what.canonical
    then = max(plan.offer.made_at, test.at - timedelta(hours=1))
    held = {"of": plan.offer.id, "held": plan.held}
    choices = [
        Choice(words.before_it(), LOG_SOME, "", {**held, "at": then.isoformat()}),
        Choice(words.after_it(), LOG_SOME, "", held),
    ]
    shown_value = plain(float(value), 2) if isinstance(value, float | int) else ""
    lines = words.before_test(part_of(plan), names.analyte(goal), shown_value)
    facts = {"parts": list(plan.parts), "values": {goal: value}}
    return await turn.reply(lines, choices=choices, facts=facts, context={OF_PLAN: plan.offer.id})
