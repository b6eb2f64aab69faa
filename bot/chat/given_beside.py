"""A part of the plan told beside values, or by its bare number: `kh 3.5 ok given`, `gave the 2.7`.

What stands first is kept first: a test behind a deed was made after it.
"""

from __future__ import annotations

from dataclasses import replace
from typing import Final

from bot.chat import given_parts, open_told, plan_parts, plan_talk
from bot.chat.given_plan import Given, running
from bot.chat.model import Reply
from bot.chat.nameless import amount_of
from bot.chat.plan_figures import ROUNDING
from bot.chat.turn import Turn
from core.message import parse
from core.message.gave_told import OfGot, of_got
from core.message.given_beside import Beside, beside_deed, beside_values, of_bare
from core.message.model import Parsed

SODA: Final = ("soda", "sodium bicarbonate")
"""A thing of two meanings, and the salt of a plan that it is of."""


async def answer(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """Keep the values and the deed, each in its own words; None where no plan waits for one."""
    told = turn.incoming
    if parsed.question or not told.addressed or turn.route is None:
        return None
    if not parsed.values and parsed.command is None and (got := of_got(told.text)) is not None:
        return await _of_got(turn, got)
    if parsed.events:
        return await _beside_change(turn, parsed)
    if (weighed := await _weighed(turn)) is not None and not parsed.values:
        turn.incoming = replace(told, text=weighed)
        return await plan_talk.answer(turn, parse(weighed, turn.context()))
    said = beside_values(told.text)
    plan = await running(turn) if said is not None else None
    if said is None or plan is None:
        return None
    values = parse(said.values, turn.context())
    named = turn.tank_named(values.tank or "")
    if not values.values or values.events or values.question or values.doubts:
        return None
    if named is not None and named.id != plan.tank_id:
        return None
    return await _both(turn, said, plan, values)


async def _of_got(turn: Turn, got: OfGot) -> list[Reply] | None:
    """`got the soda now. added 4 g`: a part of the plan of it, or so much of that thing."""
    plan, told = await running(turn), turn.incoming
    salts = () if plan is None else tuple(name for name, _grams in plan.salts)
    if len(salts) == 1 and (got.substance == salts[0] or (got.substance, *salts) == SODA):
        turn.incoming = replace(told, text=got.deed)
        replies = await plan_talk.answer(turn, parse(got.deed, turn.context()))
        turn.incoming = told
        return replies
    amount = amount_of(got.amounts)
    if amount is None or turn.route is None:
        return None
    dosed = f"dosed {amount} {got.substance}"
    turn.incoming = replace(told, text=dosed)
    return await turn.route(turn, parse(dosed, turn.context()))


async def _beside_change(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """`changed 20% and gave it`: both, where the change alone leaves nothing in doubt."""
    changed = all(event.kind == "water_change" for event in parsed.events)
    ways = list(beside_deed(turn.incoming.text)) if changed and not parsed.values else []
    plan = await running(turn) if ways else None
    for said in ways if plan is not None else ():
        other = parse(said.values, turn.context())
        named = turn.tank_named(other.tank or "")
        if plan is None or (named is not None and named.id != plan.tank_id):
            continue
        if other.events and not (other.values or other.doubts or other.question):
            return await _both(turn, said, plan, other)
    return None


async def _both(turn: Turn, said: Beside, plan: Given, other: Parsed) -> list[Reply]:
    """What stands first is kept first."""
    told = turn.incoming
    deed = await _deed(turn, said, plan) if said.deed_first else []
    turn.incoming = replace(told, text=said.values)
    read = [] if turn.route is None else await turn.route(turn, other)
    deed = deed or await _deed(turn, said, plan)
    turn.incoming = told
    return [*deed, *read] if said.deed_first else [*read, *deed]


async def _deed(turn: Turn, said: Beside, plan: Given) -> list[Reply]:
    """Put on record what of the plan went in, or ask how much it was."""
    # a part by name: no reminder to test, which the values answer, may take it
    meaning = "gave_one" if said.heard.meaning == "gave_it" else said.heard.meaning
    told = turn.incoming
    turn.incoming = replace(told, text=said.deed)
    replies = await plan_parts.answer(turn, meaning, plan, said.heard.amounts)
    replies = replies or await open_told.how_much(turn)
    turn.incoming = told
    return replies


async def _weighed(turn: Turn) -> str | None:
    """A text whose bare number is of the plan with its unit: a part, all, or what was asked."""
    plan = await running(turn)
    if plan is None:
        return None
    unit = "ml" if "millilitres" in plan.held else "g"
    asked = await given_parts.asks_how_much(turn) is not None
    wholes = (plan.parts[0], sum(plan.parts))

    def of(told: float) -> str | None:
        known = any(whole / ROUNDING < told < whole * ROUNDING for whole in wholes if whole)
        return unit if known or asked else None

    said = of_bare(turn.incoming.text, of)
    alone = said is not None and said.split()[0] == said.removesuffix(f" {unit}")
    return said if asked or not alone else None
