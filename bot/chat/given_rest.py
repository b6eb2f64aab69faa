"""The rest of a plan that is told to be in: of the part that was begun, unless all is said.

What may be more than that, or a part that is not due yet, is asked about, never logged on a guess.
"""

from __future__ import annotations

from datetime import datetime, timedelta
from typing import Any, Final

from bot.chat import doses, own_plan
from bot.chat.given_parts import SHORT, shown, to_log
from bot.chat.given_plan import OF_PLAN, Given, last_in
from bot.chat.model import Reply
from bot.chat.turn import Turn
from bot.chat.words import given_parts as words
from bot.chat.words.numbers import when
from bot.store.offers import Choice
from core.message.plan_rest import rest_told
from core.message.plan_said import Amounts

NEAR: Final = 1e-6
"""So much of a part is nothing."""


async def answer(turn: Turn, plan: Given, amounts: Amounts) -> list[Reply] | None:
    """Put the rest on record, or ask which it is; None where it is all of a plan, or all is in."""
    share = await own_plan.share_logged(turn, plan.offer.id, plan.held)
    logged = await own_plan.parts_logged(turn, plan.offer.id, plan.held)
    begun = max(share - logged, 0.0)
    told = rest_told(turn.incoming.text)
    if amounts.of_dose or plan.count - logged < 1:
        return None
    left = plan.count - share
    if begun > NEAR and plan.count - logged > 1:
        of_part = doses.so_much_of(plan.held, 1.0 - begun)
        if told == "all":
            return [await _which(turn, plan, of_part, doses.so_much_of(plan.held, left))]
        rest = of_part if told == "rest" else doses.so_much_of(plan.held, left)
        return await _log(turn, plan, rest)
    if told != "rest" or begun > NEAR or plan.count == 1:
        return None
    at = await last_in(turn, plan)
    if logged and at is not None and turn.now - at < timedelta(hours=SHORT * plan.every_hours):
        due = at + timedelta(hours=plan.every_hours)
        return [await _which(turn, plan, plan.held, doses.so_much_of(plan.held, left), due)]
    if plan.count - logged > 1:
        return [await _which(turn, plan, plan.held, doses.so_much_of(plan.held, left))]
    return None


async def _log(turn: Turn, plan: Given, held: dict[str, Any]) -> list[Reply]:
    said_by = f"{own_plan.log_id(plan.offer.id)}:{turn.incoming.update_id}"
    return await doses.log_parts(turn, said_by, held)


async def _which(
    turn: Turn,
    plan: Given,
    part: dict[str, Any],
    left: dict[str, Any],
    due: datetime | None = None,
) -> Reply:
    """Ask how much of what is left went in; `due`: the next part may only then."""
    amounts = [part] if shown(part) == shown(left) else [part, left]
    choices = [to_log(plan, each, shown(each)) for each in amounts]
    if len(choices) == 1:
        choices.append(Choice(words.none_of_it(), "log_none", "no"))
    at = None if due is None else when(due.astimezone(turn.chat.zone), turn.local_now)
    lines = words.rest_of_what([shown(each) for each in amounts], at)
    facts = {"parts": [*plan.parts], "every_hours": plan.every_hours}
    return await turn.reply(lines, choices=choices, facts=facts, context={OF_PLAN: plan.offer.id})
