"""A part of the plan told beside values, or by its bare number: `kh 3.5 ok given`, `gave the 2.7`.

What stands first is kept first: a test behind a deed was made after it.
"""

from __future__ import annotations

from dataclasses import replace
from datetime import timedelta
from typing import Final

from bot.chat import given_parts, off_record, open_told, plan_parts, plan_talk
from bot.chat.given_plan import Given, running
from bot.chat.model import Reply
from bot.chat.nameless import amount_of
from bot.chat.plan_figures import ROUNDING, part_of
from bot.chat.state import state_of
from bot.chat.turn import Turn
from bot.chat.words import given_parts as words
from bot.chat.words import off_record as off_words
from bot.chat.words.numbers import plain
from core.message import parse
from core.message.gave_told import OfGot, of_got
from core.message.given_beside import (
    Beside,
    beside_deed,
    beside_values,
    of_bare,
    then_another,
    then_later,
)
from core.message.given_beside import read_early as early_of
from core.message.model import Parsed

A_DAY: Final = timedelta(hours=20)
"""So long a dose on record may be what such a test tells of, as between two parts."""

SODA: Final = ("soda", "sodium bicarbonate")
"""A thing of two meanings, and the salt of a plan that it is of."""


async def answer(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """Keep the values and the deed, each in its own words; None where no plan waits for one."""
    told = turn.incoming
    if not told.addressed or turn.route is None:
        return None
    if parsed.question:
        return await _beside_test(turn)
    if not parsed.values and parsed.command is None and (got := of_got(told.text)) is not None:
        return await _of_got(turn, got)
    if parsed.events:
        return await _beside_change(turn, parsed)
    if (weighed := await _weighed(turn)) is not None and not parsed.values:
        turn.incoming = replace(told, text=weighed)
        return await plan_talk.answer(turn, parse(weighed, turn.context()))
    return await _beside_test(turn)


async def _beside_test(turn: Turn) -> list[Reply] | None:
    """A deed and the values beside it, each of which says nothing else by itself."""
    told = turn.incoming
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


async def read_early(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """`kh only went to 3, its been 2 min. how much more to 6`: kept, and no more before a retest.

    A dose that such a test tells of and that is on no record is asked about first.
    """
    told, stored = turn.incoming, turn.current_tank
    early = early_of(told.text) if told.addressed and parsed.command is None else None
    if early is None or stored is None or turn.route is None or parsed.events:
        return None
    values = parse(early.values, turn.context())
    named = turn.tank_named(values.tank or "")
    if len(values.values) != 1 or values.events or values.question or values.doubts:
        return None
    stored = named or stored
    plan = await running(turn)
    plan = plan if plan is not None and plan.tank_id == stored.id else None
    state = await state_of(turn, stored, turn.now)
    last = max((e.at for e in state.events or () if e.what.kind == "dose"), default=None)
    on_record = last is not None and turn.now - last < A_DAY
    if not on_record and plan is None:
        return None
    turn.incoming = replace(told, text=early.values)
    read = await turn.route(turn, values)
    turn.incoming = told
    soon = [] if early.minutes is None else words.too_early(plain(early.minutes, 0))
    if on_record or plan is None:
        lines = soon or words.too_early(None)
        return [*read, await turn.reply(lines, facts={"tank": stored.name})]
    return [*read, await _hold(turn, plan, told.text, soon)]


async def _hold(turn: Turn, plan: Given, text: str, before: list[str]) -> Reply:
    """Ask whether a part went in that is told beside another thing; no amount until then."""
    held = await off_record.held_of(turn, plan.tank_id, " ".join(text.split()))
    choices = [given_parts.to_log(plan, plan.held, part_of(plan))]
    choices[0] = replace(choices[0], meaning="yes")
    lines = off_words.which(held["said"], [each.label for each in choices])
    return await turn.reply(
        [*before, *lines],
        choices=[*choices, off_record.none_of_it(plan.tank_id)],
        facts={"said": held["said"]},
        context={off_record.NAMELESS: held, off_record.LINES: lines},
        expects="followup",
    )


async def then_next(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """`done. she did too`, `put half in, remind me of the other half at 6`: the deed is kept first.

    None where no plan waits for it.
    """
    told = turn.incoming
    if not told.addressed or turn.route is None or parsed.values or parsed.events:
        return None
    said = then_another(told.text)
    later = then_later(told.text) if said is None else None
    found = said or later
    plan = None if found is None else await running(turn)
    if found is None or plan is None or plan.tank_id is None:
        return None
    if turn.typed is None:
        return None
    meaning = "gave_one" if found.heard.meaning == "gave_it" else found.heard.meaning
    turn.incoming = replace(told, text=found.deed)
    deed = await plan_parts.answer(turn, meaning, plan, found.heard.amounts)
    turn.incoming = told
    if not deed:
        return None
    if said is not None:
        return [*deed, await _hold(turn, plan, found.behind, [])]
    turn.incoming = replace(told, text=found.behind)
    reminded = await turn.typed(turn)
    turn.incoming = told
    logged = any("events" in reply.facts for reply in deed)
    return [*deed, *reminded] if logged else [*reminded, *deed]  # a question stands last


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
