"""What is told to be in behind a plan and may be no part of it: then nothing is logged.

`its 20 g in 500 ml` tells a solution's strength; `used epsom instead` another salt; and `its in`
behind `or a whole cup?`, which was not understood, may be of the cup.
"""

from __future__ import annotations

from dataclasses import replace
from typing import Final

from bot.chat import (
    daily_talk,
    forms_talk,
    given_parts,
    given_tests,
    given_unheard,
    off_record,
    open_told,
    own_plan,
    unheard,
)
from bot.chat.given_plan import OF_PLAN, Given
from bot.chat.model import Reply
from bot.chat.off_record import LINES, NAMELESS
from bot.chat.patience import LOOKED_AT
from bot.chat.plan_figures import ROUNDING
from bot.chat.turn import Turn
from bot.chat.words import doses as dose_words
from bot.chat.words import given_parts as given_words
from core.advice.buffers import STRONG
from core.message import beside_dose, parse
from core.message.deed_unsure import is_unsure
from core.message.fold import fold
from core.message.plan_said import Amounts, substances_named
from core.message.plan_talk import About
from core.message.plan_words import Telling
from core.water.substances import SUBSTANCES

MANY: Final = frozenset({"gave_all", "gave_two", "gave_double"})
"""What tells more than a part at once."""

TABLE_SALT: Final = "sodium chloride"
"""Whose name, salt, any powder has."""


async def asked(
    turn: Turn, said: About | Telling, plan: Given, amounts: Amounts
) -> list[Reply] | None:
    """Ask what went in where it may be no part of the plan; None where it surely is one."""
    if (solution := await strength(turn, plan, amounts)) is not None:
        return solution
    if amounts.of_dose or said == "so_much":
        return None
    if (untold := await given_unheard.again(turn, plan)) is not None:
        return untold
    if is_unsure(turn.incoming.text):
        return [await _perhaps(turn, plan)]
    if (other := await _other_salt(turn, plan)) is not None:
        return other
    over = await unheard.passed_over(turn, plan.offer)
    over = over or (said in MANY and await _is_over(turn, plan))
    return await open_told.how_much(turn) if over else None


async def _perhaps(turn: Turn, plan: Given) -> Reply:
    """Ask about a part that went in perhaps; until it is known none goes in."""
    lines = given_words.if_unsure(dose_words.to_test(plan.analytes))
    held = await off_record.held_of(turn, plan.tank_id, " ".join(turn.incoming.text.split()))
    return await turn.reply(
        lines,
        choices=[given_parts.to_log(plan, plan.held), off_record.none_of_it(plan.tank_id)],
        context={OF_PLAN: plan.offer.id, NAMELESS: held, LINES: lines},
    )


async def _other_salt(turn: Turn, plan: Given) -> list[Reply] | None:
    """Another salt than the plan's went in: of a strong one its alarm, else its grams are asked."""
    text = turn.incoming.text
    told = beside_dose.without(text) != " ".join(fold(text).split())  # instead, by mistake
    salts = [name for name, _grams in plan.salts]
    others = sorted(
        name
        for name in substances_named(text)
        if (name in SUBSTANCES or name in STRONG)
        and (told or name != TABLE_SALT)
        and not forms_talk.is_of([name], salts)
    )
    if not salts or not others:
        return None
    strong = next((name for name in others if name in STRONG), None)
    if strong is not None and turn.route is not None:
        dosed = f"dosed {strong}"
        turn.incoming = replace(turn.incoming, text=dosed)
        return await turn.route(turn, parse(dosed, turn.context()))
    return [await turn.reply(given_words.grams_of_other(others[0]))]


async def _is_over(turn: Turn, plan: Given) -> bool:
    """Whether a plan is none any more: its goal was read since, or a newer wish was refused."""
    if await given_tests.reached(turn, plan) is not None:
        return True
    for offer in await turn.uow.offers.latest(turn.chat.id, LOOKED_AT):
        if offer.id <= plan.offer.id:
            return False
        if offer.entry_id is not None:
            entry = await turn.uow.log.current(turn.chat.id, offer.entry_id)
            if entry is not None and await own_plan.is_part(turn, entry, plan.offer.id):
                return False
        facts = offer.context.get("facts", {})
        if "refused" in facts and facts.get("analyte", plan.analytes[0]) in plan.analytes:
            return True
    return False


async def strength(turn: Turn, plan: Given, amounts: Amounts) -> list[Reply] | None:
    """So many grams in so much water that is not the tank's: a solution, and no deed.

    The part is told in its millilitres, where it may be one; else what went in is asked.
    None where no water is told, or where it is the tank's own.
    """
    litres = amounts.litres
    if litres is None and amounts.millilitres is not None:
        litres = amounts.millilitres / 1000.0
    if amounts.grams is None or not litres:
        return None
    stored = turn.tank_by_id(plan.tank_id)
    volume = None if stored is None else stored.tank.volume_l
    if volume is not None and volume / ROUNDING <= litres <= volume * ROUNDING:
        return None
    told = await daily_talk.in_its_millilitres(turn, amounts.grams / litres)
    if not told:
        await unheard.pass_over(turn)
    return told or await open_told.how_much(turn)
